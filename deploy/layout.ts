import { readFileSync } from 'node:fs';
import { mkdir, readFile } from 'node:fs/promises';
import { basename, join } from 'node:path';
import { parseArgs } from 'node:util';
import type { SheetChoice } from '../core/layout/paper/choice.ts';
import { everySheet, nameOfSheets, sheetsFor, type SheetOrder } from '../core/layout/paper/order.ts';
import { PAPERS, type PaperName } from '../core/layout/paper/paperSize.ts';
import { nanometres } from '../core/length/length.ts';
import type { Rounding } from '../core/length/rounding.ts';
import { evaluate } from '../core/piece/evaluate.ts';
import { loadPiece, writeFault } from '../core/piece/load.ts';
import type { LoadedPiece } from '../core/piece/loadedPiece.ts';
import { writePdf, type SheetFonts } from '../kiosk/draw/pdf.ts';
import { COPIES } from './assets.ts';
import { saveNew } from './folders.ts';

const USAGE = `npm run layout -- PIECE.json --out FOLDER      all sheets of a piece as PDF at full size: the layout of each part,
                                               the rod, part labels, cut list and gauge card
      --paper a4                               the paper: a4 or letter (letter when not given)
      --part "long rail"                       the layout of this part alone
      --place "front left"                     with --part: of the copy that goes there, of the hand that it has there
      --unit mm                                figures to half a millimetre (or: in, to 1/32 inch)
Nothing is written over: a name that is taken gets a number.`;

interface Command {
  readonly piece: string;
  readonly out: string;
  readonly paper: PaperName;
  readonly rounding: Rounding;
  readonly part: string | undefined;
  readonly place: string | undefined;
}

/** Where the command's sentences go. */
export interface Told {
  readonly tell: (sentence: string) => void;
  readonly complain: (sentence: string) => void;
}

/** Writes the sheets of a piece file; the exit status is 0 only when all of them were written. */
export async function layOut(words: readonly string[], told: Told): Promise<number> {
  const command = readCommand(words);
  if (typeof command === 'string') return refused(told, command);
  const piece = readPieceFile(command.piece);
  if (typeof piece === 'string') return refused(told, piece);
  const choices = choicesOf(piece, command);
  if (typeof choices === 'string') return refused(told, choices);
  try {
    await mkdir(command.out, { recursive: true });
  } catch (error) {
    return refused(told, `The folder ${command.out} cannot be made: ${messageOf(error)}. Choose another with --out.`);
  }
  const order: SheetOrder = { piece, sizes: evaluate(piece, []), places: command.place === undefined ? new Map() : placesOf(piece), turns: new Map(), rounding: command.rounding, paper: command.paper, date: today() };
  const fonts = await sheetFonts();
  let status = 0;
  for (const choice of choices) status = Math.max(status, await writeSheets(order, choice, { out: command.out, fonts, told }));
  return status;
}

function readCommand(words: readonly string[]): Command | string {
  try {
    const { values, positionals } = parseArgs({ args: [...words], allowPositionals: true, options: { out: { type: 'string' }, paper: { type: 'string', default: 'letter' }, part: { type: 'string' }, place: { type: 'string' }, unit: { type: 'string', default: 'in' }, help: { type: 'boolean' } } });
    const [piece, ...more] = positionals;
    if (values.help === true || piece === undefined || more.length > 0) return USAGE;
    if (values.out === undefined) return `Expected --out FOLDER, where the sheets are to be written.\n\n${USAGE}`;
    if (!(values.paper in PAPERS)) return `Expected --paper a4 or --paper letter, found “${values.paper}”.`;
    if (values.place !== undefined && values.part === undefined) return 'Expected --part with --place: whose place it is.';
    if (values.unit !== 'in' && values.unit !== 'mm') return `Expected --unit in or --unit mm, found “${values.unit}”.`;
    const rounding: Rounding = values.unit === 'mm' ? { unit: 'millimetre', step: nanometres(500_000) } : { unit: 'inch', denominator: 32 };
    return { piece, out: values.out, paper: values.paper as PaperName, rounding, part: values.part, place: values.place };
  } catch (error) {
    return `${messageOf(error)}\n\n${USAGE}`;
  }
}

function readPieceFile(path: string): LoadedPiece | string {
  try {
    const loaded = loadPiece(readFileSync(path, 'utf8'));
    return loaded.ok ? loaded.value : [`${path} is not taken:`, ...loaded.fault.map(writeFault)].join('\n');
  } catch (error) {
    return `${path} cannot be read: ${messageOf(error)}.`;
  }
}

/** As the file has them: the first copy in the first place, and so on. */
function placesOf({ file }: LoadedPiece): ReadonlyMap<string, string> {
  return new Map(file.parts.flatMap(({ id, places = [] }) => places.map((place, index) => [`${id}/${index + 1}`, place] as const)));
}

function choicesOf(piece: LoadedPiece, { part, place }: Command): readonly SheetChoice[] | string {
  if (part === undefined) return everySheet({ piece, sizes: evaluate(piece, []), places: new Map(), turns: new Map() });
  const found = piece.file.parts.find(({ id, name }) => id === part || name === part.toLowerCase());
  if (found && place !== undefined) {
    const at = found.places?.indexOf(place.toLowerCase()) ?? -1;
    return at >= 0 ? [{ what: 'layout', part: found.id, copy: at + 1 }] : `The ${found.name} has no place “${place}”. ${found.places === undefined ? 'The file names none.' : `Expected one of: ${found.places.join(', ')}.`}`;
  }
  return found ? [{ what: 'layout', part: found.id }] : `${piece.file.name} has no part “${part}”. Expected one of: ${piece.file.parts.map(({ name }) => name).join(', ')}.`;
}

async function writeSheets(order: SheetOrder, choice: SheetChoice, { out, fonts, told }: { readonly out: string; readonly fonts: SheetFonts; readonly told: Told }): Promise<number> {
  const name = nameOfSheets(order.piece, choice);
  const sheets = sheetsFor(order, choice);
  if (!sheets.ok) return refused(told, `${name}: ${sheets.fault}`);
  const pdf = await writePdf(sheets.value, { fonts, title: `${order.piece.file.name}, ${name}` });
  try {
    const given = await saveNew(out, `${name}.pdf`, Buffer.from(pdf));
    const count = sheets.value.pages.length;
    told.tell(`${join(out, given)}: ${count} ${count === 1 ? 'sheet' : 'sheets'} of ${PAPERS[order.paper].say}`);
    return 0;
  } catch (error) {
    return refused(told, `${name}.pdf cannot be written into ${out}: ${messageOf(error)}. Choose another folder with --out.`);
  }
}

/** The faces that the kiosk ships. */
export async function sheetFonts(): Promise<SheetFonts> {
  const read = (file: string): Promise<Uint8Array> => {
    const copy = COPIES.find(({ to }) => to === `fonts/${file}`);
    if (!copy) throw new Error(`deploy/assets.ts ships no ${file}`);
    return readFile(join(import.meta.dirname, '..', copy.from));
  };
  return { regular: await read('atkinson-400.woff'), bold: await read('atkinson-700.woff') };
}

function today(): string {
  return new Date().toLocaleDateString('en-GB', { day: 'numeric', month: 'long', year: 'numeric' });
}

function messageOf(error: unknown): string {
  return error instanceof Error ? error.message : String(error);
}

function refused({ complain }: Told, sentence: string): number {
  complain(sentence);
  return 1;
}

if (process.argv[1] !== undefined && basename(process.argv[1]) === 'layout.ts') process.exitCode = await layOut(process.argv.slice(2), { tell: console.log, complain: console.error });
