import { describe, expect, it } from 'vitest';
import { trustedWords } from '../../../kiosk/ear/trust.ts';

describe('what may be acted on of what was heard', () => {
  it('asks about a number that was heard badly, where it would be asked about, rather than act on it or refuse it', () => {
    const asked = (words: readonly string[], at: number) => (words[at] === 'forty' ? 'asked' : 'wholly');
    expect(trustedWords('forty', [0.5], 'bench', asked)).toEqual({ words: 'forty', doubtful: ['forty'] });
    expect(trustedWords('forty', [0.3], 'bench', asked).words).toBe('[unk]');
    expect(trustedWords('record forty', [0.5, 0.5], 'bench', asked).words).toBe('[unk]');
  });

  it('is a sentence of which every word is sure', () => {
    expect(trustedWords('bench next step', [1, 0.95, 0.99], 'bench')).toEqual({ words: 'bench next step', doubtful: [] });
  });

  it('is nothing when one word is unsure, but the address is still an address', () => {
    expect(trustedWords('bench next step', [1, 0.95, 0.3], 'bench').words).toBe('bench [unk]');
    expect(trustedWords('next step', [0.95, 0.3], 'bench').words).toBe('[unk]');
  });

  it('is less easily a sentence of one or two words, for there is less to go by', () => {
    expect(trustedWords('how long', [1, 0.7], 'bench').words).toBe('[unk]');
    expect(trustedWords('how long is it', [1, 0.7, 1, 1], 'bench').words).toBe('how long is it');
  });

  it('is no sentence of one or two words beside talk that was not understood, unless the address comes between', () => {
    for (const heard of ['[unk] record it', 'next [unk]', 'bench [unk] next', 'undo [unk] [unk]']) expect([heard, trustedWords(heard, [], 'bench').words]).toEqual([heard, heard.startsWith('bench') ? 'bench [unk]' : '[unk]']);
    expect(trustedWords('bench next [unk]', [], 'bench').words).toBe('bench [unk]');
    expect(trustedWords('[unk] bench next', [], 'bench').words).toBe('[unk] bench next');
    expect(trustedWords('[unk] how long is it [unk]', [], 'bench').words).toBe('[unk] how long is it [unk]');
    expect(trustedWords('bench [unk]', [], 'bench').words).toBe('bench [unk]');
  });

  it('names the words that may have been others', () => {
    expect(trustedWords('record leg two width fifteen', [1, 1, 1, 1, 0.7], 'bench')).toEqual({ words: 'record leg two width fifteen', doubtful: ['fifteen'] });
  });

  it('does not ask how sure the address and the unknown word are', () => {
    expect(trustedWords('[unk] bench undo', [0.2, 0.3, 1], 'bench').words).toBe('[unk] bench undo');
  });

  it('is no address where the address word stands alone in talk and is unsure', () => {
    expect(trustedWords('[unk] bench [unk] [unk]', [0.82, 0.53, 0.94, 1], 'bench').words).toBe('[unk]');
    expect(trustedWords('bench', [0.7], 'bench').words).toBe('[unk]');
    expect(trustedWords('bench', [1], 'bench').words).toBe('bench');
    expect(trustedWords('bench [unk]', [0.98, 0.4], 'bench').words).toBe('bench [unk]');
  });

  it('takes a word of which nothing is known as sure', () => {
    expect(trustedWords('next step', [], 'bench')).toEqual({ words: 'next step', doubtful: [] });
  });

  it('does not need a word to be sure on which nothing depends, if enough others are', () => {
    const dependsOn = (words: readonly string[], at: number) => (words[at] === 'the' ? 'not' : 'wholly');
    expect(trustedWords('planing with the jack plane', [1, 1, 0.5, 1, 1], 'bench', dependsOn).words).toBe('planing with the jack plane');
    expect(trustedWords('planing with the jack plane', [1, 1, 0.2, 1, 1], 'bench', dependsOn).words).toBe('[unk]');
    expect(trustedWords('planing with the jack plane', [1, 1, 0.5, 1, 0.5], 'bench', dependsOn).words).toBe('[unk]');
    expect(trustedWords('show the top', [1, 0.5, 1], 'bench', dependsOn).words).toBe('[unk]');
  });
});
