import type { Page } from 'playwright-core';

/**
 * What a page sends to its loudspeaker, as samples: for tests that must hear what was said. The page itself needs nothing for it: everything that is
 * connected to an audio context's destination is also led to a recorder.
 */
export interface HeardSound {
  readonly samples: Float32Array;
  readonly rate: number;
}

interface Recorder {
  rate: number;
  blocks: Float32Array[];
  /** When in the recording something was noted, in samples. */
  marks: Record<string, number>;
}

declare global {
  interface Window {
    recorder?: Recorder;
    /** Notes a name at this place of the recording. */
    markSound?: (name: string) => void;
  }
}

/** To be called before the page is opened. */
export async function captureSound(page: Page): Promise<void> {
  // Some TypeScript runners name inner functions by a helper of their own, which the page lacks.
  await page.addInitScript({ content: 'globalThis.__name ??= (named) => named;' });
  await page.addInitScript(recordDestinations);
}

/** Everything sounded since the page was opened, or since `forgetSound`. */
export async function heardSound(page: Page): Promise<HeardSound> {
  const { rate, bytes } = await page.evaluate(() => {
    const { rate = 0, blocks = [] } = window.recorder ?? {};
    const all = new Int16Array(blocks.reduce((sum, block) => sum + block.length, 0));
    let at = 0;
    for (const block of blocks) {
      for (const sample of block) all[at++] = Math.round(32_767 * Math.max(-1, Math.min(1, sample)));
    }
    const octets = new Uint8Array(all.buffer);
    let text = '';
    for (let start = 0; start < octets.length; start += 32_768) text += String.fromCharCode(...octets.subarray(start, start + 32_768));
    return { rate, bytes: btoa(text) };
  });
  const octets = Buffer.from(bytes, 'base64');
  return { rate, samples: Float32Array.from({ length: octets.length >> 1 }, (_, index) => octets.readInt16LE(2 * index) / 32_767) };
}

/** Begins a new recording. */
export async function forgetSound(page: Page): Promise<void> {
  await page.evaluate(() => {
    if (window.recorder) Object.assign(window.recorder, { blocks: [], marks: {} });
  });
}

/** Runs in the page, before its scripts. */
function recordDestinations(): void {
  const BLOCK = 1_024;
  const recorder: Recorder = { rate: 0, blocks: [], marks: {} };
  window.recorder = recorder;
  window.markSound = (name) => { recorder.marks[name] = recorder.blocks.length * BLOCK; };
  const taps = new WeakMap<BaseAudioContext, AudioNode>();
  // The connect of every node, whoever made it; called with that node as `this`.
  // eslint-disable-next-line @typescript-eslint/unbound-method
  const connect = AudioNode.prototype.connect as (this: AudioNode, ...to: unknown[]) => unknown;
  Object.assign(AudioNode.prototype, {
    connect(this: AudioNode, ...to: unknown[]) {
      if (to[0] === this.context.destination && this.context instanceof AudioContext && !taps.has(this.context)) tap(this.context);
      const ear = taps.get(this.context);
      if (to[0] === this.context.destination && ear !== undefined) connect.call(this, ear);
      return connect.apply(this, to);
    },
  });

  function tap(context: AudioContext): void {
    // Deprecated, but the only recorder that needs no script file of its own, which the page's policy would forbid.
    // eslint-disable-next-line @typescript-eslint/no-deprecated
    const ear = context.createScriptProcessor(BLOCK, 1, 1);
    recorder.rate = context.sampleRate;
    // eslint-disable-next-line @typescript-eslint/no-deprecated
    ear.onaudioprocess = (event) => { recorder.blocks.push(event.inputBuffer.getChannelData(0).slice()); };
    taps.set(context, ear);
    connect.call(ear, context.destination);
  }
}
