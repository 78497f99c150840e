import { describe, expect, it } from 'vitest';
import { failure, success, type Result } from '../../../core/result.ts';
import type { Phrase } from '../../../kiosk/mouth/flite.ts';
import { PhraseCache } from '../../../kiosk/mouth/phraseCache.ts';
import { Renderer } from '../../../kiosk/mouth/renderer.ts';
import type { Sound } from '../../../sounds/wav.ts';

const phrase = (text: string, stretch = 1): Phrase => ({ text, voice: 'kal16', stretch });
const sound = (length: number): Sound => ({ samples: new Float32Array(length), rate: 16_000 });

/** A voice that makes a phrase when it is told to. */
class PatientVoice {
  readonly asked: string[] = [];
  readonly #settle: ((spoken: Result<Sound, string>) => void)[] = [];

  speak = ({ text }: Phrase): Promise<Result<Sound, string>> => {
    this.asked.push(text);
    return new Promise((resolve) => this.#settle.push(resolve));
  };

  async make(spoken: Result<Sound, string> = success(sound(100))): Promise<void> {
    this.#settle.shift()?.(spoken);
    for (let round = 0; round < 5; round++) await Promise.resolve();
  }
}

describe('phrases are made one at a time', () => {
  it('what is wanted now goes before what may be wanted soon', async () => {
    const voice = new PatientVoice();
    const renderer = new Renderer(voice);
    renderer.prepare(['soon one', 'soon two'].map((text) => phrase(text)));
    void renderer.render(phrase('now'));
    await voice.make();
    await voice.make();
    expect(voice.asked).toEqual(['soon one', 'now', 'soon two']);
  });

  it('a phrase is made once, and had at once the next time', async () => {
    const voice = new PatientVoice();
    const renderer = new Renderer(voice);
    const both = [renderer.render(phrase('long rail')), renderer.render(phrase('long rail'))];
    await voice.make();
    const sounds = [...await Promise.all(both), await renderer.render(phrase('long rail'))];
    expect(sounds.every((one) => one.ok)).toBe(true);
    expect(voice.asked).toEqual(['long rail']);
  });

  it('a phrase that is wanted while it is being prepared is not made twice', async () => {
    const voice = new PatientVoice();
    const renderer = new Renderer(voice);
    renderer.prepare([phrase('long rail')]);
    const wanted = renderer.render(phrase('long rail'));
    await voice.make();
    expect((await wanted).ok).toBe(true);
    expect(voice.asked).toEqual(['long rail']);
  });

  it('slowly said, it is another phrase', () => {
    const voice = new PatientVoice();
    const renderer = new Renderer(voice);
    void renderer.render(phrase('long rail'));
    void renderer.render(phrase('long rail', 1.6));
    return voice.make().then(() => expect(voice.asked).toHaveLength(2));
  });

  it('newly offered phrases take the place of older ones', async () => {
    const voice = new PatientVoice();
    const renderer = new Renderer(voice);
    renderer.prepare([phrase('one'), phrase('two'), phrase('three')]);
    renderer.prepare([phrase('four')]);
    await voice.make();
    await voice.make();
    expect(voice.asked).toEqual(['one', 'four']);
  });

  it('a failed phrase is told, not kept, and stops the preparing', async () => {
    const voice = new PatientVoice();
    const renderer = new Renderer(voice);
    const wanted = renderer.render(phrase('one'));
    renderer.prepare([phrase('two')]);
    await voice.make(failure('broken'));
    expect(await wanted).toEqual(failure('broken'));
    expect(voice.asked).toEqual(['one']);
    void renderer.render(phrase('one'));
    expect(voice.asked).toEqual(['one', 'one']);
  });
});

describe('phrases that are kept', () => {
  it('never hold more bytes than allowed, and drop the longest unused', () => {
    const cache = new PhraseCache(4 * 250);
    cache.set('a', sound(100));
    cache.set('b', sound(100));
    cache.get('a');
    cache.set('c', sound(100));
    expect(['a', 'b', 'c'].map((key) => cache.has(key))).toEqual([true, false, true]);
    expect(cache.bytes).toBe(800);
  });

  it('counts a phrase once when it is made again, and keeps none that is too large', () => {
    const cache = new PhraseCache(1_000);
    cache.set('a', sound(100));
    cache.set('a', sound(50));
    cache.set('b', sound(251));
    expect(cache.bytes).toBe(200);
    expect(cache.get('b')).toBeUndefined();
  });
});
