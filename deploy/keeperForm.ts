import { readdir, readFile, rename } from 'node:fs/promises';
import { join } from 'node:path';
import { JOURNAL_VERSION, MIGRATIONS, openJournal, type Migration } from '../core/journal/migrate.ts';
import { syncFolder } from './folders.ts';
import { writeAll, writeLines, type FileSystem } from './keeperFile.ts';

/** The form in which the journal is written now, and how to come to it from the ones before. */
export interface Form {
  readonly present: number;
  readonly migrations: readonly Migration[];
}

export const PRESENT_FORM: Form = { present: JOURNAL_VERSION, migrations: MIGRATIONS };

/** Each form has a file of its own: an older bench then knows to keep its hands off, and an older file stays as it was. */
export function journalFile(version: number): string {
  return `journal-${version}.jsonl`;
}

/**
 * Makes sure that a journal of an older form, where there is one, is brought up into the file of this form.
 * @returns a sentence for the person when it was done
 * @throws Error with a sentence when a newer bench has written here, or the older journal cannot be brought up
 */
export async function bringUp(folder: string, files: FileSystem, { present, migrations }: Form): Promise<string | undefined> {
  const forms = (await readdir(folder)).map((name) => Number(/^journal-(\d+)\.jsonl$/.exec(name)?.[1] ?? 0));
  const newest = Math.max(0, ...forms);
  if (newest > present) throw new Error(`it was written by a newer Benchcall (${journalFile(newest)}): start that one`);
  if (newest === 0 || newest === present) return undefined;
  const opened = openJournal(newest, valuesIn(await readFile(join(folder, journalFile(newest)), 'utf8')), migrations, present);
  if (opened.how !== 'writing') throw new Error(opened.say);
  const path = join(folder, journalFile(present));
  const file = await files.open(`${path}.new`);
  try {
    await file.truncate(0);
    await writeAll(file, writeLines(opened.records).text, 0);
    await file.datasync();
  } finally {
    await file.close();
  }
  await rename(`${path}.new`, path);
  await syncFolder(folder);
  return `The journal was brought from form ${newest} to form ${present}. The older file is kept beside it.`;
}

/** What the lines hold, in whatever form; a line that cannot be read ends it. */
function valuesIn(text: string): readonly unknown[] {
  const values: unknown[] = [];
  for (const line of text.split('\n')) {
    try {
      const act = JSON.parse(line) as unknown;
      if (!Array.isArray(act)) break;
      values.push(...(act as unknown[]));
    } catch {
      break;
    }
  }
  return values;
}
