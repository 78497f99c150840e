import { add } from '../length/arithmetic.ts';
import { ZERO_LENGTH, type Length } from '../length/length.ts';
import { assertNever } from '../result.ts';
import type { Board } from './board.ts';
import { areaOf } from './cutting.ts';
import { markOf } from './inOrder.ts';
import type { Cut, PlacedBlank, PlannedBoard } from './plan/placed.ts';
import type { StockPlan } from './plan/planStock.ts';
import { defectsIn } from './rack.ts';

type Write = (length: Length) => string;

/** How the plan stands against the best there can be, and what it asks of the saw. */
export function tellPlan(plan: StockPlan): string[] {
  return [
    ...(plan.missing.length > 0 ? [] : [standing(plan)]),
    `${metres(plan.crosscutMetres)} to crosscut and ${metres(plan.ripMetres)} to rip by hand.`,
    ...(plan.separated.length === 0 ? [] : [`No board is large enough to keep these together: ${plan.separated.join(', ')}.`]),
    ...plan.missing.map(({ blank, count, why }) => `${count} of ${blank} not planned: ${why}.`),
  ];
}

function standing({ boundIn, bound, used, cents, proven }: StockPlan): string {
  const [best, found] = boundIn === 'boards' ? [count(bound), String(used)] : [price(bound), price(cents)];
  return proven ? `Best possible is ${best}; this plan uses ${found}.` : `This plan uses ${found}; no plan cut in these stages does with less than ${best}.`;
}

function count(boards: number): string {
  return boards === 1 ? '1 board' : `${boards} boards`;
}

function price(cents: number): string {
  return (cents / 100).toFixed(2);
}

function metres(length: number): string {
  return `${length.toFixed(1)} m`;
}

/** What lies on a board, from the marked end along and from the reference edge across; with the board, what of it goes to a hidden face. */
export function tellPlaced({ placed }: Pick<PlannedBoard, 'placed'>, write: Write, board?: Board): string[] {
  return [...placed].sort((a, b) => a.from - b.from || a.fromEdge - b.fromEdge).map((blank) => {
    const { from, length, fromEdge, width, layer } = blank;
    const hidden = board === undefined ? [] : tellHidden(board, blank);
    return [`${markOf(blank)}: ${write(from)} to ${write(add(from, length))} from the marked end, ${write(fromEdge)} to ${write(add(fromEdge, width))} from the reference edge`, ...(layer === undefined ? [] : [`resawn, number ${layer} from the marked face`]), ...hidden].join(', ');
  });
}

/** What shows on a face of a blank and is to be hidden: 'the knot on the other face goes to the hidden face'. */
export function tellHidden(board: Board, blank: PlacedBlank): string[] {
  const found = defectsIn(board, areaOf(blank));
  const [first] = found;
  if (first === undefined) return [];
  return [`the ${[...new Set(found.map(({ what }) => what))].join(' and ')} on the ${first.face} ${found.length === 1 ? 'goes' : 'go'} to the hidden face`];
}

/** Which face was towards the pith, half a sentence; undefined where nobody told. What is glued or cups is turned by it. */
export function tellHeart({ pithSide }: Pick<Board, 'pithSide'>): string | undefined {
  return pithSide === undefined ? undefined : `the ${pithSide} is the heart side`;
}

/** Every cut of a board in order, all told from the marked end or the reference edge, so that no error adds up. The kerf goes to the waste. */
export function tellCuts({ cuts }: PlannedBoard, write: Write): string[] {
  return cuts.map((cut) => tellCut(cut, write));
}

/**
 * One cut: where, and which side of the line the saw goes. In a row, after it was said where all are measured from and that the saw goes beyond
 * the line, what is as said is left out.
 */
export function tellCut({ kind, at, from, to, section, waste, fromEdge = ZERO_LENGTH, toEdge = ZERO_LENGTH }: Cut, write: Write, told: 'alone' | 'in a row' = 'alone'): string {
  const alone = told === 'alone';
  const [end, edge] = alone ? [' from the marked end', ' from the reference edge'] : ['', ''];
  const where = alone ? (section === 0 ? '' : ` in section ${section}`) : section > 1 ? `, in section ${section}` : '';
  const kerf = alone || waste === 'before' ? `, saw ${waste} the line` : '';
  switch (kind) {
    case 'crosscut': return `crosscut at ${write(at)}${end}${where}${kerf}`;
    case 'crosscut again': return `crosscut the strip at ${write(at)}${end}${where}${kerf}`;
    case 'rip': return `rip at ${write(at)}${edge}, ${alone ? '' : 'from '}${write(from)} to ${write(to)}${end}${where}${kerf}`;
    case 'resaw': return `resaw the piece from ${write(from)} to ${write(to)}${end}, ${write(fromEdge)} to ${write(toEdge)} across, at ${write(at)} from its marked face${kerf}`;
    default: return assertNever(kind);
  }
}
