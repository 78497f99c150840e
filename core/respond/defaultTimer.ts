import type { TimerKind } from '../clock/timer.ts';
import type { State } from '../journal/state.ts';
import { glueTimes } from '../work/figures.ts';

/** How long a clock of that kind runs when no time is said, and where the figure comes from. */
export function defaultTimer(state: State, kind: TimerKind): { durationMs?: number; basis: string } {
  switch (kind) {
    case 'break':
      return { durationMs: state.settings.breakSeconds * 1000, basis: 'your setting' };
    case 'open time':
    case 'clamp': {
      if (!state.piece) return { basis: '' };
      const times = glueTimes(state.piece.file.adhesive);
      return kind === 'clamp' ? times.clamp : times.open;
    }
    case 'rest':
    case 'plain':
      return { basis: '' };
  }
}
