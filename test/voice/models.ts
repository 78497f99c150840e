import { execFileSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { gunzipSync } from 'node:zlib';
import { graphFiles } from '../../kiosk/ear/graph/graphFiles.ts';
import { readDictionary } from '../../kiosk/ear/words/dictionary.ts';
import type { Dictionary } from '../../kiosk/ear/words/dictionary.ts';
import { pronounce } from '../../kiosk/ear/words/pronounce.ts';

const SOUNDS = join(import.meta.dirname, '..', '..', 'sounds');
export const SHIPPED_MODEL = join(SOUNDS, 'speech-model', 'model.tar.gz');

let dictionary: Dictionary | undefined;

export function shippedDictionary(): Dictionary {
  return dictionary ??= readDictionary(gunzipSync(readFileSync(join(SOUNDS, 'dictionary', 'dictionary.txt.gz'))).toString());
}

/** The shipped model after a shell command was run in its folder. */
export function changedModel(command: string, ownWords: readonly string[] = []): Buffer {
  const folder = mkdtempSync(join(tmpdir(), 'model-'));
  try {
    execFileSync('tar', ['-C', folder, '--strip-components=1', '-xzf', SHIPPED_MODEL]);
    if (ownWords.length > 0) writeWords(folder, ownWords);
    execFileSync('sh', ['-c', command], { cwd: folder });
    return execFileSync('tar', ['-C', dirname(folder), '-I', 'gzip -1', '-cf', '-', folder.slice(dirname(folder).length + 1)], { maxBuffer: 1e8 });
  } finally {
    rmSync(folder, { recursive: true });
  }
}

/** The shipped model with a graph of its own, as models from elsewhere have one; it is used as it is where there is no dictionary. */
export function modelWithOwnWords(words: readonly string[]): Buffer {
  return changedModel('true', words);
}

function writeWords(folder: string, words: readonly string[]): void {
  const spoken = words.map((word) => ({ word, pronunciations: pronounce(word, shippedDictionary())?.pronunciations ?? [] }));
  for (const [path, bytes] of graphFiles(spoken)) {
    mkdirSync(dirname(join(folder, path)), { recursive: true });
    writeFileSync(join(folder, path), bytes);
  }
}
