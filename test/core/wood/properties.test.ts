import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { nanometres } from '../../../core/length/length.ts';
import { equilibriumMoisture } from '../../../core/wood/equilibrium.ts';
import { atRingAngle, movement, movementFromGreen } from '../../../core/wood/movement.ts';
import { buttonFor, panelGrooveFor, roomAt, slotFor } from '../../../core/wood/room.ts';
import { seasonsOf } from '../../../core/wood/seasons.ts';

const width = fc.integer({ min: 1_000_000, max: 3_000_000_000 }).map(nanometres);
const moisture = fc.double({ min: 4, max: 20, noNaN: true });
const coefficient = fc.double({ min: 0.0007, max: 0.0045, noNaN: true });
const tempC = fc.double({ min: -1, max: 60, noNaN: true });
const humidity = fc.double({ min: 1, max: 95, noNaN: true });

function value<Value>(result: { readonly ok: true; readonly value: Value } | { readonly ok: false }): Value {
  if (!result.ok) throw new Error('refused');
  return result.value;
}

describe('movement', () => {
  it('is nothing at equal moisture', () => {
    fc.assert(fc.property(width, coefficient, moisture, (size, perPoint, at) => { expect(value(movement(size, perPoint, at, at))).toBe(0); }));
  });

  it('adds up: there by way of somewhere else is there', () => {
    fc.assert(fc.property(width, coefficient, moisture, moisture, moisture, (size, perPoint, from, by, to) => {
      const whole = value(movement(size, perPoint, from, to));
      expect(Math.abs(value(movement(size, perPoint, from, by)) + value(movement(size, perPoint, by, to)) - whole)).toBeLessThanOrEqual(2);
    }));
  });

  it('adds up from green too, each stretch from the size that the one before left', () => {
    fc.assert(fc.property(width, fc.double({ min: 2, max: 12, noNaN: true }), moisture, moisture, moisture, (size, shrinkage, from, by, to) => {
      const half = value(movementFromGreen(size, shrinkage, from, by));
      const rest = value(movementFromGreen(nanometres(size + half), shrinkage, by, to));
      expect(Math.abs(half + rest - value(movementFromGreen(size, shrinkage, from, to)))).toBeLessThanOrEqual(3);
    }));
  });

  it('of mixed grain lies between the two', () => {
    fc.assert(fc.property(fc.double({ min: 0, max: 90, noNaN: true }), (ring) => {
      const found = atRingAngle({ radial: 0.001, tangential: 0.003 }, ring);
      expect(found).toBeGreaterThanOrEqual(0.001 - 1e-12);
      expect(found).toBeLessThanOrEqual(0.003 + 1e-12);
    }));
  });
});

describe('moisture in air', () => {
  it('rises with the humidity', () => {
    fc.assert(fc.property(tempC, humidity, fc.double({ min: 0.5, max: 10, noNaN: true }), (at, percent, more) => {
      fc.pre(percent + more <= 95);
      expect(value(equilibriumMoisture({ tempC: at, humidityPercent: percent + more }))).toBeGreaterThan(value(equilibriumMoisture({ tempC: at, humidityPercent: percent })));
    }));
  });

  it('falls with the temperature, from 10 °C up', () => {
    fc.assert(fc.property(fc.double({ min: 10, max: 58, noNaN: true }), humidity, fc.double({ min: 0.5, max: 10, noNaN: true }), (at, percent, warmer) => {
      expect(value(equilibriumMoisture({ tempC: at + warmer, humidityPercent: percent }))).toBeLessThan(value(equilibriumMoisture({ tempC: at, humidityPercent: percent })));
    }));
  });

  it('is refused outside the table, with what to give instead', () => {
    expect(equilibriumMoisture({ tempC: 20, humidityPercent: 96 })).toMatchObject({ ok: false, fault: { key: 'humidity' } });
    expect(equilibriumMoisture({ tempC: -5, humidityPercent: 50 })).toMatchObject({ ok: false, fault: { key: 'temperature' } });
    expect(equilibriumMoisture({ tempC: Number.NaN, humidityPercent: 50 })).toMatchObject({ ok: false });
  });
});

describe('a year of a top', () => {
  it('travels from its narrowest to its widest, whatever it was made at', () => {
    fc.assert(fc.property(width, coefficient, moisture, moisture, moisture, (size, perPoint, now, one, other) => {
      const [driest, dampest] = [Math.min(one, other), Math.max(one, other)];
      const year = value(seasonsOf(size, perPoint, { now, driest, dampest }));
      expect(year.widest - year.narrowest).toBe(year.travel);
      expect(year.shrinks).toBeGreaterThanOrEqual(0);
      expect(year.swells).toBeGreaterThanOrEqual(0);
    }));
  });

  it('leaves room both ways in slots, buttons and grooves', () => {
    fc.assert(fc.property(width, coefficient, moisture, moisture, moisture, (size, perPoint, now, one, other) => {
      const year = value(seasonsOf(size, perPoint, { now, driest: Math.min(one, other), dampest: Math.max(one, other) }));
      const room = roomAt(year, nanometres(Math.floor(size / 2)), size);
      const shank = nanometres(4_000_000);
      const slot = slotFor(room, shank);
      expect(slot.shankFromInnerEnd - shank / 2).toBeGreaterThan(room.inwards);
      expect(slot.length - slot.shankFromInnerEnd - shank / 2).toBeGreaterThan(room.outwards);
      const button = buttonFor(room);
      expect(button.gapNow).toBeGreaterThan(room.outwards);
      expect(button.tongue - button.gapNow).toBeGreaterThan(room.inwards);
      expect(button.groove).toBeGreaterThanOrEqual(button.tongue - button.gapNow + room.outwards);
      const groove = panelGrooveFor(year);
      expect(groove.depth).toBe(groove.gapNow + groove.tongueNow);
    }));
  });

  it('is refused when the driest month is damper than the dampest', () => {
    expect(seasonsOf(nanometres(1_000_000), 0.002, { now: 8, driest: 12, dampest: 6 })).toMatchObject({ ok: false, fault: { key: 'driest' } });
  });
});
