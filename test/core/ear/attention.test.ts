import { beforeEach, describe, expect, it } from 'vitest';
import * as fc from 'fast-check';
import { Attention, ATTENTION_TIMES } from '../../../kiosk/ear/attention.ts';

const { afterAddressMs, afterKeyMs, whileSpeakingMs, longestMs } = ATTENTION_TIMES;
const heard = (words: string) => ({ kind: 'heard', words });

describe('the bench acts on nothing unless it was addressed', () => {
  let attention: Attention;
  beforeEach(() => { attention = new Attention('bench'); });

  it('takes a command in one breath with its word, and takes the word off', () => {
    expect(attention.words('bench next step', 0)).toEqual(heard('next step'));
    expect(attention.attending(1)).toBe(false);
  });

  it('ignores what is said without its word', () => {
    expect(attention.words('next step', 0)).toBeUndefined();
    fc.assert(fc.property(fc.array(fc.constantFrom('next', 'step', 'done', 'leg', '[unk]', 'benches')), fc.nat(100_000), (words, now) => {
      expect(new Attention('bench').words(words.join(' '), now)).toBeUndefined();
    }));
  });

  it('ignores its word in the middle of a remark', () => {
    expect(attention.words('he sat on a bench next step', 0)).toBeUndefined();
    expect(attention.attending(1)).toBe(false);
  });

  it('waits for the command after its word alone, and takes one command', () => {
    expect(attention.words('bench', 1_000)).toEqual({ kind: 'address', settled: true });
    expect(attention.attending(1_000 + afterAddressMs - 1)).toBe(true);
    expect(attention.words('say again', 1_000 + afterAddressMs - 1)).toEqual(heard('say again'));
    expect(attention.words('say again', 1_000 + afterAddressMs - 1)).toBeUndefined();
  });

  it('stops waiting after some seconds', () => {
    attention.words('bench', 0);
    expect(attention.words('next step', afterAddressMs)).toBeUndefined();
  });

  it('hears a command that begins in time out to its end', () => {
    attention.words('bench', 0);
    attention.guess('record', afterAddressMs - 100);
    attention.guess('record leg two', afterAddressMs + 1_000);
    expect(attention.words('record leg two width three', afterAddressMs + 1_000 + whileSpeakingMs - 1)).toEqual(heard('record leg two width three'));
  });

  it('is not kept awake for ever by a voice that never stops', () => {
    attention.words('bench', 0);
    let now = 0;
    while (attention.attending(now) && now < 10 * longestMs) {
      attention.guess('talk', now);
      now += 100;
    }
    expect(now).toBeLessThanOrEqual(longestMs + 100);
  });

  it('lets a radio talk that happens to begin with its word, but not someone whom it listens to', () => {
    const talk = 'bench [unk] and now [unk] the next record which [unk] letters [unk]';
    expect(attention.words(talk, 0)).toBeUndefined();
    expect(attention.words(`bench ${'and '.repeat(20)}step`, 0)).toBeUndefined();
    expect(attention.words('bench how long [unk] the long rail', 0), 'one word not caught is worth asking again').toEqual(heard('how long [unk] the long rail'));
    attention.listen(1_000);
    expect(attention.words(talk, 1_500)).toEqual(heard('and now [unk] the next record which [unk] letters'));
  });

  it('takes the longest request for one', () => {
    const longest = 'bench record long rail length shoulder to shoulder one hundred and forty seven and eleven thirty seconds';
    expect(attention.words(longest, 0)?.kind).toBe('heard');
  });

  it('forgives a cough before the word and a tap after the command', () => {
    expect(attention.words('[unk] bench [unk] next step [unk]', 0)).toEqual(heard('next step'));
  });

  it('keeps an unknown word inside a command, so that the command is not taken for another', () => {
    expect(attention.words('bench record leg [unk] width three', 0)).toEqual(heard('record leg [unk] width three'));
  });

  it('takes a part that has the address word in its name', () => {
    expect(attention.words('bench how long is the bench top', 0)).toEqual(heard('how long is the bench top'));
    expect(attention.words('bench bench next step', 0)).toEqual(heard('next step'));
  });

  it('says that it heard its word as soon as three guesses agree, once in a sentence', () => {
    expect(attention.guess('bench', 0)).toBeUndefined();
    expect(attention.guess('bench', 50)).toBeUndefined();
    expect(attention.guess('bench next', 100)).toEqual({ kind: 'address', settled: false });
    expect(attention.guess('bench next step', 150)).toBeUndefined();
    expect(attention.attending(150)).toBe(true);
    attention.words('bench next step', 300);
    for (const at of [2_000, 2_050]) expect(attention.guess('bench', at)).toBeUndefined();
    expect(attention.guess('bench', 2_100)).toEqual({ kind: 'address', settled: false });
  });

  it('takes no notice of its word in a guess that flickers', () => {
    for (const guess of ['bench', 'bench', 'next', 'bench', 'next step']) expect(attention.guess(guess, 0)).toBeUndefined();
    expect(attention.attending(1)).toBe(false);
  });

  it('forgets a guess that came to nothing', () => {
    for (let guess = 0; guess < 3; guess += 1) attention.guess('bench', 0);
    attention.fellQuiet();
    expect(attention.attending(1)).toBe(false);
    for (let guess = 0; guess < 3; guess += 1) attention.guess('bench', 10);
    expect(attention.words('next step', 20)).toBeUndefined();
    expect(attention.attending(21)).toBe(false);
  });

  it('takes words after the listen key without its word', () => {
    attention.listen(0);
    expect(attention.words('next step', afterKeyMs - 1)).toEqual(heard('next step'));
  });

  it('counts an answer\'s time only while it can hear', () => {
    attention.deafened(0);
    attention.awaitAnswer(5_000, 100);
    expect(attention.words('yes', 200)).toBeUndefined();
    attention.woke(60_000);
    expect(attention.words('yes', 64_999)).toEqual(heard('yes'));
  });

  it('takes no answer when the question was answered by key meanwhile', () => {
    attention.awaitAnswer(5_000, 0);
    attention.deafened(100);
    attention.leave();
    attention.woke(1_000);
    expect(attention.words('yes', 1_001)).toBeUndefined();
  });

  it('goes by another word when that is set', () => {
    attention.addressWord = 'partner';
    expect(attention.words('bench next step', 0)).toBeUndefined();
    expect(attention.words('partner next step', 0)).toEqual(heard('next step'));
  });
});
