import { describe, expect, it } from 'vitest';
import { dependsOn } from '../../../core/talk/dependence.ts';
import { bench } from './benches.ts';

const depends = (sentence: string, word: string) => {
  const words = sentence.split(' ');
  return dependsOn(words, words.indexOf(word), bench());
};

describe('what a request depends on', () => {
  it('is not a small word that no other would make another request of', () => {
    expect(depends('how long is the long rail', 'is')).toBe(false);
    expect(depends('how long is the long rail', 'the')).toBe(false);
    expect(depends('where do the mortises go on leg two', 'on')).toBe(false);
  });

  it('is not whether one or several were named', () => {
    expect(depends('how deep are the mortises', 'mortises')).toBe(false);
    expect(depends('what is the width of the leg', 'leg')).toBe(false);
  });

  it('is a small word that sounds like a number which would do as well', () => {
    expect(depends('start a timer for a day', 'a')).toBe(false);
    expect(dependsOn('start a timer for a day'.split(' '), 4, bench())).toBe(true);
  });

  it('is every number, and every word that names something', () => {
    expect(depends('record leg two width fifteen', 'fifteen')).toBe(true);
    expect(depends('record leg two width fifteen', 'two')).toBe(true);
    expect(depends('how wide is the leg', 'wide')).toBe(true);
  });

  it('is everything in words that make no request', () => {
    expect(depends('the weather is cold', 'the')).toBe(true);
  });
});
