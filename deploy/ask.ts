import { readFileSync } from 'node:fs';
import { createInterface } from 'node:readline';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import type { Bench } from '../core/bench/bench.ts';
import type { Response } from '../core/bench/reply.ts';
import type { Moment } from '../core/clock/moment.ts';
import { makeRecords } from '../core/journal/record.ts';
import { loadPiece } from '../core/piece/load.ts';
import { advance, benchFrom } from '../core/respond/advance.ts';
import { respond } from '../core/respond/respond.ts';
import { parseRequest } from '../core/talk/parse.ts';
import { readClock } from './machineClock.ts';

const USAGE = `npm run ask -- "how long is the long rail"     answers one request as the kiosk would
npm run ask -- --piece FILE "…"                of another piece than the demo
npm run ask -- --json "…"                      the whole reply, with the entries it would write
npm run ask                                    a prompt; each line is a request, an empty line ends it`;

const DEMO = join(import.meta.dirname, '..', 'core', 'piece', 'demo', 'bakers-work-table.json');

/** Answers typed requests with what the kiosk would say. Nothing is kept: each run begins with the piece as it is in its file. */
async function main(): Promise<void> {
  const { values, positionals } = parseArgs({
    allowPositionals: true,
    options: { piece: { type: 'string' }, json: { type: 'boolean' }, help: { type: 'boolean' } },
  });
  if (values.help) {
    console.log(USAGE);
    return;
  }
  const file = values.piece ?? DEMO;
  let bench = openBench(file);
  if (positionals.length > 0) {
    print(answer(bench, positionals.join(' ')).response, values.json ?? false);
    return;
  }
  const prompt = createInterface({ input: process.stdin, output: process.stdout, prompt: '? ' });
  console.log(`${bench.state.pieceName ?? 'No piece'} is on the bench. An empty line ends this.`);
  prompt.prompt();
  for await (const words of prompt) {
    if (words.trim() === '') break;
    const { response, after } = answer(bench, words);
    print(response, values.json ?? false);
    bench = after;
    prompt.prompt();
  }
  prompt.close();
}

/** A bench with the piece of a file on it. */
function openBench(file: string): Bench {
  let text;
  try {
    text = readFileSync(file, 'utf8');
  } catch (error) {
    throw new Error(`${file} cannot be read: ${(error as NodeJS.ErrnoException).code ?? String(error)}. Name a piece file with --piece FILE.`, { cause: error });
  }
  const loaded = loadPiece(text);
  if (!loaded.ok) throw new Error(loaded.fault.map(({ line, column, path, message }) => `${file}:${line}:${column} ${path}: ${message}`).join('\n'));
  return benchFrom(makeRecords([{ kind: 'piece loaded', text, from: file }], null, now()));
}

function answer(bench: Bench, words: string): { response: Response; after: Bench } {
  const at = now();
  const response = respond(bench, parseRequest(words, bench), at);
  const records = response.entries.length > 0 ? makeRecords(response.entries, bench.records.at(-1) ?? null, at) : [];
  return { response, after: advance(bench, response.reply, records) };
}

function print({ entries, reply }: Response, json: boolean): void {
  if (json) console.log(JSON.stringify({ entries, reply }, null, 2));
  else console.log(reply.say === '' ? `(shows ${reply.screen?.name ?? 'the same screen'})` : reply.say);
}

function now(): Moment {
  const { wallMs, wallTrusted, bootId, monotonicMs } = readClock();
  return { wallMs, wallTrusted, bootId, monotonicMs };
}

try {
  await main();
} catch (error) {
  console.error(error instanceof Error ? error.message : error);
  process.exitCode = 1;
}
