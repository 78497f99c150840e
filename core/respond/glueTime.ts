import type { Response } from '../bench/reply.ts';
import { sayDuration } from '../clock/sayDuration.ts';
import type { Moment } from '../clock/moment.ts';
import { LABEL_C } from '../glue/stretch.ts';
import { sayDegrees, sayReasons, sayRemedy, sayVerdict } from '../glue/telling.ts';
import type { Tonight } from '../glue/tonight.ts';
import type { State } from '../journal/state.ts';
import { adhesiveOf, tonightOf } from './evening.ts';
import { tell } from './plain.ts';
import { sentence } from './saying.ts';
import { glueClock } from './stretched.ts';

const AIR = { name: 'air' } as const;

/** How long the clamps stay on, or how long the glue stays open: the very clock that the step would start, and what its time stands on. */
export function tellGlueTime(state: State, which: 'clamp' | 'open time', now: Moment): Response {
  const found = tonightOf(state, now);
  const { durationMs, basis } = glueClock(state, which, now);
  const time = sentence(`${adhesiveOf(state).glue.name}: ${which === 'clamp' ? 'the clamps stay on' : 'it stays open'} ${sayDuration(durationMs)}, by ${basis}`);
  // What to say stands on that screen already.
  if (!found) return tell({ say: [time, unknownCold(state, which)].join(' '), screen: AIR, note: '' });
  if (found.verdict === 'do not') return tell({ say: [...notTonight(state, found), `Then ${time.charAt(0).toLowerCase()}${time.slice(1)}`].join(' '), screen: AIR });
  const later = which === 'clamp' ? `Safe to work in ${sayDuration(found.times.workMs)}, fully cured in ${sayDuration(found.times.cureMs)}.` : '';
  return tell({ say: [time, later].filter(Boolean).join(' '), screen: AIR });
}

/** Nothing is known of the shop: the label's time is for a warm one. */
function unknownCold(state: State, which: 'clamp' | 'open time'): string {
  const warm = sayDegrees(LABEL_C, state.settings.temperature);
  const otherwise = which === 'clamp' ? 'colder, they stay on longer' : 'warmer, it is shorter';
  return `That is for ${warm}; ${otherwise}. Tell me the degrees of the shop, and I reckon with them.`;
}

function notTonight(state: State, found: Tonight): readonly string[] {
  const scale = state.settings.temperature;
  return [sayVerdict(found), ...sayReasons(found.reasons, scale).slice(0, 1), sayRemedy(found, scale)].filter(Boolean).map(sentence);
}
