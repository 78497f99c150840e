import { describe, expect, it } from 'vitest';
import { acknowledgeTimer, addTime, doubtWall, holdTimer, resumeTimer, seeClock, startTimer, wasCalled } from '../../../core/clock/change.ts';
import { readTimer } from '../../../core/clock/reading.ts';
import { at, DAY, HOUR, MINUTE, rebooted, SECOND, timer } from './clocks.ts';

describe('a timer within one run of the machine', () => {
  it('counts by the monotonic clock to the millisecond', () => {
    expect(readTimer(timer(), at(12 * MINUTE + 345))).toEqual({ elapsedMs: 12 * MINUTE + 345, leftMs: 18 * MINUTE - 345, overdueMs: 0, due: false, certainty: 'exact' });
  });

  it('is due on the millisecond, and then tells how long ago', () => {
    expect(readTimer(timer(), at(30 * MINUTE - 1)).due).toBe(false);
    expect(readTimer(timer(), at(30 * MINUTE))).toMatchObject({ due: true, leftMs: 0, overdueMs: 0 });
    expect(readTimer(timer(), at(34 * MINUTE))).toMatchObject({ due: true, leftMs: 0, overdueMs: 4 * MINUTE });
  });

  it.each([
    ['an hour back, as when summer time is undone by hand', -HOUR],
    ['an hour on', HOUR],
    ['back to 1970, as without a battery', -Date.UTC(2026, 2, 7, 12)],
  ])('does not care when the wall clock is set %s', (_what, stepMs) => {
    const now = at(10 * MINUTE);
    expect(readTimer(timer(), { ...now, wallMs: now.wallMs + stepMs })).toMatchObject({ leftMs: 20 * MINUTE, certainty: 'exact' });
  });

  it('runs over midnight and for days: a rest of three days', () => {
    const rest = timer({ kind: 'rest', name: 'long rail rest', durationMs: 3 * DAY });
    expect(readTimer(rest, at(2 * DAY + 5 * HOUR))).toMatchObject({ leftMs: 19 * HOUR, certainty: 'exact' });
  });

  it('stands still while it is held and runs on with what was left', () => {
    const held = holdTimer(timer(), at(10 * MINUTE));
    expect(readTimer(held, at(3 * HOUR))).toMatchObject({ leftMs: 20 * MINUTE, due: false, certainty: 'exact' });
    expect(readTimer(resumeTimer(held, at(3 * HOUR)), at(3 * HOUR + 5 * MINUTE))).toMatchObject({ leftMs: 15 * MINUTE, certainty: 'exact' });
  });

  it('takes more time and gives it back, also while held', () => {
    const longer = addTime(timer(), 5 * MINUTE, at(10 * MINUTE));
    expect(readTimer(longer, at(10 * MINUTE)).leftMs).toBe(25 * MINUTE);
    expect(readTimer(addTime(longer, -15 * MINUTE, at(12 * MINUTE)), at(12 * MINUTE)).leftMs).toBe(8 * MINUTE);
    const held = addTime(holdTimer(timer(), at(10 * MINUTE)), 5 * MINUTE, at(20 * MINUTE));
    expect(readTimer(held, at(20 * MINUTE)).leftMs).toBe(25 * MINUTE);
    expect(readTimer(resumeTimer(held, at(21 * MINUTE)), at(26 * MINUTE)).leftMs).toBe(20 * MINUTE);
  });

  it('when due and given five minutes more, runs five minutes from then', () => {
    const heard = acknowledgeTimer(timer(), at(33 * MINUTE));
    const more = addTime(heard, 5 * MINUTE, at(33 * MINUTE));
    expect(more.acknowledgedAt).toBeUndefined();
    expect(readTimer(more, at(34 * MINUTE))).toMatchObject({ due: false, leftMs: 4 * MINUTE });
  });

  it('from which more is taken than is left is due now, not in the past', () => {
    expect(readTimer(addTime(timer(), -HOUR, at(10 * MINUTE)), at(11 * MINUTE))).toMatchObject({ due: true, overdueMs: MINUTE });
  });

  it('a break begins again when it is acknowledged, and only when it is due', () => {
    const strop = timer({ kind: 'break', name: 'edge', durationMs: MINUTE });
    expect(acknowledgeTimer(strop, at(30 * SECOND))).toBe(strop);
    const again = acknowledgeTimer(strop, at(95 * SECOND));
    expect(again.acknowledgedAt).toBeUndefined();
    expect(readTimer(again, at(100 * SECOND))).toMatchObject({ due: false, leftMs: 55 * SECOND, certainty: 'exact' });
  });

  it('takes the next free name when two are called the same', () => {
    const first = timer({ name: 'clamps' });
    const second = startTimer({ kind: 'clamp', name: 'clamps', durationMs: MINUTE, basis: '' }, 2, at(0), [first]);
    const third = startTimer({ kind: 'clamp', name: 'clamps', durationMs: MINUTE, basis: '' }, 3, at(0), [first, second]);
    expect([second.name, third.name]).toEqual(['clamps two', 'clamps three']);
    expect([first, second, third].every((each) => wasCalled(each, 'clamps'))).toBe(true);
  });
});

