import type { Bench } from '../bench/bench.ts';
import type { Response } from '../bench/reply.ts';
import { nameCopies, sayPlaced } from '../faces/explain.ts';
import { placeKey } from '../journal/progress.ts';
import type { State } from '../journal/state.ts';
import { sayNumber } from '../length/sayNumber.ts';
import type { Part } from '../piece/file.ts';
import { pluralOf } from '../work/names.ts';
import { facedPart, facesAbout } from './facesState.ts';
import { refuse, tell } from './plain.ts';
import { sayList, sentence } from './saying.ts';

/** How the copies of a part are told apart, and where each of them stands: as the corners are drawn. */
export function whichIsWhich(bench: Bench, named: string | undefined): Response {
  const [part, ...more] = named === undefined ? facesAbout(bench, undefined) : (bench.state.piece?.file.parts ?? []).filter(({ id }) => id === named);
  if (!part) return refuse(named === undefined ? 'No part of this piece has places of its own.' : 'This piece has no such part.');
  if (more.length > 0) {
    const choices = [part, ...more].map(({ id, name }) => ({ say: name, request: { kind: 'which is which', part: id } as const }));
    return tell({ say: `Which part: ${sayList(choices.map(({ say }) => say), 'or')}?`, question: { kind: 'which', choices } });
  }
  if (part.count < 2) return refuse(`There is only one ${part.name}.`);
  if (part.places === undefined) return tell({ say: `The ${sayNumber(part.count)} ${pluralOf(part)} have no places of their own. Each goes by the number on it, and its sizes are kept by that.`, screen: { name: 'part', part: part.id } });
  return tell({ say: sayWhich(bench.state, part), screen: { name: 'faces', part: part.id } });
}

/** Those that stand in one place each, then those that have none yet. */
function sayWhich(state: State, part: Part): string {
  const names = { one: part.name, many: pluralOf(part) };
  const faced = facedPart(state, part);
  const copies = Array.from({ length: part.count }, (_, index) => index + 1);
  const placed = copies.flatMap((copy) => {
    const place = state.places.get(placeKey(part.id, copy));
    const stands = faced.ok ? faced.value.problem.now?.find((one) => one.copy === copy) : undefined;
    if (faced.ok && stands) return [sayPlaced(names, stands, faced.value.problem.stand.kind)];
    return place === undefined ? [] : [`${nameCopies(names, [copy])} ${place}`];
  });
  const open = copies.filter((copy) => !state.places.has(placeKey(part.id, copy)));
  const head = `Each ${part.name} goes by the number on its end.`;
  if (placed.length === 0) return `${head} None of the ${names.many} has its place yet: it goes ${sayList(part.places ?? [], 'or')}.`;
  return [head, sentence(placed.join('; ')), ...(open.length === 0 ? [] : [sentence(`without a place yet: ${nameCopies(names, open)}`)])].join(' ');
}
