import { resawnFrom, type Blank, type Board, type SawSettings } from '../board.ts';
import { lotOf, yieldOf } from './lot.ts';
import { placedBoard, type PlannedBoard } from './placed.ts';
import { improveLot, openLot, planOf, type Effort, type LotPlan, type LotSearch } from './planLot.ts';
import { keptTogether, thinnestFor, whyNone, type Missing } from './roomFor.ts';
import type { Objective } from '../objectives.ts';

export interface StockProblem {
  readonly boards: readonly Board[];
  readonly blanks: readonly Blank[];
  readonly saw: SawSettings;
  readonly objectives: readonly Objective[];
}

/** A plan for the whole rack, in places from each board's marked end and reference edge. */
export interface StockPlan {
  readonly boards: readonly PlannedBoard[];
  readonly missing: readonly Missing[];
  readonly used: number;
  /** Boards (or cents, where cheapest comes first) that any plan cut in these stages needs. Says something only when nothing is missing. */
  readonly bound: number;
  readonly boundIn: 'boards' | 'cents';
  readonly proven: boolean;
  /** Blanks that were to stay together, for which no board is large enough. */
  readonly separated: readonly string[];
  readonly cents: number;
  readonly crosscutMetres: number;
  readonly ripMetres: number;
  readonly effortMetres: number;
  readonly offcutMetres: number;
}

/** Beyond these a better plan was never seen (`npm run bench -- cutting`). */
const ROUNDS = { rounds: 120, roundsOnceProven: 24 };

/**
 * Plans all blanks on the boards of the rack, one lot of species and thickness after the other. A blank goes to the thinnest boards
 * that it can be had from. `better` is called with a first plan of all lots, then with every better one; `goOn` is asked all the while.
 */
export function planStock(problem: StockProblem, goOn: () => boolean, better: (plan: StockPlan) => void): StockPlan {
  const opened = openLots(problem, goOn);
  const plan = (): StockPlan => joined(problem, opened);
  better(plan());
  for (const search of opened.searches) {
    search.report = () => better(plan());
    improveLot(search);
  }
  return plan();
}

interface Opened {
  readonly searches: readonly LotSearch[];
  readonly missing: readonly Missing[];
  /** Some blanks had to go to thicker boards than they need, so that the bound holds for this division only. */
  readonly moved: boolean;
  readonly separated: readonly string[];
}

/** From the thinnest boards up: what does not find room in its own thickness is offered to the next. */
function openLots(problem: StockProblem, goOn: () => boolean): Opened {
  const { boards, saw, objectives } = problem;
  const { byThickness, missing, separated } = sorted(problem);
  const searches: LotSearch[] = [];
  let moved = false;
  const classes = [...new Set(boards.map(({ species, thickness }) => `${species}\n${String(thickness).padStart(12, '0')}`))].sort();
  let carried: Blank[] = [];
  let before = '';
  for (const key of classes) {
    const [species = '', thickness = ''] = key.split('\n');
    if (species !== before) carried = [];
    before = species;
    const needed = merged([...byThickness.get(`${Number(thickness)} ${species}`) ?? [], ...carried]);
    moved ||= carried.length > 0;
    if (needed.length === 0) continue;
    const own = boards.filter((board) => board.species === species && board.thickness === Number(thickness));
    const thicker = boards.some((board) => board.species === species && board.thickness > Number(thickness));
    const opened = openOne(own, needed, saw, { objectives, goOn, ...ROUNDS }, thicker);
    searches.push(opened.search);
    separated.push(...opened.separated);
    carried = opened.short;
  }
  return { searches, missing, moved, separated };
}

interface OpenedLot {
  readonly search: LotSearch;
  readonly short: Blank[];
  readonly separated: readonly string[];
}

/** Sets that found no clear stretch come apart; what is still short is carried on where there are thicker boards. */
function openOne(boards: readonly Board[], asked: readonly Blank[], saw: SawSettings, effort: Effort, mayCarry: boolean): OpenedLot {
  const lot = (blanks: readonly Blank[]) => lotOf(boards, blanks.map((blank) => resawnFrom(blank, boards[0]?.thickness ?? blank.thickness, saw)), saw);
  const whole = openLot(lot(asked), effort);
  const apart = shortOf(whole, asked).filter(({ together }) => together > 1).map(({ id }) => id);
  const blanks = asked.map((blank) => (apart.includes(blank.id) ? { ...blank, together: 1 } : blank));
  const search = apart.length === 0 ? whole : openLot(lot(blanks), effort);
  const short = mayCarry ? shortOf(search, blanks) : [];
  if (short.length === 0) return { search, short, separated: apart };
  const kept = blanks.map((blank) => ({ ...blank, count: blank.count - (short.find(({ id }) => id === blank.id)?.count ?? 0) })).filter(({ count }) => count > 0);
  return { search: openLot(lot(kept), effort), short, separated: apart };
}

