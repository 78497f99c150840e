import type { Signal } from '../../core/bench/reply.ts';
import { renderSignals } from '../../sounds/signals/recipe.ts';
import { startWorker } from '../workers.ts';
import { DEFAULT_VOICE, type VoiceName } from './flite.ts';
import type { Speech } from './pace.ts';
import { createPlayer, type Player, type PlayerOptions } from './player.ts';
import { Renderer } from './renderer.ts';
import { beginSaying, phrasesOf, type SayingOptions } from './saying.ts';
import { SpeechQueue, type Performance, type SayEnd, type SayPriority } from './speechQueue.ts';
import { mouthState, type MouthFacts, type MouthState } from './state.ts';
import { createVoice, type VoiceOptions } from './voice.ts';

export type { SayEnd, SayPriority } from './speechQueue.ts';
export type { MouthState, MouthStateName } from './state.ts';

export interface MouthEvents {
  /** These words begin to sound. Each is followed by one `silent` before the next. */
  speaking(words: string): void;
  silent(): void;
  state(state: MouthState): void;
}

export interface MouthOptions {
  readonly events: MouthEvents;
  /** Makes the ear deaf while the mouth sounds; what it gives back lets the ear hear again, so much later as the loudspeaker lags behind. Signals count, but for 'heard', which asks the maker to speak. */
  readonly deafen?: () => (laterMs?: number) => void;
  /** Asked as each thing begins to sound: decibels to add to the volume for a loud shop. */
  readonly raiseDb?: () => number;
  readonly voice?: VoiceName;
  /** 0 (mute) to 10. */
  readonly volume?: number;
  readonly speech?: Speech;
  /** Every phrase as it goes to the loudspeaker (16 kHz, before the volume), for whoever wants to measure what is said. */
  readonly onRendered?: (samples: Float32Array, text: string) => void;
  /** Bytes of phrases kept; two minutes of speech unless told otherwise. */
  readonly cacheBytes?: number;
  /** Where sound goes and the voice comes from, for tests. */
  readonly player?: Partial<PlayerOptions>;
  readonly voiceOptions?: Partial<VoiceOptions>;
}

export interface SayOptions {
  readonly priority: SayPriority;
  /** What the message is about: a newer one of the same key takes the place of an older. */
  readonly key?: string;
  /** Slowly this once, whatever the settings say. */
  readonly slow?: boolean;
}

export interface Mouth {
  readonly state: MouthState;
  /** Opens the loudspeaker and loads the voice; settles when it is known what can be done. Faults are told by the state. Again after a fault: tries again. */
  start(): Promise<void>;
  /** Says a text; commas and full stops are pauses. Always settles. At volume 0 nothing is said ('interrupted'). */
  say(text: string, options: SayOptions): Promise<SayEnd>;
  /** Sounds a signal over whatever is said; words asked for after it wait until it has sounded. Settles when it has, or cannot. */
  signal(name: Signal): Promise<void>;
  /** Silence at once (within 50 ms), also for what waits. */
  hush(): void;
  setVolume(volume: number): void;
  setSpeech(speech: Speech): void;
  /** Texts that may be wanted soon, likeliest first: made when there is nothing better to do. They take the place of those offered before. */
  prepare(texts: readonly string[]): void;
  close(): void;
}

const DEFAULT_VOLUME = 7;
/** How long what is asked for waits for a mouth that is not started. */
const START_MS = 10_000;

/** The mouth: words and signals to the loudspeaker. Words are on the screen as well, so every fault is told and none stops the bench. */
export function createMouth(options: MouthOptions): Mouth {
  const { events, voice: voiceName = DEFAULT_VOICE, deafen = () => () => undefined, raiseDb = () => 0 } = options;
  let volume = options.volume ?? DEFAULT_VOLUME;
  let speech: Speech = options.speech ?? 'normal';
  let facts: MouthFacts = { output: 'starting', voice: 'starting', voiceFault: '' };
  let state = mouthState(facts);
  let open: () => void = () => undefined;
  const opened = new Promise<void>((resolve) => { open = resolve; });
  const signals = renderSignals();

  function learn(news: Partial<MouthFacts>): void {
    facts = { ...facts, ...news };
    const next = mouthState(facts);
    if (next.name === state.name && next.sentence === state.sentence) return;
    state = next;
    events.state(state);
  }

  const player: Player = createPlayer({ volume, ...options.player, changed: (output) => learn({ output }) });
  const voice = createVoice({
    startWorker: () => startWorker('/mouth/voice-worker.js', 'voice'),
    wasmUrl: '/mouth/flite.wasm',
    ...options.voiceOptions,
    changed: (voiceState, voiceFault) => learn({ voice: voiceState, voiceFault }),
  });
  const renderer = new Renderer(voice, options.cacheBytes);
  const queue = new SpeechQueue({ now: () => performance.now(), perform: ({ text, slow }) => perform(text, slow) });

  function perform(text: string, slow: boolean): Performance {
    let hear: ReturnType<typeof deafen> = () => undefined;
    const saying: SayingOptions = {
      renderer, player, voice: voiceName,
      began: () => {
        hear = deafen();
        player.setRaise(raiseDb());
        events.speaking(text);
      },
      ceased: () => {
        hear(player.latencyMs);
        events.silent();
      },
      rendered: (samples, words) => options.onRendered?.(samples, words),
    };
    return beginSaying(text, slow, saying);
  }

  async function start(): Promise<void> {
    voice.retry();
    await Promise.all([player.start(), voice.load()]);
    learn({ output: player.state });
    open();
  }

  /** What is asked for before the mouth has started waits for it, but not for ever. */
  function whenOpened(): Promise<unknown> {
    return Promise.race([opened, new Promise((resolve) => setTimeout(resolve, START_MS))]);
  }

  function hush(): void {
    queue.hush();
    player.hushSignals();
  }

  return {
    get state() { return state; },
    start,
    async say(text, { priority, key, slow = speech === 'slow' }) {
      if (facts.output === 'starting') await whenOpened();
      if (volume === 0) return 'interrupted';
      if (player.state !== 'open') return 'failed';
      return queue.say({ text, priority, slow, ...(key === undefined ? {} : { key }) });
    },
    async signal(name) {
      if (facts.output === 'starting') await whenOpened();
      if (volume === 0 || player.state !== 'open') return;
      const hear = name === 'heard' ? undefined : deafen();
      try {
        player.setRaise(raiseDb());
        await player.signal(signals[name]);
      } finally {
        hear?.(player.latencyMs);
      }
    },
    hush,
    setVolume(next) {
      volume = next;
      player.setVolume(next);
      if (next === 0) hush();
    },
    setSpeech(next) { speech = next; },
    prepare(texts) {
      renderer.prepare(texts.flatMap((text) => phrasesOf(text, speech === 'slow', voiceName)));
    },
    close() {
      hush();
      voice.close();
      player.close();
    },
  };
}
