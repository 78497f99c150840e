import type { Bench, PlanOffer } from '../../core/bench/bench.ts';
import type { Reply } from '../../core/bench/reply.ts';
import { newsOf } from '../../core/respond/sayPlan.ts';
import type { PlanAnswer, PlanRequest } from '../stock/messages.ts';
import { startWorker } from '../workers.ts';

export interface PlanningHost {
  readonly bench: () => Bench;
  /** Lays the plan found so far on the bench; nothing is said. Undefined takes it off. */
  readonly offer: (offer: PlanOffer | undefined) => void;
  readonly tell: (reply: Reply) => void;
  readonly notice: (sentence: string) => void;
}

/** A better plan was never seen after this. */
const MOST_SECONDS = 30;

/** Looks for a cutting plan in a worker, beside the work: begun, stopped and begun anew as the bench says. */
export class Planning {
  readonly #host: PlanningHost;
  #worker: Worker | undefined;

  constructor(host: PlanningHost) {
    this.#host = host;
  }

  /** What a reply wants: the problem to plan is on the bench by then. */
  follow(planning: NonNullable<Reply['planning']>): void {
    this.#worker?.terminate();
    this.#worker = undefined;
    const { offer } = this.#host.bench().conversation;
    if (planning === 'begin' && offer !== undefined) this.#begin(offer);
  }

  #begin({ problem }: PlanOffer): void {
    const worker = startWorker('/stock/plan-worker.js', 'planner');
    this.#worker = worker;
    worker.addEventListener('message', ({ data }: MessageEvent<PlanAnswer>) => this.#found(worker, { problem, plan: data.plan, looking: !data.over }));
    worker.addEventListener('error', () => {
      if (this.#worker !== worker) return;
      this.follow('over');
      this.#host.offer(undefined);
      this.#host.notice('The cutting plan could not be reckoned. Have me plan the cutting to try again.');
    });
    worker.postMessage({ problem, seconds: MOST_SECONDS } satisfies PlanRequest);
  }

  #found(worker: Worker, offer: PlanOffer): void {
    if (this.#worker !== worker) return;
    if (offer.looking) {
      this.#host.offer(offer);
      return;
    }
    worker.terminate();
    this.#worker = undefined;
    const news = newsOf(this.#host.bench().state, offer);
    this.#host.offer(news === undefined ? undefined : offer);
    if (news !== undefined) this.#host.tell({ say: `${news} Say the words take the plan when you want it.`, signal: 'mark' });
  }
}
