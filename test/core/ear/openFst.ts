import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';

/** OpenFst's own tools, to compare with. Debian's packages; found, or installed when the tests run as root. */
const PLUGINS = '/usr/lib/x86_64-linux-gnu/fst/22';

/** @returns why they cannot be used, or undefined when they can */
export function openFstMissing(): string | undefined {
  const there = () => spawnSync('fstcompile', ['--help']).error === undefined && existsSync(`${PLUGINS}/olabel_lookahead-fst.so`);
  if (there()) return undefined;
  if (process.getuid?.() !== 0) return 'OpenFst is not installed (apt-get install libfst-tools libfst22-plugins-base), and these tests do not run as root';
  spawnSync('apt-get', ['install', '-y', '-q', 'libfst-tools', 'libfst22-plugins-base'], { timeout: 60_000 });
  return there() ? undefined : 'OpenFst is not installed and could not be (apt-get install libfst-tools libfst22-plugins-base)';
}

/** Runs one tool. @throws {Error} with what it printed, when it fails or complains */
export function openFst(tool: string, options: readonly string[], input?: string | Uint8Array): Buffer {
  const { status, stdout, stderr } = spawnSync(tool, options, { input, env: { ...process.env, LD_LIBRARY_PATH: PLUGINS }, maxBuffer: 1e9 });
  const complaint = stderr.toString();
  if (status !== 0 || /ERROR|FATAL/.test(complaint)) throw new Error(`${tool} ${options.join(' ')}: ${complaint}`);
  return stdout;
}
