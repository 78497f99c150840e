import type { Response } from '../bench/reply.ts';
import type { State } from '../journal/state.ts';
import type { Part } from '../piece/file.ts';
import { NANOMETRES_PER_INCH } from '../length/length.ts';
import { mayHide } from '../stock/blanks.ts';
import { roughSize, roughTerms, SIDES, type PartRough, type RoughTerm, type Side } from '../stock/rough.ts';
import { allowancesOf, extrasOf, partsRough } from './cuttingState.ts';
import { refuse, tell, write } from './plain.ts';
import { sayList, sentence, spoken, written, type TellLength } from './saying.ts';
import { sizesOf } from './views.ts';

/** More than this left on a part is a slip of the finger. */
export const MOST_MORE = 12 * NANOMETRES_PER_INCH;

/** A part as it is cut: every side with what it is made of. */
export interface InTheRough {
  readonly part: Part;
  readonly sides: readonly { readonly side: Side; readonly terms: readonly RoughTerm[] }[];
  readonly mayHideDefect: boolean;
}

/** All parts of the piece on the bench as they are cut, in the order of its file. */
export function partsInTheRough(state: State): readonly InTheRough[] {
  const sizes = sizesOf(state);
  if (!state.piece || !sizes) return [];
  return state.piece.file.parts.map((part): InTheRough => {
    const own = partsRough(state).get(part.id) ?? {};
    return { part, sides: SIDES.map((side) => ({ side, terms: roughTerms(part, sizes, side, extrasOf(state), own) })), mayHideDefect: mayHide(part, own) };
  });
}

/** What is cut of a part: a lamination by its layers, a panel by its boards. */
export function cutName({ name, made }: Part): string {
  return made.kind === 'laminated' ? `${name} layer` : made.kind === 'panel' ? `${name} board` : name;
}

/** All sides of a part as it is cut, or the one that is asked for. */
export function roughSizeOf(state: State, id: string, side?: Side): Response {
  const found = partsInTheRough(state).find(({ part }) => part.id === id);
  if (found === undefined) return refuse('There is no such part.');
  const asked = found.sides.find((one) => one.side === side);
  if (asked !== undefined) return roughSide(state, found.part, asked);
  const sides = found.sides.map(({ side, terms }) => {
    const [finished, ...more] = terms;
    const made = more.length === 0 || finished === undefined ? '' : `: ${spoken(state, finished.length)} finished, ${sayList(more.map(({ what, length }) => `${spoken(state, length)} ${what}`))}`;
    return sentence(`${side} ${spoken(state, roughSize(terms))}${made}`);
  });
  return tell({ say: [sentence(`${cutName(found.part)}, in the rough`), ...sides, found.mayHideDefect ? 'It may hide a knot.' : ''].filter(Boolean).join(' '), screen: { name: 'rough', part: id }, lengths: found.sides.map(({ terms }) => roughSize(terms)) });
}

/** 'Leg layer, length: thirty-three and a quarter in the rough, thirty-two and a quarter finished.' */
function roughSide(state: State, part: Part, { side, terms }: InTheRough['sides'][number]): Response {
  const [rough, finished] = [roughSize(terms), terms[0]?.length ?? roughSize(terms)];
  const told = rough === finished ? `${spoken(state, finished)}, and nothing is left on it` : `${spoken(state, rough)} in the rough, ${spoken(state, finished)} finished`;
  return tell({ say: sentence(`${cutName(part)}, ${side}: ${told}`), screen: { name: 'rough', part: part.id }, lengths: [rough, finished] });
}

/** What is left on all parts in the rough, and what the saw takes besides. */
export function tellAllowances(state: State): Response {
  const told = (put: TellLength) => {
    const left = sayList(allowancesOf(state).map(({ say, length }) => `${put(state, length)} in ${say}`));
    return [sentence(`over the finished sizes I leave ${left}`), sentence(`the saw takes ${put(state, state.sawing.kerf)} at each cut, and ${put(state, state.sawing.endTrim)} is trimmed off each end of a board`)].join(' ');
  };
  return tell({ say: told(spoken), note: told(written), screen: { name: 'cutting', sizes: true } });
}

export function partRough(state: State, id: string, rough: PartRough): Response {
  const found = partsInTheRough(state).find(({ part }) => part.id === id);
  if (found === undefined) return refuse('There is no such part.');
  const more = [rough.longer, rough.wider, rough.thicker];
  if (more.some((length) => (length ?? 0) < 0 || (length ?? 0) > MOST_MORE)) return refuse('More than a foot over the rough size is not reckoned with.');
  return write([{ kind: 'part rough', part: id, rough }], { say: sentence(`${cutName(found.part)}: ${sayRough(state, rough)}`), signal: 'done', screen: { name: 'rough', part: id } });
}

function sayRough(state: State, { longer, wider, thicker, mayHideDefect }: PartRough): string {
  const sides = ([['longer', longer], ['wider', wider], ['thicker', thicker]] as const).flatMap(([how, length]) => (length === undefined ? [] : [length === 0 ? `no ${how} than the others` : `cut ${spoken(state, length)} ${how} still`]));
  const knot = mayHideDefect === undefined ? [] : [mayHideDefect ? 'a knot on one face may lie in it, and goes to its hidden face' : 'clear on both faces'];
  return sayList([...sides, ...knot]);
}
