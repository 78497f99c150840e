import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { gunzipSync } from 'node:zlib';
import { loadPiece } from '../../core/piece/load.ts';
import { readDictionary } from '../../kiosk/ear/words/dictionary.ts';
import { checkFiles } from './checkFiles.ts';
import { checkWords, listed, type WordsFound } from './checkWords.ts';
import type { Files, ModelFault } from './fault.ts';
import { openModel } from './openModel.ts';
import { tryInEngine, type Trial } from './tryInEngine.ts';

/** What a check came to. */
export interface Verdict {
  /** Empty when the model is good. */
  readonly faults: readonly ModelFault[];
  /** What its owner should know of a good one. */
  readonly remarks: readonly string[];
  /** Of the words that are listened for, those that it cannot hear. */
  readonly unheard: readonly string[];
  readonly facts?: { readonly words: number | null; readonly bytes: number } & Trial;
}

/** Slower than this on the machine that checked it, and words come late. */
const SLOW = 0.6;
const MUCH_MEMORY_BYTES = 400 * 2 ** 20;
const MEGABYTE = 2 ** 20;
const DICTIONARY = join(import.meta.dirname, '..', '..', 'sounds', 'dictionary', 'dictionary.txt.gz');

/**
 * Checks a model from its archive to its first words: see openModel, checkFiles, checkWords and tryInEngine.
 * @param pieceTexts pieces whose names it should hear; faulty ones are passed over
 * @returns the verdict, and for a good model the files that the kiosk is given
 */
export async function checkModel(path: string, pieceTexts: readonly string[]): Promise<{ verdict: Verdict; files?: Files }> {
  const opened = await openModel(path);
  if (!opened.ok) return refused([opened.fault]);
  const { faults, remarks, kept, words } = checkFiles(opened.value);
  const dictionary = readDictionary(gunzipSync(readFileSync(DICTIONARY)).toString());
  const found = faults.length > 0 ? undefined : checkWords(words, dictionary, pieceTexts.flatMap((text) => { const read = loadPiece(text); return read.ok ? [read.value] : []; }));
  const all = [...faults, ...found?.faults ?? []];
  if (found === undefined || all.length > 0) return refused(all);
  const trial = await tryInEngine(kept, found.grammar, found.asked, dictionary);
  if (!trial.ok) return refused([trial.fault]);
  const bytes = [...kept.values()].reduce((sum, file) => sum + file.length, 0);
  return {
    verdict: { faults: [], remarks: [...remarks, ...remarksOnWords(found), ...remarksOnTrial(trial.value)], unheard: found.unheard, facts: { words: words?.size ?? null, bytes, ...trial.value } },
    files: kept,
  };
}

function refused(faults: readonly ModelFault[]): { verdict: Verdict } {
  return { verdict: { faults, remarks: [], unheard: [] } };
}

function remarksOnWords({ unheard, asSingular, guessed }: WordsFound): readonly string[] {
  return [
    ...(unheard.length === 0 ? [] : [`It cannot hear ${listed(unheard, 20)}: what is said with ${unheard.length === 1 ? 'this word' : 'these words'} is not understood. Use the keys, or give a part another name in "alsoCalled".`]),
    ...(asSingular.length === 0 ? [] : [`It lacks the plurals ${listed(asSingular)}: they are listened for as their singulars.`]),
    ...(guessed.length === 0 ? [] : [`No dictionary has ${listed(guessed)}: listened for as probably said.`]),
  ];
}

function remarksOnTrial({ heard, of, realTime, heapBytes }: Trial): readonly string[] {
  return [
    ...(heard < of ? [`Of ${of} numbers spoken by the kiosk's own voices it heard ${heard}. Try it with your voice on the microphone page.`] : []),
    ...(realTime > SLOW ? [`It takes ${realTime.toFixed(1)} seconds of reckoning for each second of sound on this machine: answers will come late.`] : []),
    ...(heapBytes > MUCH_MEMORY_BYTES ? [`It takes ${Math.round(heapBytes / MEGABYTE)} MB of memory.`] : []),
  ];
}
