/** What it costs to make sense of a face with 40 readings, and of fewer and more: the screen reckons it anew after every reading. */
import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';
import { nanometres, NANOMETRES_PER_INCH, type Length } from '../../core/length/length.ts';
import { layPlaning } from '../../kiosk/draw/planingLayout.ts';
import { sideAsRead, type SideAsRead, type SideToTrue } from '../../core/true/asRead.ts';
import { readingsOf } from '../../core/true/fromReadings.ts';
import { stationsFor } from '../../core/true/guide.ts';
import { mate } from '../../core/true/mating.ts';
import { firstFace, mostThickness } from '../../core/true/plane.ts';
import type { FaceReading, ReadingKind } from '../../core/true/readings.ts';
import { surfaceOf } from '../../core/true/surface.ts';

/** A board at the bench is so much slower than this machine; what answers within a tenth of a second feels instant (R. B. Miller, 1968). */
const SLOWER = 6;
const INSTANT_MS = 100;
const KINDS: readonly ReadingKind[] = ['sticks', 'along', 'across', 'thickness'];
const inches = (count: number): Length => nanometres(Math.round(count * NANOMETRES_PER_INCH));

/** Noise that is the same every time. */
function noise(seed: number): () => number {
  let state = seed;
  return () => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return state / 2 ** 32;
  };
}

/** A tabletop of 60 by 36 inches with so many readings, each kind at places of its own. */
function sideWith(count: number): SideToTrue {
  const random = noise(count);
  const each = count / KINDS.length;
  const taken = KINDS.flatMap((what) => Array.from({ length: each }, (_, index): FaceReading => ({
    what, fromEnd: inches(1 + (58 * index) / Math.max(1, each - 1)), gap: inches(what === 'thickness' ? 1.5 + 0.1 * random() : (what === 'along' ? 0 : -0.03) + 0.06 * random()),
  })));
  return { size: { length: inches(60), width: inches(36) }, face: 'face', limit: { limit: inches(1 / 64), source: '' }, taken, stick: inches(40), shaving: inches(0.005), unit: 'inch', planned: inches(1.25) };
}

function measure(what: string, act: () => unknown): number {
  for (let warm = 0; warm < 20; warm += 1) act();
  const times = Array.from({ length: 60 }, () => {
    const start = performance.now();
    act();
    return performance.now() - start;
  }).sort((one, other) => one - other);
  const [median, worst] = [times[30] ?? 0, times.at(-1) ?? 0];
  console.log(`  ${what.padEnd(44)} ${median.toFixed(2).padStart(7)} ms, at worst ${worst.toFixed(2).padStart(6)} ms; ${SLOWER} times slower ${(median * SLOWER).toFixed(1).padStart(6)} ms = ${((100 * median * SLOWER) / INSTANT_MS).toFixed(1)} % of what feels instant`);
  return median;
}

function found(side: SideToTrue): SideAsRead {
  const read = sideAsRead(side);
  if (!read.ok) throw new Error(JSON.stringify(read.fault));
  return read.value;
}

// Once through everything, so that the first figures are not those of a program that is still being compiled.
for (let warm = 0; warm < 100; warm += 1) mate(found(sideWith(80)).surface, found(sideWith(80)).surface);

const medians = [20, 40, 80, 160].map((count) => {
  const side = sideWith(count);
  const { surface, board } = found(side);
  console.log(`${count} readings, ${surface.points.length} points`);
  const all = measure('all that the screen tells', () => found(side));
  measure('  the readings put together', () => surfaceOf(readingsOf(side.size, side.stick, stationsFor(side.size.length, side.unit), side.taken)));
  measure('  the plane that takes the least', () => firstFace(surface));
  measure('  the most thickness', () => mostThickness(surface, surface.points.map(() => inches(1.5))));
  measure('two such faces laid together', () => mate(surface, surface));
  measure('contours and figures', () => layPlaning({ surface, depths: board.first.depths, shavings: board.plan.shavings, levels: [inches(0.02), inches(0.01), inches(0)] }, 456, 250));
  return { count, all };
});
const forty = medians.find(({ count }) => count === 40)?.all ?? 1;
console.log(`against 40 readings: ${medians.map(({ count, all }) => `${count} ${(all / forty).toFixed(2)}×`).join(', ')}`);

setFlagsFromString('--expose-gc');
const collect = runInNewContext('gc') as () => void;
collect();
const before = process.memoryUsage().heapUsed;
const kept = Array.from({ length: 200 }, () => found(sideWith(40)));
collect();
console.log(`memory: ${((process.memoryUsage().heapUsed - before) / kept.length / 1024).toFixed(1)} KB a face of 40 readings kept; ${(process.memoryUsage().rss / 1e6).toFixed(0)} MB resident`);
