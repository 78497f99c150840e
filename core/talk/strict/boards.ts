import { sayNumber } from '../../length/sayNumber.ts';
import { OBJECTIVES } from '../../stock/objectives.ts';
import { DEFECT_KINDS } from '../../stock/rack.ts';
import { QUARTER_COUNTS } from '../boardSlots.ts';
import { all, either } from './expression.ts';
import type { Expression } from './expression.ts';
import { plain } from './names.ts';

/** What is said of boards, word for word; the woods depend on the piece. */
export const BOARD_SENTENCES: Readonly<Record<'quarter' | 'defect' | 'objective', Expression>> = {
  quarter: all(either(...QUARTER_COUNTS.map((count) => sayNumber(count))), 'quarter'),
  defect: either(...DEFECT_KINDS, 'crack'),
  objective: either(...OBJECTIVES.map(plain)),
};
