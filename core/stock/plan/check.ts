import type { Board } from '../board.ts';
import type { PlacedBlank } from './placed.ts';
import type { StockPlan, StockProblem } from './planStock.ts';

/**
 * What is wrong with a plan, in sentences; nothing when it can be cut as it stands. An account of its own, which shares no code with
 * the planner: every blank inside its board, clear of defects it must not hold, apart by the kerf, and to be had by cuts from edge to edge.
 */
export function faultsOf(plan: StockPlan, problem: StockProblem): string[] {
  const faults: string[] = [];
  for (const { board: number, placed } of plan.boards) {
    const board = problem.boards.find((one) => one.number === number);
    if (board === undefined) faults.push(`There is no board ${number}.`);
    else faults.push(...placed.flatMap((blank) => outside(board, blank, problem)), ...tooThick(board, placed, problem), ...(canBeCut(placed, problem.saw.kerf) ? [] : [`Board ${number}: no order of cuts from edge to edge frees all parts.`]));
  }
  for (const { id, count } of problem.blanks) {
    const had = plan.boards.reduce((sum, { placed }) => sum + placed.filter(({ blank }) => blank === id).length, 0);
    const missing = plan.missing.reduce((sum, one) => sum + (one.blank === id ? one.count : 0), 0);
    if (had + missing !== count) faults.push(`${id}: ${had} planned and ${missing} missing are not ${count}.`);
  }
  return faults;
}

function outside(board: Board, blank: PlacedBlank, { saw, blanks }: StockProblem): string[] {
  const [to, toEdge] = [blank.from + blank.length, blank.fromEdge + blank.width];
  const widthAt = (place: number): number => board.width - ((board.width - board.farWidth) * place) / board.length;
  const faults: string[] = [];
  const where = `Board ${board.number}, ${blank.name} at ${blank.from}`;
  const sawn = { marked: board.sawn === 'marked end' || board.sawn === 'both ends', far: board.sawn === 'far end' || board.sawn === 'both ends' };
  if (blank.from < (sawn.marked ? 0 : saw.endTrim) || to > board.length - (sawn.far ? 0 : saw.endTrim)) faults.push(`${where}: over the end.`);
  if (blank.fromEdge < 0 || toEdge > Math.min(widthAt(blank.from), widthAt(to)) - board.sapwood) faults.push(`${where}: over the edge.`);
  const hides = blanks.find(({ id }) => id === blank.blank)?.mayHideDefect === true;
  const touched = board.defects.filter((defect) => defect.from < to && defect.to > blank.from && defect.fromEdge < toEdge && defect.toEdge > blank.fromEdge);
  const [first] = touched;
  // One face is hidden, not both.
  const hidden = hides && first !== undefined && first.face !== 'through' && touched.every(({ face }) => face === first.face);
  return hidden ? faults : [...faults, ...touched.map(({ what }) => `${where}: on a ${what}.`)];
}

/** Blanks resawn from one piece must lie one behind the other in it, with what the resaws take between them. */
function tooThick(board: Board, placed: readonly PlacedBlank[], { saw, blanks }: StockProblem): string[] {
  const resawn = placed.filter(({ layer }) => layer !== undefined);
  return resawn.flatMap(({ blank, layer = 1, from, fromEdge, name }) => {
    const thickness = blanks.find(({ id }) => id === blank)?.thickness ?? 0;
    const same = resawn.filter((one) => one.from === from && one.fromEdge === fromEdge);
    const apart = new Set(same.map((one) => one.layer)).size === same.length && same.every((one) => one.blank === blank) && same.some((one) => one.layer === 1);
    const inside = layer * thickness + (layer - 1) * (saw.resaw ?? 0) <= board.thickness && (layer === 1 || (saw.resaw ?? 0) > 0);
    return apart && inside ? [] : [`Board ${board.number}, ${name} at ${from}: not to be resawn so.`];
  });
}

/** Whether straight cuts of the kerf's width, each from edge to edge of what is left, free all the blanks. */
export function canBeCut(placed: readonly PlacedBlank[], kerf: number): boolean {
  return canBeParted(placed.filter(({ layer }) => (layer ?? 1) === 1), kerf);
}

function canBeParted(placed: readonly PlacedBlank[], kerf: number): boolean {
  if (placed.length <= 1) return true;
  return splits(placed, kerf, ({ from, length }) => [from, from + length]) || splits(placed, kerf, ({ fromEdge, width }) => [fromEdge, fromEdge + width]);
}

function splits(placed: readonly PlacedBlank[], kerf: number, extent: (blank: PlacedBlank) => readonly [number, number]): boolean {
  const sorted = [...placed].sort((a, b) => extent(a)[0] - extent(b)[0]);
  const groups: PlacedBlank[][] = [];
  let reach = -Infinity;
  for (const blank of sorted) {
    const [from, to] = extent(blank);
    if (from >= reach + kerf) groups.push([blank]);
    else groups.at(-1)?.push(blank);
    reach = Math.max(reach, to);
  }
  return groups.length > 1 && groups.every((group) => canBeParted(group, kerf));
}
