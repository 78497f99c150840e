import type { Response } from '../bench/reply.ts';
import type { Part, PieceFile } from '../piece/file.ts';
import { pluralOf } from '../work/names.ts';
import { refuse, tell } from './plain.ts';
import { sayList, sentence } from './saying.ts';

/** The wood of a part; without one, of the whole piece: each wood once, with the parts that are of it. */
export function tellWood({ parts }: PieceFile, asked: string | undefined): Response {
  if (asked === undefined) return tellAllWoods(parts);
  const part = parts.find(({ id }) => id === asked);
  if (!part) return refuse('This piece has no such part.');
  return tell({ say: sentence(`the ${namesOf(part)} ${part.count > 1 ? 'are' : 'is'} of ${part.species}`), screen: { name: 'part', part: part.id } });
}

function tellAllWoods(parts: readonly Part[]): Response {
  const woods = [...new Set(parts.map(({ species }) => species))];
  const of = (wood: string): string => sayList(parts.filter(({ species }) => species === wood).map(namesOf));
  const say = woods.length === 1 ? sentence(`all of it is of ${woods[0] ?? ''}`) : woods.map((wood) => sentence(`${wood}: ${of(wood)}`)).join(' ');
  return tell({ say, note: say, screen: { name: 'parts' } });
}

function namesOf(part: Part): string {
  return part.count > 1 ? pluralOf(part) : part.name;
}
