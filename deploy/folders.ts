import { mkdir, open, readdir, readFile, stat, type FileHandle } from 'node:fs/promises';
import { homedir } from 'node:os';
import { join } from 'node:path';
import { Refusal } from './answer.ts';

/** Where things are kept on this machine. */
export interface Folders {
  /** The journal's file, its side files and the reserve. */
  readonly journal: string;
  /** Piece files and backups: the maker's own folder, listed on the files screen. */
  readonly pieces: string;
  /** Speech models of the maker's choice, beside the one that ships. */
  readonly models: string;
}

/** The folders, from BENCHCALL_DATA, BENCHCALL_PIECES and the desktop's data folder (XDG_DATA_HOME, usually ~/.local/share). */
export function foldersFrom(environment: NodeJS.ProcessEnv): Folders {
  const data = environment['BENCHCALL_DATA'] ?? join(environment['XDG_DATA_HOME'] ?? join(homedir(), '.local', 'share'), 'benchcall');
  return { journal: join(data, 'journal'), pieces: environment['BENCHCALL_PIECES'] ?? join(data, 'pieces'), models: join(data, 'models') };
}

export interface ListedFile {
  readonly name: string;
  readonly bytes: number;
  /** By the wall clock, right or wrong. */
  readonly changedMs: number;
}

/** A name without a path: letters, digits and plain signs, no dot at the start. */
const FILE_NAME = /^[\p{L}\p{N}_(][\p{L}\p{N}_() ,.'-]{0,118}$/u;

/** The files of a folder whose name ends in one of `endings`, by name. A folder that is not there yet is empty. */
export async function listFiles(folder: string, endings: readonly string[]): Promise<readonly ListedFile[]> {
  const names = await readdir(folder).catch(() => []);
  const wanted = names.filter((name) => FILE_NAME.test(name) && endings.some((ending) => name.endsWith(ending))).sort();
  const listed = await Promise.all(wanted.map(async (name): Promise<ListedFile | undefined> => {
    const found = await stat(join(folder, name)).catch(() => undefined);
    return found?.isFile() ? { name, bytes: found.size, changedMs: Math.floor(found.mtimeMs) } : undefined;
  }));
  return listed.filter((file) => file !== undefined);
}

/** @throws Refusal when the name holds a path or an odd character, or ends in none of `endings` */
export function checkedName(name: string, endings: readonly string[]): string {
  if (FILE_NAME.test(name) && endings.some((ending) => name.endsWith(ending))) return name;
  throw new Refusal(400, `"${name}" cannot be a file name here: letters, digits, spaces and - _ . , ( ) only, ending in ${endings.join(' or ')}.`);
}

/** @throws Refusal 404 when there is no such file, 413 when it is longer than `limitBytes` */
export async function readNamed(folder: string, name: string, limitBytes: number): Promise<string> {
  const file = join(folder, name);
  const found = await stat(file).catch(() => undefined);
  if (!found?.isFile()) throw new Refusal(404, `There is no file "${name}" in ${folder}.`);
  if (found.size > limitBytes) throw new Refusal(413, `"${name}" is ${Math.ceil(found.size / 1024)} KB long; at most ${Math.floor(limitBytes / 1024)} KB are read.`);
  return readFile(file, 'utf8');
}

/**
 * Saves a new file, on the disk before it is answered for. Never writes over another: when the name is taken, the next free
 * "name 2.json" is used.
 * @returns the name that it was given
 */
export async function saveNew(folder: string, name: string, content: string | Buffer): Promise<string> {
  await mkdir(folder, { recursive: true });
  const { handle, given } = await openNew(folder, name);
  try {
    await handle.writeFile(content);
    await handle.sync();
  } finally {
    await handle.close();
  }
  await syncFolder(folder);
  return given;
}

async function openNew(folder: string, name: string): Promise<{ handle: FileHandle; given: string }> {
  const dot = name.lastIndexOf('.');
  for (let copy = 1; copy <= 999; copy += 1) {
    const given = copy === 1 ? name : `${name.slice(0, dot)} ${copy}${name.slice(dot)}`;
    try {
      return { handle: await open(join(folder, given), 'wx'), given };
    } catch (error) {
      if ((error as NodeJS.ErrnoException).code !== 'EEXIST') throw error;
    }
  }
  throw new Refusal(409, `There are too many files called "${name}" in ${folder}.`);
}

/** Makes a new name in a folder last through a power cut. */
export async function syncFolder(folder: string): Promise<void> {
  const handle = await open(folder, 'r');
  try {
    await handle.sync();
  } finally {
    await handle.close();
  }
}
