import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { JOURNAL_VERSION } from '../../core/journal/migrate.ts';
import { journalFile } from '../keeperForm.ts';
import { readPrefix } from '../keeperFile.ts';

/** The piece that the journal's file says was put on the bench last, as a list of one text; empty when there is none, or no file. */
export async function pieceOnBench(journalFolder: string): Promise<readonly string[]> {
  const content = await readFile(join(journalFolder, journalFile(JOURNAL_VERSION))).catch(() => undefined);
  if (content === undefined) return [];
  const last = readPrefix(content).records.findLast(({ entry }) => entry.kind === 'piece loaded');
  return last?.entry.kind === 'piece loaded' ? [last.entry.text] : [];
}
