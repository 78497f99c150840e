import fc from 'fast-check';
import { describe, expect, it, vi } from 'vitest';
import { announcements } from '../../../core/clock/announce.ts';
import type { Moment } from '../../../core/clock/moment.ts';
import { readTimer } from '../../../core/clock/reading.ts';
import type { Entry, JournalRecord } from '../../../core/journal/entry.ts';
import { EMPTY_SNAPSHOT, foldJournal } from '../../../core/journal/fold.ts';
import { makeRecords } from '../../../core/journal/record.ts';
import { HOUR, MINUTE, NOON, SECOND } from '../clock/clocks.ts';

// Many random cases, on a machine that may be busy with others.
vi.setConfig({ testTimeout: 60_000 });

/**
 * A shop with a true clock that nobody in it can see. The machine's wall clock may be wrong, be set, fall to 1970 with
 * the power; the journal is written as the kiosk writes it. Whatever the timers claim is held against the true clock.
 */
type Happening =
  | { readonly does: 'time passes'; readonly ms: number }
  | { readonly does: 'heartbeat' | 'note' | 'hold' | 'resume' | 'acknowledge' | 'scratch' }
  | { readonly does: 'add'; readonly ms: number }
  /** `wallIs`: what the clock shows when the machine is up again. */
  | { readonly does: 'power cut'; readonly offMs: number; readonly wall: Wall; readonly noticed: boolean }
  | { readonly does: 'clock set'; readonly wall: Wall; readonly noticed: boolean };

type Wall = 'right' | 'stood still' | '1970' | 'an hour on' | 'an hour back';

const duration = fc.oneof(fc.integer({ min: 0, max: 10 * SECOND }), fc.integer({ min: 0, max: 20 * MINUTE }), fc.integer({ min: 0, max: 30 * HOUR }));
const wall = fc.constantFrom<Wall[]>('right', 'right', 'right', 'stood still', '1970', 'an hour on', 'an hour back');
const happening: fc.Arbitrary<Happening> = fc.oneof(
  { weight: 6, arbitrary: fc.record({ does: fc.constant('time passes' as const), ms: duration }) },
  { weight: 4, arbitrary: fc.record({ does: fc.constantFrom('heartbeat' as const, 'note' as const) }) },
  { weight: 2, arbitrary: fc.record({ does: fc.constantFrom('hold' as const, 'resume' as const, 'acknowledge' as const, 'scratch' as const) }) },
  { weight: 1, arbitrary: fc.record({ does: fc.constant('add' as const), ms: fc.integer({ min: -20 * MINUTE, max: 20 * MINUTE }) }) },
  { weight: 2, arbitrary: fc.record({ does: fc.constant('power cut' as const), offMs: duration, wall, noticed: fc.boolean() }) },
  { weight: 1, arbitrary: fc.record({ does: fc.constant('clock set' as const), wall, noticed: fc.boolean() }) },
);

class Shop {
  #trueMs = NOON;
  #wallOffMs = 0;
  #wall: Wall = 'right';
  #boot = 1;
  #upSince = NOON - HOUR;
  /** Whether the machine believes its clock whatever it shows. */
  readonly #gullible: boolean;
  readonly #kind: 'clamp' | 'break';
  records: JournalRecord[] = [];
  fold = EMPTY_SNAPSHOT;
  /** How long the timer has truly run. */
  ranMs = 0;
  #lastMs = NOON;

  constructor(gullible: boolean, kind: 'clamp' | 'break') {
    this.#gullible = gullible;
    this.#kind = kind;
    this.write({ kind: 'timer started', timer: { kind, name: 'clamps', durationMs: 30 * MINUTE, basis: '' } });
  }

  get now(): Moment {
    return { wallMs: this.#trueMs + this.#wallOffMs, wallTrusted: this.#gullible || this.#wall === 'right', bootId: `boot ${this.#boot}`, monotonicMs: this.#trueMs - this.#upSince };
  }

  get timer() {
    return this.fold.state.timers[0];
  }

  write(entry: Entry): void {
    this.#pass();
    const wasHeld = this.timer?.heldLeftMs !== undefined;
    this.records.push(...makeRecords([entry], this.records.at(-1) ?? null, this.now));
    this.fold = foldJournal(this.records, this.fold);
    if (wasHeld !== (this.timer?.heldLeftMs !== undefined)) this.#lastMs = this.#trueMs;
  }

  /** What truly ran since the last change, while it was not held. */
  #pass(): void {
    if (this.timer && this.timer.heldLeftMs === undefined) this.ranMs += this.#trueMs - this.#lastMs;
    this.#lastMs = this.#trueMs;
  }

