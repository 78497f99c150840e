import { readdirSync, readFileSync } from 'node:fs';

/** The browser's process that holds a page opened by this program: its memory, and a way to slow all of it, workers too. */
const SLICE_MS = 60;

/** The largest renderer among this program's descendants. @throws when there is none */
export function pageProcess(): number {
  const found = readdirSync('/proc').filter((name) => /^\d+$/.test(name)).map(Number).filter(isOurPage);
  const largest = found.sort((one, other) => residentBytes(other) - residentBytes(one))[0];
  if (largest === undefined) throw new Error('the browser\'s process was not found');
  return largest;
}

/** Resident memory of the page's process, in bytes. */
export function pageBytes(): number {
  return residentBytes(pageProcess());
}

/** Lets a process run for one part in `times` (the browser's own slowing does not reach workers). @returns what ends it */
export function slowDown(times: number, page = pageProcess()): () => void {
  let timer: ReturnType<typeof setTimeout>;
  const go = () => { process.kill(page, 'SIGCONT'); timer = setTimeout(stop, SLICE_MS / times); };
  const stop = () => { process.kill(page, 'SIGSTOP'); timer = setTimeout(go, SLICE_MS - SLICE_MS / times); };
  stop();
  return () => { clearTimeout(timer); process.kill(page, 'SIGCONT'); };
}

function isOurPage(candidate: number): boolean {
  try {
    return readFileSync(`/proc/${candidate}/cmdline`, 'utf8').includes('--type=renderer') && ancestors(candidate).includes(process.pid);
  } catch {
    return false;
  }
}

function ancestors(of: number): readonly number[] {
  if (of <= 1) return [];
  const parent = Number(/^PPid:\s+(\d+)/m.exec(readFileSync(`/proc/${of}/status`, 'utf8'))?.[1] ?? 0);
  return [parent, ...ancestors(parent)];
}

function residentBytes(of: number): number {
  return Number(/^VmRSS:\s+(\d+)/m.exec(readFileSync(`/proc/${of}/status`, 'utf8'))?.[1] ?? 0) * 1024;
}