function shortOf({ lot, best }: LotSearch, blanks: readonly Blank[]): Blank[] {
  const had = best.cut.map(({ sections }) => yieldOf(lot, sections));
  return blanks.map((blank, index) => ({ ...blank, count: blank.count - (lot.blanks[index]?.together ?? 1) * had.reduce((sum, counts) => sum + (counts[index] ?? 0), 0) })).filter(({ count }) => count > 0);
}

/** The same blank from two sides, together once more. */
function merged(blanks: readonly Blank[]): Blank[] {
  const byId = new Map<string, Blank>();
  for (const blank of blanks) byId.set(blank.id, { ...blank, count: blank.count + (byId.get(blank.id)?.count ?? 0) });
  return [...byId.values()];
}

interface Sorted {
  readonly byThickness: ReadonlyMap<string, readonly Blank[]>;
  readonly missing: Missing[];
  readonly separated: string[];
}

function sorted({ boards, blanks, saw }: StockProblem): Sorted {
  const made = { byThickness: new Map<string, Blank[]>(), missing: [] as Missing[], separated: [] as string[] };
  for (const asked of blanks) {
    if (asked.count === 0) continue;
    const lacking = whyNone(asked, boards, saw);
    if (lacking !== undefined) {
      made.missing.push({ blank: asked.id, count: asked.count, why: lacking });
      continue;
    }
    const blank = keptTogether(asked, boards, saw) ? asked : { ...asked, together: 1 };
    if (blank !== asked) made.separated.push(asked.id);
    const key = `${thinnestFor(blank, boards, saw)} ${blank.species}`;
    made.byThickness.set(key, [...made.byThickness.get(key) ?? [], blank]);
  }
  return made;
}

function joined({ blanks, objectives }: StockProblem, { searches, missing, moved, separated }: Opened): StockPlan {
  const plans = searches.map((search) => ({ lot: search.lot, plan: planOf(search) }));
  const sum = (of: (plan: LotPlan) => number): number => plans.reduce((total, { plan }) => total + of(plan), 0);
  const cut = plans.flatMap(({ lot, plan }) => plan.cut.map((one) => placedBoard(lot, one)));
  const boards = withoutSurplus(cut.filter(({ placed }) => placed.length > 0).sort((a, b) => a.board - b.board), blanks);
  const short = blanks.filter(({ id }) => !missing.some(({ blank }) => blank === id)).flatMap((blank): Missing[] => {
    const had = boards.reduce((count, { placed }) => count + placed.filter((one) => one.blank === blank.id).length, 0);
    return had < blank.count ? [{ blank: blank.id, count: blank.count - had, why: 'no board left' }] : [];
  });
  return {
    boards, missing: [...missing, ...short], separated,
    used: sum(({ measures }) => measures.boards), bound: sum(({ bound }) => bound),
    boundIn: objectives[0] === 'cheapest' ? 'cents' : 'boards',
    proven: plans.every(({ plan }) => plan.proven) && missing.length + short.length === 0 && !moved,
    cents: sum(({ measures }) => measures.cents), crosscutMetres: sum(({ measures }) => measures.crosscutMetres),
    ripMetres: sum(({ measures }) => measures.ripMetres), effortMetres: sum(({ measures }) => measures.effortMetres), offcutMetres: sum(({ measures }) => measures.offcutMetres),
  };
}

/** Blanks that stay together come in whole sets: what a set holds over the count is left on its strip as waste. */
function withoutSurplus(boards: readonly PlannedBoard[], blanks: readonly Blank[]): PlannedBoard[] {
  const left = new Map(blanks.map(({ id, count }) => [id, count] as const));
  return boards.map((board) => ({
    ...board,
    placed: board.placed.filter(({ blank }) => {
      const count = left.get(blank) ?? 0;
      left.set(blank, count - 1);
      return count > 0;
    }),
  }));
}

