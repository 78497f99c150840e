import type { Phrase, VoiceName } from './flite.ts';
import { paceOf } from './pace.ts';
import { splitPhrases } from './phrasing.ts';
import type { Player, Voicing } from './player.ts';
import type { Renderer } from './renderer.ts';
import type { Performance, SayEnd } from './speechQueue.ts';

export interface SayingOptions {
  readonly renderer: Pick<Renderer, 'render'>;
  readonly player: Pick<Player, 'speech'>;
  readonly voice: VoiceName;
  /** The first sound is on its way to the loudspeaker. */
  readonly began: () => void;
  /** Called once after `began`, when the sound has ended or was faded out. */
  readonly ceased: () => void;
  readonly rendered: (samples: Float32Array, text: string) => void;
}

/** The phrases of a text as the voice is asked for them, each with the silence after it. */
export function phrasesOf(text: string, slow: boolean, voice: VoiceName): readonly (Phrase & { readonly pauseMs: number })[] {
  const { stretch, pauses } = paceOf(slow ? 'slow' : 'normal', voice);
  return splitPhrases(text, pauses).map(({ text: words, pauseMs }) => ({ text: words, voice, stretch, pauseMs }));
}

/** Says one text, phrase by phrase: the first sounds while the next is made. */
export function beginSaying(text: string, slow: boolean, options: SayingOptions): Performance {
  let line: Voicing | undefined;
  let stopped = false;
  let sounding = false;

  function cease(): void {
    if (!sounding) return;
    sounding = false;
    options.ceased();
  }

  async function say(): Promise<SayEnd> {
    let pauseMs = 0;
    for (const phrase of phrasesOf(text, slow, options.voice)) {
      // One after the other on purpose: the voice makes one at a time, and the first is wanted first.
      const sound = await options.renderer.render(phrase);
      if (stopped) return 'interrupted';
      if (!sound.ok) {
        await line?.finish();
        return 'failed';
      }
      line ??= options.player.speech();
      line.append(sound.value, pauseMs);
      options.rendered(sound.value.samples, phrase.text);
      pauseMs = phrase.pauseMs;
      if (!sounding) {
        sounding = true;
        options.began();
      }
    }
    const end = await line?.finish() ?? 'played';
    return end === 'played' ? 'said' : end === 'stopped' ? 'interrupted' : 'failed';
  }

  /** Whoever is told of it may fail; then what is on its way to the loudspeaker must not sound on, for the ear is about to hear again. */
  function silence(fault: unknown): never {
    line?.stop();
    throw fault;
  }

  return {
    ended: say().catch(silence).finally(cease),
    stop() {
      stopped = true;
      line?.stop();
      cease();
    },
  };
}
