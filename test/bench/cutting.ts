/**
 * Cutting plans. With `--instances DIR` (may be given more than once): the published instances in that folder's *.txt files, value, bound, proof and time each;
 * `--seconds N` for other than the 5 that each may take; `--browser` to run them in a worker of the browser, `--highs` by a general mixed-integer solver instead (one-dimensional ones). Without: jobs as they come in a shop, against first fit decreasing.
 */
import { readdirSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { build } from 'esbuild';
import { chromium } from 'playwright-core';
import { readInstance, type Instance } from '../../core/stock/instances.ts';
import { faultsOf } from '../../core/stock/plan/check.ts';
import { planStock } from '../../core/stock/plan/planStock.ts';
import { CHROMIUM_FLAGS, findOrInstallChromium } from '../../deploy/chromium.mjs';
import { solveByHighs } from './cutting/highs.ts';
import { solveInstance, type Answer } from './cutting/instance.ts';
import { firstFitDecreasing, job } from './cutting/jobs.ts';

const words = process.argv.slice(2);
const after = (flag: string): string[] => words.flatMap((word, at) => (word === flag ? words.slice(at + 1, at + 2) : []));
const seconds = Number(after('--seconds')[0] ?? 5);
const folders = after('--instances');

/** The solver's worker in a page of its own: asks it, and closes the browser in the end. */
async function openBrowser(): Promise<{ solve: (instance: Instance) => Promise<Answer>; close: () => Promise<void> }> {
  const bundled = await build({ entryPoints: [join(import.meta.dirname, 'cutting', 'worker.ts')], bundle: true, format: 'iife', write: false, logLevel: 'error' });
  const browser = await chromium.launch({ executablePath: findOrInstallChromium(), args: [...CHROMIUM_FLAGS] });
  const page = await browser.newPage();
  // Told as text: the runner that compiles this file would put helpers into a function that the page does not have.
  await page.evaluate(`(() => {
    const worker = new Worker(URL.createObjectURL(new Blob([${JSON.stringify(bundled.outputFiles[0]?.text ?? '')}], { type: 'text/javascript' })));
    globalThis.solveInWorker = (asked) => new Promise((resolve) => { worker.onmessage = ({ data }) => resolve(data); worker.postMessage(asked); });
  })()`);
  const solve = (instance: Instance): Promise<Answer> => page.evaluate<Answer>(`solveInWorker(${JSON.stringify({ instance, seconds })})`);
  return { solve, close: () => browser.close() };
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

async function runInstances(folder: string, solve: (instance: Instance) => Promise<Answer>): Promise<void> {
  const optima = publishedOptima(folder);
  let [proven, wrong, total, slowest, count] = [0, 0, 0, 0, 0];
  console.log(`${'instance'.padEnd(28)} value  bound  proven  milliseconds`);
  for (const path of textFiles(folder)) {
    const name = path.split('/').at(-1)?.replace(/\.txt$/, '') ?? path;
    const instance = readInstance(readFileSync(path, 'utf8'));
    if (instance === undefined) { console.log(`${name.padEnd(28)} is in neither form`); continue; }
    const start = performance.now();
    const answer = await solve(instance);
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
else {
  const browser = words.includes('--browser') ? await openBrowser() : undefined;
  const here = (instance: Instance): Promise<Answer> => (words.includes('--highs') && instance.kind === 'one-dimensional' ? solveByHighs(instance.problem, seconds) : Promise.resolve(solveInstance(instance, seconds)));
  for (const folder of folders) await runInstances(folder, browser?.solve ?? here);
  await browser?.close();
}
