import type { Bench } from '../bench/bench.ts';
import type { Operand } from '../bench/request.ts';
import { nanometres, type Length } from '../length/length.ts';
import { readSpokenLength, readSpokenNumber, SPOKEN_LENGTH_WORDS } from '../length/parseSpoken.ts';
import type { Rounding } from '../length/rounding.ts';
import { sayLength, sayOrdinal } from '../length/say.ts';
import { spokenFraction } from '../length/spokenQuantity.ts';
import type { Reading, Slot } from './slot.ts';
import { readSize, sizeSlot } from './subjects.ts';
import { nameKey } from './words.ts';

const LENGTH_WORDS: ReadonlySet<string> = new Set([...SPOKEN_LENGTH_WORDS, 'mm', 'cm', 'm', 'in', 'ft', 'thou']);

/** A length in the unit the bench is set to, unless it says its own; examples of it in inches and in millimetres. */
function measured(inches: readonly string[], millimetres: readonly string[]): Slot<Length> {
  return {
    longest: 14,
    read: (words, { state }) => {
      // Most spans that are tried hold a word that no length has.
      if (!words.every((word) => LENGTH_WORDS.has(word) || /\d/.test(word))) return [{ fault: `“${words.join(' ')}” is no length` }];
      const length = readSpokenLength(words, state.settings.rounding.unit);
      return [length.ok ? { value: length.value } : { fault: length.fault.message }];
    },
    samples: ({ state }) => (state.settings.rounding.unit === 'inch' ? inches : millimetres),
  };
}

/** Every fraction of the rule, each with another whole number, and lengths without one. */
const INCH_SAMPLES: readonly string[] = [
  ...[2, 4, 8, 16, 32, 64].flatMap((denominator) => Array.from({ length: denominator / 2 }, (_, index) => [2 * index + 1, denominator] as const)).map(([numerator, denominator], index) => {
    const whole = index % 4 === 0 ? nanometres(0) : nanometres(((index * 7) % 72) * 25_400_000);
    return spoken(nanometres(whole + (numerator * 25_400_000) / denominator), { unit: 'inch', denominator: 64 }, index % 2 === 0);
  }),
  'three inches', 'an inch and a half', 'two foot four and a half', 'six feet two inches', 'three point four three seven five', 'half an inch', 'thirty thou', 'eighty seven point three millimeters', 'eight point seven centimeters', 'one meter', 'one hundred and five inches', 'nine point oh five inches', 'twelve point six',
];

/** Both digits before and after the point, up to the length of a table. */
const METRIC_SAMPLES: readonly string[] = [
  ...Array.from({ length: 40 }, (_, index) => spoken(nanometres(((index * 47) % 900) * 1_000_000 + (index % 10) * 100_000), { unit: 'millimetre', step: nanometres(100_000) }, index % 2 === 0)),
  'one meter', 'eight point seven centimeters', 'three and seven sixteenths inches',
];

function spoken(length: Length, rounding: Rounding, unit: boolean): string {
  return sayLength(length, rounding, { unit }).replaceAll(',', '').replaceAll('-', ' ').replaceAll('metre', 'meter');
}

export const lengthSlot = measured(INCH_SAMPLES, METRIC_SAMPLES);
export const smallSlot = measured(
  ['a quarter', 'a half', 'an inch', 'one inch', 'two inches', 'three eighths of an inch', 'an inch and a half', 'one and a quarter', 'seven sixteenths', 'three thirty seconds', 'five', 'one point two five', 'twelve millimeters'],
  ['two millimeters', 'five', 'twelve millimeters', 'forty', 'six point five'],
);
export const gapSlot = measured(
  ['a sixteenth', 'one sixteenth', 'a thirty second of an inch', 'one thirty second', 'one sixty fourth', 'three sixty fourths', 'five thou', 'five thousandths', 'ten thousandths of an inch', 'a tenth of an inch', 'a hundredth of an inch', 'zero', 'zero point oh five', 'point oh one two inches', 'half a millimeter', 'an eighth'],
  ['half a millimeter', 'one millimeter', 'zero point three', 'two millimeters', 'zero', 'point five'],
);
/** Along a board, from its marked end or edge. */
export const alongSlot = measured(
  ['zero', 'thirty', 'thirty four', 'twelve inches', 'three and a half', 'sixty', 'ninety one and a half', 'two', 'forty eight', 'twenty seven and three quarters', 'fifty', 'four', 'six'],
  ['zero', 'three hundred', 'four hundred and fifty', 'fifty', 'six hundred and forty millimeters', 'nine hundred'],
);

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

/** The same, with examples of what is set side by side. */
export const eachSlot: Slot<Operand> = { ...operandSlot, samples: (bench) => smallSlot.samples(bench) };

/** The reason that fits: of a length when there is a number in it, else of a size. */
function operandFault(words: readonly string[], readings: readonly Reading<Operand>[]): Reading<Operand> {
  const [ofLength, ofSize] = readings;
  return (words.some((word) => /\d/.test(word) || readSpokenNumber([word]).ok) ? ofLength : ofSize) ?? { fault: `“${words.join(' ')}” is no size` };
}

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
  samples: () => ['eighths', 'sixteenths', 'thirty seconds', 'sixty fourths', 'eighth', 'sixteenth', 'thirty second', 'sixty fourth', 'half a millimeter', 'millimeters', 'a tenth of a millimeter'],
};

/** Reads with the bench what a bare answer to a question after a size is. */
export function readLength(words: readonly string[], bench: Bench): Reading<Length> | undefined {
  return lengthSlot.read(words, bench)[0];
}
