import { add } from '../length/arithmetic.ts';
import type { Length } from '../length/length.ts';
import { assertNever } from '../result.ts';
import type { Cut, PlannedBoard } from './plan/placed.ts';
import type { StockPlan } from './plan/planStock.ts';

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

/** What lies on a board, from the marked end along and from the reference edge across. */
export function tellPlaced({ placed }: Pick<PlannedBoard, 'placed'>, write: Write): string[] {
  return [...placed].sort((a, b) => a.from - b.from || a.fromEdge - b.fromEdge)
    .map(({ name, from, length, fromEdge, width }) => `${name}: ${write(from)} to ${write(add(from, length))} from the marked end, ${write(fromEdge)} to ${write(add(fromEdge, width))} from the reference edge`);
}

/** Every cut of a board in order, all told from the marked end or the reference edge, so that no error adds up. The kerf goes to the waste. */
export function tellCuts({ cuts }: PlannedBoard, write: Write): string[] {
  return cuts.map((cut) => tellOneCut(cut, write));
}

/** One cut: where, and which side of the line the saw goes. */
export function tellOneCut(cut: Cut, write: Write): string {
  const kerf = cut.waste === 'beyond' ? 'saw beyond the line' : 'saw before the line';
  const where = cut.section === 0 ? '' : ` in section ${cut.section}`;
  return `${tellCut(cut, write)}${where}, ${kerf}`;
}

/** One of many cuts read in a row, after it was said where all are measured from and that the saw goes beyond the line: what is as said is left out. */
export function tellCutInRow({ kind, at, from, to, section, waste }: Cut, write: Write): string {
  const cut = { 'crosscut': `crosscut at ${write(at)}`, 'crosscut again': `crosscut the strip at ${write(at)}`, 'rip': `rip at ${write(at)}, from ${write(from)} to ${write(to)}` }[kind];
  return `${cut}${section > 1 ? `, in section ${section}` : ''}${waste === 'before' ? ', saw before the line' : ''}`;
}

function tellCut({ kind, at, from, to }: Cut, write: Write): string {
  switch (kind) {
    case 'crosscut': return `crosscut at ${write(at)} from the marked end`;
    case 'crosscut again': return `crosscut the strip at ${write(at)} from the marked end`;
    case 'rip': return `rip at ${write(at)} from the reference edge, ${write(from)} to ${write(to)} from the marked end`;
    default: return assertNever(kind);
  }
}
