import type { SheetOrder } from '../../../../core/layout/paper/order.ts';
import type { PaperName } from '../../../../core/layout/paper/paperSize.ts';
import { evaluate } from '../../../../core/piece/evaluate.ts';
import { writePiece } from '../../../../core/piece/load.ts';
import type { LoadedPiece } from '../../../../core/piece/loadedPiece.ts';
import { readStarterInput, starterPiece } from '../../../../core/piece/starter.ts';
import { DEMO_TEXT, loadSound } from '../../piece/demo.ts';
import fc from 'fast-check';

export const DEMO = loadSound(DEMO_TEXT);

export function orderFor(piece: LoadedPiece, paper: PaperName = 'a4'): SheetOrder {
  return { piece, sizes: evaluate(piece, []), places: new Map(), turns: new Map(), rounding: { unit: 'inch', denominator: 32 }, paper, date: '25 November 2026' };
}

function madeFrom(answers: Readonly<Record<string, string>>): LoadedPiece | undefined {
  const input = readStarterInput(answers, undefined);
  const file = input.ok ? starterPiece(input.value) : input;
  return file.ok ? loadSound(writePiece(file.value)) : undefined;
}

/** Leg-and-rail tables of many sizes. */
export const TABLES = fc.record({
  length: fc.integer({ min: 16, max: 90 }), width: fc.integer({ min: 12, max: 48 }), height: fc.integer({ min: 20, max: 44 }),
  layers: fc.integer({ min: 2, max: 5 }), rail: fc.constantFrom('3/4 in', '1 in', '1 1/4 in'), stretchers: fc.constantFrom('none', 'sides', 'sides and back', 'all round'),
}).map(({ length, width, height, layers, rail, stretchers }) => madeFrom({
  'inside.length': `${length} in`, 'inside.width': `${width} in`, height: `${height} in`, layers: `${layers}`, 'stock.rail': rail, stretchers,
})).filter((piece) => piece !== undefined);
