import { link, open, readFile, rename, rm } from 'node:fs/promises';
import { readFileSync } from 'node:fs';

/** Who holds a lock: a process of this run of the machine. */
export interface Holder {
  readonly pid: number;
  /** Tells this process from a later one that was given the same number; empty where the system does not say. */
  readonly started: string;
  readonly bootId: string;
  /** Where the holder serves the bench; empty until it does. */
  readonly address: string;
}

export interface Lock {
  /** Writes into the lock where the bench is served, for a second start to tell. */
  announce(address: string): Promise<void>;
  release(): Promise<void>;
}

/**
 * Takes a lock file for this process; one left by a process that is gone (a crash, a power cut) is taken over.
 * @returns the lock, or the living process that holds it
 */
export async function takeLock(file: string): Promise<{ lock: Lock } | { heldBy: Holder }> {
  const mine: Holder = { pid: process.pid, started: startOf(process.pid), bootId: bootId(), address: '' };
  for (let attempt = 0; attempt < 20; attempt += 1) {
    if (await created(file, mine)) return { lock: lockOn(file, mine) };
    const text = await readFile(file, 'utf8').catch(() => undefined);
    if (text === undefined) continue;
    const holder = readHolder(text);
    if (holder && isAlive(holder)) return { heldBy: holder };
    await removeStale(file, text);
  }
  throw new Error(`The lock ${file} could not be taken; if no other bench is running, delete that file.`);
}

/** Written whole under another name first, so that nobody ever reads half of a lock. */
async function created(file: string, holder: Holder): Promise<boolean> {
  const draft = `${file}.${process.pid}`;
  const handle = await open(draft, 'w');
  await handle.writeFile(JSON.stringify(holder));
  await handle.close();
  try {
    await link(draft, file);
    return true;
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'EEXIST') return false;
    throw error;
  } finally {
    await rm(draft, { force: true });
  }
}

/** Moves the stale lock away; if what was moved turns out to be a fresh one of somebody quicker, it is put back. */
async function removeStale(file: string, staleText: string): Promise<void> {
  const away = `${file}.stale-${process.pid}`;
  try {
    await rename(file, away);
  } catch {
    return;
  }
  const moved = await readFile(away, 'utf8').catch(() => staleText);
  if (moved !== staleText) await link(away, file).catch(() => undefined);
  await rm(away, { force: true });
}

function lockOn(file: string, mine: Holder): Lock {
  return {
    async announce(address) {
      const draft = `${file}.${process.pid}`;
      const handle = await open(draft, 'w');
      await handle.writeFile(JSON.stringify({ ...mine, address }));
      await handle.close();
      await rename(draft, file);
    },
    async release() {
      await rm(file, { force: true });
    },
  };
}

function readHolder(text: string): Holder | undefined {
  try {
    const { pid, started, bootId: boot, address } = JSON.parse(text) as Record<string, unknown>;
    if (typeof pid !== 'number' || !Number.isSafeInteger(pid) || pid <= 0) return undefined;
    const word = (value: unknown) => (typeof value === 'string' ? value : '');
    return { pid, started: word(started), bootId: word(boot), address: word(address) };
  } catch {
    return undefined;
  }
}

function isAlive(holder: Holder): boolean {
  if (holder.bootId !== bootId()) return false;
  try {
    process.kill(holder.pid, 0);
  } catch (error) {
    return (error as NodeJS.ErrnoException).code === 'EPERM';
  }
  return holder.started === '' || startOf(holder.pid) === holder.started;
}

/** Fields of /proc/PID/stat after the name in brackets, the state first; undefined where the system does not say. */
function statOf(pid: number): readonly string[] | undefined {
  try {
    const stat = readFileSync(`/proc/${pid}/stat`, 'utf8');
    return stat.slice(stat.lastIndexOf(')') + 2).split(' ');
  } catch {
    return undefined;
  }
}

/** Ended, though its parent has not asked how: it holds nothing any more. */
function isDead(stat: readonly string[] | undefined): boolean {
  return stat?.[0] === 'Z' || stat?.[0] === 'X';
}

/** When a process began, in ticks since boot: field 22 of /proc/PID/stat, as proc(5) counts them. */
function startOf(pid: number): string {
  const stat = statOf(pid);
  return isDead(stat) ? 'ended' : stat?.[19] ?? '';
}

function bootId(): string {
  try {
    return readFileSync('/proc/sys/kernel/random/boot_id', 'utf8').trim();
  } catch {
    return '';
  }
}
