import { describe, expect, it } from 'vitest';
import { readWords } from '../../../kiosk/ear/engine.ts';
import { grammarPhrases, wordsOf } from '../../../kiosk/ear/grammar.ts';

describe('the grammar for the recogniser', () => {
  it('gives each phrase alone and after the address word, and a word for the unknown', () => {
    expect(grammarPhrases(['next step', 'say again'], 'bench', new Set())).toEqual(
      ['bench', 'next step', 'bench next step', 'say again', 'bench say again', '[unk]']);
  });

  it('never joins the words on either side of one that the model cannot hear', () => {
    expect(grammarPhrases(['how long is the gunstock rail'], 'bench', new Set(['gunstock']))).toEqual(
      ['bench', 'how long is the', 'rail', 'bench how long is the', '[unk]']);
    expect(grammarPhrases(['gunstock rail'], 'bench', new Set(['gunstock']))).toEqual(['bench', 'rail', '[unk]']);
  });

  it('knows every word that it needs, once', () => {
    expect(wordsOf(['next step', 'Step  back', 'thirty-seconds'], 'bench')).toEqual(['bench', 'next', 'step', 'back', 'thirty', 'seconds']);
  });

  it('reads the words of a model, and only the words', () => {
    const file = new TextEncoder().encode('<eps> 0\nbench 261\n[unk] 1\n#0 9\nstep 5\n');
    expect(readWords(file)).toEqual(new Set(['bench', '[unk]', 'step']));
  });
});
