import type { Acts } from '../journal/acts.ts';
import type { JournalRecord } from '../journal/entry.ts';
import type { State } from '../journal/state.ts';
import type { StockPlan, StockProblem } from '../stock/plan/planStock.ts';
import type { InTurn, Question, Reply } from './reply.ts';
import type { Screen } from './screen.ts';

/** A cutting plan that is being looked for, or was found and not taken yet. */
export interface PlanOffer {
  /** What it was reckoned from: it holds for as long as that is so. */
  readonly problem: StockProblem;
  /** The best so far; null before the first. */
  readonly plan: StockPlan | null;
  readonly looking: boolean;
}

/** What was last said and asked: lost at a restart, and no harm done. */
export interface Conversation {
  readonly screen: Screen;
  readonly lastReply: Reply | null;
  readonly question: Question | null;
  /** Where the guide through the chopping was left. */
  readonly chopping?: Extract<Screen, { name: 'chopping' }>;
  readonly offer?: PlanOffer;
  /** What is being told piece by piece. */
  readonly inTurn?: InTurn;
}

/** All that `respond` looks at. */
export interface Bench {
  readonly state: State;
  readonly conversation: Conversation;
  /** The whole journal, for telling what was written down. */
  readonly records: readonly JournalRecord[];
  /** Journal acts that can be taken back, newest last; and those taken back that can be put back. */
  readonly acts: Acts;
}
