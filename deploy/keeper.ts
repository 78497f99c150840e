import { mkdir, rename, rm } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import type { JournalRecord } from '../core/journal/entry.ts';
import { Refusal } from './answer.ts';
import { saveNew, syncFolder } from './folders.ts';
import { DISK, freshOf, readAll, readPrefix, writeAll, writeLines, type FileSystem, type Line, type OpenFile } from './keeperFile.ts';
import { bringUp, journalFile, PRESENT_FORM, type Form } from './keeperForm.ts';
import { reserveAt, RESERVE_BYTES, type Reserve } from './reserve.ts';

export interface KeeperStatus {
  readonly lastNumber: number;
  /** Checksum of the last record; empty when there is none. */
  readonly lastChecksum: string;
  /** What happened to the file that the person should know, newest last. */
  readonly told: readonly string[];
  /** Why nothing can be written now; absent when all is well. */
  readonly problem?: string;
}

export interface KeeperOptions {
  readonly files?: FileSystem;
  readonly reserveBytes?: number;
  readonly form?: Form;
}

/**
 * The second copy of the journal: a file that is only ever added to, one line an act, each on the disk (fdatasync) before it is
 * answered for. Nothing in it is thrown away: what cannot stand is moved to a side file, and told.
 */
export class Keeper {
  readonly #path: string;
  readonly #files: FileSystem;
  readonly #reserve: Reserve;
  #file: OpenFile;
  /** Length of the sound part; the file is never longer, but for a write in progress. */
  #bytes = 0;
  #lines: Line[] = [];
  #checksums: string[] = [];
  #told: string[] = [];
  #problem: string | undefined;
  /** After a failed write or sync the system's memory of the file is not to be trusted: it is written anew before it is added to. */
  #suspect = false;
  #queue: Promise<unknown> = Promise.resolve();

  private constructor(path: string, files: FileSystem, reserve: Reserve, file: OpenFile) {
    this.#path = path;
    this.#files = files;
    this.#reserve = reserve;
    this.#file = file;
  }

  /**
   * Opens (or begins) the journal's file in `folder`, which must be locked for this process. Opening is recovery.
   * @throws Error with a sentence when it was written by a newer bench, or cannot be read
   */
  static async open(folder: string, options: KeeperOptions = {}): Promise<Keeper> {
    await mkdir(folder, { recursive: true });
    const { files = DISK, form = PRESENT_FORM, reserveBytes = RESERVE_BYTES } = options;
    const broughtUp = await bringUp(folder, files, form);
    const path = join(folder, journalFile(form.present));
    const keeper = new Keeper(path, files, reserveAt(join(folder, 'reserve'), reserveBytes), await files.open(path));
    if (broughtUp !== undefined) keeper.#tell(broughtUp);
    try {
      await keeper.#recover();
      await syncFolder(folder);
    } catch (error) {
      await keeper.#file.close();
      throw error;
    }
    await rm(`${path}.new`, { force: true });
    await keeper.#reserve.fill().catch(() => undefined);
    return keeper;
  }

  get status(): KeeperStatus {
    return {
      lastNumber: this.#checksums.length,
      lastChecksum: this.#checksums.at(-1) ?? '',
      told: this.#told,
      ...(this.#problem === undefined ? {} : { problem: this.#problem }),
    };
  }

  /**
   * Adds records; those that are there already are passed over, so a request may be sent again.
   * @returns the status, once they are on the disk
   * @throws Refusal 409 when a number is skipped or is there with other content, 507 when the disk is full, 503 when it fails otherwise.
   *   Nothing has then been added.
   */
  append(records: readonly JournalRecord[]): Promise<KeeperStatus> {
    return this.#inTurn(async () => {
      const fresh = freshOf(records, this.#checksums);
      if (fresh.length > 0) await this.#write(fresh);
      return this.status;
    });
  }

