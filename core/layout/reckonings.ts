import type { Reckoning } from '../reckoning/reckoning.ts';
import { diagonals, fourSided } from './reckon/diagonals.ts';
import { printScale } from './reckon/printScale.ts';
import { sheets } from './reckon/sheets.ts';
import { gauges } from './reckon/gauges.ts';
import { toleranceStack } from './reckon/stack.ts';

/** What the layout contributes to `npm run reckon`. */
export const LAYOUT_RECKONINGS: readonly Reckoning[] = [diagonals, fourSided, toleranceStack, gauges, sheets, printScale];
