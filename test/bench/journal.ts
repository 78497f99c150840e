/** How long it takes to write, read back, fold and undo a long journal, and what it weighs (memory with `node --expose-gc --import tsx test/bench/journal.ts`). */
import type { Entry, JournalRecord } from '../../core/journal/entry.ts';
import { validPrefix } from '../../core/journal/chain.ts';
import { foldJournal } from '../../core/journal/fold.ts';
import { makeRecords } from '../../core/journal/record.ts';
import { nanometres } from '../../core/length/length.ts';
import { stool } from '../core/journal/journals.ts';

const COUNT = Number(process.argv[2] ?? 100_000);

/** What a maker writes in years at the bench: steps, measurements, clocks, notes, heartbeats, now and then a piece. */
function entryFor(index: number): Entry {
  if (index % 5_000 === 0) return { kind: 'piece loaded', text: stool({ about: `form ${index / 5_000 % 4}` }), from: 'stool.json' };
  switch (index % 8) {
    case 1: return { kind: 'step done', step: `face/leg/${index % 200}` };
    case 2: return { kind: 'measured', measurement: { size: 'leg.length', copy: (index % 4) + 1, length: nanometres(400_000_000 + index) } };
    case 3: return { kind: 'timer started', timer: { kind: 'clamp', name: 'leg clamps', durationMs: 1_800_000, basis: 'common practice' } };
    case 4: return { kind: 'timer stopped', timer: index };
    case 5: return { kind: 'noted', text: `a knot near the top end, ${index}` };
    default: return { kind: 'clock seen', note: 'heartbeat' };
  }
}

function timed<Result>(what: string, act: () => Result): Result {
  globalThis.gc?.();
  const [before, start] = [process.memoryUsage().heapUsed, performance.now()];
  const result = act();
  const ms = performance.now() - start;
  globalThis.gc?.();
  const mebibytes = (process.memoryUsage().heapUsed - before) / 1024 ** 2;
  console.log(`${what.padEnd(48)} ${ms.toFixed(1).padStart(9)} ms ${globalThis.gc ? `${mebibytes.toFixed(1).padStart(8)} MiB kept` : ''}`);
  return result;
}

const records = timed(`make ${COUNT} records`, () => {
  const made: JournalRecord[] = [];
  for (let index = 0; index < COUNT; index++) {
    const now = { wallMs: 1.77e12 + index * 5_000, wallTrusted: true, bootId: `boot ${Math.floor(index / 2_000)}`, monotonicMs: (index % 2_000) * 5_000 };
    made.push(...makeRecords([entryFor(index)], made.at(-1) ?? null, now));
  }
  return made;
});
const text = JSON.stringify(records);
console.log(`as JSON ${(text.length / 1024 ** 2).toFixed(1)} MiB`);
const values = JSON.parse(text) as unknown[];
timed('read back and check every field and checksum', () => validPrefix(values));
const whole = timed('fold all', () => foldJournal(records));
const snapshot = foldJournal(records.slice(0, -100));
for (const time of ['first', 'second']) timed(`fold the last 100 on a snapshot, ${time} time`, () => foldJournal(records, snapshot));
const last = whole.acts.standing.at(-1) ?? 0;
const undone = [...records, ...makeRecords([{ kind: 'scratched', act: last }], records.at(-1) ?? null, { wallMs: 1.78e12, wallTrusted: true, bootId: 'boot last', monotonicMs: 0 })];
for (const time of ['first', 'second']) timed(`undo the last act as the bench does, ${time} time`, () => foldJournal(undone, whole));
timed('undo the last act, from the beginning', () => foldJournal(undone));
