import { writeFileSync } from 'node:fs';
import { createInterface } from 'node:readline/promises';
import { parseArgs } from 'node:util';
import { writePiece } from '../core/piece/load.ts';
import type { StarterFault, StarterField } from '../core/piece/starter.ts';
import { expectedOf, readAnswer, readStarterInput, STARTER_FIELDS, starterPiece } from '../core/piece/starter.ts';
import { writeExact } from '../core/piece/writeExact.ts';

const USAGE = `npm run new-piece                                     asks for everything, one thing at a time
npm run new-piece -- inside.length="4 ft" height="30 in"   takes defaults for the rest, and prints the file
npm run new-piece -- --out table.json height="30 in"       writes it to a file that is not there yet
      --unit mm                                            numbers without a unit are millimetres (or: in)

What can be given:
${STARTER_FIELDS.map((field) => `  ${`${field.key}=`.padEnd(16)} ${field.say}: ${expectedOf(field)} (${defaultOf(field)})`).join('\n')}`;

/** Makes a piece file for a leg-and-rail table: from what is given on the command line, or by asking. */
async function main(): Promise<number> {
  const read = readCommand();
  if (typeof read === 'string') { console.error(`${read}\n\n${USAGE}`); return 1; }
  const { answers, out, unit, help } = read;
  if (help) { console.log(USAGE); return 0; }
  if (Object.keys(answers).length === 0 && out === undefined) return interview(unit);
  return make(answers, unit, out);
}

interface Command {
  readonly answers: Readonly<Record<string, string>>;
  readonly out: string | undefined;
  readonly unit: 'inch' | 'millimetre' | undefined;
  readonly help: boolean;
}

/** What the command line says, or what is wrong with it. */
function readCommand(): Command | string {
  try {
    const { values, positionals } = parseArgs({ allowPositionals: true, options: { out: { type: 'string' }, unit: { type: 'string' }, help: { type: 'boolean' } } });
    const loose = positionals.find((word) => !/^[^=]+=/u.test(word));
    if (loose !== undefined) return `Expected name=value, found "${loose}". A value with blanks needs quotes: height="30 in".`;
    const units = new Map<string | undefined, Command['unit']>([[undefined, undefined], ['in', 'inch'], ['mm', 'millimetre']]);
    if (!units.has(values.unit)) return `Expected --unit in or --unit mm, found "${values.unit ?? ''}".`;
    const answers = Object.fromEntries(positionals.map((word) => [word.slice(0, word.indexOf('=')), word.slice(word.indexOf('=') + 1)]));
    return { answers, out: values.out, unit: units.get(values.unit), help: values.help ?? false };
  } catch (error) {
    // parseArgs throws on options that it does not know; its message says which.
    return error instanceof Error ? error.message : String(error);
  }
}

function make(answers: Readonly<Record<string, string>>, unit: Command['unit'], out: string | undefined): number {
  const input = readStarterInput(answers, unit);
  const piece = input.ok ? starterPiece(input.value) : input;
  if (!piece.ok) { piece.fault.forEach((fault) => { console.error(writeFault(fault)); }); return 1; }
  const text = writePiece(piece.value);
  if (out === undefined) { process.stdout.write(text); return 0; }
  return save(out, text);
}

/** Never over a file that is there: it may be a piece somebody has worked on. */
function save(out: string, text: string): number {
  try {
    writeFileSync(out, text, { flag: 'wx' });
  } catch (error) {
    const there = error instanceof Error && 'code' in error && error.code === 'EEXIST';
    console.error(there ? `${out} is there already and is left as it is. Choose another name.` : `${out} could not be written: ${error instanceof Error ? error.message : String(error)}`);
    return 1;
  }
  console.error(`${out} is written. Look over every size before you cut.`);
  return 0;
}

function writeFault({ key, message }: StarterFault): string {
  return key === '' ? message : `${key}: ${message}`;
}

/** Asks field by field; an empty line takes the default, and a wrong answer is asked for again. Questions go to stderr, so that the file can be piped. */
async function interview(unit: Command['unit']): Promise<number> {
  const lines = createInterface({ input: process.stdin, output: process.stderr });
  const next = lines[Symbol.asyncIterator]();
  const ask = async (question: string): Promise<string | undefined> => {
    process.stderr.write(question);
    const line = await next.next();
    return line.done === true ? undefined : line.value.trim();
  };
  const answers: Record<string, string> = {};
  console.error('A leg-and-rail table. An empty line takes what stands in brackets.\n');
  for (const field of STARTER_FIELDS) {
    if (!isAsked(field, answers)) continue;
    const answer = await askField(field, unit, ask);
    if (answer === undefined) { console.error('\nNothing was made: the answers ended too soon.'); return 1; }
    answers[field.key] = answer;
  }
  const out = await ask('\nfile to write (empty: print it): ');
  lines.close();
  return make(answers, unit, out === '' ? undefined : out);
}

function isAsked({ when }: StarterField, answers: Readonly<Record<string, string>>): boolean {
  if (when === undefined) return true;
  const answer = answers[when.key] ?? '';
  return (answer === '' ? defaultOf(fieldOf(when.key)) : answer) === when.is;
}

async function askField(field: StarterField, unit: Command['unit'], ask: (question: string) => Promise<string | undefined>): Promise<string | undefined> {
  for (;;) {
    const answer = await ask(`${field.say}${field.kind === 'choice' ? `, ${expectedOf(field)}` : ''} [${defaultOf(field)}]: `);
    if (answer === undefined || answer === '') return answer;
    const read = readAnswer(field, answer, unit);
    if (read.ok) return answer;
    console.error(`  ${read.fault.message}`);
  }
}

function fieldOf(key: string): StarterField {
  const field = STARTER_FIELDS.find((known) => known.key === key);
  if (field === undefined) throw new Error(`the starter has no field ${key}`);
  return field;
}

function defaultOf(field: StarterField): string {
  return field.kind === 'length' ? writeExact(field.default) : String(field.default);
}

process.exitCode = await main();
