import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Fst } from '../../../kiosk/ear/graph/fst.ts';
import { graphFiles } from '../../../kiosk/ear/graph/graphFiles.ts';
import { labelReach } from '../../../kiosk/ear/graph/labelReach.ts';
import { hasOurPhones, tableOfPhones } from '../../../kiosk/ear/graph/layout.ts';
import { buildLexicon } from '../../../kiosk/ear/graph/lexicon.ts';
import type { Word } from '../../../kiosk/ear/graph/lexicon.ts';
import { anyWordsFile, lookaheadFile } from '../../../kiosk/ear/graph/openFst.ts';
import { entering, GARBAGE, networkOutput, PHONE_COUNT, phoneNumber, PHONES, SILENCE, wordBoundaries } from '../../../kiosk/ear/graph/phones.ts';
import { shippedDictionary } from '../../voice/models.ts';
import { lookUp } from '../../../kiosk/ear/words/dictionary.ts';
import { openFst, openFstMissing } from './openFst.ts';

const said = (word: string, ...ways: string[]): Word => ({ word, pronunciations: ways.map((way) => way.split(' ').map((name) => PHONES.indexOf(name))) });
/** Shared beginnings, homophones, words of one phone, two ways to say one word. */
const BENCH: readonly Word[] = [
  said('rail', 'R EY L'), said('rails', 'R EY L Z'), said('rabbet', 'R AE B AH T'), said('a', 'AH', 'EY'), said('i', 'AY'), said('eye', 'AY'),
  said('four', 'F AO R'), said('for', 'F AO R', 'F ER'), said('leg', 'L EH G'), said('router', 'R AW T ER', 'R UW T ER'),
];

/** The words that can be read from the start along arcs with these phones, each entered once and not held. */
function wordsSaid(fst: Fst, words: readonly Word[], phones: string): readonly string[] {
  const names = phones.split(' ').map((name) => PHONES.indexOf(name));
  const found: string[] = [];
  const walk = (state: number, at: number) => {
    for (let arc = fst.firstArc[state] ?? 0; arc < (fst.firstArc[state + 1] ?? 0); arc += 1) {
      const wanted = names[at] ?? -1;
      const word = words[(fst.output[arc] ?? 0) - 1];
      if (networkOutput((fst.input[arc] ?? 0) / 2) !== wanted + 1 || fst.input[arc] === 0 || (fst.input[arc] ?? 0) % 2 === 1) continue;
      if (word !== undefined && at === names.length - 1) found.push(word.word);
      else if (word === undefined && at < names.length - 1) walk(fst.target[arc] ?? 0, at + 1);
    }
  };
  walk(0, 0);
  return found.sort();
}

describe('the graph of words', () => {
  it('says each word in each of its ways, and words that sound alike in one', () => {
    const lexicon = buildLexicon(BENCH);
    expect(wordsSaid(lexicon, BENCH, 'R EY L')).toEqual(['rail']);
    expect(wordsSaid(lexicon, BENCH, 'AY')).toEqual(['eye', 'i']);
    expect(wordsSaid(lexicon, BENCH, 'F AO R')).toEqual(['for', 'four']);
    expect(wordsSaid(lexicon, BENCH, 'F ER')).toEqual(['for']);
    expect(wordsSaid(lexicon, BENCH, 'R UW T ER')).toEqual(['router']);
    expect(wordsSaid(lexicon, BENCH, 'R EY')).toEqual([]);
  });

  it('is not made larger by a way that is given twice', () => {
    expect(buildLexicon([said('hone', 'HH OW N', 'HH OW N')])).toEqual(buildLexicon([said('hone', 'HH OW N')]));
  });

  it('never goes from silence back to before the silence, or a long one could be cut up in endless ways', () => {
    const fst = buildLexicon(BENCH);
    const silenceArcs = [...fst.input.keys()].filter((arc) => fst.input[arc] === entering(SILENCE));
    expect(silenceArcs).toHaveLength(1);
    const afterSilence = fst.target[silenceArcs[0] ?? 0] ?? -1;
    for (let arc = fst.firstArc[afterSilence] ?? 0; arc < (fst.firstArc[afterSilence + 1] ?? 0); arc += 1) {
      expect(fst.input[arc], 'an arc without sound').not.toBe(0);
      expect(fst.target[arc]).not.toBe(0);
    }
  });

  it('knows for each state which words can come next, in a few stretches of numbers', () => {
    const fst = buildLexicon(BENCH);
    const { renumbered, stretches, endLabel } = labelReach(fst);
    expect([...renumbered.values(), endLabel].sort((one, other) => one - other)).toEqual(Array.from({ length: BENCH.length + 2 }, (_, index) => index + 1));
    expect(stretches[0]).toEqual([1, BENCH.length + 3]);
    for (let state = 0; state < fst.states; state += 1) expect(numbersIn(stretches[state] ?? [])).toEqual(nextWords(fst, state, renumbered, endLabel));
  });
});

