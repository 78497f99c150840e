import type { Moment } from '../clock/moment.ts';
import type { Label } from '../glue/adhesive.ts';
import { sayDegrees } from '../glue/telling.ts';
import { sayNumber } from '../length/sayNumber.ts';
import type { State } from '../journal/state.ts';
import type { Operation, Step, StepTimer } from '../work/step.ts';
import { adhesiveOf, eveningOf, tonightOf } from './evening.ts';

/** 'your label', 'common practice, one point eight times for twelve degrees'. */
export function stretchBasis(state: State, key: keyof Label, now: Moment): string {
  const basis = adhesiveOf(state).basis[key];
  const [found, evening] = [tonightOf(state, now), eveningOf(state, now)];
  if (!found || !evening || found.times.stretch < 1.05) return basis;
  const tenths = Math.round(found.times.stretch * 10);
  const times = `${sayNumber(Math.floor(tenths / 10))}${tenths % 10 === 0 ? '' : ` point ${sayNumber(tenths % 10)}`} times`;
  const coldest = Math.min(evening.air.tempC, evening.woodC ?? evening.air.tempC, evening.glueC ?? evening.air.tempC);
  return `${basis}, ${times} for ${sayDegrees(coldest, state.settings.temperature)}`;
}

const GLUES: ReadonlySet<Operation> = new Set(['lamination glue-up', 'panel glue-up', 'glue-up', 'scrape squeeze-out']);

/** A clock of a step that glues, at this evening's temperature and by the maker's label; any other clock as it is. */
export function timerTonight(state: State, step: Step, timer: StepTimer, now: Moment): StepTimer {
  if (!GLUES.has(step.operation)) return timer;
  const times = tonightOf(state, now)?.times;
  const { label } = adhesiveOf(state);
  switch (timer.kind) {
    case 'open time': return { ...timer, durationMs: times?.openMs ?? label.openMinutes * 60_000, basis: adhesiveOf(state).basis.openMinutes };
    case 'clamp': return { ...timer, durationMs: times?.clampMs ?? label.clampMinutes * 60_000, basis: stretchBasis(state, 'clampMinutes', now) };
    case 'rest': return { ...timer, durationMs: times?.cureMs ?? label.fullCureHours * 3_600_000, basis: stretchBasis(state, 'fullCureHours', now) };
    case 'break': case 'plain': return timer;
  }
}
