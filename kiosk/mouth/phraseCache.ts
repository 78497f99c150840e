import type { Sound } from '../../sounds/wav.ts';

/** Phrases that were made already, the longest unused dropped first when they hold more than `mostBytes`. */
export class PhraseCache {
  readonly #sounds = new Map<string, Sound>();
  readonly #mostBytes: number;
  #bytes = 0;

  constructor(mostBytes: number) {
    this.#mostBytes = mostBytes;
  }

  get bytes(): number {
    return this.#bytes;
  }

  has(key: string): boolean {
    return this.#sounds.has(key);
  }

  get(key: string): Sound | undefined {
    const sound = this.#sounds.get(key);
    if (sound !== undefined) {
      this.#sounds.delete(key);
      this.#sounds.set(key, sound);
    }
    return sound;
  }

  set(key: string, sound: Sound): void {
    this.#remove(key);
    if (sound.samples.byteLength > this.#mostBytes) return;
    this.#sounds.set(key, sound);
    this.#bytes += sound.samples.byteLength;
    for (const oldest of this.#sounds.keys()) {
      if (this.#bytes <= this.#mostBytes) break;
      this.#remove(oldest);
    }
  }

  #remove(key: string): void {
    this.#bytes -= this.#sounds.get(key)?.samples.byteLength ?? 0;
    this.#sounds.delete(key);
  }
}
