import { assertNever } from '../result.ts';
import type { Bench } from '../bench/bench.ts';
import type { Response } from '../bench/reply.ts';
import type { WorkRequest } from '../bench/request.ts';
import { sizeOf } from '../piece/evaluate.ts';
import type { SizeMention, Step } from '../work/step.ts';
import { sayCheck } from '../work/wording.ts';
import { tell } from './plain.ts';
import { saySubject, sayList, sayWording, sentence, spoken } from './saying.ts';
import { sizesOf } from './views.ts';

type What = Extract<WorkRequest, { kind: 'tell the step' }>['what'];

/** One side of the current step, read out: tools, check, cautions, sizes, what to record, or all of it. */
export function tellOfStep(bench: Bench, step: Step, what: What): Response {
  const screen = { name: 'step', step: step.id } as const;
  return tell({ say: sayPart(bench, step, what), screen, lengths: lengthsOf(bench, step.sizes) });
}

function sayPart(bench: Bench, step: Step, what: What): string {
  const { state } = bench;
  switch (what) {
    case 'in full':
      return sentence(sayWording(state, step.show));
    case 'tools':
      return step.tools.length > 0 ? `You need ${sayList(step.tools)}.` : 'No tool is needed.';
    case 'check':
      return sayCheck(step.check, (mention) => sayWording(state, [mention]), state.settings.rounding.unit);
    case 'cautions':
      return step.cautions.length > 0 ? step.cautions.map((caution) => sentence(caution.say)).join(' ') : 'No special caution for this step.';
    case 'sizes':
      return step.sizes.length > 0 ? step.sizes.map((mention) => sayMentioned(bench, mention)).join(' ') : 'This step needs no size.';
    case 'what to record':
      return step.record.length > 0
        ? `Measure and record ${sayList(step.record.map((mention) => saySubject(state, mention.size, mention.copy)))}.`
        : 'Nothing is to be recorded here.';
    default:
      return assertNever(what);
  }
}

function sayMentioned(bench: Bench, mention: SizeMention): string {
  const sizes = sizesOf(bench.state);
  const value = sizes && sizeOf(sizes, mention.size, mention.copy);
  return value ? sentence(`${saySubject(bench.state, mention.size, mention.copy)}, ${spoken(bench.state, value.length)}`) : '';
}

function lengthsOf(bench: Bench, mentions: readonly SizeMention[]) {
  const sizes = sizesOf(bench.state);
  return mentions.flatMap((mention) => {
    const value = sizes && sizeOf(sizes, mention.size, mention.copy);
    return value ? [value.length] : [];
  });
}
