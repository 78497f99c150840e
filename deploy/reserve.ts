import { open, rm, stat, statfs } from 'node:fs/promises';
import { dirname } from 'node:path';

export const RESERVE_BYTES = 8 * 1024 * 1024;

/** The reserve is only made where it is a small part of what is free. */
const FREE_FOR_A_RESERVE = 8 * RESERVE_BYTES;

/** A file of nothing, kept so that there is something to give up when the disk is full: the last entries then still find room. */
export interface Reserve {
  /** Makes the file when it is not there and there is plenty of room. */
  fill(): Promise<void>;
  /** Gives the room up. @returns whether there was any */
  free(): Promise<boolean>;
}

export function reserveAt(file: string, bytes = RESERVE_BYTES): Reserve {
  return {
    async fill() {
      if (bytes === 0 || await exists(file)) return;
      const disk = await statfs(dirname(file));
      if (disk.bavail * disk.bsize < FREE_FOR_A_RESERVE) return;
      const handle = await open(file, 'w');
      try {
        await handle.writeFile(Buffer.alloc(bytes, 'reserve '));
        await handle.datasync();
      } finally {
        await handle.close();
      }
    },
    async free() {
      if (!await exists(file)) return false;
      await rm(file, { force: true });
      return true;
    },
  };
}

async function exists(file: string): Promise<boolean> {
  return stat(file).then(() => true, () => false);
}
