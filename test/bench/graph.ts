import { nanometres } from '../../core/length/length.ts';
import { evaluate, sizeOf } from '../../core/piece/evaluate.ts';
import type { PieceFile } from '../../core/piece/file.ts';
import { misfits } from '../../core/piece/fits.ts';
import { loadPiece, writePiece } from '../../core/piece/load.ts';
import type { LoadedPiece } from '../../core/piece/loadedPiece.ts';
import type { Measurement } from '../../core/piece/measurement.ts';
import { whatMoved } from '../../core/piece/moved.ts';
import { explain } from '../../core/piece/why.ts';

/**
 * How long it takes to work out every size of a large piece again after a measurement: two hundred parts, four copies each, all standing on one
 * module, every second one also on the part before it, so that the chains are a hundred deep. The mark is 1 ms.
 */
const PARTS = 200;
const ROUNDS = 2000;

function largePiece(): PieceFile {
  const parts = Array.from({ length: PARTS }, (_, index) => {
    const id = `part${index}`;
    const before = `part${index - 1}`;
    return {
      id, name: `part ${index}`, count: 4, species: 'hard maple',
      sizes: {
        length: index % 2 === 1 ? `${before}.length + 1/64 in` : 'module * 2 + overhang',
        width: index > 0 && index % 2 === 0 ? `(${before}.width + module) / 2` : 'module / 3',
        thickness: index % 10 === 9 ? `${id}.width / module * 1 in` : `${id}.width / 4`,
        shoulders: `${id}.length - 2 * tenon`,
      },
      made: index % 3 === 0 ? { kind: 'laminated' as const, layers: 3, layerThickness: `${id}.thickness / 3 + 1/16 in` } : { kind: 'solid' as const },
      easing: '1/16 in',
    };
  });
  return {
    format: 'benchcall piece', version: 2, name: 'Large piece', parts, joints: [],
    parameters: { module: '12 in', overhang: '2 in', tenon: '1 1/4 in' },
    allowances: { roughLength: '1 in', roughWidth: '1/4 in', roughThickness: '1/8 in', afterRest: '1/8 in' },
    tools: { chisels: ['1/4 in'], clamps: [] }, adhesive: { kind: 'PVA' }, finish: { kind: 'wax', coats: 1, recoatHours: 1 },
  };
}

/** Prints the median and the 99th of a hundred runs' times. */
function measure(what: string, rounds: number, run: (round: number) => unknown): void {
  for (let round = 0; round < rounds / 10; round++) run(round);
  const times = Array.from({ length: rounds }, (_, round) => {
    const started = performance.now();
    run(round);
    return performance.now() - started;
  }).sort((a, b) => a - b);
  const at = (share: number): string => (times[Math.floor(share * (rounds - 1))] ?? 0).toFixed(3).padStart(8);
  console.log(`${what.padEnd(62)} median ${at(0.5)} ms   99 % ${at(0.99)} ms`);
}

function load(text: string): LoadedPiece {
  const loaded = loadPiece(text);
  if (!loaded.ok) throw new Error(JSON.stringify(loaded.fault[0]));
  return loaded.value;
}

function heapMiB(): number {
  globalThis.gc?.();
  return process.memoryUsage().heapUsed / 2 ** 20;
}

const text = writePiece(largePiece());
const before = heapMiB();
const piece = load(text);
const after = heapMiB();
const inch = nanometres(25_400_000);

/** Never twice the same, so that nothing could be kept from the round before. */
const moved = (round: number): Measurement => ({ size: 'module', length: nanometres(12 * inch + round * 1000) });
const heavy = (round: number): Measurement => ({ size: 'part0.width', copy: 2, length: nanometres(4 * inch + round * 1000) });
const everyCopy = Array.from({ length: PARTS * 4 }, (_, index): Measurement => ({ size: `part${index >> 2}.width`, copy: (index & 3) + 1, length: nanometres(4 * inch + index * 1000) }));

console.log(`${PARTS} parts, ${piece.graph.nodes.length} sizes, a file of ${(text.length / 1024).toFixed(0)} KiB; Node ${process.version}`);
measure('every size again, after one that all stand on was measured', ROUNDS, (round) => evaluate(piece, [moved(round)]));
measure('every size again, after one copy of one part was measured', ROUNDS, (round) => evaluate(piece, [heavy(round)]));
measure('every size of every copy, all 800 copies measured', ROUNDS / 4, () => evaluate(piece, everyCopy));
measure('with no measurement', ROUNDS, () => evaluate(piece, []));
const sizes = evaluate(piece, [moved(1)]);
measure('a thousand sizes looked up', ROUNDS / 4, (round) => { for (let index = 0; index < 1000; index++) sizeOf(sizes, `part${(index + round) % PARTS}.length`, (index & 3) + 1); });
measure('what moved', ROUNDS / 4, (round) => whatMoved(piece, [], [moved(round)]));
measure('what no longer fits', ROUNDS / 4, (round) => misfits(piece, [heavy(round)]));
measure('why, a hundred links deep', ROUNDS / 4, (round) => explain(piece, [moved(round)], 'part198.width'));
measure('the file read, checked and its graph built', 40, () => load(text));
console.log(`memory of the loaded piece ${(after - before).toFixed(1)} MiB${globalThis.gc === undefined ? ' (roughly: run with --expose-gc for more)' : ''}; process ${(process.memoryUsage().rss / 2 ** 20).toFixed(0)} MiB`);
