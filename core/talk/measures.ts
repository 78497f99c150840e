import type { Bench } from '../bench/bench.ts';
import type { Operand } from '../bench/request.ts';
import { nanometres, type Length } from '../length/length.ts';
import { readSpokenLength, readSpokenNumber, SPOKEN_LENGTH_WORDS } from '../length/parseSpoken.ts';
import type { Rounding } from '../length/rounding.ts';
import { sayLength, sayNumber, sayOrdinal } from '../length/say.ts';
import { spokenFraction } from '../length/spokenQuantity.ts';
import { readDuration } from './duration.ts';
import type { Reading, Slot } from './slot.ts';
import { readSize, sizeSlot } from './subjects.ts';
import { nameKey } from './words.ts';

const MOST = 1000;
const LENGTH_WORDS: ReadonlySet<string> = new Set([...SPOKEN_LENGTH_WORDS, 'mm', 'cm', 'm', 'in', 'ft', 'thou']);

/** A length in the unit the bench is set to, unless it says its own. */
export const lengthSlot: Slot<Length> = {
  longest: 14,
  read: (words, { state }) => {
    // Most spans that are tried hold a word that no length has.
    if (!words.every((word) => LENGTH_WORDS.has(word) || /\d/.test(word))) return [{ fault: `“${words.join(' ')}” is no length` }];
    const length = readSpokenLength(words, state.settings.rounding.unit);
    return [length.ok ? { value: length.value } : { fault: length.fault.message }];
  },
  samples: ({ state }) => (state.settings.rounding.unit === 'inch' ? INCH_SAMPLES : METRIC_SAMPLES),
};

/** Every fraction of the rule, each with another whole number, and lengths without one. */
const INCH_SAMPLES: readonly string[] = [
  ...[2, 4, 8, 16, 32, 64].flatMap((denominator) => Array.from({ length: denominator / 2 }, (_, index) => [2 * index + 1, denominator] as const)).map(([numerator, denominator], index) => {
    const whole = index % 4 === 0 ? nanometres(0) : nanometres(((index * 7) % 72) * 25_400_000);
    return spoken(nanometres(whole + (numerator * 25_400_000) / denominator), { unit: 'inch', denominator: 64 }, index % 2 === 0);
  }),
  'three inches', 'an inch and a half', 'two foot four and a half', 'six feet two inches', 'three point four three seven five', 'half an inch', 'five thousandths', 'five thou', 'eighty seven point three millimeters', 'eight point seven centimeters', 'one meter', 'one hundred and five inches', 'zero point oh five inches', 'a tenth of an inch', 'a hundredth of an inch',
];

/** Both digits before and after the point, up to the length of a table. */
const METRIC_SAMPLES: readonly string[] = [
  ...Array.from({ length: 40 }, (_, index) => spoken(nanometres(((index * 47) % 900) * 1_000_000 + (index % 10) * 100_000), { unit: 'millimetre', step: nanometres(100_000) }, index % 2 === 0)),
  'one meter', 'eight point seven centimeters', 'three and seven sixteenths inches',
];

function spoken(length: Length, rounding: Rounding, unit: boolean): string {
  return sayLength(length, rounding, { unit }).replaceAll(',', '').replaceAll('-', ' ').replaceAll('metre', 'meter');
}

export const countSlot: Slot<number> = {
  longest: 4,
  read: (words) => {
    const count = readSpokenNumber(words);
    if (!count.ok) return [{ fault: count.fault.message }];
    return [count.value >= 1 && count.value <= MOST ? { value: count.value } : { fault: `from one to ${sayNumber(MOST)}, not ${sayNumber(count.value)}` }];
  },
  samples: () => [2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16, 17, 18, 19, 20, 24, 30, 36, 40, 48, 50, 60].map((count) => sayNumber(count).replace('-', ' ')),
};

export const fractionSlot: Slot<{ readonly numerator: number; readonly denominator: number }> = {
  longest: 4,
  read: (words) => {
    const fraction = spokenFraction(words);
    return fraction ? [{ value: fraction }] : [];
  },
  samples: () => ['half', 'a third', 'two thirds', 'a quarter', 'three quarters', 'a fifth', 'a sixth', 'a seventh', 'an eighth', 'a tenth'],
};

