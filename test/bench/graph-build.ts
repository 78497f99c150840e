import { openAsBlob, statSync } from 'node:fs';
import { join } from 'node:path';
import { performance } from 'node:perf_hooks';
import { gzipSync } from 'node:zlib';
import { buildModel } from '../../kiosk/ear/engine.ts';
import { graphFiles } from '../../kiosk/ear/graph/graphFiles.ts';
import type { ModelFiles } from '../../kiosk/ear/graph/graphFiles.ts';
import type { Dictionary } from '../../kiosk/ear/words/dictionary.ts';
import { pronounce } from '../../kiosk/ear/words/pronounce.ts';
import { unpackTarGz } from '../../kiosk/ear/unpack.ts';
import { engineInNode } from '../../deploy/model/engineInNode.ts';
import { SHIPPED_MODEL, shippedDictionary } from '../voice/models.ts';

/** How long the graph takes to build, how large it is, and how long the engine takes to load it. Each row is the fastest of some runs: other work on the machine only slows. */
const RUNS = 5;
const DICTIONARY = join(import.meta.dirname, '..', '..', 'sounds', 'dictionary', 'dictionary.txt.gz');

const [readMs, dictionary] = fastest(shippedDictionary);
const files = await shippedModel();
const { engine, printed } = await engineInNode();
const shipped = [SHIPPED_MODEL, DICTIONARY].map((file) => statSync(file).size);
console.log(`shipped: model ${shipped[0] ?? 0} bytes, dictionary ${shipped[1] ?? 0} bytes, together ${(((shipped[0] ?? 0) + (shipped[1] ?? 0)) / 2 ** 20).toFixed(2)} MiB`);
console.log(`dictionary: ${dictionary.words.size} words, unpacked and read in ${readMs.toFixed(0)} ms`);
console.log('words    build ms   bytes      gzip       model load ms   engine heap grown by');
measure('bench', dictionary.benchWords);
for (const count of [400, 20_000]) measure(String(count), everyNth(dictionary, count));

function measure(name: string, words: readonly string[]): void {
  const [buildMs, graph] = fastest(() => graphFiles(words.map((word) => ({ word, pronunciations: pronounce(word, dictionary)?.pronunciations ?? [] }))));
  const bytes = [...graph.values()].reduce((sum, file) => sum + file.length, 0);
  const packed = [...graph.values()].reduce((sum, file) => sum + gzipSync(file).length, 0);
  const before = engine.HEAPU8.length;
  const [loadMs] = fastest(() => buildModel(engine, new Map([...files, ...graph]), printed));
  const grown = (engine.HEAPU8.length - before) / RUNS / 2 ** 20;
  console.log([`${name} (${words.length})`.padEnd(14), buildMs.toFixed(0).padEnd(6), String(bytes).padEnd(10), String(packed).padEnd(10), loadMs.toFixed(0).padEnd(15), `${grown.toFixed(1)} MiB a load`].join(' '));
}

function fastest<T>(work: () => T): [number, T] {
  let best = Infinity;
  let result = work();
  for (let run = 0; run < RUNS - 1; run += 1) {
    const began = performance.now();
    result = work();
    best = Math.min(best, performance.now() - began);
  }
  return [best, result];
}

function everyNth({ words }: Dictionary, count: number): readonly string[] {
  const step = words.size / count;
  const all = [...words.keys()];
  return Array.from({ length: count }, (_, index) => all[Math.floor(index * step)] ?? '');
}

async function shippedModel(): Promise<ModelFiles> {
  const found = new Map<string, Uint8Array<ArrayBuffer>>();
  const packed = (await openAsBlob(SHIPPED_MODEL)).stream();
  for await (const { path, bytes } of unpackTarGz(packed)) found.set(path.replace(/^[^/]*\//, ''), bytes);
  return found;
}
