import type { VoiceAnswer, VoiceRequest } from '../../../kiosk/mouth/messages.ts';
import type { VoiceWorker } from '../../../kiosk/mouth/voice.ts';

/** A loudspeaker and a voice's worker without a browser, by the clock of the test: what sounds when, while everything about them may fail. */

export class PretendedSource extends EventTarget {
  readonly context: PretendedContext;
  readonly #seconds: number;
  startAt = Infinity;
  endAt = Infinity;
  over = false;

  constructor(context: PretendedContext, { buffer }: { buffer: { readonly duration: number } }) {
    super();
    this.context = context;
    this.#seconds = buffer.duration;
    context.sources.add(this);
  }

  start(at: number): void {
    this.startAt = at;
    this.endAt = at + this.#seconds;
  }

  stop(at: number): void { this.endAt = Math.min(this.endAt, at); }
  connect<Node>(to: Node): Node { return to; }
  disconnect(): void { /* it is over by then */ }

  get sounds(): boolean {
    const { currentTime } = this.context;
    return !this.over && currentTime >= this.startAt && currentTime < this.endAt;
  }
}

/** Its time goes on with `pass`, unless it stands still. */
export class PretendedContext extends EventTarget {
  readonly sources = new Set<PretendedSource>();
  readonly destination = {};
  state: AudioContextState = 'running';
  currentTime = 0;
  standsStill = false;
  readonly outputLatency: number;

  constructor(latencySeconds: number) {
    super();
    this.outputLatency = latencySeconds;
  }

  get sounds(): boolean {
    return this.state === 'running' && !this.standsStill && [...this.sources].some(({ sounds }) => sounds);
  }

  resume(): Promise<void> { return Promise.resolve(); }

  close(): Promise<void> {
    this.state = 'closed';
    return Promise.resolve();
  }

  pass(seconds: number): void {
    if (this.state !== 'running' || this.standsStill) return;
    this.currentTime += seconds;
    for (const source of this.sources) {
      if (source.over || this.currentTime < source.endAt) continue;
      source.over = true;
      source.dispatchEvent(new Event('ended'));
    }
  }
}

/** Any node that sound only passes through. */
class PretendedNode {
  readonly gain = { value: 1, setValueAtTime: () => undefined, linearRampToValueAtTime: () => undefined, setTargetAtTime: () => undefined };
  connect<Node>(to: Node): Node { return to; }
  disconnect(): void { /* nothing leads anywhere */ }
}

class PretendedBuffer {
  readonly duration: number;
  constructor({ length, sampleRate }: { readonly length: number; readonly sampleRate: number }) { this.duration = length / sampleRate; }
  copyToChannel(): void { /* nobody listens */ }
}

/** By the names that a browser has for them. */
export const PRETENDED = { AudioBuffer: PretendedBuffer, GainNode: PretendedNode, WaveShaperNode: PretendedNode, AudioBufferSourceNode: PretendedSource };

/** What becomes of the next phrase: it is made, refused, never answered, or the worker dies over it. */
export type Fate = 'made' | 'refused' | 'no answer' | 'dies';

const MADE_AFTER_MS = 40;
const SAMPLES_A_LETTER = 1_000;

/** A worker for the voice; `fate` is asked for each phrase. */
export function pretendedVoice(fate: () => Fate): VoiceWorker {
  const events = new EventTarget();
  let ended = false;
  const answer = (data: VoiceAnswer) => { if (!ended) events.dispatchEvent(new MessageEvent('message', { data })); };
  return {
    addEventListener: events.addEventListener.bind(events) as VoiceWorker['addEventListener'],
    terminate: () => { ended = true; },
    postMessage(request: VoiceRequest) {
      setTimeout(() => {
        if (request.kind === 'load') { answer({ kind: 'loaded' }); return; }
        const { number, phrase } = request;
        switch (fate()) {
          case 'made': answer({ kind: 'spoken', number, sound: { samples: new Float32Array(SAMPLES_A_LETTER * phrase.text.length).fill(0.1), rate: 16_000 } }); break;
          case 'refused': answer({ kind: 'not spoken', number, fault: 'it is a test' }); break;
          case 'dies': if (!ended) events.dispatchEvent(new Event('error')); break;
          case 'no answer': break;
        }
      }, MADE_AFTER_MS);
    },
  };
}
