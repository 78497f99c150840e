import { UNKNOWN_WORD } from '../../kiosk/ear/grammar.ts';
import { GET_ANOTHER, type Files, type ModelFault } from './fault.ts';
import { readFst, type FstFile } from './fstFile.ts';

/** A model's own graph: the words that it can hear, in the form that takes a grammar at run time. */
export interface Graph {
  readonly faults: readonly ModelFault[];
  readonly remarks: readonly string[];
  readonly files: Files;
  readonly words: ReadonlySet<string> | undefined;
}

const TAKE_LOOKAHEAD = 'Take a model for run-time grammars: it has graph/HCLr.fst and graph/Gr.fst.';
const GRAPH_FILES = ['graph/HCLr.fst', 'graph/Gr.fst', 'graph/disambig_tid.int', 'graph/phones/word_boundary.int'];
const WORDS = 'graph/words.txt';

/** Whether the kiosk can give the model its own sentences to listen for, and which words they may have. */
export function checkGraph(files: Files): Graph {
  const lookahead = files.has('graph/HCLr.fst') && files.has('graph/Gr.fst');
  if (!lookahead) return bad([missingGraph(files)]);
  const faults: ModelFault[] = [];
  const lexicon = fstOf(files, 'graph/HCLr.fst', faults);
  const grammar = fstOf(files, 'graph/Gr.fst', faults);
  if (lexicon && !lexicon.type.endsWith('lookahead')) faults.push({ where: 'graph/HCLr.fst', what: `it is of the kind "${lexicon.type}", and not a lookahead graph`, todo: TAKE_LOOKAHEAD });
  if (!files.has('graph/disambig_tid.int')) faults.push({ where: 'graph/disambig_tid.int', what: 'it is missing', todo: GET_ANOTHER });
  const words = wordsOf(files, grammar, faults);
  if (faults.length > 0 || words === undefined) return bad(faults);
  const kept = GRAPH_FILES.flatMap((path) => { const bytes = files.get(path); return bytes === undefined ? [] : [[path, bytes] as const]; });
  return {
    faults: [], remarks: [...remarksOn(files), ...withoutUnknown(words)],
    // The engine takes the words from the grammar itself when that names them; the kiosk asks this file.
    files: new Map([...kept, [WORDS, new TextEncoder().encode([...words].map(([word, number]) => `${word} ${number}\n`).join(''))]]),
    words: new Set(words.keys()),
  };
}

function bad(faults: readonly ModelFault[]): Graph {
  return { faults, remarks: [], files: new Map(), words: undefined };
}

function missingGraph(files: Files): ModelFault {
  if (files.has('graph/HCLG.fst')) return { where: 'graph/HCLG.fst', what: 'the model has a fixed graph, which hears only what it was built for; the kiosk must give it the names of your piece', todo: TAKE_LOOKAHEAD };
  const missing = ['graph/HCLr.fst', 'graph/Gr.fst'].filter((path) => !files.has(path));
  return { where: 'graph/', what: `${missing.join(' and ')} ${missing.length === 1 ? 'is' : 'are'} missing`, todo: TAKE_LOOKAHEAD };
}

function fstOf(files: Files, where: string, faults: ModelFault[]): FstFile | undefined {
  const read = readFst(files.get(where) ?? new Uint8Array(0));
  if (read.ok) return read.value;
  faults.push({ where, what: read.fault, todo: GET_ANOTHER });
  return undefined;
}

/** The words and their numbers: those that the grammar names itself (as the engine prefers), else those of words.txt. */
function wordsOf(files: Files, grammar: FstFile | undefined, faults: ModelFault[]): ReadonlyMap<string, number> | undefined {
  if (grammar?.words !== undefined && grammar.words.size > 0) return grammar.words;
  const bytes = files.get(WORDS);
  if (bytes === undefined) {
    if (grammar !== undefined) faults.push({ where: WORDS, what: 'it is missing, and graph/Gr.fst does not name its words either', todo: GET_ANOTHER });
    return undefined;
  }
  const words = readWordTable(bytes);
  if (typeof words !== 'string') return words;
  faults.push({ where: WORDS, what: words, todo: GET_ANOTHER });
  return undefined;
}

/** graph/words.txt: a word and its number on each line. Gives what is wrong with it in words. */
function readWordTable(bytes: Uint8Array): ReadonlyMap<string, number> | string {
  let text: string;
  try {
    text = new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return 'it is not text in UTF-8';
  }
  const words = new Map<string, number>();
  for (const [index, line] of text.split('\n').entries()) {
    if (line.trim() === '') continue;
    const pair = /^(\S+)\s+(\d+)\s*$/.exec(line);
    if (pair === null) return `line ${index + 1} is not a word and its number: "${line.slice(0, 40)}"`;
    words.set(pair[1] ?? '', Number(pair[2]));
  }
  return words.size === 0 ? 'it has no words' : words;
}

function remarksOn(files: Files): readonly string[] {
  return files.has('graph/HCLG.fst') ? ['graph/HCLG.fst is left out: with that fixed graph the engine would not listen for the sentences of the bench.'] : [];
}

function withoutUnknown(words: ReadonlyMap<string, number>): readonly string[] {
  return words.has(UNKNOWN_WORD) ? [] : [`It has no word ${UNKNOWN_WORD} for what is none of the bench's words: talk and noise will be taken for commands more often. Keep the address word.`];
}
