import type { Bench } from '../../bench/bench.ts';
import { sayNumber } from '../../length/say.ts';
import { partNamed } from '../names.ts';
import { rowsOf } from '../pattern.ts';
import type { Built, SlotValues } from '../slot.ts';
import { whichDimension } from '../whichDimension.ts';

const row = rowsOf('reckoning');
const LAST = { lastAnswer: true } as const;

/** The arithmetic of the bench. */
export const RECKONING_ROWS = [
  row('a part of a size', ['[what is] {fraction} of [the] {of}'], ({ fraction, of }) => ({ kind: 'fraction of', ...fraction, of })),
  row('half a size of the piece', ['[what is] half [the] {size}', '[where is] the (middle|center) of [the] {size}'], ({ size }) => ({ kind: 'fraction of', numerator: 1, denominator: 2, of: size })),
  row('the middle of a part', ['[where is] the (middle|center) of [the] {parts}'], ({ parts: { part } }, bench) => middleOf(part, bench)),
  row('half the last answer', ['half (it|that)'], () => ({ kind: 'fraction of', numerator: 1, denominator: 2, of: LAST })),
  row('a size divided', ['(divide|share|split) [the] {of} (by|in|into) {count}', '[what is] {of} divided by {count}'], ({ of, count }) => ({ kind: 'fraction of', numerator: 1, denominator: count, of })),
  row('so many times a size', ['[what is] {count} times [the] {of}', '[what is] {of} times {count}'], ({ count, of }) => ({ kind: 'times', factor: count, of })),
  row('twice a size', ['[what is] (twice|double) [the] {of}'], ({ of }) => ({ kind: 'times', factor: 2, of })),
  // Before two sizes together: 'add forty two and seven eighths' is one size.
  row('something more than the last answer', ['plus [the] {right}', 'add [the] {right}'], ({ right }) => ({ kind: 'plus', left: LAST, right })),
  row('two sizes together', ['[what is] {left} plus [the] {right}', 'add {left} (to|and) [the] {right}'], ({ left, right }) => ({ kind: 'plus', left, right })),
  row('one size less another', ['[what is] {left} (minus|less) [the] {right}'], ({ left, right }) => ({ kind: 'less', left, right })),
  row('one size taken off another', ['(take|subtract) {right} (from|off) [the] {left}'], ({ left, right }) => ({ kind: 'less', left, right })),
  row('something less than the last answer', ['(minus|less) [the] {right}'], ({ right }) => ({ kind: 'less', left: LAST, right })),
  row('so many times the last answer', ['times {count}'], ({ count }) => ({ kind: 'times', factor: count, of: LAST })),
  row('the last answer divided', ['divided by {count}', 'divide by {count}', 'over {count}'], ({ count }) => ({ kind: 'fraction of', numerator: 1, denominator: count, of: LAST })),
  row('equal spaces', ['(divide|share|split|space) [the] {of} (in|into) {count} [equal|even] (spaces|parts|pieces|sections)', '{count} equal (spaces|parts|pieces) in [the] {of}'], ({ of, count }) => ({ kind: 'equal spaces', of, spaces: count })),
  row('parts with equal gaps', ['(divide|share|split|space) [the] {of} (in|into) [equal] (spaces|gaps) with {count} (parts|pieces|slats) of {each}', 'space {count} (parts|pieces|slats) of {each} in [the] {of}', '{count} (parts|pieces|slats) of {each} in [the] {of}'],
    ({ of, count, each }) => ({ kind: 'equal gaps', of, parts: count, each })),
  row('parts with a counted number of gaps', ['(divide|share|split) [the] {of} (in|into) {spaces} [equal] (spaces|gaps) with {count} (parts|pieces|slats) of {each}'],
    ({ of, spaces, count, each }) => (spaces === count - 1 ? { kind: 'equal gaps', of, parts: count, each } : { fault: `${sayNumber(count)} parts have ${sayNumber(count - 1)} gaps between them; say it without the number of spaces` })),
  row('a size in the other unit', ['[what is] [the] {of} in {unit}', 'how (many|much) {unit} is [the] {of}', 'convert [the] {of} to {unit}'], ({ of, unit }, { state: { settings: { rounding } } }) => ('size' in of && unit === rounding.unit ? { kind: 'size', ...of } : { kind: 'in other unit', of, unit })),
  row('a size counted in fractions', ['how many {rounding} (is|are|in) [the] {of}'], ({ rounding, of }) => countedIn(rounding, of)),
  row('the last answer in the other unit', ['in {unit}', '(what is|say|give me) (it|that) in {unit}'], ({ unit }) => ({ kind: 'in other unit', of: LAST, unit })),
  row('the last answer counted in fractions', ['what is (it|that) in {rounding}'], ({ rounding }) => countedIn(rounding, LAST)),
];

/** Half its length; of a panel it is asked along which way. */
function middleOf(part: string, { state: { piece } }: Bench): Built {
  const owner = partNamed(piece, part);
  const isPanel = piece?.file.parts.find(({ id }) => id === part)?.made.kind === 'panel';
  return owner && whichDimension(owner, (of) => ({ kind: 'fraction of', numerator: 1, denominator: 2, of }), isPanel ? ['length', 'width'] : ['length']);
}

function countedIn(rounding: SlotValues['rounding'], of: SlotValues['of']): Built {
  return rounding.unit === 'inch' ? { kind: 'in fractions', of, denominator: rounding.denominator } : { kind: 'in other unit', of, unit: rounding.unit };
}