describe('a timer over a power cut', () => {
  it('goes by the wall clock when that was trusted before and after', () => {
    expect(readTimer(timer(), rebooted(22 * MINUTE, 40 * SECOND))).toMatchObject({ leftMs: 8 * MINUTE, certainty: 'wall clock' });
  });

  it.each([
    ['was not trusted before', { wallTrusted: false }, {}],
    ['is not trusted after', {}, { wallTrusted: false }],
    ['went back to 1970 and claims to be right', {}, { wallMs: 0 }],
  ])('is unknown when the wall clock %s', (_what, before, after) => {
    const seen = seeClock(timer({}, at(0, before)), at(14 * MINUTE, before));
    expect(readTimer(seen, rebooted(22 * MINUTE, 40 * SECOND, after))).toMatchObject({ certainty: 'unknown', atLeastElapsedMs: 14 * MINUTE, leftMs: 16 * MINUTE, due: false });
  });

  it('counts on from there: at least what was seen before and after', () => {
    const back = seeClock(seeClock(timer(), at(14 * MINUTE)), rebooted(20 * MINUTE, 40 * SECOND, { wallTrusted: false }));
    expect(readTimer(back, rebooted(29 * MINUTE, 40 * SECOND + 9 * MINUTE, { wallTrusted: false }))).toMatchObject({ certainty: 'unknown', atLeastElapsedMs: 23 * MINUTE });
  });

  it('is surely due once what was seen of it is enough', () => {
    const back = seeClock(seeClock(timer(), at(14 * MINUTE)), rebooted(20 * MINUTE, 0, { wallTrusted: false }));
    expect(readTimer(back, rebooted(36 * MINUTE, 16 * MINUTE, { wallTrusted: false }))).toMatchObject({ certainty: 'unknown', due: true });
  });

  it('counts nothing twice when readings come out of order', () => {
    const seen = seeClock(seeClock(timer(), at(14 * MINUTE)), at(10 * MINUTE));
    expect(readTimer(seen, at(20 * MINUTE))).toMatchObject({ certainty: 'exact', elapsedMs: 20 * MINUTE });
  });

  it('knows the whole again when the wall clock is set right later', () => {
    const back = seeClock(seeClock(timer(), at(14 * MINUTE)), rebooted(0, 40 * SECOND, { wallTrusted: false, wallMs: 0 }));
    expect(readTimer(back, rebooted(25 * MINUTE, 3 * MINUTE))).toMatchObject({ certainty: 'wall clock', leftMs: 5 * MINUTE });
  });

  it('stays unknown for good when it was held while unknown', () => {
    const back = seeClock(seeClock(timer(), at(14 * MINUTE)), rebooted(20 * MINUTE, 0, { wallTrusted: false }));
    const held = holdTimer(back, rebooted(22 * MINUTE, 2 * MINUTE, { wallTrusted: false }));
    expect(readTimer(held, rebooted(HOUR, HOUR))).toMatchObject({ certainty: 'unknown', leftMs: 14 * MINUTE });
    expect(readTimer(resumeTimer(held, rebooted(HOUR, HOUR)), rebooted(HOUR + MINUTE, HOUR + MINUTE))).toMatchObject({ certainty: 'unknown', leftMs: 13 * MINUTE });
  });

  it('that was held through the cut has lost nothing', () => {
    const held = holdTimer(timer(), at(10 * MINUTE));
    expect(readTimer(held, rebooted(DAY, MINUTE, { wallTrusted: false }))).toMatchObject({ leftMs: 20 * MINUTE, certainty: 'exact' });
  });

  it('no longer believes a wall clock that turns out to be wrong', () => {
    const back = seeClock(seeClock(timer(), at(14 * MINUTE)), rebooted(22 * MINUTE, 0));
    expect(readTimer(back, rebooted(23 * MINUTE, MINUTE))).toMatchObject({ certainty: 'wall clock', leftMs: 7 * MINUTE });
    const jumped = rebooted(23 * MINUTE + HOUR, MINUTE);
    expect(readTimer(doubtWall(back, jumped), jumped)).toMatchObject({ certainty: 'unknown', atLeastElapsedMs: 15 * MINUTE });
  });

  it('started after the wall clock jumped stays exact within its run', () => {
    const jumped = at(14 * MINUTE + HOUR, { monotonicMs: at(14 * MINUTE).monotonicMs });
    expect(readTimer(doubtWall(timer(), jumped), { ...jumped, monotonicMs: at(20 * MINUTE).monotonicMs })).toMatchObject({ certainty: 'exact', leftMs: 10 * MINUTE });
  });

  it('is unknown when the trusted wall clock says less than the machine itself saw', () => {
    const back = seeClock(seeClock(timer(), at(14 * MINUTE)), rebooted(14 * MINUTE, 0, { wallTrusted: false }));
    expect(readTimer(back, rebooted(15 * MINUTE, 8 * MINUTE))).toMatchObject({ certainty: 'unknown', atLeastElapsedMs: 22 * MINUTE });
  });
});
