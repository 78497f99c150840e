import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { gunzipSync } from 'node:zlib';
import { graphFiles } from '../../../kiosk/ear/graph/graphFiles.ts';
import { readDictionary } from '../../../kiosk/ear/words/dictionary.ts';
import { pronounce } from '../../../kiosk/ear/words/pronounce.ts';
import { unpackTarGz } from '../../../kiosk/ear/unpack.ts';
import { checkWords } from '../../../deploy/model/checkWords.ts';
import type { Files } from '../../../deploy/model/fault.ts';

/**
 * Models to check, made of the one that ships: no other is to be had without a network. A model with a fixed graph cannot be made so; a file of that name stands for it.
 */
const SOUNDS = join(import.meta.dirname, '..', '..', '..', 'sounds');
export const SHIPPED = join(SOUNDS, 'speech-model', 'model.tar.gz');
export const DICTIONARY = readDictionary(gunzipSync(readFileSync(join(SOUNDS, 'dictionary', 'dictionary.txt.gz'))).toString());
export const BENCH_WORDS = checkWords(undefined, DICTIONARY, []).asked;

export const bytes = (text: string): Uint8Array<ArrayBuffer> => new TextEncoder().encode(text);

export async function shippedFiles(): Promise<Files> {
  const files = new Map<string, Uint8Array<ArrayBuffer>>();
  for await (const file of unpackTarGz(new Blob([readFileSync(SHIPPED)]).stream())) files.set(file.path.replace(/^[^/]*\//, ''), file.bytes);
  return files;
}

/** A model that the kiosk cannot give words to, as those from elsewhere: its phones look otherwise (other chances of staying), and it has a graph of its own. */
export async function foreignFiles(words: readonly string[] = BENCH_WORDS): Promise<Files> {
  const files = new Map(await shippedFiles());
  const network = Uint8Array.from(files.get('am/final.mdl') ?? []);
  const half = Buffer.from(network.buffer).indexOf(Buffer.from([4, 0, 0, 0, 0x3f]));
  // 0.5 becomes 0.75; the chances in this file do not enter decoding.
  network[half + 3] = 0x40;
  files.set('am/final.mdl', network);
  const spoken = words.flatMap((word) => { const said = pronounce(word, DICTIONARY); return said ? [{ word, pronunciations: said.pronunciations }] : []; });
  for (const [path, content] of graphFiles(spoken)) files.set(path, content);
  return files;
}

/** The same, as the common small models are: graph/Gr.fst names the words, and there is no words.txt. */
export async function namedInGrammar(words?: readonly string[]): Promise<Files> {
  const files = new Map(await foreignFiles(words));
  const table = new TextDecoder().decode(files.get('graph/words.txt')).trim().split('\n').map((line) => line.split(' ') as [string, string]);
  files.set('graph/Gr.fst', withSymbols(files.get('graph/Gr.fst') ?? new Uint8Array(0), table));
  files.delete('graph/words.txt');
  return files;
}

/** A 'const' transducer of ours with tables of its words behind its head, as fst/symbol-table.cc of OpenFst 1.8 writes them. */
function withSymbols(fst: Uint8Array, words: readonly (readonly [string, string])[]): Uint8Array<ArrayBuffer> {
  const whole = Buffer.from(fst);
  // Magic, 'const', 'standard', version; then the flags.
  const flagsAt = 4 + (4 + 5) + (4 + 8) + 4;
  const headEnds = flagsAt + 4 + 8 + 8 + 8 + 8;
  const head = Buffer.from(whole.subarray(0, headEnds));
  head.writeInt32LE(3, flagsAt);
  return Uint8Array.from(Buffer.concat([head, symbols(words), symbols(words), whole.subarray(headEnds)]));
}

function symbols(words: readonly (readonly [string, string])[]): Buffer {
  const int32 = (value: number) => { const part = Buffer.alloc(4); part.writeInt32LE(value); return part; };
  const int64 = (value: number) => { const part = Buffer.alloc(8); part.writeBigInt64LE(BigInt(value)); return part; };
  const text = (value: string) => Buffer.concat([int32(Buffer.byteLength(value)), Buffer.from(value)]);
  return Buffer.concat([int32(2_125_658_996), text('words.txt'), int64(words.length), int64(words.length), ...words.flatMap(([word, number]) => [text(word), int64(Number(number))])]);
}
