import { describe, expect, it } from 'vitest';
import { readWords } from '../../../kiosk/ear/engine.ts';
import { asMeant, makeGrammar, wordsToAsk } from '../../../kiosk/ear/grammar.ts';

describe('the grammar for the recogniser', () => {
  it('gives each phrase alone and after the address word, and a word for the unknown', () => {
    expect(makeGrammar(['next step', 'say again'], 'bench', new Set()).phrases).toEqual(
      ['bench', 'next step', 'bench next step', 'say again', 'bench say again', '[unk]']);
  });

  it('never joins the words on either side of one that the model cannot hear', () => {
    const grammar = makeGrammar(['how long is the gunstock rail'], 'bench', new Set(['gunstock']));
    expect(grammar.phrases).toEqual(['bench', 'how long is the', 'rail', 'bench how long is the', '[unk]']);
    expect(grammar.unheard).toEqual(['gunstock']);
    expect(makeGrammar(['gunstock rail'], 'bench', new Set(['gunstock'])).phrases).toEqual(['bench', 'rail', '[unk]']);
  });

  it('hears a plural that the model lacks as its singular, and tells it as the plural', () => {
    const grammar = makeGrammar(['how many rails', 'what assemblies'], 'bench', new Set(['rails', 'assemblies', 'assemblie', 'assembli']));
    expect(grammar.unheard).toEqual([]);
    expect(grammar.phrases).toContain('how many rail');
    expect(grammar.phrases).toContain('what assembly');
    expect(asMeant('how many rail', grammar.meant)).toBe('how many rails');
  });

  it('leaves a singular alone that is a word of its own there', () => {
    const grammar = makeGrammar(['how many rails', 'the long rail'], 'bench', new Set(['rails']));
    expect(asMeant('how many rail', grammar.meant)).toBe('how many rail');
    expect(asMeant('the long rail', grammar.meant)).toBe('the long rail');
  });

  it('does without an address word that the model lacks, and tells so', () => {
    const grammar = makeGrammar(['next step'], 'workshop', new Set(['workshop']));
    expect(grammar).toMatchObject({ phrases: ['next step', '[unk]'], unheard: ['workshop'] });
  });

  it('asks about every word once', () => {
    expect(wordsToAsk(['next step', 'Step  back', 'thirty-seconds', 'long rails'], 'bench')).toEqual(
      ['bench', 'next', 'step', 'back', 'thirty', 'seconds', 'long', 'rails']);
  });

  it('reads the words of a model, and only the words', () => {
    const file = new TextEncoder().encode('<eps> 0\nbench 261\n[unk] 1\n#0 9\nstep 5\n');
    expect(readWords(file)).toEqual(new Set(['bench', '[unk]', 'step']));
  });
});
