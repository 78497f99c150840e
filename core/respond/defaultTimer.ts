import type { Moment } from '../clock/moment.ts';
import type { TimerKind } from '../clock/timer.ts';
import type { State } from '../journal/state.ts';
import { glueClock } from './stretched.ts';

/** How long a clock of that kind runs when no time is said, and where the figure comes from: a glue's by the maker's label, at this evening's temperature. */
export function defaultTimer(state: State, kind: TimerKind, now: Moment): { durationMs?: number; basis: string } {
  switch (kind) {
    case 'break':
      return { durationMs: state.settings.breakSeconds * 1000, basis: 'your setting' };
    case 'open time':
    case 'clamp':
      return state.piece ? glueClock(state, kind, now) : { basis: '' };
    case 'rest':
    case 'plain':
      return { basis: '' };
  }
}
