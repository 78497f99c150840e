import { fork } from 'node:child_process';
import { setPriority } from 'node:os';
import { basename, join } from 'node:path';
import type { Verdict } from './check.ts';

/** What a check is told: plain data, for it goes from one process to another. */
export interface CheckAsked {
  readonly path: string;
  readonly pieceTexts: readonly string[];
  /** Where a good model is packed to for the kiosk. */
  readonly packTo: string;
}

/** A large model on a small board takes a minute; past this it is no use at a bench. */
export const CHECK_WITHIN_MS = 240_000;
/** The bench goes first. */
const NICENESS = 10;
const TOLD_OF_ERRORS = 2_000;

/**
 * Checks a model in a process of its own, which is ended at the deadline: whatever a file does to the unpacker or the engine, it hangs and crashes nothing else.
 * @param began called with what ends the check at once
 */
export function checkApart(asked: CheckAsked, withinMs = CHECK_WITHIN_MS, began: (end: () => void) => void = () => undefined): Promise<Verdict> {
  const child = fork(join(import.meta.dirname, 'checkMain.ts'), [], { execArgv: ['--import', 'tsx'], stdio: ['ignore', 'ignore', 'pipe', 'ipc'] });
  if (child.pid !== undefined) lowerPriority(child.pid);
  let complaint = '';
  child.stderr?.on('data', (chunk: Buffer) => { complaint = (complaint + chunk.toString()).slice(-TOLD_OF_ERRORS); });
  const refused = (what: string, todo: string): Verdict => ({ faults: [{ where: basename(asked.path), what, todo }], remarks: [], unheard: [] });
  return new Promise((settle) => {
    const end = (verdict: Verdict) => {
      clearTimeout(deadline);
      child.kill('SIGKILL');
      settle(verdict);
    };
    const deadline = setTimeout(() => end(refused(`its check did not end within ${Math.round(withinMs / 1000)} seconds`, 'Take a smaller model.')), withinMs);
    child.on('message', (verdict) => end(verdict as Verdict));
    child.on('error', (error) => end(refused(`it could not be checked (${error.message})`, 'Try again.')));
    child.on('close', (code, signal) => end(refused(`its check broke off (${signal ?? `code ${code ?? '?'}`}${lastError(complaint)})`, 'It may be too large for this machine, or damaged: get it again, or take a smaller one.')));
    began(() => end(refused('its check was broken off', 'It is checked again at the next start.')));
    child.send(asked, (error) => { if (error) end(refused(`it could not be checked (${error.message})`, 'Try again.')); });
  });
}

/** Where the system does not allow it, the check is only less polite. */
function lowerPriority(pid: number): void {
  try {
    setPriority(pid, NICENESS);
  } catch {
    return;
  }
}

function lastError(complaint: string): string {
  const line = complaint.split('\n').findLast((each) => /error/i.test(each));
  return line === undefined ? '' : `: ${line.trim().slice(0, 200)}`;
}
