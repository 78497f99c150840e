import { build } from 'esbuild';
import { copyFileSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { chromium, type Page } from 'playwright-core';
import { loadPiece } from '../core/piece/load.ts';
import { COPIES } from './assets.ts';
import { BUNDLING } from './build.ts';
import { CHROMIUM_FLAGS, findOrInstallChromium } from './chromium.mjs';
import { foldersFrom } from './folders.ts';
import type { Asked, Outcome } from './hear/outcome.ts';
import type {} from './hear/page.ts';
import { readHead } from './hear/wavHeader.ts';
import { ModelShelf } from './model/shelf.ts';
import { startServer } from './server.ts';

const USAGE = `npm run hear -- FILE.wav …        lets the kiosk's ear hear recordings, and prints a line of JSON for each
      --addressed                 as if the listen key had been pressed: the address word is not needed
      --piece FILE                with this piece on the bench, not the demo
      --grammar FILE              listens for the phrases of this file, one a line, not for those of the piece
      --model FILE.tar.gz         hears with this model, not with the one that the kiosk hears with

Each recording is played in real time in headless Chromium, as the page's microphone: the capture worklet, the gate, the recogniser, attention, the parser and the
answers are the kiosk's own. Before and after it sounds its own softest moment, for a room is never silent. Nothing is kept.`;

const ROOT = join(import.meta.dirname, '..');
const DEMO = join(ROOT, 'core', 'piece', 'demo', 'bakers-work-table.json');
const SHIPPED = join(ROOT, 'sounds', 'speech-model', 'model.tar.gz');
const EAR_FILES = COPIES.filter(({ to }) => to.startsWith('ear/'));

async function main(): Promise<number> {
  const { values, positionals } = parseArgs({
    allowPositionals: true, options: { addressed: { type: 'boolean' }, piece: { type: 'string' }, grammar: { type: 'string' }, model: { type: 'string' }, help: { type: 'boolean' } },
  });
  if (positionals.length === 0 || values.help) {
    console.log(USAGE);
    return values.help ? 0 : 1;
  }
  const asked: Asked = { pieceText: readPiece(values.piece ?? DEMO), ...(values.grammar === undefined ? {} : { grammar: readGrammar(values.grammar) }) };
  const folder = mkdtempSync(join(tmpdir(), 'hear-'));
  try {
    return await hearAll(positionals, folder, asked, values.model ?? await chosenModel(), values.addressed ?? false);
  } finally {
    rmSync(folder, { recursive: true, force: true, maxRetries: 5 });
  }
}

/** @returns the exit status: 1 when any recording could not be heard at all */
async function hearAll(files: readonly string[], folder: string, asked: Asked, model: string, addressed: boolean): Promise<number> {
  await makeSite(folder, model);
  const server = await startServer({ site: folder, port: 0, folders: { journal: join(folder, 'journal'), pieces: join(folder, 'pieces'), models: join(folder, 'none') }, keeper: { reserveBytes: 0 } });
  const browser = await chromium.launch({ executablePath: findOrInstallChromium(), headless: true, args: [...CHROMIUM_FLAGS, '--autoplay-policy=no-user-gesture-required'] });
  try {
    const page = await browser.newPage();
    await page.goto(server.address);
    await page.waitForFunction(() => 'hearPage' in window);
    const { loadMs, unheard, guessed } = await page.evaluate((what) => window.hearPage.open(what), asked);
    console.error(`Hearing with ${model}, ready after ${(loadMs / 1000).toFixed(1)} s.`);
    if (unheard.length > 0) console.error(`It cannot hear: ${unheard.join(', ')}`);
    if (guessed.length > 0) console.error(`How these are said is a guess: ${guessed.join(', ')}`);
    let failed = 0;
    for (const [index, file] of files.entries()) failed += await hearOne(page, file, join(folder, 'recordings', `${index}.wav`), addressed) ? 0 : 1;
    return failed > 0 ? 1 : 0;
  } finally {
    await browser.close();
    await server.close();
  }
}

/** The ear's own files, as the kiosk has them, and a page to hear in. */
async function makeSite(folder: string, model: string): Promise<void> {
  for (const name of ['ear', 'models', 'recordings']) mkdirSync(join(folder, name));
  for (const { from, to } of EAR_FILES) copyFileSync(join(ROOT, from), join(folder, to));
  copyFileSync(model, join(folder, 'models', 'model.tar.gz'));
  writeFileSync(join(folder, 'index.html'), '<!doctype html><title>Hear</title><script type="module" src="/page.js"></script>');
  await build({
    ...BUNDLING, outdir: folder, sourcemap: false,
    entryPoints: [{ in: 'kiosk/ear/recogniser-worker.ts', out: 'ear/recogniser-worker' }, { in: 'kiosk/ear/capture-worklet.ts', out: 'ear/capture-worklet' }, { in: 'deploy/hear/page.ts', out: 'page' }],
  });
}

/** Prints what came of one recording; false when it could not be heard. */
async function hearOne(page: Page, file: string, served: string, addressed: boolean): Promise<boolean> {
  const refused = (error: string) => {
    console.log(JSON.stringify({ file, error }));
    return false;
  };
  let bytes;
  try {
    bytes = readFileSync(file);
  } catch (error) {
    return refused(`it cannot be read: ${(error as NodeJS.ErrnoException).code ?? String(error)}`);
  }
  const head = readHead(bytes);
  if (!head.ok) return refused(head.fault);
  writeFileSync(served, bytes);
  try {
    const outcome = await page.evaluate(([url, named]) => window.hearPage.hear(url, named), [`/recordings/${served.slice(served.lastIndexOf('/') + 1)}`, addressed] as const);
    console.log(JSON.stringify(lineOf(file, head.value, outcome, addressed)));
    return true;
  } catch (error) {
    const { format } = head.value;
    const what = format === undefined ? 'it is no sound that the browser can read' : `the browser cannot decode it (${format.coding}, ${format.bits} bits, ${format.channels} channels)`;
    return refused(/decod/i.test(String(error)) ? `${what}: give a WAV of 16 bits` : String(error));
  }
}

function lineOf(file: string, { format, warnings }: { format?: object; warnings: readonly string[] }, outcome: Outcome, addressed: boolean): object {
  const { recognised, heard, level, speechEnds } = outcome;
  const rounded = Object.fromEntries(Object.entries<number>({ ...level }).map(([name, value]) => [name, Number(value.toFixed(4))]));
  return {
    file, format: { ...format, ...outcome.format }, addressed, recognised, heard, speechEnds, level: rounded,
    warnings: [...warnings, ...outcome.warnings, ...silence(outcome, addressed)],
  };
}

function silence({ recognised, heard, speechEnds }: Outcome, addressed: boolean): readonly string[] {
  if (heard.length > 0) return [];
  if (speechEnds === null) return ['nothing in it is much louder than its room'];
  if (recognised.length === 0) return ['nothing of it was recognised'];
  return addressed ? [] : ['it was not addressed: it does not begin with the address word (see --addressed)'];
}

/** What the kiosk on this machine hears with. */
async function chosenModel(): Promise<string> {
  const shelf = new ModelShelf({ folder: foldersFrom(process.env).models, pieceTexts: () => Promise.resolve([]) });
  return (await shelf.list()).find(({ chosen }) => chosen)?.packed ?? SHIPPED;
}

/** @throws Error in words when the file is not there or no sound piece */
function readPiece(file: string): string {
  const text = readText(file, 'Name a piece file with --piece FILE.');
  const loaded = loadPiece(text);
  if (!loaded.ok) throw new Error(loaded.fault.map(({ line, column, path, message }) => `${file}:${line}:${column} ${path}: ${message}`).join('\n'));
  return text;
}

/** @throws Error in words when the file is not there or has no phrases */
function readGrammar(file: string): readonly string[] {
  const phrases = readText(file, 'Name a file with one phrase a line with --grammar FILE.').split('\n').map((line) => line.trim().toLowerCase()).filter((line) => line !== '' && !line.startsWith('#'));
  if (phrases.length === 0) throw new Error(`${file} has no phrases: one a line was expected.`);
  return phrases;
}

function readText(file: string, todo: string): string {
  try {
    return readFileSync(file, 'utf8');
  } catch (error) {
    throw new Error(`${file} cannot be read: ${(error as NodeJS.ErrnoException).code ?? String(error)}. ${todo}`, { cause: error });
  }
}

try {
  process.exitCode = await main();
} catch (error) {
  console.error(error instanceof Error ? error.message : error);
  process.exitCode = 1;
}
