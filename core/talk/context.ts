import type { Bench } from '../bench/bench.ts';
import { describeSize } from '../piece/describe.ts';
import { stepsFor } from '../work/plan.ts';
import { currentStep } from '../work/progress.ts';
import type { SizeMention, Step } from '../work/step.ts';

/** The step that the work is at; undefined when all is done, or no piece is on the bench. */
export function stepNow({ state }: Bench): Step | undefined {
  return state.piece ? currentStep(stepsFor(state.piece), state) : undefined;
}

/** The size on the pad, or the one that was asked for. */
export function padSize({ conversation: { question, screen } }: Bench): SizeMention | undefined {
  if (question?.kind === 'length') return mention(question.size, question.copy);
  return screen.name === 'record' && screen.size !== undefined ? mention(screen.size, screen.copy) : undefined;
}

/** The size that was last said or shown: what 'why', 'leg two' and 'record three and a quarter' go by. */
export function lastSize(bench: Bench): SizeMention | undefined {
  const { screen } = bench.conversation;
  return screen.name === 'size' || screen.name === 'why' ? mention(screen.size, screen.copy) : padSize(bench);
}

/** What was last spoken of: what 'and the width' goes by. */
export function lastPart(bench: Bench): { readonly owner: string; readonly copy?: number } | undefined {
  const { conversation: { screen }, state: { piece } } = bench;
  if (screen.name === 'part' || screen.name === 'layout' || (screen.name === 'faces' && screen.part !== undefined)) return { owner: screen.part ?? '', ...(screen.copy === undefined ? {} : { copy: screen.copy }) };
  const last = lastSize(bench);
  const owner = last && piece ? describeSize(piece, last.size)?.owner.id : undefined;
  return owner === undefined ? undefined : { owner, ...(last?.copy === undefined ? {} : { copy: last.copy }) };
}

function mention(size: string, copy: number | undefined): SizeMention {
  return { size, ...(copy === undefined ? {} : { copy }) };
}
