import { SAMPLE_RATE_HZ } from './messages.ts';

export interface MicrophoneChoice {
  readonly id: string;
  readonly label: string;
  readonly chosen: boolean;
}

/** Why there is no sound: none plugged in, refused by the browser's settings, held by another program, the browser waits for a first touch, or will not give sound at our rate. */
export type MicrophoneFault = 'no microphone' | 'not allowed' | 'busy' | 'untouched' | 'wrong rate';

export interface MicrophoneEvents {
  /** 100 ms of 16 kHz sound; `ageMs` ago it was whole, for a busy page gets it late. */
  block(samples: Float32Array<ArrayBuffer>, ageMs?: number): void;
  /** It hears now. */
  began(): void;
  /** It hears no longer; it goes on trying by itself. */
  lost(fault: MicrophoneFault): void;
}

/** Where sound comes from: the microphone, or in tests whatever is to be heard. */
export interface SoundSource {
  /** What the browser says it really does to the sound; undefined while there is none. */
  readonly settings: MediaTrackSettings | undefined;
  /** Begins to listen, now or as soon as there is a microphone; of this name, if given. */
  start(label?: string): Promise<void>;
  stop(): void;
  /** Every microphone by name; names are empty until the browser has allowed one. */
  choices(): Promise<readonly MicrophoneChoice[]>;
  /** Takes the microphone of this name from now on; another one stands in while it is not there. Undefined: the one that the system prefers. */
  choose(label: string | undefined): Promise<void>;
}

/** Without a sign from the browser that a device came, look again this often. */
const LOOK_AGAIN_MS = 5_000;
/** A microphone that gives no block for this long is not there any more, whatever the browser says. */
const SILENT_TOO_LONG_MS = 3_000;

/**
 * What we ask of the browser's sound processing: nothing. Echo cancelling has no echo to cancel, for the ear is deaf while the mouth speaks, and
 * it ducks speech that begins as a signal ends. Noise suppression is made for calls: it smears the consonants that tell 'fifteen' from 'fifty', and the model
 * was trained on sound without it. Automatic gain lifts an empty room to the loudness of speech, which opens the noise gate and starves its floor.
 */
const PROCESSING = { echoCancellation: false, noiseSuppression: false, autoGainControl: false, channelCount: 1 } as const satisfies MediaTrackConstraints;

/** What the worklet hands over: a block, and when it was whole by the context's clock. */
interface Captured {
  readonly samples: Float32Array<ArrayBuffer>;
  readonly at: number;
}

/** The recogniser would take every word for a slower or a quicker one. */
class WrongRate extends Error {}

interface Capture {
  readonly stream: MediaStream;
  readonly context: AudioContext;
  readonly track: MediaStreamTrack;
}

/** The microphone: chosen by its name (numbers of sound cards change at every start), taken up again by itself when it was unplugged. */
export class Microphone implements SoundSource {
  readonly #workletUrl: string;
  readonly #events: MicrophoneEvents;
  #label: string | undefined;
  #capture: Capture | undefined;
  #wanted = false;
  #taking = false;
  #lookAgain: ReturnType<typeof setInterval> | undefined;
  #lastBlockAt = 0;
  /** Told as lost although it is open: no sound came from it. */
  #silent = false;
  readonly #devicesChanged = () => void this.#deviceCame();

  constructor(workletUrl: string, events: MicrophoneEvents) {
    this.#workletUrl = workletUrl;
    this.#events = events;
  }

  get settings(): MediaTrackSettings | undefined {
    return this.#capture?.track.getSettings();
  }

