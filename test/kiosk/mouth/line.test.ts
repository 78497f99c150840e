import { expect } from '@open-wc/testing';
import { FADE_SECONDS, openLine, type Line } from '../../../kiosk/mouth/line.ts';
import { PEAK_LIMIT } from '../../../kiosk/mouth/loudness.ts';
import { createMixer, SAMPLE_RATE, type Mixer } from '../../../kiosk/mouth/output.ts';
import type { Sound } from '../../../sounds/wav.ts';

/** A steady tone: its level says the gain, its edges say when it sounds. */
function tone(seconds: number, level = 0.5): Sound {
  return { samples: Float32Array.from({ length: Math.round(seconds * SAMPLE_RATE) }, (_, index) => level * Math.sin(2 * Math.PI * 1_000 * index / SAMPLE_RATE)), rate: SAMPLE_RATE };
}

interface Studio {
  readonly context: OfflineAudioContext;
  readonly mixer: Mixer;
  /** Does something at an exact sample of the recording (rounded up to the browser's block of 128). */
  readonly at: (seconds: number, act: () => void) => void;
  readonly render: () => Promise<Float32Array>;
}

/** A loudspeaker that writes down every sample, by its own clock. */
function studio(seconds: number, volume = 10): Studio {
  const context = new OfflineAudioContext({ length: Math.round(seconds * SAMPLE_RATE), sampleRate: SAMPLE_RATE });
  return {
    context, mixer: createMixer(context, volume),
    at: (when, act) => void context.suspend(when).then(() => {
      act();
      return context.resume();
    }),
    render: async () => (await context.startRendering()).getChannelData(0),
  };
}

const levelOf = (samples: Float32Array, from: number, to: number): number => {
  const part = samples.subarray(Math.round(from * SAMPLE_RATE), Math.round(to * SAMPLE_RATE));
  return Math.sqrt(part.reduce((sum, sample) => sum + sample * sample, 0) / part.length);
};
const decibels = (ratio: number): number => 20 * Math.log10(ratio);
const firstSound = (samples: Float32Array): number => samples.findIndex((sample) => Math.abs(sample) > 0.01) / SAMPLE_RATE;
const lastSound = (samples: Float32Array): number => samples.findLastIndex((sample) => Math.abs(sample) > 0.0005) / SAMPLE_RATE;

describe('a line to the loudspeaker', () => {
  it('keeps the silence asked for between two phrases, to the millisecond', async () => {
    const { context, mixer, render } = studio(1);
    const line = openLine(context, mixer.input);
    line.append(tone(0.2), 0);
    line.append(tone(0.2), 200);
    const samples = await render();
    const begins = firstSound(samples);
    expect(levelOf(samples, begins + 0.205, begins + 0.395)).to.equal(0);
    expect(levelOf(samples, begins + 0.405, begins + 0.595)).to.be.closeTo(0.5 / Math.SQRT2, 0.001);
    expect(levelOf(samples, begins + 0.605, 1)).to.equal(0);
  });

  it('waits for a phrase that was made too late, and then loses none of it', async () => {
    const { context, mixer, at, render } = studio(2);
    const line = openLine(context, mixer.input);
    line.append(tone(0.1), 0);
    at(1, () => line.append(tone(0.2), 200));
    const samples = await render();
    expect(levelOf(samples, 0.15, 1)).to.equal(0);
    expect(lastSound(samples)).to.be.closeTo(1.22, 0.01);
  });

  it('falls silent within 50 ms of being stopped, without a click, and plays nothing after', async () => {
    const { context, mixer, at, render } = studio(1.5);
    const line = openLine(context, mixer.input);
    line.append(tone(0.6), 0);
    line.append(tone(0.6), 50);
    const stopAt = 0.312;
    at(stopAt, () => line.stop());
    const samples = await render();
    expect(levelOf(samples, 0.1, 0.3)).to.be.closeTo(0.5 / Math.SQRT2, 0.001);
    expect(lastSound(samples)).to.be.greaterThan(stopAt);
    expect(lastSound(samples) - stopAt).to.be.lessThan(0.05);
    // A click is a step between neighbours that is larger than the tone itself makes.
    const largestStep = (from: number, to: number) => samples.subarray(from, to).reduce((most, sample, index) => Math.max(most, Math.abs(sample - (samples[from + index - 1] ?? 0))), 0);
    const stop = Math.round(stopAt * SAMPLE_RATE);
    expect(largestStep(stop, stop + SAMPLE_RATE / 10)).to.be.at.most(largestStep(stop - SAMPLE_RATE / 10, stop) * 1.01);
    expect(await line.finish()).to.equal('stopped');
  });

  it('tells when all of it has sounded', async () => {
    const { context, mixer, render } = studio(0.5);
    const line = openLine(context, mixer.input);
    line.append(tone(0.1), 0);
    const finished = line.finish();
    await render();
    expect(await finished).to.equal('played');
  });

  it('begins not before the time it is given', async () => {
    const { context, mixer, render } = studio(1);
    openLine(context, mixer.input, 0.5).append(tone(0.1), 0);
    expect(firstSound(await render())).to.be.closeTo(0.5, 0.002);
  });

  it('fades in less time than an ear notices', () => {
    expect(FADE_SECONDS).to.be.lessThan(0.05);
  });
});

