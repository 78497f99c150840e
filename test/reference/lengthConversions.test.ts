import { describe, expect, it } from 'vitest';
import { add, ratio, timesWhole } from '../../core/length/arithmetic.ts';
import { nanometres } from '../../core/length/length.ts';
import { parseLength } from '../../core/length/parseWritten.ts';
import { roundLength } from '../../core/length/round.ts';
import { writeLength } from '../../core/length/write.ts';

function length(text: string): ReturnType<typeof nanometres> {
  const result = parseLength(text);
  if (!result.ok) throw new Error(result.fault.message);
  return result.value;
}

describe('the international inch and foot', () => {
  // Exact by definition: international yard of 0.9144 m, in effect from 1 July 1959
  // (US Federal Register, 1 July 1959, "Refinement of values for the yard and the pound"); values from memory.
  it('makes a yard of 36 inches 0.9144 metres exactly', () => {
    expect(timesWhole(length('1 in'), 36)).toBe(length('0.9144 m'));
    expect(length('36 in')).toBe(length('914.4 mm'));
  });

  // NIST Special Publication 811 (2008), appendix B.8, "Factors for units listed alphabetically": exact factors, printed in bold; from memory.
  it.each([
    ['1 in', '25.4 mm'], ['1 in', '2.54 cm'], ['1 in', '0.0254 m'], ['1 ft', '0.3048 m'], ['3 ft', '0.9144 m'], ['0.001 in', '0.0254 mm'],
  ])('makes %s %s exactly (NIST SP 811, B.8)', (inch, metric) => {
    expect(length(inch)).toBe(length(metric));
  });

  it('makes a foot twelve inches', () => {
    expect(ratio(length('1 ft'), length('1 in'))).toEqual({ numerator: 12, denominator: 1 });
  });
});

describe('decimal equivalents of the fractions of an inch', () => {
  // Exact decimals, as in the fraction and decimal equivalents table of any machinist's handbook; worked out by hand from 25.4 mm.
  it.each([
    ['1/64', '0.015625 in', '0.396875 mm'], ['1/32', '0.03125 in', '0.79375 mm'], ['1/16', '0.0625 in', '1.5875 mm'], ['1/8', '0.125 in', '3.175 mm'], ['23/64', '0.359375 in', '9.128125 mm'],
    ['7/16', '0.4375 in', '11.1125 mm'], ['13/16', '0.8125 in', '20.6375 mm'], ['63/64', '0.984375 in', '25.003125 mm'],
  ])('%s is %s and %s', (fraction, decimal, metric) => {
    expect(length(fraction)).toBe(length(decimal));
    expect(length(fraction)).toBe(length(metric));
  });

  it('holds all sixty-three of them exactly: n/64 in = n × 0.396875 mm', () => {
    let sum = nanometres(0);
    for (let count = 1; count < 64; count += 1) {
      sum = add(sum, length('0.396875 mm'));
      expect(length(`${count}/64`)).toBe(sum);
    }
  });

  // Half a division is the most that rounding can hide: 1/64 → 0.198 mm, 1/32 → 0.397 mm (worked out from the division).
  it.each([[64, 198_437.5], [32, 396_875]] as const)('hides at most half of 1/%d in', (denominator, most) => {
    for (let size = 0; size < 25_400_000; size += 1_237) {
      const { rounded } = roundLength(nanometres(size), { unit: 'inch', denominator });
      expect(Math.abs(rounded - size)).toBeLessThanOrEqual(most);
    }
  });
});

describe('rounding against the published rule', () => {
  // NIST SP 811 (2008), B.7.1: less than half, unchanged; more than half, up by one; exactly half, to even. From memory.
  // The bench departs from it in one case, on purpose: an exact half goes away from zero. Both are told apart here.
  const tenths = { unit: 'millimetre', step: nanometres(100_000) } as const;

  it.each([['6.9749 mm', '7 mm scant'], ['6.9501 mm', '7 mm scant'], ['6.9499 mm', '6.9 mm full'], ['6.974 mm', '7 mm scant'], ['6.94 mm', '6.9 mm full']])('agrees off the half: %s becomes %s', (given, written) => {
    expect(writeLength(length(given), tenths)).toBe(written);
  });

  // The worked example of B.7.1: 6.974 951 5 kept to three and to four digits; from memory.
  it.each([[10_000, '6.97 mm full'], [1_000, '6.975 mm']])('makes of 6.974 951 5 what the publication makes of it, to a step of %d nm', (step, written) => {
    expect(writeLength(length('6.9749515 mm'), { unit: 'millimetre', step: nanometres(step) })).toBe(written);
  });

  it('agrees at a half after an odd digit, and departs from it after an even one', () => {
    expect(writeLength(length('6.95 mm'), tenths)).toBe('7 mm scant');
    expect(writeLength(length('6.85 mm'), tenths)).toBe('6.9 mm scant');
  });
});
