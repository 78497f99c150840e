import type { Response } from '../bench/reply.ts';
import type { State } from '../journal/state.ts';
import { sayNumber } from '../length/sayNumber.ts';
import { describeSize } from '../piece/describe.ts';
import { sizeOf } from '../piece/evaluate.ts';
import type { Part, PieceFile } from '../piece/file.ts';
import type { LoadedPiece } from '../piece/loadedPiece.ts';
import { cutNoun } from '../stock/blanks.ts';
import { pluralOf } from '../work/names.ts';
import { refuse, tell } from './plain.ts';
import { cutName } from './rough.ts';
import { sayCount, sayList, sentence, spoken } from './saying.ts';
import { sizesOf } from './views.ts';

/** What is being made and how big it is: its name, what the file says of it first, the sizes that must hold, and the part that is largest. */
export function tellThePiece(state: State, piece: LoadedPiece): Response {
  const { name, about = '' } = piece.file;
  const [first = ''] = about.split(/(?<=[.!?])\s/);
  const say = [sentence(name), first, ...criticalSizes(state, piece), largestPart(state, piece.file)].filter(Boolean).join(' ');
  return tell({ say, note: say, screen: { name: 'parts' } });
}

/** The sizes of the whole that must hold, each with what it is measured from. */
function criticalSizes(state: State, piece: LoadedPiece): readonly string[] {
  return Object.keys(piece.file.parameters).flatMap((size) => {
    const described = describeSize(piece, size);
    const length = lengthOf(state, size);
    if (described?.critical !== true || length === undefined) return [];
    return [sentence([described.say, ...(described.from === undefined ? [] : [described.from]), spoken(state, length)].join(', '))];
  });
}

function largestPart(state: State, { parts }: PieceFile): string {
  const faces = parts.flatMap((part) => {
    const [length, width] = [lengthOf(state, `${part.id}.length`), lengthOf(state, `${part.id}.width`)];
    return length === undefined || width === undefined ? [] : [{ part, length, width }];
  });
  const [largest] = faces.sort((a, b) => b.length * b.width - a.length * a.width);
  return largest === undefined ? '' : sentence(`its largest part is the ${largest.part.name}: ${spoken(state, largest.length)} by ${spoken(state, largest.width)}`);
}

function lengthOf(state: State, size: string) {
  const sizes = sizesOf(state);
  return sizes ? sizeOf(sizes, size)?.length : undefined;
}

/** How many parts there are, and of which kinds. */
export function tellParts({ parts }: PieceFile): Response {
  const total = parts.reduce((sum, { count }) => sum + count, 0);
  const say = sentence(`${sayCount(total, 'part', 'parts')}: ${sayList(parts.map((part) => sayCount(part.count, part.name, pluralOf(part))))}`);
  return tell({ say, note: say, screen: { name: 'parts' } });
}

/** The layers or boards that a part is glued up from, of one and of all. */
export function tellPieces(state: State, id: string): Response {
  const parts = state.piece?.file.parts ?? [];
  const part = parts.find((one) => one.id === id);
  if (!part) return refuse('This piece has no such part.');
  const each = piecesOf(part);
  const screen = { name: 'part', part: id } as const;
  if (each === undefined) return tell({ say: sentence(`${part.count > 1 ? 'each' : 'the'} ${part.name} is one solid piece: nothing is glued up for it`), screen });
  const noun = cutNoun(parts, { id, name: cutName(part) }, each);
  const inAll = part.count > 1 ? `; ${sayNumber(each * part.count)} in all, for ${sayCount(part.count, part.name, pluralOf(part))}` : '';
  return tell({ say: sentence(`${sayNumber(each)} ${noun}${part.count > 1 ? ' for each' : ''}${inAll}`), screen });
}

function piecesOf({ made }: Part): number | undefined {
  switch (made.kind) {
    case 'solid': return undefined;
    case 'laminated': return made.layers;
    case 'panel': return made.boards;
  }
}
