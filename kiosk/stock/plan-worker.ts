/// <reference lib="webworker" />
import { planStock } from '../../core/stock/plan/planStock.ts';
import type { PlanAnswer, PlanRequest } from './messages.ts';

/** The planner, off the page: one problem at a time; ended by the page when it is not wanted any more. */
declare const self: DedicatedWorkerGlobalScope;

self.addEventListener('message', ({ data: { problem, seconds } }: MessageEvent<PlanRequest>) => {
  const end = performance.now() + 1000 * seconds;
  const tell = (answer: PlanAnswer): void => self.postMessage(answer);
  tell({ plan: planStock(problem, () => performance.now() < end, (plan) => tell({ plan, over: false })), over: true });
});
