import { describe, expect, it } from 'vitest';
import { dependsOn } from '../../../core/talk/dependence.ts';
import { bench } from './benches.ts';

const depends = (sentence: string, word: string) => {
  const words = sentence.split(' ');
  return dependsOn(words, words.indexOf(word), bench());
};

describe('what a request depends on', () => {
  it('is not a small word that no other would make another request of', () => {
    expect(depends('how long is the long rail', 'is')).toBe('not');
    expect(depends('how long is the long rail', 'the')).toBe('not');
    expect(depends('where do the mortises go on leg two', 'on')).toBe('not');
  });

  it('is not whether one or several were named', () => {
    expect(depends('how deep are the mortises', 'mortises')).toBe('not');
    expect(depends('what is the width of the leg', 'leg')).toBe('not');
  });

  it('is a small word that sounds like a number which would do as well', () => {
    expect(depends('start a timer for a day', 'a')).toBe('not');
    expect(dependsOn('start a timer for a day'.split(' '), 4, bench())).toBe('wholly');
  });

  it('is every number, and every word that names something', () => {
    expect(depends('record leg two width fifteen', 'fifteen')).toBe('asked');
    expect(depends('record leg two width fifteen', 'two')).toBe('wholly');
    expect(depends('how wide is the leg', 'wide')).toBe('wholly');
  });

  it('is everything in words that make no request', () => {
    expect(depends('the weather is cold', 'the')).toBe('wholly');
  });
});
