import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import * as fc from 'fast-check';
import { Deafness, LONGEST_HOLD_MS, TAIL_MS } from '../../../kiosk/ear/deafness.ts';

beforeEach(() => { vi.useFakeTimers(); });
afterEach(() => { vi.useRealTimers(); });

function watched(): { deafness: Deafness; changes: boolean[] } {
  const changes: boolean[] = [];
  return { deafness: new Deafness((deaf) => changes.push(deaf)), changes };
}

describe('the ear is deaf while the mouth speaks', () => {
  it('hears again a moment after, not before', () => {
    const { deafness, changes } = watched();
    const release = deafness.deafen();
    release();
    vi.advanceTimersByTime(TAIL_MS - 1);
    expect(deafness.deaf).toBe(true);
    vi.advanceTimersByTime(1);
    expect(deafness.deaf).toBe(false);
    expect(changes).toEqual([true, false]);
  });

  it('stays deaf while a signal inside the speech ends', () => {
    const { deafness } = watched();
    const speech = deafness.deafen();
    deafness.deafen()();
    vi.advanceTimersByTime(10 * TAIL_MS);
    expect(deafness.deaf).toBe(true);
    speech();
    vi.advanceTimersByTime(TAIL_MS);
    expect(deafness.deaf).toBe(false);
  });

  it('does not wake between two sentences', () => {
    const { deafness, changes } = watched();
    deafness.deafen()();
    vi.advanceTimersByTime(TAIL_MS / 2);
    const second = deafness.deafen();
    vi.advanceTimersByTime(TAIL_MS);
    expect(deafness.deaf).toBe(true);
    second();
    vi.advanceTimersByTime(TAIL_MS);
    expect(changes).toEqual([true, false]);
  });

  it('is deaf exactly while somebody holds it, however often each lets go', () => {
    fc.assert(fc.property(fc.array(fc.oneof(fc.constant('hold' as const), fc.nat(9)), { maxLength: 40 }), (acts) => {
      const { deafness, changes } = watched();
      const releases: (() => void)[] = [];
      const held = new Set<number>();
      for (const act of acts) {
        if (act === 'hold') {
          held.add(releases.length);
          releases.push(deafness.deafen());
        } else {
          releases[act]?.();
          held.delete(act);
        }
        vi.advanceTimersByTime(TAIL_MS);
        expect(deafness.deaf).toBe(held.size > 0);
      }
      changes.forEach((deaf, at) => expect(deaf).toBe(at % 2 === 0));
    }));
  });

  it('waits longer for a loudspeaker that lags behind, and believes no lag of minutes', () => {
    const { deafness } = watched();
    deafness.deafen()(250);
    vi.advanceTimersByTime(TAIL_MS + 249);
    expect(deafness.deaf).toBe(true);
    vi.advanceTimersByTime(1);
    expect(deafness.deaf).toBe(false);
    deafness.deafen()(600_000);
    vi.advanceTimersByTime(TAIL_MS + 2_000);
    expect(deafness.deaf).toBe(false);
    deafness.deafen()(NaN);
    vi.advanceTimersByTime(TAIL_MS);
    expect(deafness.deaf).toBe(false);
  });

  it('keeps the tail of a longer sound when a shorter one ends after it', () => {
    const { deafness } = watched();
    const lagging = deafness.deafen();
    const signal = deafness.deafen();
    lagging(1_000);
    signal();
    vi.advanceTimersByTime(TAIL_MS + 999);
    expect(deafness.deaf).toBe(true);
    vi.advanceTimersByTime(1);
    expect(deafness.deaf).toBe(false);
  });

  it('does not last for ever when nobody lets go', () => {
    const { deafness, changes } = watched();
    deafness.deafen();
    vi.advanceTimersByTime(LONGEST_HOLD_MS + TAIL_MS);
    expect(deafness.deaf).toBe(false);
    expect(changes).toEqual([true, false]);
  });

  it('is held by nobody when what is told of it fails', () => {
    const deafness = new Deafness((deaf) => { if (deaf) throw new Error('the screen is gone'); });
    expect(() => deafness.deafen()).toThrow('the screen is gone');
    vi.advanceTimersByTime(TAIL_MS);
    expect(deafness.deaf).toBe(false);
  });
});
