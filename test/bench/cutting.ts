/**
 * Cutting plans. With `--instances DIR` (may be given more than once): the published instances in that folder's *.txt files, value, bound, proof and time each;
 * with `--seconds N` other than the 5 that each may take, `--browser` in a worker of the browser. Without: jobs as they come in a shop, against first fit decreasing.
 */
import { readdirSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { readInstance, type Instance } from '../../core/stock/instances.ts';
import { cutPlate } from '../../core/stock/guillotine/cutPlate.ts';
import { pack } from '../../core/stock/packing/pack.ts';
import { faultsOf } from '../../core/stock/plan/check.ts';
import { planStock } from '../../core/stock/plan/planStock.ts';
import { firstFitDecreasing, job } from './cuttingJobs.ts';

const words = process.argv.slice(2);
const after = (flag: string): string[] => words.flatMap((word, at) => (word === flag ? words.slice(at + 1, at + 2) : []));
const seconds = Number(after('--seconds')[0] ?? 5);
const folders = after('--instances');

interface Answer { readonly value: number; readonly bound: number; readonly proven: boolean }

function solve(instance: Instance): Answer {
  const end = performance.now() + 1000 * seconds;
  const goOn = (): boolean => performance.now() < end;
  if (instance.kind === 'guillotine') return cutPlate(instance.problem, goOn);
  const { bars, bound, proven } = pack(instance.problem, { goOn });
  return { value: bars.length, bound, proven };
}

function textFiles(folder: string): string[] {
  return readdirSync(folder).sort().flatMap((name) => {
    const path = join(folder, name);
    return statSync(path).isDirectory() ? textFiles(path) : name.endsWith('.txt') ? [path] : [];
  });
}

/** Optima published beside the instances: `instance,items,capacity,optimum` in the folder's or its parent's CSV files. */
function publishedOptima(folder: string): Map<string, number> {
  const lines = [folder, join(folder, '..')].flatMap((place) => readdirSync(place).filter((name) => name.endsWith('.csv')).flatMap((name) => readFileSync(join(place, name), 'utf8').split('\n')));
  return new Map(lines.map((line) => line.split(',')).filter((cells) => cells.length >= 4).map(([name = '', , , optimum = '']) => [name, Number(optimum)]));
}

function runInstances(folder: string): void {
  const optima = publishedOptima(folder);
  let [proven, wrong, total, slowest, count] = [0, 0, 0, 0, 0];
  console.log(`${'instance'.padEnd(28)} value  bound  proven  milliseconds`);
  for (const path of textFiles(folder)) {
    const name = path.split('/').at(-1)?.replace(/\.txt$/, '') ?? path;
    const instance = readInstance(readFileSync(path, 'utf8'));
    if (instance === undefined) { console.log(`${name.padEnd(28)} is in neither form`); continue; }
    const start = performance.now();
    const answer = solve(instance);
    const spent = performance.now() - start;
    const optimum = optima.get(name);
    const fault = optimum !== undefined && answer.proven && answer.value !== optimum;
    [count, total, slowest] = [count + 1, total + spent, Math.max(slowest, spent)];
    if (answer.proven) proven++;
    if (fault) wrong++;
    console.log(`${name.padEnd(28)} ${String(answer.value).padStart(5)}  ${String(answer.bound).padStart(5)}  ${answer.proven ? 'yes' : 'no '}  ${spent.toFixed(0).padStart(8)}${fault ? `  PUBLISHED: ${optimum}` : ''}`);
  }
  console.log(`${folder}: ${proven} of ${count} proven; ${(total / 1000).toFixed(1)} s together, ${(slowest / 1000).toFixed(2)} s the slowest; ${wrong} against a published optimum (${optima.size} known)`);
}

function runJobs(): void {
  console.log('boards blanks | plan: boards bound proven missing | first fit: boards missing | first plan ms, best ms, all ms | crosscut m, rip m | faults');
  for (const [boards, blanks, seed] of [[8, 30, 1], [12, 40, 2], [16, 60, 3], [24, 90, 4], [32, 120, 5], [40, 150, 6], [40, 100, 7]] as const) {
    const problem = job(boards, blanks, seed);
    const plain = firstFitDecreasing(problem);
    const start = performance.now();
    let [first, best] = [0, 0];
    const plan = planStock(problem, () => performance.now() - start < 1000 * seconds, () => {
      best = performance.now() - start;
      first = first === 0 ? best : first;
    });
    const missing = plan.missing.reduce((sum, { count }) => sum + count, 0);
    console.log([
      `${boards}`.padStart(6), `${blanks}`.padStart(6), '|', plan.used, plan.bound, plan.proven ? 'proven' : 'open', missing, '|', plain.boards, plain.missing, '|',
      first.toFixed(0), best.toFixed(0), (performance.now() - start).toFixed(0), '|', plan.crosscutMetres.toFixed(1), plan.ripMetres.toFixed(1), '|', faultsOf(plan, problem).length,
    ].join(' '));
  }
}

if (folders.length === 0) runJobs();
for (const folder of folders) runInstances(folder);
