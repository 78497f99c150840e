/** How long it takes to plan the work and to find out where one is, for the demo table and for a piece of 200 parts. */
import { readFileSync } from 'node:fs';
import type { Part, PieceFile } from '../../core/piece/file.ts';
import { loadPiece } from '../../core/piece/load.ts';
import type { LoadedPiece } from '../../core/piece/loadedPiece.ts';
import { stepsFor } from '../../core/work/plan.ts';
import { currentStep, mayDo, nextOpen, progressOf, remaining, type Progress } from '../../core/work/progress.ts';

const demo = readFileSync(new URL('../../core/piece/demo/bakers-work-table.json', import.meta.url), 'utf8');

function load(text: string): LoadedPiece {
  const loaded = loadPiece(text);
  if (!loaded.ok) throw new Error(loaded.fault.map(({ message }) => message).join('\n'));
  return loaded.value;
}

/** The demo table with so many solid parts more, none of them joined. */
function enlarged(parts: number): string {
  const file = JSON.parse(demo) as PieceFile;
  const more = Array.from({ length: parts - file.parts.length }, (_, index): Part => ({
    id: `slat${index + 1}`, name: `slat ${'abcdefghij'.charAt(index % 10)}${'abcdefghijklmnopqrst'.charAt(Math.floor(index / 10))}`, count: 1, species: 'ash', made: { kind: 'solid' },
    sizes: { length: '12 in', width: '2 in', thickness: '1/2 in' },
  }));
  return JSON.stringify({ ...file, parts: [...file.parts, ...more] });
}

function measure(what: string, times: number, act: () => unknown): void {
  for (let warm = 0; warm < 5; warm++) act();
  const start = performance.now();
  for (let time = 0; time < times; time++) act();
  console.log(`  ${what.padEnd(42)} ${((performance.now() - start) / times).toFixed(3)} ms`);
}

for (const [name, text] of [['demo table', demo], ['200 parts', enlarged(200)]] as const) {
  const piece = load(text);
  const steps = stepsFor(piece);
  const halfway: Progress = { done: new Set(steps.slice(0, steps.length / 2).map(({ id }) => id)), skipped: new Set(), currentStep: null };
  const [last] = steps.slice(-1);
  console.log(`${name}: ${piece.file.parts.length} parts, ${steps.length} steps`);
  measure('stepsFor, a new piece', 20, () => stepsFor({ ...piece }));
  measure('stepsFor, the same piece', 1000, () => stepsFor(piece));
  measure('currentStep, halfway', 1000, () => currentStep(steps, halfway));
  measure('nextOpen, halfway', 1000, () => nextOpen(steps, halfway));
  measure('mayDo, the last step', 1000, () => (last === undefined ? undefined : mayDo(last, halfway, steps)));
  measure('remaining', 200, () => remaining(steps, halfway));
  measure('progressOf one part', 200, () => progressOf('leg', steps, halfway));
}
console.log(`memory: ${(process.memoryUsage().heapUsed / 1e6).toFixed(1)} MB heap, ${(process.memoryUsage().rss / 1e6).toFixed(0)} MB resident`);
