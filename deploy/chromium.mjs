import { existsSync } from 'node:fs';
import { execFileSync } from 'node:child_process';

const USUAL_PLACES = ['/usr/bin/chromium', '/usr/bin/chromium-browser', '/usr/bin/google-chrome'];

/** Flags for a browser under test: no sandbox (the tests may run as root) and no calls home. */
export const CHROMIUM_FLAGS = [
  '--no-sandbox', '--disable-gpu', '--disable-quic', '--no-first-run', '--disable-background-networking',
  '--disable-component-update', '--disable-sync',
];

/**
 * Making a grammar leaves far more rubbish than it keeps, and the page's engine lets it lie until it has 400 MB. With smaller steps it stays under 280
 * (`npm run bench -- hearing-speed`); `--optimize-for-size` gave 20 MB less, but grammars took twice as long.
 */
export const SPARING = '--js-flags=--max-semi-space-size=4,--heap-growing-percent=25';

/**
 * Path of the Chromium to test with: the environment's CHROMIUM, or one of the usual places. Undefined when there is none.
 * @returns {string | undefined}
 */
export function findChromium() {
  const named = process.env.CHROMIUM;
  if (named) return named;
  return USUAL_PLACES.find((place) => existsSync(place));
}

/**
 * Finds Chromium, or installs the distribution's package when it may; otherwise throws one line that says how to point to one.
 * @returns {string}
 */
export function findOrInstallChromium() {
  const found = findChromium();
  if (found) return found;
  if (process.getuid?.() === 0 && existsSync('/usr/bin/apt-get')) {
    console.log('No Chromium found: installing the package "chromium" with apt-get.');
    const apt = (/** @type {string[]} */ words) => execFileSync('apt-get', words, { stdio: ['ignore', 'ignore', 'inherit'], env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' } });
    apt(['update']);
    apt(['install', '-y', '--no-install-recommends', 'chromium']);
    const installed = findChromium();
    if (installed) return installed;
  }
  throw new Error('No Chromium found. Install your distribution\'s package "chromium", or name one: CHROMIUM=/path/to/chromium npm test');
}
