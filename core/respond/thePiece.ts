import type { Response } from '../bench/reply.ts';
import type { State } from '../journal/state.ts';
import type { Length } from '../length/length.ts';
import { sayNumber } from '../length/sayNumber.ts';
import { describeSize } from '../piece/describe.ts';
import { sizeOf } from '../piece/evaluate.ts';
import type { Part, PieceFile } from '../piece/file.ts';
import type { LoadedPiece } from '../piece/loadedPiece.ts';
import { cutNoun } from '../stock/blanks.ts';
import { pluralOf } from '../work/names.ts';
import { refuse, tell } from './plain.ts';
import { cutName } from './rough.ts';
import { sayCount, sayList, sentence, spoken, written } from './saying.ts';
import { sizesOf } from './views.ts';

/** What is being made and how big it is: its name, what the file says of it first, the sizes that must hold, and the part that is largest. */
export function tellThePiece(state: State, piece: LoadedPiece): Response {
  const { name, about = '' } = piece.file;
  const [first = ''] = about.split(/(?<=[.!?])\s/);
  const [critical, largest] = [criticalSizes(state, piece), largestPart(state, piece.file)];
  const say = [sentence(name), first, ...critical.map(({ say: called, from, length }) => sentence([called, ...from, spoken(state, length)].join(', '))),
    ...largest.map(({ part, length, width }) => sentence(`its largest part is the ${part.name}: ${spoken(state, length)} by ${spoken(state, width)}`))];
  // The screen has the name already, and room for two lines.
  const note = [...critical.map(({ say: called, length }) => `${called} ${written(state, length)}`), ...largest.map(({ part, length, width }) => `${part.name} ${written(state, length)} by ${written(state, width)}`)];
  return tell({ say: say.filter(Boolean).join(' '), note: sentence(note.join(', ')), screen: { name: 'parts' } });
}

/** The sizes of the whole that must hold, each with what it is measured from. */
function criticalSizes(state: State, piece: LoadedPiece): readonly { readonly say: string; readonly from: readonly string[]; readonly length: Length }[] {
  return Object.keys(piece.file.parameters).flatMap((size) => {
    const described = describeSize(piece, size);
    const length = lengthOf(state, size);
    if (described?.critical !== true || length === undefined) return [];
    return [{ say: described.say, from: described.from === undefined ? [] : [described.from], length }];
  });
}

/** None where no part has a length and a width. */
function largestPart(state: State, { parts }: PieceFile): readonly { readonly part: Part; readonly length: Length; readonly width: Length }[] {
  const faces = parts.flatMap((part) => {
    const [length, width] = [lengthOf(state, `${part.id}.length`), lengthOf(state, `${part.id}.width`)];
    return length === undefined || width === undefined ? [] : [{ part, length, width }];
  });
  return faces.sort((a, b) => b.length * b.width - a.length * a.width).slice(0, 1);
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
