import { nanometres, NANOMETRES_PER_INCH } from '../../length/length.ts';
import { writeExact } from '../writeExact.ts';
import type { StarterInput } from './fields.ts';
import { longStretchers } from './parts.ts';
import type { Proportions } from './proportions.ts';
import type { StarterFault } from './readInput.ts';

/** A shorter tenon than this holds little; common practice, no source. */
const SHORTEST_TENON = nanometres(NANOMETRES_PER_INCH / 2);

/** Answers that are right one by one and do not go together. */
export function faultsTogether(input: StarterInput, sizes: Proportions): readonly StarterFault[] {
  return [...railFaults(sizes), ...stretcherFaults(input, sizes)];
}

function railFaults({ leg, setback, railThickness, tenonLength }: Proportions): readonly StarterFault[] {
  if (setback + railThickness <= leg && tenonLength >= SHORTEST_TENON) return [];
  const found = `rails ${writeExact(railThickness)} thick in legs of ${writeExact(leg)}`;
  return [{
    key: 'stock.rail', expected: 'rails that leave room for tenons in the legs', found,
    message: `There is no room for tenons with ${found}. Take thinner boards for the rails, or make the legs stouter.`,
  }];
}

function stretcherFaults(input: StarterInput, { stretcherHeight, stretcherWidth, railWidth, topThickness }: Proportions): readonly StarterFault[] {
  if (input.stretchers === 'none') return [];
  const rows = longStretchers(input).length === 0 ? 1 : 2;
  // An inch between the rows, and one under the rails.
  const needed = stretcherHeight + rows * (stretcherWidth + NANOMETRES_PER_INCH) + railWidth + topThickness;
  if (needed <= input.height) return [];
  const [least, instead] = [writeExact(nanometres(needed)), rows === 2 ? 'Leave them out, have them at the sides only' : 'Leave them out'];
  return [{
    key: 'stretchers', expected: `a table at least ${least} high for these`, found: `one ${writeExact(input.height)} high`,
    message: `A table with these stretchers has to be at least ${least} high. ${instead}, or make the table higher.`,
  }];
}
