import { readdir, stat } from 'node:fs/promises';
import { join } from 'node:path';
import { MOST_MODEL_FILES } from '../../kiosk/ear/unpack.ts';

/** What tells a file or folder from its earlier self: sizes and times of change. A folder without end is looked at as far as a model could go. */
export async function markOf(path: string): Promise<string> {
  const found = await stat(path);
  if (!found.isDirectory()) return `${found.size} ${Math.floor(found.mtimeMs)}`;
  let [files, bytes, newest] = [0, 0, 0];
  const folders = [path];
  for (let folder = folders.pop(); folder !== undefined && files <= MOST_MODEL_FILES; folder = folders.pop()) {
    for (const entry of (await readdir(folder, { withFileTypes: true })).slice(0, MOST_MODEL_FILES + 1)) {
      const inside = join(folder, entry.name);
      if (entry.isDirectory()) folders.push(inside);
      else if (entry.isFile()) {
        const { size, mtimeMs } = await stat(inside);
        files += 1;
        bytes += size;
        newest = Math.max(newest, Math.floor(mtimeMs));
      }
    }
  }
  return `${files} files ${bytes} ${newest}`;
}
