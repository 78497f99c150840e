import type { Blank, Board, SawSettings } from '../stock/board.ts';
import type { Grade } from '../stock/buying.ts';
import type { TakenBoard } from '../stock/cutting.ts';
import type { Objective } from '../stock/objectives.ts';
import type { StockPlan } from '../stock/plan/planStock.ts';
import type { PartRough } from '../stock/rough.ts';
import { nanometres, NANOMETRES_PER_INCH, ZERO_LENGTH, type Length } from '../length/length.ts';

/** How the maker saws, and what is bought. */
export interface SawingSettings {
  readonly kerf: Length;
  readonly endTrim: Length;
  readonly cutAgain: boolean;
  /** What one resaw takes, its kerf and both new faces planed flat; nothing: boards are not resawn. */
  readonly resaw: Length;
  /** What matters first; the least sawing comes next. */
  readonly first: Objective;
  /** Over the rough length (`Extra`), width and thickness, for layers of a lamination and boards of a panel: they slide, and are trimmed together. */
  readonly layerExtra: Length;
  readonly layerWider: Length;
  readonly layerThicker: Length;
  readonly panelExtra: Length;
  readonly panelWider: Length;
  readonly panelThicker: Length;
  readonly grade: Grade;
  /** What a board foot costs, in hundredths of the money; 0 when it was not told. */
  readonly centsPerBoardFoot: number;
  /** How wide the boards at the yard are, more or less. */
  readonly yardWidth: Length;
}

/** A kerf of a sixteenth, and three thirty-seconds planed off either new face (common practice, no source). */
export const USUAL_RESAW = nanometres(NANOMETRES_PER_INCH / 4);

export const USUAL_SAWING: SawingSettings = {
  kerf: nanometres(NANOMETRES_PER_INCH / 16), endTrim: nanometres(NANOMETRES_PER_INCH), cutAgain: true, resaw: ZERO_LENGTH, first: 'fewest boards', layerExtra: ZERO_LENGTH, layerWider: ZERO_LENGTH, layerThicker: ZERO_LENGTH,
  panelExtra: ZERO_LENGTH, panelWider: ZERO_LENGTH, panelThicker: ZERO_LENGTH,
  grade: 'FAS', centsPerBoardFoot: 0, yardWidth: nanometres(7 * NANOMETRES_PER_INCH),
};

/** A plan that the maker goes by: every board as it stood when it was taken, and how far it is cut. */
export interface TakenPlan {
  readonly boards: readonly TakenBoard[];
  /** Boards that were begun when it was taken: they stay as they are, and the bound holds with them. Absent in plans of before: none was counted. */
  readonly begun?: number;
  readonly missing: StockPlan['missing'];
  readonly bound: number;
  readonly boundIn: StockPlan['boundIn'];
  readonly proven: boolean;
  readonly cents: number;
  readonly crosscutMetres: number;
  readonly ripMetres: number;
  /** Absent in plans of before. */
  readonly with?: PlannedWith;
}

/** What a plan was reckoned from besides the boards. */
export interface PlannedWith {
  readonly saw: SawSettings;
  readonly first: Objective;
  readonly blanks: readonly Blank[];
}

/** The entries of boards and cutting. */
export type CuttingEntry =
  /** On the rack: a new board, or one by that number told anew. */
  | { readonly kind: 'board put'; readonly board: Board }
  | { readonly kind: 'board gone'; readonly board: number }
  | { readonly kind: 'plan taken'; readonly plan: TakenPlan }
  | { readonly kind: 'cut made'; readonly board: number }
  | { readonly kind: 'sawing set'; readonly setting: Partial<SawingSettings> }
  /** What is wanted of a part of the piece on the bench before it is cut. */
  | { readonly kind: 'part rough'; readonly part: string; readonly rough: PartRough };

/** The part of the state that these entries write. */
export interface CuttingState {
  readonly rack: ReadonlyMap<number, Board>;
  /** The highest number that a board ever had: none is given twice. */
  readonly lastBoard: number;
  /** By the name of the piece. */
  readonly plans: ReadonlyMap<string, TakenPlan>;
  readonly sawing: SawingSettings;
  /** By the name of the piece, then by part. */
  readonly rough: ReadonlyMap<string, ReadonlyMap<string, PartRough>>;
}

export const NO_CUTTING_STATE: CuttingState = { rack: new Map(), lastBoard: 0, plans: new Map(), sawing: USUAL_SAWING, rough: new Map() };

/** What such an entry makes of the state; `piece` is the name of the piece on the bench. */
export function applyCutting(state: CuttingState, entry: CuttingEntry, piece: string): Partial<CuttingState> {
  switch (entry.kind) {
    case 'board put': return { rack: new Map([...state.rack, [entry.board.number, entry.board]]), lastBoard: Math.max(state.lastBoard, entry.board.number) };
    case 'board gone': return { rack: new Map([...state.rack].filter(([number]) => number !== entry.board)) };
    case 'plan taken': return { plans: new Map([...state.plans, [piece, entry.plan]]) };
    case 'cut made': return { plans: cutMade(state.plans, piece, entry.board) };
    case 'sawing set': return { sawing: { ...state.sawing, ...entry.setting } };
    case 'part rough': return { rough: partRough(state.rough, piece, entry.part, entry.rough) };
  }
}

/** A cut beyond the last changes nothing. */
function cutMade(plans: CuttingState['plans'], piece: string, number: number): CuttingState['plans'] {
  const plan = plans.get(piece);
  if (plan === undefined) return plans;
  const boards = plan.boards.map((one) => (one.board === number && one.made < one.cuts.length ? { ...one, made: one.made + 1 } : one));
  return new Map([...plans, [piece, { ...plan, boards }]]);
}

function partRough(rough: CuttingState['rough'], piece: string, part: string, told: PartRough): CuttingState['rough'] {
  const parts = rough.get(piece) ?? new Map<string, PartRough>();
  return new Map([...rough, [piece, new Map([...parts, [part, { ...parts.get(part), ...told }]])]]);
}
