import type { StockPlan, StockProblem } from '../../core/stock/plan/planStock.ts';

/** What the page asks of the planner: one problem, and how long it may look. Whoever wants no more ends the worker. */
export interface PlanRequest {
  readonly problem: StockProblem;
  readonly seconds: number;
}

/** The first plan, every better one, and at the end the best with `over`. */
export interface PlanAnswer {
  readonly plan: StockPlan;
  readonly over: boolean;
}