  async start(label?: string): Promise<void> {
    this.#label = label;
    if (this.#wanted) return;
    this.#wanted = true;
    devices()?.addEventListener('devicechange', this.#devicesChanged);
    this.#lookAgain = setInterval(() => this.#look(), LOOK_AGAIN_MS);
    await this.#take();
  }

  stop(): void {
    this.#wanted = false;
    devices()?.removeEventListener('devicechange', this.#devicesChanged);
    clearInterval(this.#lookAgain);
    this.#letGo();
  }

  async choices(): Promise<readonly MicrophoneChoice[]> {
    const all = ((await devices()?.enumerateDevices()) ?? []).filter(({ kind }) => kind === 'audioinput');
    const real = all.filter(({ deviceId }) => deviceId !== 'default' && deviceId !== 'communications');
    const used = this.#capture?.track;
    // The system's choice has a name of its own ("Default - USB microphone"), and is of the same device as the microphone that it stands for.
    const named = real.find(({ label }) => label === used?.label) ?? real.find(({ groupId }) => groupId !== '' && groupId === used?.getSettings().groupId);
    return real.map(({ deviceId, label }) => ({ id: deviceId, label, chosen: deviceId === named?.deviceId }));
  }

  async choose(label: string | undefined): Promise<void> {
    if (this.#label === label) return;
    this.#label = label;
    if (!this.#wanted || this.#capture?.track.label === label) return;
    this.#letGo();
    await this.#take();
  }

  async #take(): Promise<void> {
    if (!this.#wanted || this.#taking || this.#capture !== undefined) return;
    this.#taking = true;
    try {
      const capture = await this.#open();
      this.#capture = capture;
      this.#lastBlockAt = performance.now();
      // The maker may have stopped listening, or the plug been pulled, while the browser was opening it.
      if (!this.#wants() || capture.track.readyState === 'ended') {
        this.#letGo();
        return;
      }
      capture.track.addEventListener('ended', () => this.#gone(capture));
      this.#events.began();
    } catch (error) {
      if (this.#wants()) this.#events.lost(faultOf(error));
    } finally {
      this.#taking = false;
    }
  }

  /** Asked anew after each wait, for stop() may have been called meanwhile. */
  #wants(): boolean {
    return this.#wanted;
  }

  async #open(): Promise<Capture> {
    const media = devices();
    if (media === undefined) throw new DOMException('this page may not use a microphone', 'NotAllowedError');
    const stream = await media.getUserMedia({ audio: { ...PROCESSING, ...(await this.#named(media)) } });
    try {
      // At this rate the browser itself resamples what the card gives, with a proper filter.
      const context = new AudioContext({ sampleRate: SAMPLE_RATE_HZ, latencyHint: 'interactive' });
      if (context.sampleRate !== SAMPLE_RATE_HZ) {
        void context.close();
        throw new WrongRate(`the browser gives ${context.sampleRate} samples a second`);
      }
      await context.audioWorklet.addModule(this.#workletUrl);
      const node = new AudioWorkletNode(context, 'capture', { numberOfInputs: 1, numberOfOutputs: 0, channelCount: 1, channelCountMode: 'explicit' });
      node.port.onmessage = (event: MessageEvent<Captured>) => this.#heard(context, event.data);
      context.createMediaStreamSource(stream).connect(node);
      this.#wake(context);
      const [track] = stream.getAudioTracks();
      if (track === undefined) throw new DOMException('the microphone gave no sound track', 'NotFoundError');
      return { stream, context, track };
    } catch (error) {
      for (const track of stream.getTracks()) track.stop();
      throw error;
    }
  }

  async #named(media: MediaDevices): Promise<MediaTrackConstraints> {
    if (this.#label === undefined) return {};
    const found = (await media.enumerateDevices()).find(({ kind, label }) => kind === 'audioinput' && label === this.#label);
    return found === undefined ? {} : { deviceId: { ideal: found.deviceId } };
  }

  #heard(context: AudioContext, { samples, at }: Captured): void {
    if (this.#capture?.context !== context) return;
    this.#lastBlockAt = performance.now();
    if (this.#silent) this.#events.began();
    this.#silent = false;
    this.#events.block(samples, Math.max(0, 1_000 * (context.currentTime - at)));
  }

  /** A device came or went: take one if there is none, and change over when the chosen one came back. */
  async #deviceCame(): Promise<void> {
    const current = this.#capture?.track.label;
    if (current !== undefined && this.#label !== undefined && current !== this.#label) {
      const back = (await this.choices()).some(({ label }) => label === this.#label);
      if (back) this.#letGo();
    }
    await this.#take();
  }

  #look(): void {
    const capture = this.#capture;
    if (capture === undefined) {
      void this.#take();
    } else if (performance.now() - this.#lastBlockAt > SILENT_TOO_LONG_MS) {
      // Also after the machine slept, and when a sound system died under a track that still calls itself live.
      if (capture.context.state === 'suspended') this.#waitForTouch(capture.context);
      else this.#gone(capture);
    }
  }

  /** Some browsers let a page work with sound only once it was touched. */
  #waitForTouch(context: AudioContext): void {
    this.#silent = true;
    this.#events.lost('untouched');
    for (const touch of ['pointerdown', 'keydown']) addEventListener(touch, () => this.#wake(context), { once: true });
    this.#wake(context);
  }

  /** Not awaited: a browser that waits for a first touch would never settle it. A context that was closed meanwhile refuses, and no matter. */
  #wake(context: AudioContext): void {
    context.resume().catch(() => undefined);
  }

  #gone(capture: Capture): void {
    if (this.#capture !== capture) return;
    this.#letGo();
    this.#events.lost('no microphone');
    void this.#take();
  }

  #letGo(): void {
    const capture = this.#capture;
    this.#capture = undefined;
    this.#silent = false;
    if (capture === undefined) return;
    for (const track of capture.stream.getTracks()) track.stop();
    capture.context.close().catch(() => undefined);
  }
}

/** Undefined where the page is not on a trusted address: then the browser offers no devices at all. */
function devices(): MediaDevices | undefined {
  return (navigator as { mediaDevices?: MediaDevices }).mediaDevices;
}

function faultOf(error: unknown): MicrophoneFault {
  const name = error instanceof DOMException ? error.name : '';
  // Some browsers refuse to bring a card's sound to another rate.
  if (error instanceof WrongRate || name === 'NotSupportedError') return 'wrong rate';
  if (name === 'NotAllowedError' || name === 'SecurityError') return 'not allowed';
  return name === 'NotReadableError' || name === 'AbortError' ? 'busy' : 'no microphone';
}
