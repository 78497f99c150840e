import { PEAK_LIMIT } from './loudness.ts';
import { gainOf } from './volume.ts';

/** Voice and signals are both made at this rate; the browser brings it to the loudspeaker's, once and well. */
export const SAMPLE_RATE = 16_000;

/** The way from the lines to the loudspeaker: what overlaps is bent, not cut, at full scale; then the volume. */
export interface Mixer {
  /** Where lines lead to. */
  readonly input: AudioNode;
  /** Changes within a few milliseconds, without a click; `raiseDb` is added to the volume as far as there is room. */
  setVolume(volume: number, raiseDb: number): void;
}

const VOLUME_GLIDE_SECONDS = 0.01;
/** The bend is drawn for sums up to this many times full scale. */
const HEADROOM = 2;
const CURVE_POINTS = 4_097;

export function createMixer(context: BaseAudioContext, volume: number, raiseDb = 0): Mixer {
  const input = new GainNode(context, { gain: 1 / HEADROOM });
  const bend = new WaveShaperNode(context, { curve: bendCurve() });
  const level = new GainNode(context, { gain: gainOf(volume, raiseDb) });
  input.connect(bend).connect(level).connect(context.destination);
  return {
    input,
    setVolume(next, raise) { level.gain.setTargetAtTime(gainOf(next, raise), context.currentTime, VOLUME_GLIDE_SECONDS / 3); },
  };
}

/** Straight up to the peak that one sound may have, then towards full scale: one sound alone passes unchanged. */
function bendCurve(): Float32Array<ArrayBuffer> {
  const room = 1 - PEAK_LIMIT;
  return Float32Array.from({ length: CURVE_POINTS }, (_, point) => {
    const sample = HEADROOM * (2 * point / (CURVE_POINTS - 1) - 1);
    const over = Math.abs(sample) - PEAK_LIMIT;
    return over <= 0 ? sample : Math.sign(sample) * (PEAK_LIMIT + room * Math.tanh(over / room));
  });
}
