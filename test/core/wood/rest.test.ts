import { describe, expect, it } from 'vitest';
import { nanometres } from '../../../core/length/length.ts';
import { correctMeter, ovenDryMoisture } from '../../../core/wood/moisture.ts';
import { readiness } from '../../../core/wood/ready.ts';
import { restVerdict } from '../../../core/wood/rest.ts';

const mm = (count: number) => nanometres(Math.round(count * 1_000_000));

describe('resting after the saw', () => {
  it('says nothing from one reading, or from two on one evening', () => {
    expect(restVerdict([])).toEqual({ verdict: 'too early', because: 'no reading' });
    expect(restVerdict([{ hours: 0, bow: mm(1) }])).toEqual({ verdict: 'too early', because: 'one reading' });
    expect(restVerdict([{ hours: 0, bow: mm(1) }, { hours: 3, bow: mm(1) }])).toEqual({ verdict: 'too early', because: 'under a day' });
    expect(restVerdict([{ hours: 0, bow: mm(1) }, { hours: 30, grams: 800 }])).toEqual({ verdict: 'too early', because: 'not the same thing twice' });
  });

  it('is still moving while the bow or the wind grows, or the weight goes down', () => {
    expect(restVerdict([{ hours: 0, bow: mm(0) }, { hours: 24, bow: mm(1) }])).toMatchObject({ verdict: 'still moving', changes: [{ what: 'bow', moving: true, by: 1_000_000 }] });
    expect(restVerdict([{ hours: 0, bow: mm(1), wind: mm(0) }, { hours: 26, bow: mm(1), wind: mm(2) }])).toMatchObject({ verdict: 'still moving' });
    expect(restVerdict([{ hours: 0, grams: 1000 }, { hours: 24, grams: 990 }])).toMatchObject({ verdict: 'still moving', changes: [{ what: 'weight', moving: true }] });
  });

  it('is settled when nothing measured twice changes any more, by the latest pair a day apart', () => {
    const readings = [{ hours: 0, bow: mm(0), grams: 1000 }, { hours: 24, bow: mm(2), grams: 990 }, { hours: 30, bow: mm(2), grams: 990 }, { hours: 54, bow: mm(2.2), grams: 989 }];
    expect(restVerdict(readings)).toMatchObject({ verdict: 'settled', hours: 24 });
  });
});

describe('ready to work', () => {
  it('is within two points of the house', () => {
    expect(readiness(9, 8, 12)).toMatchObject({ verdict: 'ready', movesInShop: true });
    expect(readiness(12, 8, 12)).toMatchObject({ verdict: 'too wet', overHouse: 4, movesInShop: false });
    expect(readiness(5, 8, 8)).toMatchObject({ verdict: 'too dry' });
  });

  it('needs weighings that make sense, and a meter in its range', () => {
    expect(ovenDryMoisture(50, 56)).toMatchObject({ ok: false, fault: { key: 'wet' } });
    expect(ovenDryMoisture(50, 0)).toMatchObject({ ok: false, fault: { key: 'dry' } });
    expect([correctMeter(5, 21).reliable, correctMeter(12, 21).reliable, correctMeter(35, 21).reliable]).toEqual([false, true, false]);
  });
});
