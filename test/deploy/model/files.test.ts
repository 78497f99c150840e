import { beforeAll, describe, expect, it } from 'vitest';
import { checkFiles } from '../../../deploy/model/checkFiles.ts';
import { checkWords } from '../../../deploy/model/checkWords.ts';
import { writeFault, type Files } from '../../../deploy/model/fault.ts';
import { loadPiece } from '../../../core/piece/load.ts';
import { DEMO_TEXT } from '../../core/respond/session.ts';
import { BENCH_WORDS, bytes, DICTIONARY, foreignFiles, namedInGrammar, shippedFiles } from './variants.ts';

let shipped: Files;
let foreign: Files;
beforeAll(async () => {
  shipped = await shippedFiles();
  foreign = await foreignFiles();
});

const changed = (files: Files, changes: Readonly<Record<string, string | Uint8Array<ArrayBuffer> | null>>): Files => {
  const result = new Map(files);
  for (const [path, content] of Object.entries(changes)) {
    if (content === null) result.delete(path);
    else result.set(path, typeof content === 'string' ? bytes(content) : content);
  }
  return result;
};
const faults = (files: Files) => checkFiles(files).faults.map(writeFault);
const confOf = (files: Files, path: string) => new TextDecoder().decode(files.get(path));

describe('the files of a speech model', () => {
  it('are found good in the model that ships, which is given its words', () => {
    const found = checkFiles(shipped);
    expect(found.faults).toEqual([]);
    expect(found.words).toBeUndefined();
    expect([...found.kept.keys()].sort()).toEqual(['LICENCES.txt', 'am/final.mdl', 'conf/mfcc.conf', 'conf/model.conf']);
  });

  it('are found good in a model with a lookahead graph of its own, whose words are read', () => {
    const found = checkFiles(foreign);
    expect(found.faults).toEqual([]);
    expect(found.words?.has('bench')).toBe(true);
    expect(found.words?.size).toBe(BENCH_WORDS.length + 2);
  });

  it('give their words from graph/Gr.fst where there is no words.txt, as with the common small models, and the kiosk is given a words.txt', async () => {
    const found = checkFiles(await namedInGrammar());
    expect(found.faults).toEqual([]);
    expect(found.words).toEqual(checkFiles(foreign).words);
    const lines = (files: Files) => confOf(files, 'graph/words.txt').trim().split('\n').sort();
    expect(lines(found.kept)).toEqual(lines(foreign));
  });

  it.each<[string, () => Files, RegExp]>([
    ['without a network that begins as one', () => changed(shipped, { 'am/final.mdl': '<TransitionModel> in text' }), /am\/final\.mdl: it does not begin as a Kaldi model in binary form/],
    ['with an empty network', () => changed(shipped, { 'am/final.mdl': '' }), /am\/final\.mdl: it is empty/],
    ['with a network that ends too soon', () => changed(shipped, { 'am/final.mdl': (shipped.get('am/final.mdl') ?? new Uint8Array(0)).slice(0, 1_000_000) }), /am\/final\.mdl: its network is cut short/],
    ['without the options of the sound', () => changed(shipped, { 'conf/mfcc.conf': null }), /conf\/mfcc\.conf: it is missing/],
    ['without the options of the model', () => changed(shipped, { 'conf/model.conf': null }), /conf\/model\.conf: it is missing/],
    ['with rubbish for options', () => changed(shipped, { 'conf/model.conf': '--beam=12\n<html>\n' }), /conf\/model\.conf: line 2 is no option: "<html>"/],
    ['for telephones', () => changed(shipped, { 'conf/mfcc.conf': confOf(shipped, 'conf/mfcc.conf').replace('16000', '8000') }), /wants sound of 8000 Hz, and the kiosk gives 16000 Hz\. That is a model for telephones/],
    ['for another rate', () => changed(shipped, { 'conf/mfcc.conf': confOf(shipped, 'conf/mfcc.conf').replace('16000', '44100') }), /wants sound of 44100 Hz/],
    ['with a rate that is no number', () => changed(shipped, { 'conf/mfcc.conf': confOf(shipped, 'conf/mfcc.conf').replace('16000', 'fast') }), /an unreadable number of Hz/],
    ['with filters beyond what sound has', () => changed(shipped, { 'conf/mfcc.conf': confOf(shipped, 'conf/mfcc.conf').replace('6800', '12000') }), /highest frequency, 12000 Hz, is above half/],
    ['whose network takes other figures than its options make', () => changed(shipped, { 'conf/mfcc.conf': confOf(shipped, 'conf/mfcc.conf').replace('num-ceps=13', 'num-ceps=40') }), /makes 40 figures of each bit of sound, and the network in am\/final\.mdl takes 13/],
    ['with a stray pitch', () => changed(shipped, { 'conf/pitch.conf': '' }), /makes 16 figures/],
    ['with a fixed graph', () => changed(foreign, { 'graph/HCLr.fst': null, 'graph/Gr.fst': null, 'graph/HCLG.fst': 'x' }), /graph\/HCLG\.fst: the model has a fixed graph.*Take a model for run-time grammars/],
    ['without a graph', () => changed(foreign, { 'graph/HCLr.fst': null }), /graph\/: graph\/HCLr\.fst is missing/],
    ['with an empty graph', () => changed(foreign, { 'graph/HCLr.fst': '' }), /graph\/HCLr\.fst: it is empty/],
    ['with rubbish for a graph', () => changed(foreign, { 'graph/HCLr.fst': 'x'.repeat(5_000) }), /graph\/HCLr\.fst: it is no OpenFst file/],
    ['with a graph that ends too soon', () => changed(foreign, { 'graph/HCLr.fst': (foreign.get('graph/HCLr.fst') ?? new Uint8Array(0)).slice(0, 5_000) }), /graph\/HCLr\.fst: it is cut short/],
    ['with a plain graph in the place of a lookahead one', () => changed(foreign, { 'graph/HCLr.fst': foreign.get('graph/Gr.fst') ?? null }), /of the kind "const", and not a lookahead graph/],
    ['without words', () => changed(foreign, { 'graph/words.txt': null }), /graph\/words\.txt: it is missing, and graph\/Gr\.fst does not name its words/],
    ['with words without numbers', () => changed(foreign, { 'graph/words.txt': '<eps> 0\nbench\n' }), /line 2 is not a word and its number: "bench"/],
    ['with words that are no text', () => changed(foreign, { 'graph/words.txt': Uint8Array.of(0xff, 0xfe, 0x80) }), /not text in UTF-8/],
    ['without the list of what to erase', () => changed(foreign, { 'graph/disambig_tid.int': null }), /graph\/disambig_tid\.int: it is missing/],
  ])('%s are refused, and it is said where, what and what to do', (_, make, sentence) => {
    expect(faults(make())).toContainEqual(expect.stringMatching(sentence));
  });

  it('tell all their faults at once', () => {
    expect(faults(changed(shipped, { 'conf/mfcc.conf': null, 'conf/model.conf': null, 'am/final.mdl': '' }))).toHaveLength(3);
  });

  it('are taken without a fixed graph that would switch the run-time grammar off, and without what weighs whole sentences', () => {
    const found = checkFiles(changed(foreign, { 'graph/HCLG.fst': 'x', 'rescore/G.fst': 'x' }));
    expect(found.faults).toEqual([]);
    expect(found.remarks).toEqual([expect.stringContaining('graph/HCLG.fst is left out'), expect.stringContaining('rescore/ is left out')]);
    expect([...found.kept.keys()].filter((path) => /HCLG|rescore/.test(path))).toEqual([]);
  });

  it('may have options that are not all needed, remarks, and no lines at all', () => {
    expect(faults(changed(shipped, { 'conf/model.conf': '# a remark\n--beam=12 # wide\n\n' }))).toEqual([]);
  });

  it('without a word for the unknown are taken, and what that means is said', () => {
    const words = confOf(foreign, 'graph/words.txt').replace(/^\[unk\] .*\n/m, '');
    expect(checkFiles(changed(foreign, { 'graph/words.txt': words })).remarks).toEqual([expect.stringContaining('no word [unk]')]);
  });
});

