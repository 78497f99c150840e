import type { Page } from 'playwright-core';

/**
 * A kiosk that hears itself: what goes to its loudspeaker comes back into its microphone, softer by so many decibels and with the echo of a room, and so does whatever the test
 * plays in the shop.
 */
declare global {
  interface Window {
    /** Plays 16 kHz samples in the shop, over and over if wanted; settles when they are over. */
    playInShop: (samples: readonly number[], again: boolean) => Promise<void>;
  }
}

/** To be called before the page is opened. @param echo the response of the room from the loudspeaker to the microphone, 16 kHz */
export async function hearItself(page: Page, echo: Float32Array): Promise<void> {
  await page.addInitScript({ content: 'globalThis.__name ??= (named) => named;' });
  await page.addInitScript(loopBack, [...echo]);
}

/** Runs in the page, before its scripts. */
function loopBack(echo: number[]): void {
  const RATE_HZ = 16_000;
  let shop: { context: AudioContext; room: AudioNode; microphone: MediaStreamAudioDestinationNode } | undefined;
  const loudspeakers = new Map<BaseAudioContext, MediaStreamAudioDestinationNode>();
  const openShop = () => {
    if (shop !== undefined) return shop;
    const context = new AudioContext({ sampleRate: RATE_HZ });
    const buffer = new AudioBuffer({ length: echo.length, sampleRate: RATE_HZ });
    buffer.copyToChannel(Float32Array.from(echo), 0);
    const room = new ConvolverNode(context, { buffer, disableNormalization: true });
    const microphone = context.createMediaStreamDestination();
    room.connect(microphone);
    shop = { context, room, microphone };
    for (const { stream } of loudspeakers.values()) context.createMediaStreamSource(stream).connect(room);
    return shop;
  };
  // The connect of every node, whoever made it; called with that node as `this`.
  // eslint-disable-next-line @typescript-eslint/unbound-method
  const connect = AudioNode.prototype.connect as (this: AudioNode, ...to: unknown[]) => unknown;
  Object.assign(AudioNode.prototype, {
    connect(this: AudioNode, ...to: unknown[]) {
      const { context } = this;
      if (to[0] === context.destination && context instanceof AudioContext) {
        let heard = loudspeakers.get(context);
        if (heard === undefined) {
          heard = context.createMediaStreamDestination();
          loudspeakers.set(context, heard);
          if (shop !== undefined) connect.call(shop.context.createMediaStreamSource(heard.stream), shop.room);
        }
        connect.call(this, heard);
      }
      return connect.apply(this, to);
    },
  });
  navigator.mediaDevices.getUserMedia = () => Promise.resolve(openShop().microphone.stream.clone());
  window.playInShop = (samples, again) => {
    const { context, microphone } = openShop();
    const buffer = new AudioBuffer({ length: samples.length, sampleRate: RATE_HZ });
    buffer.copyToChannel(Float32Array.from(samples), 0);
    const source = new AudioBufferSourceNode(context, { buffer, loop: again });
    connect.call(source, microphone);
    source.start();
    return again ? Promise.resolve() : new Promise((over) => { source.addEventListener('ended', () => { over(); }); });
  };
}
