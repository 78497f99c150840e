import { sayNumber } from '../length/say.ts';

const SECOND_MS = 1_000;
const MINUTE_MS = 60 * SECOND_MS;
const HOUR_MS = 60 * MINUTE_MS;
const DAY_MS = 24 * HOUR_MS;

/** A timer runs from one second to sixty days: longer than any rest between two sessions of one piece. */
export const SHORTEST_TIMER_MS = SECOND_MS;
export const LONGEST_TIMER_MS = 60 * DAY_MS;

/** Whether a timer may run that long: a whole number of milliseconds within the limits. */
export function isTimerDuration(ms: number): boolean {
  return Number.isSafeInteger(ms) && ms >= SHORTEST_TIMER_MS && ms <= LONGEST_TIMER_MS;
}

/**
 * A duration for the ear, its two largest units: 'one hour and five minutes', 'thirty minutes', 'ninety seconds' is
 * 'one minute and thirty seconds'. Rounded to the nearest second, minute or hour, as the smaller unit is.
 */
export function sayDuration(ms: number): string {
  const units = twoUnits(Math.abs(ms)).filter(([count]) => count > 0);
  const said = units.map(([count, unit]) => `${sayNumber(count)} ${unit}${count === 1 ? '' : 's'}`);
  return said.length === 0 ? 'zero seconds' : said.join(' and ');
}

function twoUnits(ms: number): readonly (readonly [number, string])[] {
  const steps = [[SECOND_MS, MINUTE_MS, 'minute', 'second'], [MINUTE_MS, HOUR_MS, 'hour', 'minute'], [HOUR_MS, DAY_MS, 'day', 'hour']] as const;
  for (const [index, [small, large, largeName, smallName]] of steps.entries()) {
    const next = steps[index + 1]?.[1];
    const rounded = Math.round(ms / small) * small;
    // Rounding may carry: 59 minutes 59.7 seconds is one hour.
    if (next === undefined || rounded < next) {
      return [[Math.floor(rounded / large), largeName], [(rounded % large) / small, smallName]];
    }
  }
  return [];
}

/** A duration for the eye: '0:45', '9:05', '1:05:00', '3 d 4:00:00'; whole seconds, the started one counted while time is left. */
export function writeDuration(ms: number): string {
  const seconds = Math.ceil(Math.abs(ms) / SECOND_MS);
  const [days, hours, minutes] = [Math.floor(seconds / 86_400), Math.floor(seconds / 3_600) % 24, Math.floor(seconds / 60) % 60];
  const two = (count: number) => String(count).padStart(2, '0');
  const clock = days > 0 || hours > 0 ? `${hours}:${two(minutes)}:${two(seconds % 60)}` : `${minutes}:${two(seconds % 60)}`;
  return `${ms < 0 ? '−' : ''}${days > 0 ? `${days} d ` : ''}${clock}`;
}
