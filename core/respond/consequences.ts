import type { Response } from '../bench/reply.ts';
import { absolute } from '../length/arithmetic.ts';
import type { Length } from '../length/length.ts';
import type { State } from '../journal/state.ts';
import { misfits, newMisfits, type Misfit } from '../piece/fits.ts';
import { whatMoved, type Moved } from '../piece/moved.ts';
import { noPiece, tell } from './plain.ts';
import { sayCount, sayList, saySentence, saySubject, sentence, spoken } from './saying.ts';

/** More than this many are on the screen, not in the ear. */
const MOST_SAID = 3;

/** 'one thirty-second of an inch over' / '… under', for going before 'the plan'. */
export function sayDifference(state: State, difference: Length): string {
  return `${spoken(state, absolute(difference))} ${difference < 0 ? 'under' : 'over'}`;
}

/** After a measurement: what else moved, and what no longer fits that fitted before. */
export function consequencesOf(before: State, after: State): string {
  const { piece } = after;
  if (!piece) return '';
  const moved = whatMoved(piece, before.measurements, after.measurements).filter(({ basis }) => basis === 'follows');
  const newly = newMisfits(piece, before.measurements, after.measurements);
  return [sayMoved(after, moved), ...newly.map((misfit) => sentence(sayMisfit(after, misfit)))].filter(Boolean).join(' ');
}

function sayMoved(state: State, moved: readonly Moved[]): string {
  if (moved.length === 0) return '';
  const said = moved.slice(0, MOST_SAID).map(({ size, copy, by }) => `${saySubject(state, size, copy)}, ${spoken(state, absolute(by))} ${by < 0 ? 'less' : 'more'}`);
  const rest = moved.length > MOST_SAID ? `; and ${sayCount(moved.length - MOST_SAID, 'size', 'sizes')} more` : '';
  return sentence(`Moved with it: ${said.join('; ')}${rest}`);
}

function sayMisfit(state: State, misfit: Misfit): string {
  return saySentence(state, misfit.say);
}

/** All that stands off the plan because of what was measured. */
export function tellMoved(state: State): Response {
  if (!state.piece) return noPiece();
  const moved = whatMoved(state.piece, [], state.measurements);
  const measured = moved.filter(({ basis }) => basis === 'measured');
  const follows = moved.filter(({ basis }) => basis === 'follows');
  if (moved.length === 0) return tell({ say: 'Nothing has moved. All is as planned.' });
  const made = measured.map(({ size, copy, by }) => `${saySubject(state, size, copy)}, ${sayDifference(state, by)} the plan`);
  return tell({
    say: [made.length > 0 ? sentence(`Measured: ${made.slice(0, MOST_SAID).join('; ')}`) : '', sayMoved(state, follows)].filter(Boolean).join(' '),
    note: sentence(sayList(moved.map(({ size, copy, by }) => `${saySubject(state, size, copy)} ${sayDifference(state, by)}`))),
  });
}

/** What the made parts no longer allow. */
export function tellMisfits(state: State): Response {
  if (!state.piece) return noPiece();
  const found = misfits(state.piece, state.measurements);
  if (found.length === 0) return tell({ say: 'Everything still fits.' });
  const said = found.map((misfit) => sentence(sayMisfit(state, misfit)));
  const rest = said.length > MOST_SAID ? ` And ${sayCount(said.length - MOST_SAID, 'more', 'more')}.` : '';
  return tell({ say: `${said.slice(0, MOST_SAID).join(' ')}${rest}`, note: said.join(' ') });
}