/** What arithmetic works on: a length, a size of the piece, or the last answer. */
export const operandSlot: Slot<Operand> = {
  longest: 14,
  read: (words, bench) => {
    if (/^(?:that|it|answer|last answer)$/.test(nameKey(words))) return [{ value: { lastAnswer: true } }];
    const sizes = readSize(words, bench);
    const readings: Reading<Operand>[] = [...lengthSlot.read(words, bench).map((reading) => ('value' in reading ? { value: { length: reading.value } } : reading)), ...sizes];
    const sound = readings.filter((reading) => 'value' in reading);
    return sound.length > 0 ? sound : [operandFault(words, readings)];
  },
  samples: (bench) => [...lengthSlot.samples(bench).filter((_, index) => index % 3 === 0), ...sizeSlot.samples(bench).filter((_, index) => index % 4 === 0), 'that'],
};

/** The reason that fits: of a length when there is a number in it, else of a size. */
function operandFault(words: readonly string[], readings: readonly Reading<Operand>[]): Reading<Operand> {
  const [ofLength, ofSize] = readings;
  return (words.some((word) => /\d/.test(word) || readSpokenNumber([word]).ok) ? ofLength : ofSize) ?? { fault: `“${words.join(' ')}” is no size` };
}

export const durationSlot: Slot<number> = {
  longest: 10,
  read: (words) => {
    const durationMs = readDuration(words);
    return durationMs === undefined ? [] : [{ value: durationMs }];
  },
  samples: () => [
    'thirty minute', 'twenty minute', 'five minutes', 'ten minutes', 'fifteen minutes', 'two minutes', 'three minutes', 'forty five minutes', 'an hour', 'an hour and a half', 'half an hour', 'two hours',
    'twenty four hours', 'a day', 'three days', 'one minute', 'ninety seconds', 'thirty seconds', 'one hour and twenty minutes', 'a quarter of an hour', 'fifty minutes', 'forty minutes', 'twelve hours',
  ],
};

export const unitSlot: Slot<Rounding['unit']> = {
  longest: 1,
  read: (words) => {
    const unit = nameKey(words);
    if (unit === 'inch' || unit === 'imperial') return [{ value: 'inch' }];
    return unit === 'millimeter' || unit === 'metric' ? [{ value: 'millimetre' }] : [];
  },
  samples: () => ['millimeters', 'inches'],
};

/** What sizes are rounded to when only the unit was chosen. */
export function roundingIn(unit: Rounding['unit']): Rounding {
  return unit === 'inch' ? DEFAULT_INCHES : { unit: 'millimetre', step: nanometres(500_000) };
}

const DEFAULT_INCHES: Rounding = { unit: 'inch', denominator: 32 };
const ROUNDINGS: ReadonlyMap<string, Rounding> = new Map<string, Rounding>([
  ...([8, 16, 32, 64] as const).map((denominator) => [nameKey(sayOrdinal(denominator).split('-')), { unit: 'inch', denominator }] as const),
  ['half millimeter', { unit: 'millimetre', step: nanometres(500_000) }],
  ['half of millimeter', { unit: 'millimetre', step: nanometres(500_000) }],
  ['millimeter', { unit: 'millimetre', step: nanometres(1_000_000) }],
  ['whole millimeter', { unit: 'millimetre', step: nanometres(1_000_000) }],
  ['tenth of millimeter', { unit: 'millimetre', step: nanometres(100_000) }],
]);

export const roundingSlot: Slot<Rounding> = {
  longest: 5,
  read: (words) => {
    const rounding = ROUNDINGS.get(nameKey(words).replace(/ (?:of )?inch$/, ''));
    return rounding ? [{ value: rounding }] : [];
  },
  samples: () => ['eighths', 'sixteenths', 'thirty seconds', 'sixty fourths', 'sixty fourth', 'half a millimeter', 'millimeters', 'a tenth of a millimeter'],
};

/** Reads with the bench what a bare answer to a question after a size is. */
export function readLength(words: readonly string[], bench: Bench): Reading<Length> | undefined {
  return lengthSlot.read(words, bench)[0];
}
