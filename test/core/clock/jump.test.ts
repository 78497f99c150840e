import { describe, expect, it } from 'vitest';
import { clockFault, sayClockFault } from '../../../core/clock/jump.ts';
import { isTimerDuration, sayDuration, writeDuration } from '../../../core/clock/sayDuration.ts';
import { at, DAY, HOUR, MINUTE, NOON, rebooted, SECOND } from './clocks.ts';

describe('a clock that jumped is noticed', () => {
  const later = at(5 * SECOND);
  it.each([
    ['set back an hour', { ...later, wallMs: later.wallMs - HOUR }, { kind: 'backwards', byMs: HOUR }, 'The wall clock was set back by one hour.'],
    ['set on by three days', { ...later, wallMs: later.wallMs + 3 * DAY }, { kind: 'jumped forward', byMs: 3 * DAY }, 'The wall clock was set on by three days.'],
    ['fallen to 1970', { ...later, wallMs: 5 * SECOND }, { kind: 'backwards', byMs: NOON }, null],
    ['not looked at for two minutes', at(2 * MINUTE), { kind: 'gap', ms: 2 * MINUTE }, 'The bench did not look at the clocks for two minutes.'],
    ['restarted with a clock that is right', rebooted(10 * MINUTE, 0), { kind: 'restarted', offMs: 10 * MINUTE }, 'The bench was restarted, ten minutes after I last looked.'],
    ['restarted without one', rebooted(10 * MINUTE, 0, { wallTrusted: false }), { kind: 'restarted' }, 'The bench was restarted; for how long the power was off I do not know.'],
  ])('%s', (_what, now, fault, told) => {
    const found = clockFault(at(0), now);
    expect(found).toEqual(fault);
    if (found && told !== null) expect(sayClockFault(found)).toBe(told);
  });

  it('but not an ordinary heartbeat, nor one slewed by five hundred parts in a million', () => {
    expect(clockFault(at(0), later)).toBeNull();
    const hour = at(HOUR);
    expect(clockFault(at(0), { ...hour, wallMs: hour.wallMs + HOUR * 500e-6 })).toEqual({ kind: 'gap', ms: HOUR });
  });
});

describe('a duration', () => {
  it.each([
    [0, 'zero seconds', '0:00'],
    [400, 'zero seconds', '0:01'],
    [SECOND, 'one second', '0:01'],
    [90 * SECOND, 'one minute and thirty seconds', '1:30'],
    [30 * MINUTE, 'thirty minutes', '30:00'],
    [59 * MINUTE + 59_700, 'one hour', '1:00:00'],
    [HOUR + 5 * MINUTE, 'one hour and five minutes', '1:05:00'],
    [23 * HOUR + 59 * MINUTE + 40 * SECOND, 'one day', '23:59:40'],
    [3 * DAY, 'three days', '3 d 0:00:00'],
    [DAY + 4 * HOUR, 'one day and four hours', '1 d 4:00:00'],
    [60 * DAY, 'sixty days', '60 d 0:00:00'],
    [-5 * MINUTE, 'five minutes', '−5:00'],
  ])('of %i ms is said "%s" and written %s', (ms, say, write) => {
    expect([sayDuration(ms), writeDuration(ms)]).toEqual([say, write]);
  });

  it('of a timer is one second to sixty days, whole milliseconds', () => {
    expect([SECOND, 60 * DAY].every(isTimerDuration)).toBe(true);
    expect([0, -1, 999, 60 * DAY + 1, 1000.5, NaN, Infinity].some(isTimerDuration)).toBe(false);
  });
});
