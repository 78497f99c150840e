import { writeFileSync } from 'node:fs';
import { defaultReporter } from '@web/test-runner';
import config from '../web-test-runner.config.js';
import { ROOT } from './setUp.mjs';

/**
 * Counts the tests of every session and writes the numbers where `npm test` reads them.
 * @returns {import('@web/test-runner').Reporter}
 */
function countingReporter() {
  return {
    onTestRunFinished({ sessions }) {
      const tests = sessions.flatMap((session) => (session.testResults ? testsIn(session.testResults) : []));
      const broken = sessions.filter((session) => !session.passed && !(session.testResults && testsIn(session.testResults).some((test) => !test.skipped && !test.passed)));
      const count = {
        passed: tests.filter((test) => test.passed && !test.skipped).length,
        failed: tests.filter((test) => !test.passed && !test.skipped).length + broken.length,
        skipped: tests.filter((test) => test.skipped).map((test) => test.name),
        failures: [...tests.filter((test) => !test.passed && !test.skipped).map((test) => test.name), ...broken.map(({ testFile }) => testFile ?? 'a test file')],
      };
      if (process.env.BENCHCALL_TEST_REPORT) writeFileSync(process.env.BENCHCALL_TEST_REPORT, JSON.stringify(count));
    },
  };
}

/**
 * @param {import('@web/test-runner').TestSuiteResult} suite
 * @returns {import('@web/test-runner').TestResult[]}
 */
function testsIn(suite) {
  return [...suite.tests, ...suite.suites.flatMap(testsIn)];
}

export default { ...config, rootDir: ROOT, reporters: [defaultReporter(), countingReporter()] };