  do(happening: Happening): void {
    const due = this.timer !== undefined && readTimer(this.timer, this.now).due;
    switch (happening.does) {
      case 'time passes': this.#trueMs += happening.ms; break;
      case 'heartbeat': this.write({ kind: 'clock seen', note: 'heartbeat' }); break;
      case 'note': this.write({ kind: 'noted', text: 'knot' }); break;
      case 'hold': this.write({ kind: 'timer held', timer: 1 }); break;
      case 'resume': this.write({ kind: 'timer resumed', timer: 1 }); break;
      case 'add': this.write({ kind: 'timer changed', timer: 1, addMs: happening.ms }); break;
      case 'scratch': {
        // Only notes: undoing a hold gives the timer another past, which the true clock here does not tell.
        const last = this.records.findLast(({ act }) => act === this.fold.acts.standing.at(-1));
        if (last?.entry.kind === 'noted') this.write({ kind: 'scratched', act: last.act });
        break;
      }
      case 'acknowledge':
        if (this.#kind === 'break' && due) {
          this.write({ kind: 'timer acknowledged', timer: 1 });
          this.ranMs = 0;
        }
        break;
      case 'power cut':
        this.#trueMs += happening.offMs;
        this.#upSince = this.#trueMs;
        this.#boot++;
        this.#set(happening.wall, happening.offMs);
        this.#trueMs += 20 * SECOND;
        if (happening.noticed) this.write({ kind: 'clock seen', note: 'restarted' });
        break;
      case 'clock set':
        this.#set(happening.wall, 0);
        if (happening.noticed) this.write({ kind: 'clock seen', note: 'jumped' });
        break;
    }
    this.#pass();
  }

  #set(to: Wall, offMs: number): void {
    this.#wall = to;
    if (to === 'right') this.#wallOffMs = 0;
    if (to === 'stood still') this.#wallOffMs -= offMs;
    if (to === '1970') this.#wallOffMs = -this.#trueMs;
    if (to === 'an hour on') this.#wallOffMs = HOUR;
    if (to === 'an hour back') this.#wallOffMs = -HOUR;
  }
}

describe.each(['clamp', 'break'] as const)('a %s timer under power cuts, clocks that are set both ways, and holds', (kind) => {
  it('never claims more than the true clock bears out, when a clock is trusted only while it is right', () => {
    let exact = 0, byWall = 0, unknown = 0;
    fc.assert(fc.property(fc.array(happening, { maxLength: 30 }), (happenings) => {
      const shop = new Shop(false, kind);
      for (const one of happenings) {
        shop.do(one);
        const reading = shop.timer && readTimer(shop.timer, shop.now);
        if (!reading) continue;
        if (reading.certainty === 'unknown') {
          unknown++;
          expect(reading.atLeastElapsedMs).toBeLessThanOrEqual(shop.ranMs);
        } else {
          expect(reading.elapsedMs).toBe(shop.ranMs);
          if (reading.certainty === 'exact') exact++;
          else byWall++;
        }
      }
    }), { numRuns: 600 });
    // The run would prove nothing if it met only one of the three.
    expect(Math.min(exact, byWall, unknown)).toBeGreaterThan(100);
  });

  it('is right when it says exact, and says at least what it must, even when every wrong clock is trusted', () => {
    fc.assert(fc.property(fc.array(happening, { maxLength: 30 }), (happenings) => {
      const shop = new Shop(true, kind);
      for (const one of happenings) {
        shop.do(one);
        const reading = shop.timer && readTimer(shop.timer, shop.now);
        if (reading?.certainty === 'exact') expect(reading.elapsedMs).toBe(shop.ranMs);
        if (reading?.certainty === 'unknown') expect(reading.atLeastElapsedMs).toBeLessThanOrEqual(shop.ranMs);
      }
    }), { numRuns: 600 });
  });

  it('is called due once it is, and not before, by a kiosk that looks between all that happens', () => {
    fc.assert(fc.property(fc.array(happening, { maxLength: 30 }), (happenings) => {
      const shop = new Shop(false, kind);
      let before = shop.now;
      for (const one of happenings) {
        shop.do(one);
        const told = announcements(shop.fold.state.timers, before, shop.now);
        before = shop.now;
        const reading = shop.timer && readTimer(shop.timer, before);
        for (const { mark } of told) {
          if (mark === 'due' || mark === 'still due') expect(reading?.due).toBe(true);
          if (mark === 'in doubt') expect(reading).toMatchObject({ due: false, certainty: 'unknown' });
        }
        expect(told.length).toBeLessThanOrEqual(1);
      }
    }), { numRuns: 600 });
  });
});
