import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { DEFAULT_SETTINGS, type Settings } from '../../../core/journal/settings.ts';
import type { ShopSound } from '../../../kiosk/ear/shopSound.ts';
import { LoudShop } from '../../../kiosk/host/loudShop.ts';
import { ABOVE_NOISE_DB, furtherDb, OwnVoiceMemory, speakUp } from '../../../kiosk/mouth/speakUp.ts';
import { gainOf } from '../../../kiosk/mouth/volume.ts';

const facts = fc.record({ ambientDb: fc.double({ min: -90, max: 0, noNaN: true }), ownVoiceDb: fc.double({ min: -60, max: 10, noNaN: true }), volume: fc.integer({ min: 1, max: 10 }), metres: fc.double({ min: 0.3, max: 8, noNaN: true }) });

describe('how loud the mouth speaks in a noise', () => {
  it('is as loud as was set in a quiet shop', () => {
    expect(speakUp({ ambientDb: -80, ownVoiceDb: -12, volume: 7, metres: 1.5 }).raiseDb).toBe(0);
  });

  // ISO 7731:2003: a danger signal stands out when its A-weighted level is 15 dB or more above that of the noise (from memory).
  it('is 15 dB above the noise, as ISO 7731 asks of signals, wherever loudspeaker and ears have room for it', () => {
    fc.assert(fc.property(facts, (shop) => {
      const { raiseDb, aboveDb } = speakUp(shop);
      const atEarDb = aboveDb + shop.ambientDb;
      const full = gainOf(shop.volume, raiseDb) > 0.9999;
      const loudest = atEarDb > 85 - 120 - 0.001;
      expect(aboveDb >= ABOVE_NOISE_DB - 1e-6 || full || loudest).toBe(true);
    }));
  });

  // Directive 2003/10/EC, article 3, upper action value, and NIOSH 98-126, recommended limit: 85 dB(A).
  it('is never raised beyond 85 dB(A) at the ear, nor beyond the loudspeaker', () => {
    fc.assert(fc.property(facts, (shop) => {
      const { raiseDb, aboveDb } = speakUp(shop);
      expect(raiseDb).toBeGreaterThanOrEqual(0);
      if (raiseDb > 0) expect(aboveDb + shop.ambientDb + 120).toBeLessThanOrEqual(85 + 1e-6);
      expect(gainOf(shop.volume, raiseDb)).toBeLessThanOrEqual(1);
    }));
  });

  it('needs more the further away the maker stands, but an echoing room carries it', () => {
    expect(furtherDb(0.3)).toBeCloseTo(0, 6);
    expect(furtherDb(1.5)).toBeGreaterThan(furtherDb(0.5));
    expect(furtherDb(8) - furtherDb(4)).toBeLessThan(0.5);
  });

  it('is learnt from hearing itself, and one blow into the measurement does not mislead it', () => {
    const memory = new OwnVoiceMemory();
    expect(memory.db).toBeUndefined();
    for (const heard of [-50, -51, -20, -50, -49]) memory.add(heard, -27);
    expect(memory.db).toBe(-23);
    memory.forget();
    expect(memory.db).toBeUndefined();
  });
});

describe('the loud shop', () => {
  const sounds = (ambientDb: number, lull = true): ShopSound => ({ ambientDb, octavesDb: [], hammering: !lull, lull });
  const shop = (sound: ShopSound | undefined, settings: Partial<Settings> = {}) => new LoudShop(() => sound, () => ({ ...DEFAULT_SETTINGS, ...settings }));

  it('raises the voice only as long as the maker wants it', () => {
    expect(shop(sounds(-50)).raiseDb()).toBeGreaterThan(3);
    expect(shop(sounds(-50), { speakUp: false }).raiseDb()).toBe(0);
    expect(shop(undefined).raiseDb()).toBe(0);
  });

  it('says when the voice cannot reach him', () => {
    expect(shop(sounds(-30)).remark).toMatch(/on the screen/);
    expect(shop(sounds(-70)).remark).toBe('');
    expect(shop(sounds(-30), { volume: 0 }).remark, 'mute is known already').toBe('');
  });

  it('keeps calls back only for a lull that is wanted', () => {
    expect(shop(sounds(-60, false)).lull()).toBe(false);
    expect(shop(sounds(-60, true)).lull()).toBe(true);
    expect(shop(sounds(-60, false), { waitForLull: false }).lull()).toBe(true);
    expect(shop(undefined).lull(), 'without an ear nothing is waited for').toBe(true);
  });

  it('speaks as loud as it must after it has heard itself', () => {
    const loud = shop(sounds(-60));
    const before = loud.raiseDb();
    loud.heardItself(-18 - 9 + before - 30);
    expect(loud.raiseDb()).toBeGreaterThan(before);
  });
});
