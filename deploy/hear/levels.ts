/** How loud a recording is; decibels below full scale. */
export interface Levels {
  readonly peakDb: number;
  readonly rmsDb: number;
  /** Samples at full scale, each beside another. */
  readonly clipped: number;
  /** Share of full scale. */
  readonly dcOffset: number;
  /** What a tenth of its moments are softer than: the room, when somebody speaks in the rest. */
  readonly ambientDb: number;
}

export interface Measured {
  readonly levels: Levels;
  readonly warnings: readonly string[];
  /** Where speech seems to end, in seconds; null when nothing is much louder than the room. */
  readonly speechEnds: number | null;
  /** Of all ends of something louder than the room, for telling which words followed which. */
  readonly ends: readonly number[];
  /** The longest stretch that is as soft as the room, for what that sounds like before and after: where it begins and how long it is, in seconds. */
  readonly room: readonly [number, number];
}

const FRAME_SECONDS = 0.01;
/** A room's own sound goes up and down by so much. */
const WITHIN_ROOM_DB = 6;
const ABOVE_ROOM_DB = 9;
const SOFTEST_DB = -62;
/** Between words nothing ends. */
const PAUSE_SECONDS = 0.4;
const SILENCE_DB = -90;
const FULL = 0.998;
const MOST_OFFSET = 0.02;
const SOFT_DB = -42;
const DEAD_DB = -85;
const LOST_IN_MIX_DB = 10;

/** Measures a recording at its own rate; `mono` is what the ear hears of its channels. */
export function measure(channels: readonly Float32Array[], rateHz: number): Measured {
  const mono = mix(channels);
  const frames = framesOf(mono, rateHz);
  const sorted = [...frames].sort((one, other) => one - other);
  const ambientDb = sorted[Math.floor(sorted.length / 10)] ?? SILENCE_DB;
  const loudFrom = Math.max(ambientDb + ABOVE_ROOM_DB, SOFTEST_DB);
  const ends = endsOf(frames, loudFrom);
  const levels: Levels = { ...extremes(channels), rmsDb: decibels(power(mono)), dcOffset: mono.reduce((sum, sample) => sum + sample, 0) / Math.max(1, mono.length), ambientDb };
  return { levels, warnings: warningsOn(levels, channels, mono, Math.max(...frames, SILENCE_DB)), speechEnds: ends.at(-1) ?? null, ends, room: longestQuiet(frames, ambientDb) };
}

function mix(channels: readonly Float32Array[]): Float32Array {
  const [first = new Float32Array(0)] = channels;
  return first.map((_, at) => channels.reduce((sum, channel) => sum + (channel[at] ?? 0), 0) / channels.length);
}

function extremes(channels: readonly Float32Array[]): { peakDb: number; clipped: number } {
  let [peak, clipped] = [0, 0];
  for (const channel of channels) {
    let before = 0;
    for (const sample of channel) {
      const size = Math.abs(sample);
      peak = Math.max(peak, size);
      if (size >= FULL && before >= FULL) clipped += 1;
      before = size;
    }
  }
  return { peakDb: decibels(peak * peak), clipped };
}

function framesOf(mono: Float32Array, rateHz: number): readonly number[] {
  const length = Math.max(1, Math.round(rateHz * FRAME_SECONDS));
  return Array.from({ length: Math.floor(mono.length / length) }, (_, index) => decibels(power(mono.subarray(index * length, (index + 1) * length))));
}

function endsOf(frames: readonly number[], loudFrom: number): readonly number[] {
  const ends: number[] = [];
  let lastLoud: number | undefined;
  frames.forEach((db, index) => {
    if (db > loudFrom) lastLoud = index;
    else if (lastLoud !== undefined && (index - lastLoud) * FRAME_SECONDS >= PAUSE_SECONDS) {
      ends.push((lastLoud + 1) * FRAME_SECONDS);
      lastLoud = undefined;
    }
  });
  return (lastLoud === undefined ? ends : [...ends, (lastLoud + 1) * FRAME_SECONDS]).map((end) => Math.round(end * 1000) / 1000);
}

function longestQuiet(frames: readonly number[], ambientDb: number): readonly [number, number] {
  let [from, best, bestFrom] = [0, 0, 0];
  for (let at = 0; at <= frames.length; at += 1) {
    if ((frames[at] ?? Infinity) <= ambientDb + WITHIN_ROOM_DB) continue;
    if (at - from > best) [best, bestFrom] = [at - from, from];
    from = at + 1;
  }
  return [bestFrom * FRAME_SECONDS, best * FRAME_SECONDS];
}

function warningsOn({ peakDb, clipped, dcOffset, rmsDb }: Levels, channels: readonly Float32Array[], mono: Float32Array, loudestDb: number): readonly string[] {
  if (peakDb < DEAD_DB) return ['it is silent'];
  const loudest = Math.max(...channels.map((channel) => decibels(power(channel))));
  return [
    ...(clipped > 0 ? [`${clipped} samples are cut off at full scale`] : []),
    ...(Math.abs(dcOffset) > MOST_OFFSET ? [`it lies ${(Math.abs(dcOffset) * 100).toFixed(0)} % off its middle`] : []),
    ...(loudestDb < SOFT_DB ? [`it is soft: ${loudestDb.toFixed(0)} dB at its loudest moment`] : []),
    ...(channels.length > 1 && loudest - decibels(power(mono)) > LOST_IN_MIX_DB ? [`mixed, its channels nearly cancel each other out (${rmsDb.toFixed(0)} dB are left of ${loudest.toFixed(0)}): one is wired the wrong way round`] : []),
  ];
}

function power(samples: Float32Array): number {
  return samples.reduce((sum, sample) => sum + sample * sample, 0) / Math.max(1, samples.length);
}

function decibels(powerOf: number): number {
  return powerOf <= 1e-9 ? SILENCE_DB : 10 * Math.log10(powerOf);
}
