import { assertNever } from '../result.ts';
import type { Bench, PlanOffer } from '../bench/bench.ts';
import type { Reply } from '../bench/reply.ts';
import type { State } from '../journal/state.ts';
import { problemOf } from './cuttingState.ts';

/** A bench on which a cutting plan lies to be taken, or none. */
export function withOffer(bench: Bench, offer: PlanOffer | undefined): Bench {
  const { screen, lastReply, question, chopping, inTurn } = bench.conversation;
  return { ...bench, conversation: { screen, lastReply, question, ...(chopping === undefined ? {} : { chopping }), ...(inTurn === undefined ? {} : { inTurn }), ...(offer === undefined ? {} : { offer }) } };
}

/** The plan that is being looked for goes on beside the talk. */
export function offerAfter(before: PlanOffer | undefined, { planning }: Reply, state: State): PlanOffer | undefined {
  switch (planning) {
    case undefined: return before;
    case 'stop': return before && { ...before, looking: false };
    case 'over': return undefined;
    case 'begin': {
      const problem = problemOf(state);
      return problem === undefined ? undefined : { problem, plan: null, looking: true };
    }
    default: return assertNever(planning);
  }
}
