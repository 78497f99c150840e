import type { Result } from '../../core/result.ts';
import type { Phrase } from './flite.ts';
import { PhraseCache } from './phraseCache.ts';
import type { Voice } from './voice.ts';
import type { Sound } from '../../sounds/wav.ts';

/** Two minutes of speech at 16 kHz. */
export const CACHE_BYTES = 8 * 1024 * 1024;

interface Job {
  readonly phrase: Phrase;
  readonly sound: Promise<Result<Sound, string>>;
  readonly settle: (sound: Result<Sound, string>) => void;
}

/**
 * Phrases into sound: from the cache where it has them, else by the voice, one at a time. What is wanted now goes before what may be wanted soon.
 */
export class Renderer {
  readonly #voice: Pick<Voice, 'speak'>;
  readonly #cache: PhraseCache;
  readonly #wanted = new Map<string, Job>();
  #soon = new Map<string, Phrase>();
  #atWork: { readonly key: string; readonly job: Job } | undefined;

  constructor(voice: Pick<Voice, 'speak'>, cacheBytes = CACHE_BYTES) {
    this.#voice = voice;
    this.#cache = new PhraseCache(cacheBytes);
  }

  /** The phrase's sound, as soon as can be. Always settles. */
  render(phrase: Phrase): Promise<Result<Sound, string>> {
    const key = keyOf(phrase);
    const cached = this.#cache.get(key);
    if (cached !== undefined) return Promise.resolve({ ok: true, value: cached });
    this.#soon.delete(key);
    const job = (this.#atWork?.key === key ? this.#atWork.job : undefined) ?? this.#wanted.get(key) ?? newJob(phrase);
    if (this.#atWork?.job !== job) this.#wanted.set(key, job);
    this.#work();
    return job.sound;
  }

  /** Phrases that will likely be wanted, likeliest first; they take the place of those offered before. */
  prepare(phrases: readonly Phrase[]): void {
    this.#soon = new Map(phrases.map((phrase) => [keyOf(phrase), phrase]));
    this.#work();
  }

  #work(): void {
    if (this.#atWork !== undefined) return;
    const next = this.#next();
    if (next === undefined) return;
    const { key, job } = next;
    this.#atWork = next;
    void this.#voice.speak(job.phrase).then((sound) => {
      this.#atWork = undefined;
      if (sound.ok) this.#cache.set(key, sound.value);
      else this.#soon.clear();
      job.settle(sound);
      this.#work();
    });
  }

  #next(): { readonly key: string; readonly job: Job } | undefined {
    for (const [key, job] of this.#wanted) {
      this.#wanted.delete(key);
      return { key, job };
    }
    for (const [key, phrase] of this.#soon) {
      this.#soon.delete(key);
      if (!this.#cache.has(key)) return { key, job: newJob(phrase) };
    }
    return undefined;
  }
}

function keyOf({ text, voice, stretch }: Phrase): string {
  return `${voice} ${stretch} ${text}`;
}

function newJob(phrase: Phrase): Job {
  let settle: Job['settle'] = () => undefined;
  const sound = new Promise<Result<Sound, string>>((resolve) => { settle = resolve; });
  return { phrase, sound, settle };
}
