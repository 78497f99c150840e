import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdirSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { findOrInstallChromium } from './chromium.mjs';
import { ensureInstalled, ROOT } from './setUp.mjs';

/**
 * `npm test`: installs what it needs, then runs everything there is, goes on after a failure, and ends with one line that counts.
 * A check (types, lint …) counts as one test; of the runners' tests each counts, as their own reports tell.
 */
const REPORTS = join(ROOT, '.cache', 'reports');

/** What failed and what was left out, by name. @typedef {{ passed: number, failed: number, skipped: readonly string[], failures?: readonly string[] }} Count */
/** @typedef {{ name: string, words: readonly string[], count?: (report: string) => Count }} Step */
/** @typedef {{ step: Step, count: Count, seconds: number }} Outcome */

/**
 * Rounds one after the other; in a round, rows side by side, each step of a row after the one before.
 * @type {readonly (readonly (readonly Step[])[])[]}
 */
const ROUNDS = [
  [
    [{ name: 'lint', words: ['eslint', '.', '--max-warnings', '0'] }],
    [
      { name: 'types of the core', words: ['tsc', '-p', 'core'] },
      { name: 'types', words: ['tsc', '-p', '.'] },
      { name: 'imports run one way', words: ['depcruise', '--config', '.dependency-cruiser.cjs', 'core', 'kiosk', 'deploy'] },
      { name: 'nothing unused', words: ['knip'] },
      { name: 'build within its budget', words: ['tsx', 'deploy/build.ts', '--check'] },
    ],
  ],
  // What is spoken and heard takes its time, and little of the machine.
  [
    [{ name: 'voice', words: vitest('voice'), count: countVitest }],
    [
      { name: 'unit', words: vitest('core'), count: countVitest },
      { name: 'elements', words: ['wtr', '--config', 'deploy/web-test-runner.counting.mjs'], count: countOwn },
      { name: 'keeping', words: vitest('keeping'), count: countVitest },
    ],
  ],
];

ensureInstalled();
try {
  process.env.CHROMIUM = findOrInstallChromium();
} catch (error) {
  console.error(error.message);
  process.exit(1);
}
rmSync(REPORTS, { recursive: true, force: true });
mkdirSync(REPORTS, { recursive: true });

const only = process.argv.slice(2);
/** @type {Outcome[]} */
const results = [];
for (const round of ROUNDS) results.push(...(await Promise.all(round.map(runRow))).flat());
console.log('');
for (const { step, count, seconds } of results) {
  console.log(`${count.failed === 0 ? 'ok    ' : 'FAILED'} ${step.name}: ${count.passed} passed, ${count.failed} failed (${seconds.toFixed(1)} s)`);
  for (const reason of count.skipped) console.log(`       skipped: ${reason}`);
  for (const name of count.failures ?? []) console.log(`       failed: ${name}`);
}
const sum = (/** @type {'passed' | 'failed'} */ which) => results.reduce((total, { count }) => total + count[which], 0);
console.log(`${sum('passed')} passed, ${sum('failed')} failed`);
process.exit(sum('failed') === 0 ? 0 : 1);

/**
 * @param {readonly Step[]} row
 * @returns {Promise<Outcome[]>}
 */
async function runRow(row) {
  const outcomes = [];
  for (const step of row) if (only.length === 0 || only.includes(step.name)) outcomes.push(await runStep(step));
  return outcomes;
}

/**
 * What it prints comes in one piece when it has ended, so that steps side by side can be told apart.
 * @param {Step} step
 * @returns {Promise<Outcome>}
 */
async function runStep(step) {
  const report = join(REPORTS, `${step.name.replaceAll(' ', '-')}.json`);
  const began = process.hrtime.bigint();
  const [program = '', ...words] = step.words;
  const running = spawn(process.execPath, [binaryOf(program), ...words.map((word) => word.replace('REPORT', report))], {
    cwd: ROOT, stdio: ['ignore', 'pipe', 'pipe'], env: { ...process.env, FORCE_COLOR: '0', BENCHCALL_TEST_REPORT: report },
  });
  let said = '';
  for (const stream of [running.stdout, running.stderr]) stream.setEncoding('utf8').on('data', (/** @type {string} */ text) => { said += text; });
  const [status] = await once(running, 'close');
  console.log(`\n== ${step.name}\n${said.trimEnd()}`);
  return { step, count: countOf(step, report, status === 0), seconds: Number(process.hrtime.bigint() - began) / 1e9 };
}

/**
 * A runner that ended badly without a failed test of its own (it crashed, or found an error outside the tests) counts as one failure.
 * @param {Step} step
 * @param {string} report
 * @param {boolean} ended whether the program's exit status was 0
 * @returns {Count}
 */
function countOf(step, report, ended) {
  const check = { passed: ended ? 1 : 0, failed: ended ? 0 : 1, skipped: [] };
  if (!step.count) return check;
  try {
    const count = step.count(readFileSync(report, 'utf8'));
    if (ended && count.passed === 0) return { ...count, failed: Math.max(1, count.failed), skipped: [...count.skipped, 'no test was run at all'] };
    return ended ? count : { ...count, failed: Math.max(1, count.failed) };
  } catch {
    return { passed: 0, failed: 1, skipped: [] };
  }
}

/**
 * The file that a package's command stands for.
 * @param {string} program
 */
function binaryOf(program) {
  const packages = /** @type {Record<string, string>} */ ({ tsc: 'typescript', depcruise: 'dependency-cruiser', wtr: '@web/test-runner' });
  const name = packages[program] ?? program;
  const folder = join(ROOT, 'node_modules', name);
  const { bin } = JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8'));
  return join(folder, typeof bin === 'string' ? bin : bin[program]);
}

/** @param {string} project */
function vitest(project) {
  return ['vitest', 'run', '--project', project, '--reporter=default', '--reporter=json', '--outputFile.json=REPORT'];
}

/**
 * @param {string} report
 * @returns {Count}
 */
function countVitest(report) {
  const { numPassedTests, numFailedTests, numFailedTestSuites, testResults } = JSON.parse(report);
  const tests = testResults.flatMap((/** @type {any} */ file) => file.assertionResults);
  const being = (/** @type {string[]} */ ...states) => tests.filter((/** @type {any} */ one) => states.includes(one.status));
  const brokenFiles = testResults.filter((/** @type {any} */ file) => file.status === 'failed' && file.assertionResults.length === 0);
  return {
    passed: numPassedTests,
    failed: numFailedTests + (numFailedTestSuites > 0 ? brokenFiles.length : 0),
    skipped: being('pending', 'skipped').map((/** @type {any} */ one) => one.fullName),
    failures: [...being('failed').map(withReason), ...brokenFiles.map((/** @type {any} */ file) => file.name)],
  };
}

/**
 * @param {string} report
 * @returns {Count}
 */
function countOwn(report) {
  return JSON.parse(report);
}

/**
 * A failed test's name and the first line of why, so that the last lines of a long run tell what there is to know.
 * @param {{ fullName: string, failureMessages?: readonly string[] }} failed
 */
function withReason({ fullName, failureMessages = [] }) {
  const reason = failureMessages[0]?.split('\n', 1)[0];
  return reason ? `${fullName}\n               ${reason}` : fullName;
}
