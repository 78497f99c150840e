import { absolute } from '../length/arithmetic.ts';
import { nanometres, NANOMETRES_PER_INCH, type Length } from '../length/length.ts';

/** What was seen of a part that rests after it was ripped or resawn. */
export interface RestReading {
  /** Hours since the first reading. */
  readonly hours: number;
  readonly bow?: Length;
  readonly wind?: Length;
  readonly grams?: number;
}

/** Shape that changes no more than this in a day stands still. Common practice, no source: what a straightedge shows. */
export const STILL_SHAPE = nanometres(NANOMETRES_PER_INCH / 64);
/** Part of the weight that may still change in a day: 0.3 percent, a third of a point of moisture. Common practice, no source. */
export const STILL_WEIGHT = 0.003;
const DAY_HOURS = 24;

export type RestVerdict =
  | { readonly verdict: 'too early'; readonly because: 'no reading' | 'one reading' | 'under a day' | 'not the same thing twice' }
  | { readonly verdict: 'settled' | 'still moving'; readonly changes: readonly RestChange[]; readonly hours: number };

export interface RestChange {
  readonly what: 'bow' | 'wind' | 'weight';
  readonly moving: boolean;
  /** Of bow and wind; of weight as a part of it. Negative when it went down. */
  readonly by: Length | number;
}

/**
 * Whether it has come to rest, by the last reading and the latest one that is at least a day older. Stress shows at once as the saw goes through; what is
 * waited for is the moisture of the new faces. No standard time is published: the readings rule.
 */
export function restVerdict(readings: readonly RestReading[]): RestVerdict {
  const last = readings.at(-1);
  if (!last) return { verdict: 'too early', because: 'no reading' };
  if (readings.length === 1) return { verdict: 'too early', because: 'one reading' };
  const before = readings.findLast(({ hours }) => last.hours - hours >= DAY_HOURS);
  if (!before) return { verdict: 'too early', because: 'under a day' };
  const hours = last.hours - before.hours;
  const changes = changesBetween(before, last, hours / DAY_HOURS);
  if (changes.length === 0) return { verdict: 'too early', because: 'not the same thing twice' };
  return { verdict: changes.some(({ moving }) => moving) ? 'still moving' : 'settled', changes, hours };
}

function changesBetween(before: RestReading, last: RestReading, days: number): readonly RestChange[] {
  const shape = (['bow', 'wind'] as const).flatMap((what): RestChange[] => {
    const [was, is] = [before[what], last[what]];
    if (was === undefined || is === undefined) return [];
    const by = nanometres(is - was);
    return [{ what, by, moving: absolute(by) > STILL_SHAPE * days }];
  });
  if (before.grams === undefined || last.grams === undefined || before.grams === 0) return shape;
  const by = last.grams / before.grams - 1;
  return [...shape, { what: 'weight', by, moving: Math.abs(by) > STILL_WEIGHT * days }];
}
