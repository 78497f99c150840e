import { describe, expect, it } from 'vitest';
import { announcements } from '../../../core/clock/announce.ts';
import { acknowledgeTimer, addTime, holdTimer, resumeTimer, seeClock } from '../../../core/clock/change.ts';
import { marksOf } from '../../../core/clock/marks.ts';
import type { Moment } from '../../../core/clock/moment.ts';
import type { Timer } from '../../../core/clock/timer.ts';
import { at, DAY, HOUR, MINUTE, rebooted, SECOND, timer } from './clocks.ts';

const said = (timers: readonly Timer[], before: Moment, now: Moment) => announcements(timers, before, now).map(({ say }) => say);

/** Everything that is said from one moment to another when the clocks are looked at every second. */
function heard(subject: Timer, fromMs: number, toMs: number): [number, string][] {
  const all: [number, string][] = [];
  for (let ms = fromMs; ms < toMs; ms += SECOND) {
    for (const { say } of announcements([subject], at(ms), at(ms + SECOND))) all.push([ms + SECOND, say]);
  }
  return all;
}

describe('the marks of a timer', () => {
  it.each([
    ['a ninety second open time', 'open time', 90 * SECOND, ['one minute', 'due']],
    ['a five minute open time', 'open time', 5 * MINUTE, ['half', 'one minute', 'due']],
    ['a ten minute open time, whose half is its five minutes', 'open time', 10 * MINUTE, ['five minutes', 'one minute', 'due']],
    ['thirty minutes in the clamps', 'clamp', 30 * MINUTE, ['half', 'five minutes', 'one minute', 'due']],
    ['a rest of three days', 'rest', 3 * DAY, ['half', 'one day', 'due']],
    ['a minute of chopping', 'break', MINUTE, ['due']],
    ['twenty seconds', 'plain', 20 * SECOND, ['due']],
  ] as const)('for %s', (_what, kind, durationMs, names) => {
    expect(marksOf({ kind, durationMs }).map(({ name }) => name)).toEqual(names);
  });
});

describe('a timer that is looked at every second', () => {
  it('tells a clamp from its half to its end, and then less and less often', () => {
    expect(heard(timer(), 0, 2 * HOUR)).toEqual([
      [15 * MINUTE, 'leg two clamps: half time, fifteen minutes left'],
      [25 * MINUTE, 'leg two clamps: five minutes left'],
      [29 * MINUTE, 'leg two clamps: one minute left'],
      [30 * MINUTE, 'leg two clamps: time is up, thirty minutes, common practice'],
      [30 * MINUTE + 30 * SECOND, 'leg two clamps: time has been up for thirty seconds'],
      [31 * MINUTE, 'leg two clamps: time has been up for one minute'],
      [32 * MINUTE, 'leg two clamps: time has been up for two minutes'],
      [35 * MINUTE, 'leg two clamps: time has been up for five minutes'],
      [40 * MINUTE, 'leg two clamps: time has been up for ten minutes'],
      [70 * MINUTE, 'leg two clamps: time has been up for forty minutes'],
      [100 * MINUTE, 'leg two clamps: time has been up for one hour and ten minutes'],
    ]);
  });

  it('is silent once it is acknowledged, and while it is held', () => {
    expect(heard(acknowledgeTimer(timer(), at(31 * MINUTE)), 31 * MINUTE, 2 * HOUR)).toEqual([]);
    expect(heard(holdTimer(timer(), at(20 * MINUTE)), 20 * MINUTE, 2 * HOUR)).toEqual([]);
  });

  it('does not repeat a mark that it told before it was held', () => {
    const again = resumeTimer(holdTimer(timer(), at(25 * MINUTE + 100)), at(50 * MINUTE));
    expect(heard(again, 50 * MINUTE - 2 * SECOND, 53 * MINUTE)).toEqual([]);
  });

  it('a break calls to the strop, and again after each acknowledgement', () => {
    const strop = timer({ kind: 'break', name: 'look at the edge', durationMs: MINUTE, basis: 'your setting' });
    expect(heard(strop, 0, 62 * SECOND)).toEqual([[MINUTE, 'time to stop: look at the edge']]);
    expect(heard(acknowledgeTimer(strop, at(75 * SECOND)), 75 * SECOND, 140 * SECOND)).toEqual([[135 * SECOND, 'time to stop: look at the edge']]);
  });

  it('tells its new marks when time was added, once', () => {
    const longer = addTime(timer(), 5 * MINUTE, at(29 * MINUTE + 30 * SECOND));
    expect(heard(longer, 29 * MINUTE + 30 * SECOND, 35 * MINUTE).map(([ms]) => ms)).toEqual([30 * MINUTE, 34 * MINUTE, 35 * MINUTE]);
  });

  it('is up at once when all its time is taken', () => {
    const none = addTime(timer(), -HOUR, at(10 * MINUTE + 400));
    expect(said([none], at(10 * MINUTE), at(10 * MINUTE + SECOND))[0]).toMatch(/time is up/);
  });
});

