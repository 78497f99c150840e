import { describe, expect, it } from 'vitest';
import { JOINT_RECKONINGS } from '../../../core/joint/reckonings.ts';
import { LAYOUT_RECKONINGS } from '../../../core/layout/reckonings.ts';
import { nanometres } from '../../../core/length/length.ts';
import { readInputs } from '../../../core/reckoning/readInputs.ts';
import type { Fields } from '../../../core/reckoning/reckoning.ts';
import { writeOutcome } from '../../../core/reckoning/writeOutcome.ts';

const FIELDS: Fields = {
  width: { kind: 'length', say: 'width of the rail' },
  over: { kind: 'length', say: 'how far over', mayBeNegative: true, optional: true },
  chisels: { kind: 'lengths', say: 'chisels', default: '1/4 in, 3/8 in' },
  count: { kind: 'number', say: 'how many', unit: '', least: 1, most: 9, whole: true, default: '2' },
  ends: { kind: 'choice', options: ['square', 'mitred'], say: 'ends', default: 'square' },
};

describe('the inputs of a reckoning', () => {
  it('are read, with defaults for what is not given', () => {
    expect(readInputs(FIELDS, { width: '1 1/4 in' })).toEqual({ ok: true, value: { width: 31_750_000, chisels: [6_350_000, 9_525_000], count: 2, ends: 'square' } });
  });

  it('take the unit that was chosen, and are refused without one', () => {
    expect(readInputs(FIELDS, { width: '30' }, 'millimetre')).toMatchObject({ ok: true, value: { width: 30_000_000 } });
    expect(readInputs(FIELDS, { width: '30' })).toMatchObject({ ok: false, fault: [{ key: 'width' }] });
  });

  it('are refused all at once, each with what was expected', () => {
    const read = readInputs(FIELDS, { width: '-1 in', count: '2.5', ends: 'round', breadth: '3 in', chisels: '1/4 in, broad' });
    expect(read.ok ? [] : read.fault.map(({ key }) => key).sort()).toEqual(['breadth', 'chisels', 'count', 'ends', 'width']);
    expect(readInputs(FIELDS, {})).toMatchObject({ ok: false, fault: [{ key: 'width', message: expect.stringContaining('missing') as string }] });
    for (const count of ['1e3', '0x2', 'NaN', 'Infinity', '10', '']) expect(readInputs(FIELDS, { width: '1 in', count }).ok).toBe(count === '');
  });

  it('may be no chisels at all', () => {
    expect(readInputs(FIELDS, { width: '1 in', chisels: 'none' })).toMatchObject({ ok: true, value: { chisels: [] } });
  });

  it('less than nothing are taken only where they may be', () => {
    expect(readInputs(FIELDS, { width: '1 in', over: '-1/8 in' })).toMatchObject({ ok: true, value: { over: -3_175_000 } });
  });
});

it('an answer is written as a number, as in the shop, and exactly', () => {
  const written = writeOutcome('one', { result: [{ key: 'width', length: nanometres(8_334_375) }], how: [['so ', { length: nanometres(25_400_000) }, ' long']], source: ['s'], warnings: [] }, 'in');
  expect(written).toEqual({ reckoning: 'one', unit: 'in', result: { width: { value: 0.328125, written: '21/64 in', nanometres: 8_334_375 } }, how: ['so 1 in long'], source: ['s'] });
});

it('every reckoning has a name of its own, and defaults that it can read itself', () => {
  const RECKONINGS = [...JOINT_RECKONINGS, ...LAYOUT_RECKONINGS];
  expect(new Set(RECKONINGS.map(({ name }) => name)).size).toBe(RECKONINGS.length);
  for (const { inputs } of RECKONINGS) {
    const needed = Object.fromEntries(Object.entries(inputs).filter(([, field]) => field.default === undefined && field.optional !== true).map(([key]) => [key, '1 in']));
    expect(readInputs(inputs, needed)).toMatchObject({ ok: true });
  }
});
