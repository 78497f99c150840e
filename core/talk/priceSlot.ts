import { wholeNumber } from '../length/spokenNumber.ts';
import type { Slot } from './slot.ts';
import { all, either, optional, rarely } from './strict/expression.ts';
import { counted, RARE } from './strict/numbers.ts';

/** Money has no name here; what a maker calls it may be said, and is left out again. */
const MONEY: ReadonlySet<string> = new Set(['dollar', 'dollars']);
const HUNDREDTHS: ReadonlySet<string> = new Set(['cent', 'cents', 'hundredths']);
const MOST = 99;
/** 'a half', 'three quarters': as hundredths. */
const PARTS: ReadonlyMap<string, number> = new Map([['and a half', 50], ['and a quarter', 25], ['and three quarters', 75]]);

/** A price, in hundredths: 'nine', 'nine fifty', 'nine oh five', 'nine and a half', 'four dollars and fifty cents'. To 99.99. */
export const priceSlot: Slot<number> = {
  longest: 8,
  read: (words) => {
    const price = priceIn(words.map((word) => word.toLowerCase()));
    if (price === undefined) return [];
    return [price >= 1 && price < (MOST + 1) * 100 ? { value: price } : { fault: 'a board foot costs from a hundredth to ninety-nine ninety-nine' }];
  },
  samples: () => ['four', 'nine', 'fifteen', 'twenty two', 'nine fifty', 'twelve twenty five', 'eight oh five', 'six and a half', 'seven and three quarters', 'four dollars', 'four dollars and fifty cents', 'eleven dollars seventy five'],
};

function priceIn(words: readonly string[]): number | undefined {
  const figure = words.length === 1 ? /^(\d{1,4})(?:\.(\d{1,2}))?$/.exec(words[0] ?? '') : null;
  if (figure) return 100 * Number(figure[1]) + Number((figure[2] ?? '').padEnd(2, '0'));
  const plain = words.filter((word) => !MONEY.has(word));
  for (let at = plain.length; at > 0; at -= 1) {
    const [whole, part] = [wholeNumber(plain.slice(0, at)), hundredthsIn(plain.slice(at))];
    if (whole !== undefined && part !== undefined) return 100 * whole + part;
  }
  return undefined;
}

/** 'fifty', 'oh five', 'and a half', 'and fifty cents'; nothing is none. A single figure needs its name, or 'twenty five' would be twenty and five hundredths. */
function hundredthsIn(words: readonly string[]): number | undefined {
  if (words.length === 0) return 0;
  const part = PARTS.get(words.join(' '));
  if (part !== undefined) return part;
  const named = HUNDREDTHS.has(words.at(-1) ?? '');
  const said = words.slice(words[0] === 'and' ? 1 : 0, named ? -1 : undefined);
  const zero = said[0] === 'oh' || said[0] === 'zero';
  const value = wholeNumber(zero ? said.slice(1) : said);
  const least = named || zero ? 1 : 10;
  return value !== undefined && value >= least && value <= (zero ? 9 : MOST) ? value : undefined;
}

const WHOLE = counted(1, MOST);
/** Whole money and its hundredths as one says them one after the other. */
export const PRICE = either(
  WHOLE, all(WHOLE, either(counted(10, MOST), all('oh', counted(1, 9)))), all(WHOLE, either(...[...PARTS.keys()].map((words) => rarely(words, RARE)))),
  all(WHOLE, 'dollars', optional(either(counted(10, MOST), all(optional('and'), counted(1, MOST), 'cents')))),
);
