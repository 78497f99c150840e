import { describe, expect, it } from 'vitest';
import { loudestDb, SoundCheck, soundFaults } from '../../../kiosk/ear/soundCheck.ts';

const RATE = 16_000;
/** Blocks of 100 ms of what a function of the sample number gives. */
function check(seconds: number, sample: (at: number) => number): SoundCheck {
  const sound = new SoundCheck();
  for (let block = 0; block < seconds * 10; block += 1) sound.take(Float32Array.from({ length: RATE / 10 }, (_, at) => sample(block * 1_600 + at)));
  return sound;
}
const tone = (peak: number) => (at: number) => peak * Math.sin((2 * Math.PI * 440 * at) / RATE);
const faultsOf = (sound: SoundCheck) => soundFaults(sound.facts, undefined).join(' ');

describe('the sound of a microphone', () => {
  it('is as loud at most as its loudest sample', () => {
    expect(check(2, tone(0.5)).facts?.peakDb).toBeCloseTo(-6.02, 1);
    expect(check(2, tone(1)).facts?.peakDb).toBeCloseTo(0, 2);
  });

  it('that is as it should be has no fault', () => {
    expect(faultsOf(check(3, tone(0.3)))).toBe('');
    expect(soundFaults(undefined, undefined)).toEqual([]);
  });

  it('that is cut off is told, with what to do', () => {
    expect(faultsOf(check(3, (at) => Math.max(-1, Math.min(1, tone(1.6)(at)))))).toMatch(/cut off: turn the microphone’s input level down/);
    // A tone that just reaches full scale is not cut off: it touches it with single samples.
    expect(check(3, (at) => (at % 40 === 0 ? 1 : 0.1)).facts?.clipped).toBe(0);
  });

  it('that lies off its middle is told', () => {
    const sound = check(3, (at) => 0.06 + tone(0.1)(at));
    expect(sound.facts?.offset).toBeCloseTo(0.06, 3);
    expect(faultsOf(sound)).toMatch(/6 % off its middle/);
  });

  it('that is no sound at all is told, for a muted microphone is open like any other', () => {
    expect(faultsOf(check(3, () => 0))).toMatch(/no sound at all comes from it: is it muted/);
    expect(faultsOf(check(3, (at) => ((at % 7) - 3) * 2e-5))).toBe('');
  });

  it('forgets a fault some seconds after it has gone', () => {
    const sound = check(1, () => 1);
    for (let block = 0; block < 31; block += 1) sound.take(new Float32Array(1_600).fill(0).map((_, at) => tone(0.2)(at)));
    expect(soundFaults(sound.facts, undefined)).toEqual([]);
  });

  it('of a voice that is soft, or hardly above the shop, is told', () => {
    const { facts } = check(1, tone(0.05));
    expect(soundFaults(facts, { loudestDb: -48, ambientDb: -75 }).join()).toMatch(/comes softly: turn the microphone’s input level up/);
    expect(soundFaults(facts, { loudestDb: -30, ambientDb: -36 }).join()).toMatch(/only 6 dB above the shop/);
    expect(soundFaults(facts, { loudestDb: -20, ambientDb: -60 })).toEqual([]);
  });

  it('is as loud as its loudest hundredth of a second', () => {
    const block = new Float32Array(1_600);
    block.fill(0.1, 320, 480);
    expect(loudestDb([new Float32Array(1_600), block])).toBeCloseTo(-20, 5);
  });
});
