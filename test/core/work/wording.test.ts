import { describe, expect, test } from 'vitest';
import { nanometres, type Length } from '../../../core/length/length.ts';
import { stepsFor } from '../../../core/work/plan.ts';
import { TOLERANCES } from '../../../core/work/figures.ts';
import type { Step } from '../../../core/work/step.ts';
import { around, mentionsIn, placeOf, renderWording, sayCheck, sayingOf, sayTolerance, titleOf, words, writeTolerance } from '../../../core/work/wording.ts';
import { bakersTable, saying } from './pieces.ts';

const table = bakersTable();
const steps = stepsFor(table);
const called = (id: string): Step => steps.find((step) => step.id === id) as Step;

describe('text with sizes in it', () => {
  test('is put together with each size said by the one who knows the rounding', () => {
    expect(renderWording(['Rip to ', { size: 'leg.width', copy: 2 }, '.'], ({ size, copy }) => `<${size} ${copy ?? ''}>`)).toBe('Rip to <leg.width 2>.');
  });

  test('loses the whole phrase of a size that the piece does not have', () => {
    expect(words('Rip the rails', around(' to ', undefined, ' wide'), '.')).toEqual(['Rip the rails.']);
    expect(words('Rip the rails', around(' to ', { size: 'rail.width' }, ' wide'), '.')).toEqual(['Rip the rails to ', { size: 'rail.width' }, ' wide.']);
  });

  test('names each size once, though it be mentioned twice; two copies are two sizes', () => {
    expect(mentionsIn([{ size: 'a.b' }, ' and ', { size: 'a.b' }], [{ size: 'a.b', copy: 2 }])).toEqual([{ size: 'a.b' }, { size: 'a.b', copy: 2 }]);
  });

  test('of the demo table reads as a sentence', () => {
    expect(renderWording(called('chop mortises/leg/3/longRailTenon').say, saying(table)))
      .toBe('In leg three, chop the mortise for the long rail, one, and thirteen sixteenths inches deep.');
    expect(renderWording(called('rip/leg').say, saying(table))).toBe('Rip the twelve leg layers to three, and three eighths inches in the rough.');
    expect(renderWording(called('glue-up/endFrame.1').say, saying(table))).toBe('Glue and clamp the left end frame: four tenons before the open time is out.');
  });
});

describe('a tolerance', () => {
  // 1/64 in = 396 875 nm, 0.001 in = 25 400 nm (1 in = 25.4 mm exactly, NIST SP 811 B.6).
  test.each([
    [396_875, 'one sixty-fourth of an inch', '1/64 in', 'zero point four millimetres', '0.4 mm'],
    [793_750, 'one thirty-second of an inch', '1/32 in', 'zero point eight millimetres', '0.8 mm'],
    [152_400, 'six thousandths of an inch', '0.006 in', 'zero point one five millimetres', '0.15 mm'],
    [25_400, 'one thousandth of an inch', '0.001 in', 'zero point zero five millimetres', '0.05 mm'],
    [254_000, 'ten thousandths of an inch', '0.010 in', 'zero point two five millimetres', '0.25 mm'],
  ])('of %i nm is said and written so that it does not round away', (length, inches, written, millimetres, metric) => {
    const tolerance = nanometres(length);
    expect(sayTolerance(tolerance, 'inch')).toBe(inches);
    expect(writeTolerance(tolerance, 'inch')).toBe(written);
    expect(sayTolerance(tolerance, 'millimetre')).toBe(millimetres);
    expect(Number.parseFloat(writeTolerance(tolerance, 'millimetre'))).toBe(Number.parseFloat(metric));
  });

  test('of every check can be said in either unit, and is never nothing', () => {
    for (const tolerance of Object.values<Length>(TOLERANCES)) {
      expect(sayTolerance(tolerance, 'inch')).not.toMatch(/^zero|full|scant/);
      expect(sayTolerance(tolerance, 'millimetre')).not.toMatch(/^zero millimetres|full|scant/);
    }
  });

  test('is said after what the check asks', () => {
    expect(sayCheck({ say: ['It does not rock.'], tolerance: nanometres(396_875) }, () => '', 'inch')).toBe('It does not rock. Within one sixty-fourth of an inch.');
    expect(sayCheck({ say: ['It does not rock.'] }, () => '', 'inch')).toBe('It does not rock.');
  });
});

describe('a place', () => {
  const places = new Map([['leg/3', 'back left'], ['longRail/1', 'front']]);

  test('is added to the title and the sentence once the copy has one', () => {
    const chop = called('chop mortises/leg/3/longRailTenon');
    expect(titleOf(chop, places)).toBe('Chop mortises, leg 3 of 4, back left: long rail');
    expect(titleOf(called('ends/longRail/1'), places)).toBe('Ends, long rail 1 of 2, front');
    expect(renderWording(sayingOf(called('ends/longRail/1'), places), saying(table))).toMatch(/ long\. Its place is front\.$/);
  });

  test('is not added before, nor to a step on several copies, nor to another copy', () => {
    expect(titleOf(called('ends/leg/3'), new Map())).toBe('Ends, leg 3 of 4');
    expect(titleOf(called('rip/leg'), places)).toBe('Rip, leg layers');
    expect(placeOf(called('ends/leg/2'), places)).toBeUndefined();
    expect(sayingOf(called('ends/leg/2'), places)).toBe(called('ends/leg/2').say);
  });
});
