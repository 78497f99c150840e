import { openLine, type Line } from './line.ts';
import { createMixer, SAMPLE_RATE, type Mixer } from './output.ts';
import type { OutputState } from './state.ts';
import type { Sound } from '../../sounds/wav.ts';

/** Something that plays: how the queue and the mouth see a line. */
export type Voicing = Pick<Line, 'append' | 'stop'> & {
  /** Settles when all has sounded, was stopped, or the loudspeaker stood still too long. */
  finish(): Promise<'played' | 'stopped' | 'stuck'>;
};

export interface Player {
  readonly state: OutputState;
  start(): Promise<void>;
  /** A line for speech: it waits for a signal that is sounding, and a short breath after it. */
  speech(): Voicing;
  /** Plays over whatever sounds. */
  signal(sound: Sound): Promise<'played' | 'stopped' | 'stuck'>;
  /** Fades the signals that sound. */
  hushSignals(): void;
  setVolume(volume: number): void;
  /** Decibels added to the volume, as far as there is room. */
  setRaise(raiseDb: number): void;
  /** How long after it was played a sound leaves the loudspeaker. */
  readonly latencyMs: number;
  close(): void;
}

export interface PlayerOptions {
  readonly changed: (state: OutputState) => void;
  readonly volume: number;
  readonly openContext?: () => AudioContext;
  /** The devices, to notice a loudspeaker that comes and goes; undefined where the browser tells nothing about them. */
  readonly devices?: MediaDevices | undefined;
  /** Where the person's first key or touch is noticed. */
  readonly gestures?: EventTarget;
}

/** Silence between a signal and the words after it. */
const BREATH_SECONDS = 0.12;
/** How long the browser may take to let a page sound that may. */
const RESUME_MS = 700;
/** A line that has not ended this long after it should have: the loudspeaker stands still. */
const STUCK_MS = 2_500;
const GESTURES = ['keydown', 'pointerdown', 'touchend'] as const;

/** The loudspeaker: one audio context, opened again when it breaks, and what stands in its way. */
export function createPlayer(options: PlayerOptions): Player {
  const { openContext = () => new AudioContext({ sampleRate: SAMPLE_RATE, latencyHint: 'interactive' }), gestures = globalThis } = options;
  const devices = 'devices' in options ? options.devices : (navigator as { mediaDevices?: MediaDevices }).mediaDevices;
  let context: AudioContext | undefined;
  let mixer: Mixer | undefined;
  let volume = options.volume;
  let raiseDb = 0;
  let state: OutputState = 'starting';
  let loudspeaker = true;
  let signalEndsAt = 0;
  const signalsSounding = new Set<Line>();

  function become(next: OutputState): void {
    if (next === state) return;
    state = next;
    options.changed(next);
  }

  function judge(): void {
    if (!loudspeaker) become('no loudspeaker');
    else if (context?.state === 'running') become('open');
    else if (state !== 'starting') become('waiting for a key');
  }

  function open(): void {
    try {
      context = openContext();
    } catch {
      loudspeaker = false;
      judge(); return;
    }
    mixer = createMixer(context, volume, raiseDb);
    signalEndsAt = 0;
    const own = context;
    own.addEventListener('statechange', () => { if (own === context) judge(); });
    own.addEventListener('error', () => { if (own === context) { loudspeaker = false; judge(); } });
  }

  function reopen(): void {
    const old = context;
    context = undefined;
    void old?.close().catch(() => undefined);
    open();
    void resume();
  }

  async function resume(): Promise<void> {
    const asked = context;
    if (asked === undefined) return;
    await Promise.race([asked.resume().catch(() => undefined), new Promise((resolve) => setTimeout(resolve, RESUME_MS))]);
    if (asked !== context) return;
    if (state === 'starting') become(asked.state === 'running' ? 'open' : 'waiting for a key');
    judge();
  }

  async function lookForLoudspeaker(): Promise<void> {
    const found = await devices?.enumerateDevices().catch(() => undefined);
    const before = loudspeaker;
    loudspeaker = found === undefined || found.some((device) => device.kind === 'audiooutput');
    if (!before && loudspeaker) reopen();
    else judge();
  }

  const onGesture = () => { if (context?.state === 'suspended') void resume(); };
  const onDevices = () => { void lookForLoudspeaker(); };

  function line(earliest: number): { readonly line: Line; readonly voicing: Voicing } | undefined {
    if (context === undefined || mixer === undefined) return undefined;
    const own = context;
    const opened = openLine(own, mixer.input, earliest);
    const finish = async (): Promise<'played' | 'stopped' | 'stuck'> => {
      const leftMs = 1000 * Math.max(0, opened.endsAt - own.currentTime);
      const end = await withDeadline(opened.finish(), leftMs + STUCK_MS);
      if (end !== 'stuck') return end;
      opened.stop();
      if (own === context) reopen();
      return 'stuck';
    };
    return { line: opened, voicing: { append: (sound, pauseMs) => opened.append(sound, pauseMs), stop: () => opened.stop(), finish } };
  }

  return {
    get state() { return state; },
    async start() {
      for (const gesture of GESTURES) gestures.addEventListener(gesture, onGesture);
      devices?.addEventListener('devicechange', onDevices);
      if (context === undefined) open();
      await Promise.all([resume(), lookForLoudspeaker()]);
    },
    speech: () => line(signalEndsAt === 0 ? 0 : signalEndsAt + BREATH_SECONDS)?.voicing ?? STUCK,
    async signal(sound) {
      const opened = line(0);
      if (opened === undefined) return 'stuck';
      opened.line.append(sound, 0);
      signalEndsAt = opened.line.endsAt;
      signalsSounding.add(opened.line);
      const end = await opened.voicing.finish();
      signalsSounding.delete(opened.line);
      return end;
    },
    hushSignals() {
      for (const sounding of signalsSounding) sounding.stop();
      signalEndsAt = 0;
    },
    setVolume(next) {
      volume = next;
      mixer?.setVolume(next, raiseDb);
    },
    setRaise(next) {
      if (next === raiseDb) return;
      raiseDb = next;
      mixer?.setVolume(volume, next);
    },
    // Not every browser knows it; a lag of seconds is a fault of the driver, and no more is believed.
    get latencyMs() { return 1_000 * Math.min(2, context?.outputLatency || 0); },
    close() {
      for (const gesture of GESTURES) gestures.removeEventListener(gesture, onGesture);
      devices?.removeEventListener('devicechange', onDevices);
      void context?.close().catch(() => undefined);
      context = undefined;
    },
  };
}

const STUCK: Voicing = { append: () => undefined, stop: () => undefined, finish: () => Promise.resolve('stuck') };

function withDeadline<Value>(promise: Promise<Value>, deadlineMs: number): Promise<Value | 'stuck'> {
  return new Promise((resolve) => {
    const deadline = setTimeout(() => { resolve('stuck'); }, deadlineMs);
    void promise.then((value) => {
      clearTimeout(deadline);
      resolve(value);
    });
  });
}
