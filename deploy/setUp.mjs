import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

/** The repository's folder. */
export const ROOT = join(dirname(fileURLToPath(import.meta.url)), '..');

/** Installs the packages that package-lock.json names, unless they are there already. Ends the process when that fails. */
export function ensureInstalled() {
  refuseOldNode();
  if (isInstalled()) return;
  console.log('Installing packages (npm ci) …');
  const done = spawnSync('npm', ['ci', '--no-audit', '--no-fund'], { cwd: ROOT, stdio: 'inherit', shell: process.platform === 'win32' });
  if (done.status !== 0) {
    console.error('The packages could not be installed; see above. A network, or a filled npm cache, is needed this once.');
    process.exit(1);
  }
}

/**
 * Runs a TypeScript file of the repository in this terminal.
 * @param {string} file path from the repository's folder
 * @param {readonly string[]} words its arguments
 * @returns {number} its exit status
 */
export function runTypeScript(file, words = []) {
  return spawnSync(process.execPath, ['--import', 'tsx', join(ROOT, file), ...words], { cwd: ROOT, stdio: 'inherit' }).status ?? 1;
}

function refuseOldNode() {
  const [major = 0, minor = 0] = process.versions.node.split('.').map(Number);
  if (major > 20 || (major === 20 && minor >= 19)) return;
  console.error(`Node 20.19 or newer is needed; this is ${process.versions.node}.`);
  process.exit(1);
}

/** Whether every package of the lock is there in its version; packages for other systems may be missing. */
function isInstalled() {
  try {
    const wanted = readPackages(join(ROOT, 'package-lock.json'));
    const there = readPackages(join(ROOT, 'node_modules', '.package-lock.json'));
    return Object.entries(wanted).every(([place, { version, optional }]) => place === '' || optional || there[place]?.version === version);
  } catch {
    return false;
  }
}

/**
 * @param {string} file
 * @returns {Record<string, { version?: string, optional?: boolean }>}
 */
function readPackages(file) {
  return JSON.parse(readFileSync(file, 'utf8')).packages;
}