describe('several timers', () => {
  it('tell the most urgent first: glue before clamps, clamps before a rest, due before marks', () => {
    const rest = timer({ kind: 'rest', name: 'rail rest', durationMs: 2 * HOUR }, at(-110 * MINUTE), 1);
    const clamps = timer({ name: 'leg one clamps', durationMs: 10 * MINUTE }, at(0), 2);
    const open = timer({ kind: 'open time', name: 'open time', durationMs: 10 * MINUTE }, at(0), 3);
    const other = timer({ name: 'leg two clamps', durationMs: 20 * MINUTE }, at(0), 4);
    const told = announcements([rest, other, clamps, open], at(10 * MINUTE - SECOND), at(10 * MINUTE));
    expect(told.map(({ timers }) => timers)).toEqual([[3], [2], [1], [4]]);
    expect(told.map(({ signal }) => signal)).toEqual(['due', 'due', 'due', 'mark']);
  });
});

describe('after a gap', () => {
  it('in which the page was away, what was missed becomes one sentence', () => {
    expect(said([timer()], at(10 * MINUTE), at(42 * MINUTE))).toEqual(['leg two clamps: went due twelve minutes ago, while the bench was not looking']);
    expect(said([timer()], at(10 * MINUTE), at(27 * MINUTE))).toEqual(['leg two clamps: three minutes left']);
  });

  it('in which the power was off and the wall clock is trusted, it says since when and by what', () => {
    expect(said([seeClock(timer(), at(14 * MINUTE))], at(14 * MINUTE), rebooted(42 * MINUTE, 40 * SECOND)))
      .toEqual(['leg two clamps: went due twelve minutes ago, while the power was off, by the wall clock']);
  });

  it('of unknown length, it says so once for all timers, with what is certain', () => {
    const clamps = seeClock(timer(), at(14 * MINUTE));
    const open = seeClock(timer({ kind: 'open time', name: 'open time', durationMs: 20 * MINUTE }, at(0), 2), at(14 * MINUTE));
    const told = announcements([clamps, open], at(14 * MINUTE), rebooted(0, 40 * SECOND, { wallTrusted: false }));
    expect(told).toHaveLength(1);
    expect(told[0]).toMatchObject({ timers: [1, 2], mark: 'in doubt', signal: 'due' });
    expect(told[0]?.say).toBe('I do not know how long the power was off. leg two clamps: at least fourteen minutes of thirty minutes have passed; leave them on and count again if in doubt. open time: at least fourteen minutes of twenty minutes have passed; take it as over');
  });

  it('says the same whether or not the restart is already in the journal', () => {
    const seen = seeClock(timer(), at(14 * MINUTE));
    const now = rebooted(0, 40 * SECOND, { wallTrusted: false });
    expect(said([seeClock(seen, now)], at(14 * MINUTE), now)).toEqual(said([seen], at(14 * MINUTE), now));
    const trusted = rebooted(42 * MINUTE, 40 * SECOND);
    expect(said([seeClock(seen, trusted)], at(14 * MINUTE), trusted)).toEqual(said([seen], at(14 * MINUTE), trusted));
  });

  it('counts on with "at most" while the length of the gap is unknown, and calls when it is surely due', () => {
    const off = { wallTrusted: false };
    const back = seeClock(seeClock(timer(), at(14 * MINUTE)), rebooted(0, 0, off));
    expect(said([back], rebooted(0, 11 * MINUTE - SECOND, off), rebooted(0, 11 * MINUTE, off))).toEqual(['leg two clamps: at most five minutes left']);
    expect(said([back], rebooted(0, 16 * MINUTE - SECOND, off), rebooted(0, 16 * MINUTE, off))).toEqual(['leg two clamps: time is up, thirty minutes, common practice']);
  });

  it('does not repeat what was told before the power went', () => {
    const due = seeClock(timer(), at(34 * MINUTE));
    expect(said([due], at(34 * MINUTE), rebooted(34 * MINUTE + 20 * SECOND, 5 * SECOND))).toEqual([]);
  });
});