describe('the words of a speech model', () => {
  const piece = () => {
    const loaded = loadPiece(DEMO_TEXT);
    if (!loaded.ok) throw new Error('the demo piece is faulty');
    return loaded.value;
  };

  it('that are not there are named, those of the piece too, and plurals are listened for as singulars', () => {
    const all = checkWords(undefined, DICTIONARY, [piece()]).asked;
    const lacking = new Set(['stretcher', 'stretchers', 'rails', 'workshop']);
    const found = checkWords(new Set(all.filter((word) => !lacking.has(word))), DICTIONARY, [piece()]);
    expect(found.faults).toEqual([]);
    expect([...found.unheard].sort()).toEqual(['stretcher', 'stretchers', 'workshop'].filter((word) => all.includes(word)));
    expect(found.asSingular).toEqual(['rails'].filter((word) => all.includes(word)));
    expect(found.grammar.phrases.some((phrase) => phrase.split(' ').includes('stretcher'))).toBe(false);
  });

  it('in capitals are refused as that', () => {
    const found = checkWords(new Set(BENCH_WORDS.map((word) => word.toUpperCase())), DICTIONARY, []);
    expect(found.faults.map(writeFault)).toEqual([expect.stringContaining('its words are in capitals')]);
  });

  it('of another language are refused', () => {
    const found = checkWords(new Set(['le', 'la', 'chaise', 'table', 'pied']), DICTIONARY, []);
    expect(found.faults.map(writeFault)).toEqual([expect.stringMatching(/\d+ of the \d+ words of the bench are not in its dictionary.*Take a model for English/)]);
  });

  it('without any word to call the bench by are refused', () => {
    const found = checkWords(new Set(BENCH_WORDS.filter((word) => !['bench', 'workshop', 'partner'].includes(word))), DICTIONARY, []);
    expect(found.faults.map(writeFault)).toEqual([expect.stringContaining('none of the words that the bench can be called by')]);
  });
});
