import { open, readFile, rename } from 'node:fs/promises';
import { join } from 'node:path';
import type { Moment } from '../core/clock/moment.ts';

/** Between two heartbeats written to the disk: it bounds what is not known after a power cut, and spares the card. */
const WRITE_EVERY_MS = 10_000;

/** The last time that the bench is known to have been alive. */
export interface Heartbeat {
  /** As it stood when the server started; undefined on the first start, or when it cannot be read. */
  readonly before: Moment | undefined;
  /** The latest, kept or not. */
  readonly latest: Moment | undefined;
  beat(now: Moment): Promise<void>;
}

/** Opens the heartbeat kept in `folder`. */
export async function openHeartbeat(folder: string): Promise<Heartbeat> {
  const file = join(folder, 'heartbeat.json');
  const before = readMoment(await readFile(file, 'utf8').catch(() => ''));
  let latest = before;
  let written: Moment | undefined;
  return {
    before,
    get latest() {
      return latest;
    },
    async beat(now) {
      latest = now;
      if (written && now.monotonicMs - written.monotonicMs < WRITE_EVERY_MS) return;
      written = now;
      await replace(file, JSON.stringify(now));
    },
  };
}

/** Old or new after a power cut, never half: written beside and renamed. */
async function replace(file: string, text: string): Promise<void> {
  const handle = await open(`${file}.new`, 'w');
  try {
    await handle.writeFile(text);
    await handle.datasync();
  } finally {
    await handle.close();
  }
  await rename(`${file}.new`, file);
}

function readMoment(text: string): Moment | undefined {
  try {
    const { wallMs, wallTrusted, bootId, monotonicMs } = JSON.parse(text) as Record<string, unknown>;
    if (typeof wallMs !== 'number' || typeof wallTrusted !== 'boolean' || typeof bootId !== 'string' || typeof monotonicMs !== 'number') return undefined;
    return { wallMs, wallTrusted, bootId, monotonicMs };
  } catch {
    return undefined;
  }
}