function numbersIn(stretches: readonly number[]): readonly number[] {
  const numbers: number[] = [];
  for (let at = 0; at < stretches.length; at += 2) for (let number = stretches[at] ?? 0; number < (stretches[at + 1] ?? 0); number += 1) numbers.push(number);
  return numbers;
}

/** By walking: the first words on all ways from a state. */
function nextWords(fst: Fst, from: number, renumbered: ReadonlyMap<number, number>, endLabel: number): readonly number[] {
  const seen = new Set([from]);
  const found = new Set<number>();
  for (const state of seen) {
    if (fst.ending[state] !== Infinity) found.add(endLabel);
    for (let arc = fst.firstArc[state] ?? 0; arc < (fst.firstArc[state + 1] ?? 0); arc += 1) {
      if (fst.output[arc] === 0) seen.add(fst.target[arc] ?? 0);
      else found.add(renumbered.get(fst.output[arc] ?? 0) ?? -1);
    }
  }
  return [...found].sort((one, other) => one - other);
}

describe('the layout of the model', () => {
  it('gives each phone its own output of the network wherever it stands in a word, and blank and silence the first', () => {
    expect(networkOutput(SILENCE)).toBe(0);
    expect(networkOutput(GARBAGE)).toBe(PHONES.length + 1);
    PHONES.forEach((_, phone) => {
      for (const place of ['begin', 'internal', 'end', 'singleton'] as const) expect(networkOutput(phoneNumber(phone, place))).toBe(phone + 1);
    });
    expect(wordBoundaries().trim().split('\n')).toHaveLength(PHONE_COUNT);
  });

  it('is told from that of other models by its table of phones', () => {
    const ours = Uint8Array.of(...tableOfPhones(), 1, 2, 3);
    expect(hasOurPhones(ours)).toBe(true);
    expect(hasOurPhones(ours.with(700, 99))).toBe(false);
    expect(hasOurPhones(ours.subarray(0, 500))).toBe(false);
  });

  it('writes words.txt with the numbers that the graph has', () => {
    const files = graphFiles(BENCH);
    const lines = new TextDecoder().decode(files.get('graph/words.txt')).trim().split('\n');
    expect(lines[0]).toBe('<eps> 0');
    expect(lines.map((line) => line.split(' ')[0])).toEqual(['<eps>', ...BENCH.map(({ word }) => word), '[unk]']);
    expect(new Set(lines.map((line) => line.split(' ')[1])).size).toBe(BENCH.length + 2);
  });
});

const missing = openFstMissing();
if (missing !== undefined) console.warn(`Not compared with OpenFst: ${missing}.`);

