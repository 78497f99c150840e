import { createHash } from 'node:crypto';
import { describe, expect, it } from 'vitest';
import { Flite, type VoiceName } from '../../../kiosk/mouth/flite.ts';
import { splitPhrases } from '../../../kiosk/mouth/phrasing.ts';
import { addenda, PRONUNCIATIONS } from '../../../kiosk/mouth/pronounce.ts';
import { createWasi } from '../../../kiosk/mouth/wasi.ts';
import { flite, peakOf, sayWhole, secondsOf, silences, speak } from './voices.ts';

const VOICES: readonly VoiceName[] = ['kal16', 'rms', 'slt', 'awb'];
const SIZE = 'Long rail, shoulder to shoulder, thirty-one, and five eighths inches.';

/** Sentences such as the bench says all day. */
const SENTENCES = [
  SIZE, 'Set the marking gauge to five eighths of an inch, from the face side, and mark both edges of each rail.',
  'Leg three of four, back left. Saw the tenon cheeks, then the shoulders.', 'Five minutes of open time left on the left end.',
];

const wordsIn = (text: string) => text.split(/[\s-]+/).length;

function wordsAMinute(slow: boolean): number {
  const seconds = SENTENCES.reduce((sum, sentence) => sum + secondsOf(sayWhole(sentence, { slow })), 0);
  return 60 * SENTENCES.reduce((sum, sentence) => sum + wordsIn(sentence), 0) / seconds;
}

/** The phones that the voice would say for each phrase, with the additions to its lexicon that it is given. */
function phonesOf(phrases: readonly string[], lexicon: string): readonly string[] {
  const words = ['flite', '-voice', 'kal16', '-add_lex', 'words.lex', '-ps', '-t', phrases.join(', '), 'none'];
  const wasi = createWasi(new Map([['words.lex', new TextEncoder().encode(lexicon)]]));
  const program = new WebAssembly.Instance(flite, wasi.imports).exports as { memory: WebAssembly.Memory; _start: () => void };
  wasi.attach(program.memory, words);
  program._start();
  // What the voice says against the lexicon is printed as well.
  expect(wasi.said()).not.toMatch(/add_addenda/);
  return wasi.said().split('pau').map((phones) => phones.trim()).filter((phones) => phones !== '');
}

describe('the voice that ships', () => {
  it.each(VOICES)('speaks a size as %s: 16 kHz, between three and eight seconds, loud enough and not cut', (voice) => {
    const sound = speak(SIZE, { voice });
    expect(sound.rate).toBe(16_000);
    expect(secondsOf(sound)).toBeGreaterThan(3);
    expect(secondsOf(sound)).toBeLessThan(8);
    expect(peakOf(sound.samples)).toBeGreaterThan(0.2);
    expect(peakOf(sound.samples)).toBeLessThan(1);
  });

  it('says the same words the same way every time, on every machine', () => {
    const hash = (text: string) => createHash('sha256').update(speak(text).samples).digest('hex');
    expect(hash(SIZE)).toBe(hash(SIZE));
    expect(hash(SIZE)).not.toBe(hash(SIZE.replace('five', 'seven')));
    // Floating point in WebAssembly is the same everywhere: another value means another voice.
    expect(hash('thirty-one')).toMatchInlineSnapshot(`"2db0d9956d735c8c2e65a9ac51777930166a86684c2e4d2122e727740cdc3138"`);
  });

  it('says the same with an instance that was made ahead', () => {
    const ahead = new Flite(flite);
    ahead.makeReady();
    const phrase = { text: 'five eighths', voice: 'rms', stretch: 1 } as const;
    expect(ahead.speak(phrase)).toEqual(new Flite(flite).speak(phrase));
    expect(ahead.speak(phrase)).toEqual(new Flite(flite).speak(phrase));
  });

  it('says a phrase longer when it is stretched', () => {
    const seconds = [1, 1.25, 1.6].map((stretch) => secondsOf(speak('and five eighths inches', { stretch })));
    expect(seconds[1]).toBeGreaterThan(1.1 * (seconds[0] ?? NaN));
    expect(seconds[2]).toBeGreaterThan(1.15 * (seconds[1] ?? NaN));
  });

  it('normally speaks about 150 words a minute, slowly about 110', () => {
    const [normal, slow] = [wordsAMinute(false), wordsAMinute(true)];
    expect(normal).toBeGreaterThan(140);
    expect(normal).toBeLessThan(160);
    expect(slow).toBeGreaterThan(100);
    expect(slow).toBeLessThan(120);
  }, 60_000);

  it.each(VOICES)('pauses after the whole inches, and after every comma, as %s', (voice) => {
    const commas = splitPhrases(SIZE).length - 1;
    for (const slow of [false, true]) {
      const pauses = silences(sayWhole(SIZE, { slow, voice })).filter(({ ms }) => ms >= 120);
      expect(pauses.length).toBeGreaterThanOrEqual(commas);
    }
    const [pause] = silences(sayWhole('thirty-one, and five', { voice })).filter(({ ms }) => ms >= 120);
    expect(pause?.ms).toBeGreaterThanOrEqual(190);
    expect(pause?.ms).toBeLessThan(300);
  });

  it('tells what is wrong with a phrase it cannot say', () => {
    for (const text of ['', ' \n ', '-', '⅜ …']) expect(new Flite(flite).speak({ text, voice: 'kal16', stretch: 1 })).toEqual({ ok: false, fault: 'nothing to say' });
    expect(new Flite(flite).speak({ text: 'x'.repeat(601), voice: 'kal16', stretch: 1 })).toMatchObject({ ok: false, fault: expect.stringContaining('at most 600') as string });
  });

  it('takes words that look like its own options, and signs it does not know, as words', () => {
    for (const text of ['-o elsewhere.wav', '--help', 'three ⅜ inches — half']) expect(secondsOf(speak(text))).toBeGreaterThan(0.2);
  });

  it('tells of a program that is not a voice', () => {
    const empty = new WebAssembly.Module(new Uint8Array([0, 0x61, 0x73, 0x6d, 1, 0, 0, 0]));
    expect(new Flite(empty).speak({ text: 'one', voice: 'kal16', stretch: 1 })).toMatchObject({ ok: false, fault: expect.stringContaining('not a program') as string });
  });
});

describe('words of the trade', () => {
  const words = PRONUNCIATIONS.map(({ word }) => word);
  const withTable = phonesOf(words, addenda());
  const without = phonesOf(words, '');

  it.each(PRONUNCIATIONS.map(({ word, phones }, index) => ({ word, phones, index })))('$word is said as the table says, and would not be without it', ({ phones, index }) => {
    const plain = phones.replaceAll(/[012]/g, '');
    expect(withTable[index]).toBe(plain);
    expect(without[index]).not.toBe(plain);
  });

  it('are said the same with a capital and inside a sentence', () => {
    expect(phonesOf(['Mortise', 'Chop the mortise'], addenda())).toEqual(['m ao r t ax s', expect.stringMatching(/m ao r t ax s$/)]);
  });

  it('are in the table once', () => {
    expect(new Set(words).size).toBe(words.length);
  });
});
