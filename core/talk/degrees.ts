import { readSpokenNumber } from '../length/parseSpoken.ts';
import { celsiusOf, type TemperatureScale } from '../wood/temperature.ts';
import type { Slot } from './slot.ts';
import { spoken } from './strict/numbers.ts';

const SCALES = /^(?:celsius|centigrade|fahrenheit|c|f)$/;

/** 'five degrees', 'minus two degrees celsius', 'forty one degrees fahrenheit', '12.5 degrees': in the scale the bench is set to, unless it is named. */
export const degreesSlot: Slot<number> = {
  longest: 7,
  read: (words, { state }) => {
    const named = SCALES.test(words.at(-1) ?? '') ? words.at(-1) : undefined;
    const rest = named === undefined ? words : words.slice(0, -1);
    if (!/^degrees?$/.test(rest.at(-1) ?? '')) return [];
    const value = signedNumber(rest.slice(0, -1));
    if (value === undefined) return [{ fault: `“${words.join(' ')}” is no temperature` }];
    const scale = named === undefined ? state.settings.temperature : named.startsWith('f') ? 'fahrenheit' : 'celsius';
    return [{ value: celsiusOf(value, scale) }];
  },
  samples: ({ state }) => [...temperatures(state.settings.temperature), 'forty one degrees fahrenheit', 'seventy degrees fahrenheit', 'twelve degrees celsius'],
};

function percentage(...samples: readonly string[]): Slot<number> {
  return {
    longest: 5,
    read: (words) => {
      if (words.at(-1) !== 'percent' && words.at(-1) !== '%') return [];
      const value = signedNumber(words.slice(0, -1));
      return value === undefined || value < 0 ? [{ fault: `“${words.join(' ')}” is no percentage` }] : [{ value }];
    },
    samples: () => samples,
  };
}

const percents = (...counts: readonly number[]): readonly string[] => counts.map((count) => `${spoken(count)} percent`);
/** Humidity: 'eighty percent', '65 percent'. */
export const percentSlot = percentage(...percents(15, 18, 20, 25, 30, 35, 40, 45, 50, 55, 60, 65, 70, 75, 80, 85, 90, 95), 'one hundred percent');
/** Moisture of wood: 'eight percent', 'nine point five percent'. */
export const moistureSlot = percentage(...percents(5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16, 18, 20, 25), 'nine point five percent');

function temperatures(scale: TemperatureScale): readonly string[] {
  if (scale === 'fahrenheit') return Array.from({ length: 35 }, (_, index) => `${spoken(2 * index + 31)} degrees`);
  return [...Array.from({ length: 36 }, (_, index) => (index === 1 ? 'one degree' : `${spoken(index)} degrees`)), 'minus two degrees', 'minus five degrees'];
}

/** 'eight hundred grams'. */
export const gramsSlot: Slot<number> = {
  longest: 7,
  read: (words) => {
    if (!/^(?:grams?|g)$/.test(words.at(-1) ?? '')) return [];
    const value = signedNumber(words.slice(0, -1));
    return value === undefined || value <= 0 ? [{ fault: `“${words.join(' ')}” is no weight` }] : [{ value }];
  },
  samples: () => ['eight hundred grams', 'one thousand and fifty grams', 'nine hundred ninety grams', 'six hundred twenty five grams'],
};

const POUNDS_PER_KILOGRAM = 2.20462;

/** 'eight hundred pounds', 'four hundred kilograms': a force as it is said of a clamp, in pounds. */
export const poundsSlot: Slot<number> = {
  longest: 8,
  read: (words) => {
    const unit = words.at(-1) ?? '';
    if (!/^(?:pounds?|lbs?|kilograms?|kg)$/.test(unit)) return [];
    const value = signedNumber(words.slice(0, -1));
    if (value === undefined || value <= 0) return [{ fault: `“${words.join(' ')}” is no force` }];
    return [{ value: Math.round(/^k/.test(unit) ? value * POUNDS_PER_KILOGRAM : value) }];
  },
  samples: () => ['eight hundred pounds', 'one thousand pounds', 'one thousand and two hundred pounds', 'two hundred fifty pounds', 'four hundred kilograms'],
};

function signedNumber(words: readonly string[]): number | undefined {
  const negative = words[0] === 'minus';
  const size = unsignedNumber(negative ? words.slice(1) : words);
  return size === undefined ? undefined : negative ? -size : size;
}

function unsignedNumber(words: readonly string[]): number | undefined {
  if (words.length === 1 && /^\d+(?:\.\d+)?$/.test(words[0] ?? '')) return Number(words[0]);
  const point = words.indexOf('point');
  const whole = readSpokenNumber(point < 0 ? words : words.slice(0, point));
  if (!whole.ok) return undefined;
  if (point < 0) return whole.value;
  const digits = words.slice(point + 1).map((word) => readSpokenNumber([word]));
  if (digits.length === 0 || digits.some((digit) => !digit.ok || digit.value > 9)) return undefined;
  return Number(`${whole.value}.${digits.map((digit) => (digit.ok ? digit.value : '')).join('')}`);
}
