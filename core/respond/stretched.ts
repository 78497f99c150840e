import type { Moment } from '../clock/moment.ts';
import { assertNever } from '../result.ts';
import type { Label } from '../glue/adhesive.ts';
import { sayDegrees } from '../glue/telling.ts';
import { sayNumber } from '../length/sayNumber.ts';
import type { State } from '../journal/state.ts';
import type { Operation, Step, StepTimer } from '../work/step.ts';
import { adhesiveOf, eveningOf, tonightOf } from './evening.ts';

/** 'your label', 'common practice, one point eight times for twelve degrees'. */
export function stretchBasis(state: State, key: keyof Label, now: Moment): string {
  const { basis: { [key]: basis }, label: { lowestC } } = adhesiveOf(state);
  const [found, evening] = [tonightOf(state, now), eveningOf(state, now)];
  if (!found || !evening || found.times.stretch < 1.05) return basis;
  const tenths = Math.round(found.times.stretch * 10);
  const times = `${sayNumber(Math.floor(tenths / 10))}${tenths % 10 === 0 ? '' : ` point ${sayNumber(tenths % 10)}`} times`;
  // Colder than the glue may be it is not reckoned for.
  const coldest = Math.max(lowestC, Math.min(evening.air.tempC, evening.woodC ?? evening.air.tempC, evening.glueC ?? evening.air.tempC));
  return `${basis}, ${times} for ${sayDegrees(coldest, state.settings.temperature)}`;
}

const GLUES: ReadonlySet<Operation> = new Set(['lamination glue-up', 'panel glue-up', 'glue-up', 'scrape squeeze-out']);

/** The clocks of the glue in use; by the label's own times, as at 21 °C, where the shop was not told of. */
export function glueClock(state: State, kind: 'open time' | 'clamp' | 'rest', now: Moment): { readonly durationMs: number; readonly basis: string } {
  const times = tonightOf(state, now)?.times;
  const { label, basis } = adhesiveOf(state);
  switch (kind) {
    case 'open time': return { durationMs: times?.openMs ?? label.openMinutes * 60_000, basis: basis.openMinutes };
    case 'clamp': return { durationMs: times?.clampMs ?? label.clampMinutes * 60_000, basis: stretchBasis(state, 'clampMinutes', now) };
    case 'rest': return { durationMs: times?.cureMs ?? label.fullCureHours * 3_600_000, basis: stretchBasis(state, 'fullCureHours', now) };
    default: return assertNever(kind);
  }
}

/** Below this a finish is told to dry slower than its hours, which are meant for a warm room. Common practice, no source. */
const FINISH_SLOWER_BELOW_C = 18;

/**
 * What to know of a finish in a cold shop; empty when it is warm, or was not told of. Its hours are not stretched: how much longer it takes is nowhere published for all that goes by one name.
 */
export function coldFinish(state: State, now: Moment): string {
  const evening = eveningOf(state, now);
  if (!evening || evening.air.tempC >= FINISH_SLOWER_BELOW_C) return '';
  return `at ${sayDegrees(evening.air.tempC, state.settings.temperature)} a finish dries slower, no source says by how much: try a hidden spot first`;
}

/** A clock of a step that glues, at this evening's temperature and by the maker's label; one of a finish with a warning in the cold; any other clock as it is. */
export function timerTonight(state: State, step: Step, timer: StepTimer, now: Moment): StepTimer {
  if (step.operation === 'finish') return { ...timer, basis: withCold(state, timer.basis, now) };
  if (!GLUES.has(step.operation) || timer.kind === 'break' || timer.kind === 'plain') return timer;
  return { ...timer, ...glueClock(state, timer.kind, now) };
}

/** Where the hours of a finish come from, and in the cold what they do not tell. */
export function withCold(state: State, basis: string, now: Moment): string {
  return [basis, coldFinish(state, now)].filter(Boolean).join('; ');
}
