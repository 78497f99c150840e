import type { Reply } from '../bench/reply.ts';
import type { State } from '../journal/state.ts';
import type { SizeMention, Step } from '../work/step.ts';
import { saySubject } from './saying.ts';

/** The first size that the step wants measured and that nobody has recorded yet. */
export function firstToRecord(state: State, step: Step): SizeMention | undefined {
  return step.record.find((mention) =>
    !state.measurements.some(({ size, copy }) => size === mention.size && (copy === mention.copy || copy === undefined)));
}

/** Asks for a measurement: the answer window opens, and the pad waits for the same size. */
export function askFor(state: State, mention: SizeMention): Reply {
  const copy = mention.copy === undefined ? {} : { copy: mention.copy };
  return {
    say: `${saySubject(state, mention.size, mention.copy)}: what does it measure?`,
    question: { kind: 'length', size: mention.size, ...copy },
    screen: { name: 'record', size: mention.size, ...copy },
  };
}
