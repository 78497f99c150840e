import { readFileSync } from 'node:fs';
import { basename, join, resolve } from 'node:path';
import { parseArgs } from 'node:util';
import { loadPiece } from '../core/piece/load.ts';
import { foldersFrom } from './folders.ts';
import type { Verdict } from './model/check.ts';
import { writeFault } from './model/fault.ts';
import { BUILT_IN, listModels, type ListedModel } from './model/listing.ts';
import { pieceOnBench } from './model/pieceOnBench.ts';
import { ModelShelf } from './model/shelf.ts';

const USAGE = `npm run model -- FILE|FOLDER      checks a speech model (.zip, .tar.gz, or its folder), and hears with it from the next start
      --piece FILE                look up the names of this piece too, beside those of the one on the bench
npm run model -- --list           the models that there are, and which one is in use
npm run model -- --use NAME       hear with one of them
npm run model -- --built-in       go back to the one that ships`;

const MEGABYTE = 2 ** 20;

/** Brings in, lists and chooses speech models. Gives the exit status. */
async function main(): Promise<number> {
  const { values, positionals } = parseArgs({
    allowPositionals: true, options: { list: { type: 'boolean' }, 'built-in': { type: 'boolean' }, use: { type: 'string' }, piece: { type: 'string', multiple: true }, help: { type: 'boolean' } },
  });
  const { models, journal } = foldersFrom(process.env);
  const shelf = new ModelShelf({ folder: models, pieceTexts: () => pieceOnBench(journal) });
  if (values.list) return list(shelf, models);
  if (values['built-in']) return choose(shelf, null);
  if (values.use !== undefined) return choose(shelf, values.use);
  const [path, second] = positionals;
  if (path === undefined || values.help) {
    console.log(USAGE);
    return values.help ? 0 : 1;
  }
  if (second !== undefined) throw new Error(`One model at a time: give "${path}" or "${second}".`);
  return bringIn(shelf, resolve(path), (values.piece ?? []).map(readPiece), models);
}

async function bringIn(shelf: ModelShelf, path: string, pieces: readonly string[], folder: string): Promise<number> {
  console.log(`Checking ${basename(path)}. This takes some seconds, with a large model some minutes.`);
  const verdict = await shelf.takeIn(path, nameOf(path), pieces);
  for (const line of describe(verdict)) console.log(line);
  if (verdict.faults.length > 0) {
    console.log(`${basename(path)} is not taken. The kiosk goes on with the model that it has.`);
    return 1;
  }
  console.log(`It is in ${join(folder, `${nameOf(path)}.tar.gz`)} and is used from the next start of the kiosk.`);
  return 0;
}

async function list(shelf: ModelShelf, folder: string): Promise<number> {
  await shelf.checkNew();
  for (const model of await listModels(shelf)) for (const line of listing(model)) console.log(line);
  console.log(`\nOthers are put into ${folder}, or given: npm run model -- FILE`);
  return 0;
}

function listing({ name, chosen, state, sentences }: ListedModel): readonly string[] {
  return [`${chosen ? '*' : ' '} ${name}${state === 'good' ? '' : ` (${state})`}`, ...sentences.map((sentence) => `      ${sentence}`)];
}

async function choose(shelf: ModelShelf, name: string | null): Promise<number> {
  await shelf.checkNew();
  if (!(await shelf.choose(name === BUILT_IN ? null : name))) throw new Error(`There is no model "${name ?? ''}" that can be used. See npm run model -- --list`);
  console.log(`The kiosk hears with ${name ?? 'the built-in model'} from its next start.`);
  return 0;
}

function describe({ faults, remarks, facts }: Verdict): readonly string[] {
  if (facts === undefined) return faults.map(writeFault);
  const { words, bytes, loadMs, heapBytes, heard, of, realTime } = facts;
  return [
    `It is good: ${words === null ? 'it is given its words by the kiosk' : `${words} words`}, ${(bytes / MEGABYTE).toFixed(1)} MB, loaded in ${(loadMs / 1000).toFixed(1)} s, ${Math.round(heapBytes / MEGABYTE)} MB in the engine,`
    + ` heard ${heard} of ${of} spoken numbers at ${realTime.toFixed(2)} of real time.`,
    ...remarks,
  ];
}

/** The model's name without what it is packed as. */
function nameOf(path: string): string {
  return basename(path).replace(/\.(zip|tgz|tar|tar\.gz)$/i, '').replace(/^\.+/, '') || 'model';
}

/** @throws Error in words when the file is not there or no sound piece */
function readPiece(file: string): string {
  let text;
  try {
    text = readFileSync(file, 'utf8');
  } catch (error) {
    throw new Error(`${file} cannot be read: ${(error as NodeJS.ErrnoException).code ?? String(error)}. Name a piece file with --piece FILE.`, { cause: error });
  }
  const loaded = loadPiece(text);
  if (!loaded.ok) throw new Error(loaded.fault.map(({ line, column, path, message }) => `${file}:${line}:${column} ${path}: ${message}`).join('\n'));
  return text;
}

try {
  process.exitCode = await main();
} catch (error) {
  console.error(error instanceof Error ? error.message : error);
  process.exitCode = 1;
}