  /** The file's lines from the one that holds the record after `number`; earlier records of that line come along. */
  linesAfter(number: number): Promise<Buffer> {
    return this.#inTurn(async () => {
      const first = this.#lines.find((line) => line.lastNumber > number);
      return first === undefined ? Buffer.alloc(0) : readAll(this.#file, this.#bytes - first.offset, first.offset);
    });
  }

  /**
   * Takes all records after `number` out of the journal into a side file. Whoever asks must name the last record there, so
   * that nothing is set aside that was not seen.
   * @throws Refusal 409 when the journal ends otherwise than named
   */
  setAsideAfter(number: number, seen: { readonly lastNumber: number; readonly lastChecksum: string }): Promise<KeeperStatus> {
    return this.#inTurn(async () => {
      if (seen.lastNumber !== this.#checksums.length || seen.lastChecksum !== this.status.lastChecksum) throw new Refusal(409, 'The journal\'s file has changed since it was read.');
      if (number >= this.#checksums.length) return this.status;
      const content = await readAll(this.#file, this.#bytes);
      const from = this.#lines.find((line) => line.lastNumber > number)?.offset ?? this.#bytes;
      const where = await this.#saveAside(content.subarray(from));
      await this.#writeAnew(readPrefix(content).records.slice(0, number));
      this.#tell(`Entries ${number + 1} to ${seen.lastNumber} were moved out of the journal's file into ${where}.`);
      return this.status;
    });
  }

  close(): Promise<void> {
    return this.#inTurn(async () => {
      this.#problem = 'the keeper has been closed';
      await this.#file.close();
    });
  }

  async #recover(): Promise<void> {
    const content = await readAll(this.#file, (await this.#file.stat()).size);
    const prefix = readPrefix(content);
    const { records } = prefix;
    if (prefix.fault !== undefined) {
      const where = await this.#saveAside(content.subarray(prefix.bytes));
      this.#tell(`In the journal's file ${prefix.fault}: ${records.length === 0 ? 'no entry before it' : `entries 1 to ${records.length}`} can be read; the ${content.length - prefix.bytes} bytes after that were set aside in ${where}.`);
      await this.#file.truncate(prefix.bytes);
      await this.#file.datasync();
    }
    if (prefix.unended) {
      await writeAll(this.#file, Buffer.from('\n'), prefix.bytes);
      await this.#file.datasync();
    }
    this.#bytes = prefix.bytes + (prefix.unended ? 1 : 0);
    this.#remember(records, prefix.lines);
  }

  #remember(records: readonly JournalRecord[], lines: readonly Line[]): void {
    this.#checksums.push(...records.map((record) => record.checksum));
    this.#lines.push(...lines);
  }

  async #write(fresh: readonly JournalRecord[]): Promise<void> {
    try {
      await this.#tryToWrite(fresh);
    } catch (error) {
      if (!isFull(error) || !await this.#reserve.free()) throw this.#failed(error);
      this.#tell('The disk is full. The room kept in reserve was used up for the last entries: make room on the disk soon.');
      try {
        await this.#tryToWrite(fresh);
      } catch (again) {
        throw this.#failed(again);
      }
    }
    this.#problem = undefined;
  }

  async #tryToWrite(fresh: readonly JournalRecord[]): Promise<void> {
    if (this.#suspect) await this.#writeAnew(readPrefix(await readAll(this.#file, this.#bytes)).records);
    if ((await this.#file.stat()).size !== this.#bytes) throw new Error('another program has changed it');
    const { text, lines } = writeLines(fresh);
    try {
      await writeAll(this.#file, text, this.#bytes);
      this.#suspect = true;
      await this.#file.datasync();
      this.#suspect = false;
    } catch (error) {
      await this.#takeBack();
      throw error;
    }
    this.#remember(fresh, lines.map((line) => ({ ...line, offset: this.#bytes + line.offset })));
    this.#bytes += text.length;
  }

  /** No half line stays behind; where even that fails, the file is suspect. */
  async #takeBack(): Promise<void> {
    try {
      await this.#file.truncate(this.#bytes);
      await this.#file.datasync();
    } catch {
      this.#suspect = true;
    }
  }

  /** Writes the journal into a new file that then takes the old one's place: the one way to be sure of bytes after a failed sync. */
  async #writeAnew(records: readonly JournalRecord[]): Promise<void> {
    const damaged = this.#checksums.slice(0, records.length).some((checksum, index) => records[index]?.checksum !== checksum);
    if (damaged) throw new Error('what was written before can no longer be read');
    const path = this.#path;
    const { text, lines } = writeLines(records);
    await rm(`${path}.new`, { force: true });
    const file = await this.#files.open(`${path}.new`);
    try {
      await writeAll(file, text, 0);
      await file.datasync();
      await rename(`${path}.new`, path);
      await syncFolder(dirname(path));
    } catch (error) {
      await file.close();
      await rm(`${path}.new`, { force: true }).catch(() => undefined);
      throw error;
    }
    await this.#file.close().catch(() => undefined);
    this.#file = file;
    this.#bytes = text.length;
    this.#checksums = [];
    this.#lines = [];
    this.#remember(records, lines);
    this.#suspect = false;
  }

  /** @returns the side file's name */
  async #saveAside(content: Buffer): Promise<string> {
    return saveNew(dirname(this.#path), 'set-aside.jsonl', content);
  }

  #failed(error: unknown): Refusal {
    this.#problem = isFull(error) ? DISK_FULL : `the journal's file cannot be written (${(error as Error).message})`;
    return new Refusal(isFull(error) ? 507 : 503, `${this.#problem[0]?.toUpperCase() ?? ''}${this.#problem.slice(1)}.`);
  }

  #tell(sentence: string): void {
    this.#told = [...this.#told, sentence];
  }

  #inTurn<Value>(work: () => Promise<Value>): Promise<Value> {
    const turn = this.#queue.then(work);
    this.#queue = turn.catch(() => undefined);
    return turn;
  }
}

const DISK_FULL = 'the disk is full: delete or move something, then go on; nothing written before is lost';

function isFull(error: unknown): boolean {
  const { code } = error as NodeJS.ErrnoException;
  return code === 'ENOSPC' || code === 'EDQUOT';
}
