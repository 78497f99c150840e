import type { InputFault } from '../reckoning/reckoning.ts';
import { failure, success, type Result } from '../result.ts';

/** From one stone to the next no more than about this many times finer: else the finer one works for ever on the coarse one's scratches. Common practice, no source. */
const MOST_STEP = 4;

export interface GritSequence {
  readonly grits: readonly number[];
  /** Steps that are too wide: from, to, and a grit about half way between. */
  readonly gaps: readonly { readonly from: number; readonly to: number; readonly between: number }[];
}

/** The stones that the maker owns, put in order, from the one to start with for this care of the edge: all for grinding, the finer half for honing, the finest to refresh. */
export function gritSequence(owned: readonly number[], care: 'refresh' | 'hone' | 'grind'): Result<GritSequence, InputFault> {
  const all = [...new Set(owned)].sort((a, b) => a - b);
  if (all.length === 0) return failure({ key: 'grits', message: 'Say which stones there are: their grits, such as 400, 1000, 6000.' });
  const grits = care === 'grind' ? all : care === 'hone' ? all.slice(Math.floor(all.length / 2) - (all.length % 2 === 0 ? 1 : 0)) : all.slice(-1);
  const gaps = grits.slice(1).flatMap((to, index) => {
    const from = grits[index] ?? to;
    return to / from > MOST_STEP ? [{ from, to, between: Math.round(Math.sqrt(from * to) / 100) * 100 }] : [];
  });
  return success({ grits, gaps });
}
