import type { Sound } from '../../sounds/wav.ts';

/** The end of a fade that is too short to be heard and too long to click. */
export const FADE_SECONDS = 0.015;
/** Between asking for a sound and its start: what a busy page needs to hand it over. */
const LEAD_SECONDS = 0.02;

export type LineEnd = 'played' | 'stopped';

/** Sounds that follow one another without a gap but those asked for; the next may still be made while one plays. */
export interface Line {
  /** Adds a sound after those before it. `pauseMs` is the silence between them; more when the sound came too late for it. */
  append(sound: Sound, pauseMs: number): void;
  /** There is no more to come: settles when the last has sounded, or the line was stopped. */
  finish(): Promise<LineEnd>;
  /** Fades what sounds and drops the rest. */
  stop(): void;
  /** When the last sound added ends, by the context's clock. */
  readonly endsAt: number;
}

/**
 * A line into `output`, beginning not before `earliest` (by the context's clock).
 * @param output where it sounds; every line has a fader of its own before it
 */
export function openLine(context: BaseAudioContext, output: AudioNode, earliest = 0): Line {
  const fader = new GainNode(context);
  fader.connect(output);
  const playing = new Set<AudioBufferSourceNode>();
  let endsAt = 0;
  let finishing = false;
  let end: LineEnd | undefined;
  const waiting: ((end: LineEnd) => void)[] = [];

  function settle(how: LineEnd): void {
    if (end !== undefined) return;
    end = how;
    for (const resolve of waiting) resolve(how);
    if (how === 'played') fader.disconnect();
  }

  return {
    get endsAt() { return endsAt; },
    append({ samples, rate }, pauseMs) {
      if (end !== undefined || samples.length === 0) return;
      const buffer = new AudioBuffer({ length: samples.length, sampleRate: rate, numberOfChannels: 1 });
      buffer.copyToChannel(samples, 0);
      const source = new AudioBufferSourceNode(context, { buffer });
      source.connect(fader);
      source.addEventListener('ended', () => {
        playing.delete(source);
        source.disconnect();
        if (finishing && playing.size === 0) settle('played');
      }, { once: true });
      const after = endsAt === 0 ? earliest : endsAt + pauseMs / 1000;
      const startAt = Math.max(after, context.currentTime + LEAD_SECONDS);
      source.start(startAt);
      endsAt = startAt + buffer.duration;
      playing.add(source);
    },
    finish() {
      finishing = true;
      return new Promise((resolve) => {
        if (end !== undefined) { resolve(end); return; }
        waiting.push(resolve);
        if (playing.size === 0) settle('played');
      });
    },
    stop() {
      if (end !== undefined) return;
      const now = context.currentTime;
      fader.gain.setValueAtTime(1, now);
      fader.gain.linearRampToValueAtTime(0, now + FADE_SECONDS);
      for (const source of playing) source.stop(now + FADE_SECONDS);
      settle('stopped');
    },
  };
}
