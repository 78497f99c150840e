import type { Bench } from '../../core/bench/bench.ts';
import type { Reply } from '../../core/bench/reply.ts';
import type { Request } from '../../core/bench/request.ts';
import type { Moment } from '../../core/clock/moment.ts';
import { exportBundle, LARGEST_BUNDLE_BYTES } from '../../core/journal/bundle.ts';
import { LARGEST_FILE_BYTES } from '../../core/piece/load.ts';
import type { HostAct, ShelfPiece } from '../hostPort.ts';
import { download, reason, saveOnShelf, SHELF } from './shelf.ts';

export interface FilesOptions {
  readonly submit: (request: Request) => Promise<void>;
  /** A sentence for the screen. */
  readonly notice: (sentence: string) => void;
  /** An answer that is said and shown. */
  readonly tell: (reply: Reply) => void;
  readonly bench: () => Bench;
  readonly now: () => Moment;
}

type FileAct = Extract<HostAct, { kind: 'load demo' | 'open from shelf' | 'open piece file' | 'save everything' | 'take in everything' }>;

const DEMO = '/pieces/bakers-work-table.json';
const BACKUP = /^benchcall backup /;

/** Piece files and backups: the demo that ships, the pieces folder, a file chosen by hand. */
export class Files {
  readonly #options: FilesOptions;

  constructor(options: FilesOptions) {
    this.#options = options;
  }

  async act(act: FileAct): Promise<void> {
    switch (act.kind) {
      case 'load demo':
        return this.#open(DEMO, 'the demo piece');
      case 'open from shelf':
        return this.#open(act.address, decodeURIComponent(act.address.slice(act.address.lastIndexOf('/') + 1)));
      case 'open piece file':
        return this.#take(act.file, LARGEST_FILE_BYTES, (text) => requestFor(text, act.file.name));
      case 'take in everything':
        return this.#take(act.file, LARGEST_BUNDLE_BYTES, (text) => ({ kind: 'take in everything', text }));
      case 'save everything':
        return this.#save();
    }
  }

  /** Piece files and backups in the pieces folder. Throws when the server is away. */
  async shelf(): Promise<readonly ShelfPiece[]> {
    const response = await fetch(SHELF, { cache: 'no-store' });
    const { folder, files } = (await response.json()) as { folder: string; files: readonly { name: string }[] };
    return files.map(({ name }) => ({ name: name.replace(/\.json$/, ''), from: folder, address: `${SHELF}/${encodeURIComponent(name)}` }));
  }

  async #open(address: string, from: string): Promise<void> {
    try {
      const response = await fetch(address, { cache: 'no-store' });
      const text = await response.text();
      if (!response.ok) throw new Error(text);
      await this.#options.submit(requestFor(text, from));
    } catch (error) {
      this.#options.notice(`Could not open ${from}: ${reason(error)}.`);
    }
  }

  async #take(file: File, limitBytes: number, request: (text: string) => Request): Promise<void> {
    if (file.size > limitBytes) {
      this.#options.notice(`${file.name} is ${Math.ceil(file.size / 1024)} KB long; at most ${Math.floor(limitBytes / 1024)} KB are read. Choose another file.`);
      return;
    }
    try {
      await this.#options.submit(request(await file.text()));
    } catch (error) {
      this.#options.notice(`${file.name} could not be read: ${reason(error)}. Take the stick out and in, and choose it again.`);
    }
  }

  /** A table or a piece into the pieces folder; when that fails, as a download. */
  async keep({ name, text, say }: NonNullable<Reply['file']>): Promise<void> {
    const type = name.endsWith('.json') ? 'application/json' : 'text/csv';
    try {
      const saved = await saveOnShelf(name, text, type);
      this.#options.tell({ say: `${say} saved in the pieces folder.`, note: `“${saved.name}” is saved in ${saved.folder}.`, signal: 'done' });
    } catch (error) {
      download(name, new Blob([text], { type }));
      this.#options.notice(`The pieces folder could not be written (${reason(error)}), so “${name}” was handed to the browser’s downloads.`);
    }
  }

  /** Into the pieces folder by way of the server; when that fails, as a download. */
  async #save(): Promise<void> {
    const { records, state } = this.#options.bench();
    const now = this.#options.now();
    const text = exportBundle(records, state, now);
    const name = `benchcall backup ${new Date(now.wallMs).toISOString().slice(0, 10)}.json`;
    try {
      const saved = await saveOnShelf(name, text, 'application/json');
      this.#options.tell({ say: 'Everything is saved in the pieces folder.', note: `Everything is saved: “${saved.name}” in ${saved.folder}.`, signal: 'done' });
    } catch (error) {
      download(name, new Blob([text], { type: 'application/json' }));
      this.#options.notice(`The pieces folder could not be written (${reason(error)}), so “${name}” was handed to the browser’s downloads.`);
    }
  }
}

/** A table is boards for the rack; what was saved from here is everything; all else is a piece. */
function requestFor(text: string, from: string): Request {
  if (from.toLowerCase().endsWith('.csv')) return { kind: 'take in boards', text, from };
  return BACKUP.test(from) ? { kind: 'take in everything', text } : { kind: 'load piece', text, from };
}
