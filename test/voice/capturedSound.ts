import type { Page } from 'playwright-core';

/**
 * What a page sends to its loudspeaker, as samples: for tests that must hear what was said. The page itself needs nothing for it: whatever is connected
 * to an audio context's destination is also led to a recorder.
 */
export interface HeardSound {
  readonly samples: Float32Array;
  /** Samples a second. */
  readonly rate: number;
  /** Where in `samples` each `markSound` was made, exact to the browser's block of 128. */
  readonly marks: Readonly<Record<string, number>>;
}

interface Recording {
  readonly context: AudioContext;
  /** Led to the recorder's second channel, where a pulse stands for a mark. */
  readonly marker: AudioNode;
  sound: Float32Array[];
  pulses: Float32Array[];
  names: string[];
}

declare global {
  interface Window {
    recordings: Recording[];
    /** Notes a name at this place of every recording. */
    markSound: (name: string) => void;
  }
}

/** Two of the recorder's blocks at the slowest rate: after this, what has sounded has been written down. */
const WRITTEN_MS = 600;

/** To be called before the page is opened. */
export async function captureSound(page: Page): Promise<void> {
  // Some TypeScript runners name inner functions by a helper of their own, which the page lacks.
  await page.addInitScript({ content: 'globalThis.__name ??= (named) => named;' });
  await page.addInitScript(recordDestinations);
}

/** Everything sounded since the page was opened, or since `forgetSound`; of several audio contexts, the loudest. */
export async function heardSound(page: Page): Promise<HeardSound> {
  await page.waitForTimeout(WRITTEN_MS);
  const { rate, sound, pulses, names } = await page.evaluate(() => {
    const text = (blocks: Float32Array[]) => {
      const all = Int16Array.from(blocks.flatMap((block) => [...block]), (sample) => Math.round(32_767 * Math.max(-1, Math.min(1, sample))));
      const octets = new Uint8Array(all.buffer);
      let written = '';
      for (let start = 0; start < octets.length; start += 32_768) written += String.fromCharCode(...octets.subarray(start, start + 32_768));
      return btoa(written);
    };
    const peak = (recording: Recording) => recording.sound.reduce((most, block) => block.reduce((loudest, sample) => Math.max(loudest, Math.abs(sample)), most), 0);
    const [loudest] = [...window.recordings].sort((one, other) => peak(other) - peak(one));
    return loudest === undefined
      ? { rate: 0, sound: '', pulses: '', names: [] }
      : { rate: loudest.context.sampleRate, sound: text(loudest.sound), pulses: text(loudest.pulses), names: loudest.names };
  });
  const marks = risingEdges(samplesOf(pulses));
  return { rate, samples: samplesOf(sound), marks: Object.fromEntries(names.map((name, index) => [name, marks[index] ?? NaN])) };
}

/** Begins new recordings. */
export async function forgetSound(page: Page): Promise<void> {
  await page.waitForTimeout(WRITTEN_MS);
  await page.evaluate(() => {
    for (const recording of window.recordings) Object.assign(recording, { sound: [], pulses: [], names: [] });
  });
}

function samplesOf(text: string): Float32Array {
  const octets = Buffer.from(text, 'base64');
  return Float32Array.from({ length: octets.length >> 1 }, (_, index) => octets.readInt16LE(2 * index) / 32_767);
}

function risingEdges(pulses: Float32Array): number[] {
  const edges: number[] = [];
  pulses.forEach((sample, index) => { if (sample > 0.5 && !((pulses[index - 1] ?? 0) > 0.5)) edges.push(index); });
  return edges;
}

/** Runs in the page, before its scripts. */
function recordDestinations(): void {
  const BLOCK = 4_096;
  window.recordings = [];
  window.markSound = (name) => {
    for (const { context, marker, names } of window.recordings) {
      names.push(name);
      const pulse = new ConstantSourceNode(context, { offset: 1 });
      pulse.connect(marker);
      pulse.start();
      pulse.stop(context.currentTime + 0.02);
    }
  };
  const taps = new WeakMap<BaseAudioContext, AudioNode>();
  // The connect of every node, whoever made it; called with that node as `this`.
  // eslint-disable-next-line @typescript-eslint/unbound-method
  const connect = AudioNode.prototype.connect as (this: AudioNode, ...to: unknown[]) => unknown;
  Object.assign(AudioNode.prototype, {
    connect(this: AudioNode, ...to: unknown[]) {
      const { context } = this;
      if (to[0] === context.destination && context instanceof AudioContext) {
        if (!taps.has(context)) taps.set(context, tap(context));
        connect.call(this, taps.get(context));
      }
      return connect.apply(this, to);
    },
  });

  /** Sound and marks, one channel each, into a recorder; gives back where sound is led to. */
  function tap(context: AudioContext): AudioNode {
    const mono = { channelCount: 1, channelCountMode: 'explicit' } as const;
    const sound = new GainNode(context, mono);
    const marker = new GainNode(context, mono);
    const both = new ChannelMergerNode(context, { numberOfInputs: 2 });
    const recording: Recording = { context, marker, sound: [], pulses: [], names: [] };
    window.recordings.push(recording);
    // Deprecated, but the only recorder that needs no script of its own, which the page's policy would forbid.
    /* eslint-disable @typescript-eslint/no-deprecated */
    const recorder = context.createScriptProcessor(BLOCK, 2, 1);
    recorder.onaudioprocess = ({ inputBuffer }) => {
      recording.sound.push(inputBuffer.getChannelData(0).slice());
      recording.pulses.push(inputBuffer.getChannelData(1).slice());
    };
    /* eslint-enable @typescript-eslint/no-deprecated */
    connect.call(sound, both, 0, 0);
    connect.call(marker, both, 0, 1);
    connect.call(both, recorder);
    connect.call(recorder, context.destination);
    return sound;
  }
}