describe('the volume', () => {
  const playedAt = async (volume: number): Promise<number> => {
    const { context, mixer, render } = studio(0.5, volume);
    openLine(context, mixer.input).append(tone(0.4), 0);
    return levelOf(await render(), 0.1, 0.4);
  };

  it('is 3 dB softer for each step, and nothing at 0', async () => {
    const loudest = await playedAt(10);
    expect(loudest).to.be.closeTo(0.5 / Math.SQRT2, 0.001);
    expect(decibels(await playedAt(9) / loudest)).to.be.closeTo(-3, 0.05);
    expect(decibels(await playedAt(4) / loudest)).to.be.closeTo(-18, 0.05);
    expect(await playedAt(0)).to.equal(0);
  });

  it('changes while something sounds, within 30 ms', async () => {
    const { context, mixer, at, render } = studio(1);
    openLine(context, mixer.input).append(tone(0.9), 0);
    at(0.4, () => mixer.setVolume(8, 0));
    const samples = await render();
    expect(decibels(levelOf(samples, 0.43, 0.8) / levelOf(samples, 0.1, 0.39))).to.be.closeTo(-6, 0.1);
  });
});

describe('in a loud shop', () => {
  const raisedBy = async (volume: number, raiseDb: number): Promise<number> => {
    const { context, mixer, at, render } = studio(1);
    openLine(context, mixer.input).append(tone(0.9), 0);
    at(0.4, () => mixer.setVolume(volume, raiseDb));
    mixer.setVolume(volume, 0);
    const samples = await render();
    return decibels(levelOf(samples, 0.45, 0.8) / levelOf(samples, 0.1, 0.39));
  };

  it('it is louder by what is asked for', async () => {
    expect(await raisedBy(5, 6)).to.be.closeTo(6, 0.1);
  });

  it('but never louder than the loudspeaker has room for', async () => {
    expect(await raisedBy(8, 20)).to.be.closeTo(6, 0.1);
    expect(await raisedBy(10, 20)).to.be.closeTo(0, 0.1);
  });
});

describe('what overlaps', () => {
  const together = async (...sounds: readonly Sound[]): Promise<Float32Array> => {
    const { context, mixer, render } = studio(0.5);
    const lines: Line[] = sounds.map(() => openLine(context, mixer.input));
    sounds.forEach((sound, index) => lines[index]?.append(sound, 0));
    return render();
  };

  it('never goes beyond full scale', async () => {
    const samples = await together(tone(0.3, PEAK_LIMIT), tone(0.3, PEAK_LIMIT));
    const peak = samples.reduce((most, sample) => Math.max(most, Math.abs(sample)), 0);
    expect(peak).to.be.at.most(1);
    expect(peak).to.be.greaterThan(PEAK_LIMIT);
  });

  it('and one sound alone passes unchanged', async () => {
    const sound = tone(0.3, PEAK_LIMIT);
    const samples = await together(sound);
    const start = samples.findIndex((sample) => sample !== 0) - 1;
    const difference = sound.samples.reduce((most, sample, index) => Math.max(most, Math.abs(sample - (samples[start + index] ?? NaN))), 0);
    expect(difference).to.be.lessThan(0.001);
  });
});