describe.skipIf(missing !== undefined)('the files of the graph, as OpenFst 1.7.9 makes them from the same text', () => {
  let folder: string;
  beforeAll(() => { folder = mkdtempSync(join(tmpdir(), 'fst-')); });
  afterAll(() => rmSync(folder, { recursive: true }));

  function reference(fst: Fst): { file: string; renumbered: ReadonlyMap<number, number> } {
    const compiled = openFst('fstcompile', ['--keep_state_numbering'], asText(fst));
    const file = join(folder, 'reference.fst');
    const pairs = join(folder, 'pairs');
    writeFileSync(file, openFst('fstconvert', ['--fst_type=olabel_lookahead', `--save_relabel_opairs=${pairs}`], compiled));
    const renumbered = new Map(readFileSync(pairs, 'utf8').trim().split('\n').map((line) => line.split(/\s+/).map(Number) as [number, number]));
    return { file, renumbered };
  }

  function compare(words: readonly Word[]): void {
    const lexicon = buildLexicon(words);
    const { bytes, renumbered } = lookaheadFile(lexicon);
    const { file, renumbered: theirs } = reference(lexicon);
    const ours = join(folder, 'ours.fst');
    writeFileSync(ours, bytes);
    for (const [word, number] of renumbered) expect(theirs.get(word)).toBe(number);
    expect(info(ours)).toEqual(info(file));
    expect(printed(ours)).toEqual(printed(file));
    // After the states and arcs, whose order among equal words is free, comes the reach of each state: byte for byte.
    const reachFrom = bytes.length - reachBytes(lexicon);
    expect(Buffer.compare(bytes.subarray(reachFrom), readFileSync(file).subarray(reachFrom))).toBe(0);
    expect(readFileSync(file).length).toBe(bytes.length);
  }

  it('are the same for words of the bench', () => compare(BENCH));

  it('are the same for every fortieth word of the dictionary', () => {
    const dictionary = shippedDictionary();
    compare([...dictionary.words.keys()].filter((_, index) => index % 40 === 0).map((word) => ({ word, pronunciations: lookUp(word, dictionary) })));
  });

  it('are the same for any words', () => {
    const ways = fc.array(fc.array(fc.integer({ min: 0, max: 4 }), { minLength: 1, maxLength: 4 }), { minLength: 1, maxLength: 3 });
    fc.assert(fc.property(fc.array(ways, { minLength: 1, maxLength: 8 }), (list) => {
      compare([...BENCH.slice(0, 2), ...list.map((pronunciations, index) => ({ word: `w${index}`, pronunciations }))]);
    }), { numRuns: 15 });
  }, 60_000);

  it('say of the default grammar what it is', () => {
    const file = join(folder, 'grammar.fst');
    writeFileSync(file, anyWordsFile(7));
    const text = Array.from({ length: 7 }, (_, index) => `0\t0\t${index + 1}\t${index + 1}\t${Math.log(7)}\n`).join('');
    const compiled = openFst('fstconvert', ['--fst_type=const'], openFst('fstcompile', [], `${text}0\t0\n`));
    expect(Buffer.compare(readFileSync(file), compiled)).toBe(0);
  });

  /** What a file says of itself, tested. Whether inputs are sorted depends on the order among equal outputs, which is free. */
  function info(file: string): readonly string[] {
    return openFst('fstinfo', ['--fst_verify_properties', file]).toString().split('\n').filter((line) => !/^input (matcher|label sorted)/.test(line));
  }

  function printed(file: string): readonly string[] {
    return openFst('fstprint', [file]).toString().trim().split('\n').sort();
  }
});

function asText(fst: Fst): string {
  const lines: string[] = [];
  for (let state = 0; state < fst.states; state += 1) {
    for (let arc = fst.firstArc[state] ?? 0; arc < (fst.firstArc[state + 1] ?? 0); arc += 1) {
      lines.push([state, fst.target[arc], fst.input[arc], fst.output[arc], fst.cost[arc]].join('\t'));
    }
    if (fst.ending[state] !== Infinity) lines.push(`${state}\t${fst.ending[state] ?? 0}`);
  }
  return `${lines.join('\n')}\n`;
}

/** Of each state's reach: how many stretches (8 bytes), two numbers each, and their sum; before them three flags, a number and a count. */
function reachBytes(fst: Fst): number {
  const stretches = labelReach(fst).stretches.reduce((sum, each) => sum + each.length / 2, 0);
  return fst.states * 12 + stretches * 8 + 3 + 4 + 8;
}
