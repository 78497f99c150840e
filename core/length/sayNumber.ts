/** Whole numbers as words, as they are said: 'thirty-one', 'one hundred five', 'twenty-first'. */

export const DIGIT_WORDS = ['zero', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine'] as const;
const UNDER_TWENTY = [...DIGIT_WORDS, 'ten', 'eleven', 'twelve', 'thirteen', 'fourteen', 'fifteen', 'sixteen', 'seventeen', 'eighteen', 'nineteen'];
const TENS = ['', '', 'twenty', 'thirty', 'forty', 'fifty', 'sixty', 'seventy', 'eighty', 'ninety'];

/** Word to value, for reading: the words under twenty. */
export const SMALL_NUMBERS: ReadonlyMap<string, number> = new Map(UNDER_TWENTY.map((word, value) => [word, value]));
/** Word to value, for reading: twenty, thirty … ninety. */
export const TENS_NUMBERS: ReadonlyMap<string, number> = new Map(TENS.flatMap((word, tens) => (word === '' ? [] : [[word, tens * 10] as const])));

/** Words whose ordinal is not made by adding 'th'. */
const ODD_ORDINALS: ReadonlyMap<string, string> = new Map([
  ['one', 'first'], ['two', 'second'], ['three', 'third'], ['five', 'fifth'], ['eight', 'eighth'], ['nine', 'ninth'], ['twelve', 'twelfth'],
]);

/** A whole number under a million million, without 'and' so that 'and' is kept for fractions; negative with 'minus'. */
export function sayNumber(count: number): string {
  if (!Number.isSafeInteger(count) || Math.abs(count) >= 1e12) throw new RangeError(`only whole numbers under a million million are said, not ${count}`);
  if (count < 0) return `minus ${sayNumber(-count)}`;
  for (const [size, word] of [[1e9, 'billion'], [1e6, 'million'], [1e3, 'thousand'], [100, 'hundred']] as const) {
    if (count >= size) return `${sayNumber(Math.floor(count / size))} ${word}${count % size === 0 ? '' : ` ${sayNumber(count % size)}`}`;
  }
  if (count < 20) return UNDER_TWENTY[count] ?? '';
  const tens = TENS[Math.floor(count / 10)] ?? '';
  return count % 10 === 0 ? tens : `${tens}-${UNDER_TWENTY[count % 10] ?? ''}`;
}

/** 'first', 'sixteenth', 'thirty-second', 'sixty-fourth'; from 0 up. */
export function sayOrdinal(count: number): string {
  return sayNumber(count).replace(/[a-z]+$/, (last) => ODD_ORDINALS.get(last) ?? (last.endsWith('y') ? `${last.slice(0, -1)}ieth` : `${last}th`));
}
