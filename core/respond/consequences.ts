import type { Response } from '../bench/reply.ts';
import { absolute } from '../length/arithmetic.ts';
import type { Length } from '../length/length.ts';
import type { State } from '../journal/state.ts';
import { describeSize } from '../piece/describe.ts';
import { sizeOf } from '../piece/evaluate.ts';
import { misfits, newMisfits } from '../piece/fits.ts';
import { whatMoved, type Moved } from '../piece/moved.ts';
import { asMade, type AsMade } from '../work/asMade.ts';
import { noPiece, tell } from './plain.ts';
import { sayCount, sayList, saySentence, saySubject, sentence, spoken, written, type TellLength } from './saying.ts';
import { sizesOf, stepsOf } from './views.ts';

/** More than this many are on the screen, not in the ear. */
const MOST_SAID = 3;

/** 'one thirty-second of an inch over' / '… under', for going before 'the plan'. */
export function sayDifference(state: State, difference: Length, tellLength: TellLength = spoken): string {
  return `${tellLength(state, absolute(difference))} ${difference < 0 ? 'under' : 'over'}`;
}

/** After a measurement: what else moved, what is to be cut differently for it, what is cut already and now off, and what no longer fits that fitted before. Found once, to be told to the ear and to the eye. */
export function consequencesOf(before: State, after: State): (tellLength: TellLength) => string {
  const { piece } = after;
  if (!piece) return () => '';
  const moves = sortedMoves(after, before.measurements);
  const newly = newMisfits(piece, before.measurements, after.measurements, after.places);
  const rest = newly.length > MOST_SAID ? sentence(`and ${sayCount(newly.length - MOST_SAID, 'thing more does', 'things more do')} not fit`) : '';
  return (tellLength) => [sayAsMade(after, moves, tellLength), ...newly.slice(0, MOST_SAID).map(({ say }) => sentence(saySentence(after, say, tellLength))), rest].filter(Boolean).join(' ');
}

/** What follows from measurements since those, by whether it is cut. */
export function sortedMoves(state: State, since: State['measurements']): AsMade {
  if (!state.piece) return { toCut: [], cut: [], named: [] };
  const moved = whatMoved(state.piece, since, state.measurements).filter(({ basis }) => basis === 'follows');
  return asMade(state.piece, stepsOf(state), state.done, moved);
}

function sayAsMade(state: State, { toCut, cut, named }: AsMade, tellLength: TellLength): string {
  const said = (moves: readonly Moved[], say: (move: Moved) => string): string =>
    `${moves.slice(0, MOST_SAID).map(say).join('; ')}${moves.length > MOST_SAID ? `; and ${sayCount(moves.length - MOST_SAID, 'size', 'sizes')} more` : ''}`;
  return [
    toCut.length === 0 ? '' : sentence(`Not cut yet, and now different: ${said(toCut, (move) => sayNewSize(state, move, tellLength))}`),
    cut.length === 0 ? '' : sentence(`Cut already, and now off: ${said(cut, (move) => `${saySubject(state, move.size, move.copy)}, ${sayOff(state, move, tellLength)}`)}`),
    named.length === 0 || toCut.length + cut.length > 0 ? '' : sentence(`Moved with it: ${said(named, (move) => sayNewSize(state, move, tellLength))}`),
  ].filter(Boolean).join(' ');
}

/** 'top, length, sixty and one eighth inches instead of sixty, end to end' */
function sayNewSize(state: State, { size, copy, from, to }: Moved, tellLength: TellLength): string {
  const reference = state.piece ? describeSize(state.piece, size)?.from : undefined;
  return `${saySubject(state, size, copy)}, ${tellLength(state, to)} instead of ${tellLength(state, from)}${reference === undefined ? '' : `, ${reference}`}`;
}

/** What is cut to `from` should be `to`. */
function sayOff(state: State, { by }: Moved, tellLength: TellLength): string {
  return `${tellLength(state, absolute(by))} too ${by > 0 ? 'small' : 'large'}`;
}

/** All that stands off the plan because of what was measured, what is to be cut differently, and which critical sizes hold all the same. */
export function tellMoved(state: State): Response {
  if (!state.piece) return noPiece();
  const moved = whatMoved(state.piece, [], state.measurements);
  const measured = moved.filter(({ basis }) => basis === 'measured');
  if (moved.length === 0) return tell({ say: 'Nothing has moved. All is as planned.' });
  const made = measured.map(({ size, copy, by }) => `${saySubject(state, size, copy)}, ${sayDifference(state, by)} the plan`);
  return tell({
    say: [made.length > 0 ? sentence(`Measured: ${made.slice(0, MOST_SAID).join('; ')}`) : '', sayAsMade(state, sortedMoves(state, []), spoken), sayHeld(state)].filter(Boolean).join(' '),
    screen: { name: 'moved' },
  });
}

/** 'Inside length and inside width hold.' Only the sizes that everything is measured from: parameters that are critical. */
export function sayHeld(state: State): string {
  const { piece } = state;
  const sizes = sizesOf(state);
  if (!piece || !sizes) return '';
  const held = piece.graph.nodes.filter(({ name, critical, owner }) => {
    const value = sizeOf(sizes, name);
    return critical && owner.kind === 'parameter' && value !== undefined && value.length === value.planned;
  });
  return held.length === 0 ? '' : sentence(`${sayList(held.map(({ name }) => saySubject(state, name)))} ${held.length === 1 ? 'holds' : 'hold'}`);
}

/** What the made parts no longer allow. */
export function tellMisfits(state: State): Response {
  if (!state.piece) return noPiece();
  const found = misfits(state.piece, state.measurements, state.places);
  if (found.length === 0) return tell({ say: 'Everything still fits.' });
  const told = (tellLength: TellLength) => found.map(({ say }) => sentence(saySentence(state, say, tellLength)));
  const said = told(spoken);
  const rest = said.length > MOST_SAID ? ` And ${sayCount(said.length - MOST_SAID, 'more', 'more')}.` : '';
  return tell({ say: `${said.slice(0, MOST_SAID).join(' ')}${rest}`, note: told(written).join(' ') });
}
