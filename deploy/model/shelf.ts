import { mkdir, readdir, readFile, rename, rm, writeFile } from 'node:fs/promises';
import { createHash } from 'node:crypto';
import { join } from 'node:path';
import type { Verdict } from './check.ts';
import { checkApart } from './checkApart.ts';
import { markOf } from './mark.ts';

/** A model that lies in the models folder, and how it stands. */
export interface ShelvedModel {
  /** As it is called in the folder. */
  readonly name: string;
  readonly chosen: boolean;
  /** Undefined until it was checked as it is now. */
  readonly verdict: Verdict | undefined;
  /** The packed form that the kiosk is given; only of a good one. */
  readonly packed?: string;
}

export interface ShelfOptions {
  readonly folder: string;
  /** Pieces whose names a model should hear. */
  readonly pieceTexts: () => Promise<readonly string[]>;
  readonly check?: typeof checkApart;
}

/** What was found, kept beside the models: as long as a model's mark stays the same, it is not checked again. */
interface Kept { readonly name: string; readonly mark: string; readonly verdict: Verdict; readonly packed?: string }

const MODEL = /\.(zip|tgz|tar|tar\.[a-z0-9]+|7z|rar)$/i;
const CHECKED = '.checked';
const CHOICE = 'chosen.json';

/**
 * The models folder: what the maker put into it, what checks came to, and which model is chosen. A model that is found good is chosen by that; the maker can
 * choose another, or the built-in one (null), and then that holds until a new one comes.
 */
export class ModelShelf {
  readonly #options: ShelfOptions;
  #checking: Promise<void> | undefined;
  #end: () => void = () => undefined;
  #ended = false;

  constructor(options: ShelfOptions) {
    this.#options = options;
  }

  /** True while something is being checked. */
  get busy(): boolean {
    return this.#checking !== undefined;
  }

  async list(): Promise<readonly ShelvedModel[]> {
    const chosen = await this.#chosenName();
    return Promise.all((await this.#names()).map(async (name): Promise<ShelvedModel> => {
      const kept = await this.#kept(name);
      const good = kept?.verdict.faults.length === 0;
      return { name, chosen: good && name === chosen, verdict: kept?.verdict, ...(good ? { packed: join(this.#options.folder, kept.packed ?? `${CHECKED}/${idOf(name)}.tar.gz`) } : {}) };
    }));
  }

  /** Chooses a model that was found good, or the built-in one; false when there is no such model. */
  async choose(name: string | null): Promise<boolean> {
    if (name !== null && !(await this.list()).some((model) => model.name === name && model.packed !== undefined)) return false;
    await this.#write(CHOICE, { name });
    return true;
  }

  /** Checks everything that was not checked as it is now, one after the other, and forgets what is gone. Settles when all is checked. */
  checkNew(): Promise<void> {
    this.#checking ??= this.#checkAll().finally(() => { this.#checking = undefined; });
    return this.#checking;
  }

  /** Breaks off a check that runs. */
  stop(): void {
    this.#ended = true;
    this.#end();
  }

  /** Takes in a model from elsewhere: checks it, and puts a good one into the folder, packed, and chooses it. */
  async takeIn(path: string, name: string, morePieces: readonly string[] = []): Promise<Verdict> {
    const fresh = join(this.#options.folder, CHECKED, `new-${process.pid}.tar.gz`);
    await mkdir(join(this.#options.folder, CHECKED), { recursive: true });
    try {
      const verdict = await this.#check(path, fresh, morePieces);
      if (verdict.faults.length > 0) return verdict;
      const given = `${name}.tar.gz`;
      await rename(fresh, join(this.#options.folder, given));
      await this.#keep({ name: given, mark: await markOf(join(this.#options.folder, given)), verdict, packed: given });
      await this.choose(given);
      return verdict;
    } finally {
      await rm(fresh, { force: true });
    }
  }

  async #checkAll(): Promise<void> {
    for (const name of await this.#names()) {
      if (!this.#ended && (await this.#kept(name)) === undefined) await this.#checkOne(name);
    }
    await this.#forgetGone();
  }

  async #checkOne(name: string): Promise<void> {
    const path = join(this.#options.folder, name);
    const mark = await markOf(path);
    await mkdir(join(this.#options.folder, CHECKED), { recursive: true });
    const verdict = await this.#check(path, join(this.#options.folder, CHECKED, `${idOf(name)}.tar.gz`));
    // What changed meanwhile (it was still being copied) was not what was checked.
    if (this.#ended || (await markOf(path).catch(() => '')) !== mark) return;
    await this.#keep({ name, mark, verdict });
    if (verdict.faults.length === 0) await this.choose(name);
  }

  async #check(path: string, packTo: string, morePieces: readonly string[] = []): Promise<Verdict> {
    const { check = checkApart, pieceTexts } = this.#options;
    return check({ path, packTo, pieceTexts: [...await pieceTexts(), ...morePieces] }, undefined, (end) => { this.#end = end; });
  }

  async #names(): Promise<readonly string[]> {
    const entries = await readdir(this.#options.folder, { withFileTypes: true }).catch(() => []);
    return entries.filter((entry) => !entry.name.startsWith('.') && (entry.isDirectory() || MODEL.test(entry.name))).map(({ name }) => name).sort();
  }

  async #kept(name: string): Promise<Kept | undefined> {
    const kept = await this.#read(`${idOf(name)}.json`) as Kept | undefined;
    return kept?.mark === await markOf(join(this.#options.folder, name)).catch(() => '') ? kept : undefined;
  }

  async #chosenName(): Promise<string | null> {
    return (await this.#read(CHOICE) as { name?: string | null } | undefined)?.name ?? null;
  }

  #keep(kept: Kept): Promise<void> {
    return this.#write(`${idOf(kept.name)}.json`, kept);
  }

  /** What is damaged here is only reckoned again. */
  async #read(file: string): Promise<unknown> {
    try {
      return JSON.parse(await readFile(join(this.#options.folder, CHECKED, file), 'utf8')) as unknown;
    } catch {
      return undefined;
    }
  }

  async #write(file: string, value: unknown): Promise<void> {
    const path = join(this.#options.folder, CHECKED, file);
    await mkdir(join(this.#options.folder, CHECKED), { recursive: true });
    await writeFile(`${path}.new`, JSON.stringify(value, null, 2));
    await rename(`${path}.new`, path);
  }

  async #forgetGone(): Promise<void> {
    const ids = new Set((await this.#names()).map(idOf));
    for (const file of await readdir(join(this.#options.folder, CHECKED)).catch(() => [])) {
      const id = /^([0-9a-f]{16})\.(json|tar\.gz)$/.exec(file)?.[1];
      if (id !== undefined && !ids.has(id)) await rm(join(this.#options.folder, CHECKED, file), { force: true });
    }
  }
}

function idOf(name: string): string {
  return createHash('sha256').update(name).digest('hex').slice(0, 16);
}
