import { boardFeetUnrounded } from '../wood/lumber/measure.ts';
import { QUARTERS, type Quarter } from '../wood/lumber/quarters.ts';
import type { Length } from '../length/length.ts';
import type { Blank } from './board.ts';
import type { Missing } from './plan/roomFor.ts';

/** What of one species and thickness is short, and what that means at the yard. */
export interface ToBuy {
  readonly species: string;
  readonly thickness: Length;
  /** The rough thickness to ask for; undefined when none sold holds it. */
  readonly quarter: Quarter | undefined;
  readonly blanks: readonly { readonly id: string; readonly name: string; readonly count: number; readonly length: Length; readonly width: Length }[];
  /** The longest and the widest of them: no board under these helps with all. */
  readonly longest: Length;
  readonly widest: Length;
  /** Board feet in the blanks alone, at the thickness asked for. */
  readonly netBoardFeet: number;
  /** To buy, if boards of the grade give no more clear wood than they must. */
  readonly boardFeet: number;
}

/** Clear cuttings that a board must yield, of its surface measure (hardwood grading chart: SM × 10, × 8 and × 6 twelfths). */
export const GRADE_YIELDS = { 'FAS': 10 / 12, 'No. 1 Common': 8 / 12, 'No. 2A Common': 6 / 12 } as const;
export type Grade = keyof typeof GRADE_YIELDS;

/** The shopping list for what the rack does not give, thickest first. */
export function toBuy(missing: readonly Missing[], blanks: readonly Blank[], grade: Grade): ToBuy[] {
  const short = missing.flatMap(({ blank: id, count }) => {
    const blank = blanks.find((one) => one.id === id);
    return blank === undefined ? [] : [{ ...blank, count }];
  });
  const keys = [...new Set(short.map(({ species, thickness }) => `${species}\n${thickness}`))];
  return keys.map((key) => listFor(short.filter(({ species, thickness }) => `${species}\n${thickness}` === key), grade))
    .flatMap((one) => one ?? []).sort((a, b) => b.thickness - a.thickness);
}

function listFor(short: readonly Blank[], grade: Grade): ToBuy | undefined {
  const [first] = short;
  if (first === undefined) return undefined;
  const { species, thickness } = first;
  const quarter = roughHolding(thickness);
  const net = short.reduce((sum, { length, width, count }) => sum + count * boardFeetUnrounded({ length, width, thickness: quarter?.rough ?? thickness }), 0);
  return {
    species, thickness, quarter,
    blanks: short.map(({ id, name, count, length, width }) => ({ id, name, count, length, width })),
    longest: short.reduce((most, { length }) => (length > most ? length : most), first.length),
    widest: short.reduce((most, { width }) => (width > most ? width : most), first.width),
    netBoardFeet: net, boardFeet: net / GRADE_YIELDS[grade],
  };
}

/** Blanks are rough already: the quarter whose rough thickness holds them, not the one whose surfaced thickness does. */
function roughHolding(thickness: Length): Quarter | undefined {
  return QUARTERS.find(({ rough }) => rough >= thickness);
}
