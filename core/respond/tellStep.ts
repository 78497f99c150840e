import { assertNever } from '../result.ts';
import type { Bench } from '../bench/bench.ts';
import type { Response } from '../bench/reply.ts';
import type { WorkRequest } from '../bench/request.ts';
import { sizeOf } from '../piece/evaluate.ts';
import { isOpen } from '../work/progress.ts';
import type { Operation, SizeMention, Step } from '../work/step.ts';
import { sayCheck, titleOf } from '../work/wording.ts';
import { tell } from './plain.ts';
import { saySubject, sayList, sayWording, sentence, spoken } from './saying.ts';
import { sizesOf, stepsOf } from './views.ts';

type Asked = Extract<WorkRequest, { kind: 'tell the step' }>;

/** One side of the current step, read out: tools, check, cautions, sizes, what to record, or all of it. */
export function tellOfStep(bench: Bench, here: Step, asked: Asked): Response {
  const step = stepMeant(bench, here, asked);
  const screen = { name: 'step', step: step.id } as const;
  const other = step.id === here.id ? '' : sentence(titleOf(step, bench.state.places));
  return tell({ say: [other, sayPart(bench, step, asked)].filter(Boolean).join(' '), ...(other === '' ? { screen } : {}), lengths: lengthsOf(bench, step.sizes) });
}

const CHECKED: Readonly<Record<NonNullable<Asked['about']>, readonly Operation[]>> = {
  flat: ['face', 'true again', 'thickness', 'level', 'reference edge'], square: ['edge', 'true again', 'ends', 'width', 'dry assembly', 'glue-up'], fit: ['fit'],
};

/** The step at hand if it is of that work, or needs such a tool; else the next one that does, of the same part if there is such. */
function stepMeant({ state }: Bench, here: Step, { about, only }: Asked): Step {
  const isOfIt = ({ operation, tools }: Step): boolean => (about === undefined || CHECKED[about].includes(operation)) && (only === undefined || tools.some((tool) => tool.endsWith(only)));
  if (isOfIt(here)) return here;
  const found = stepsOf(state).filter((step) => isOfIt(step) && isOpen(step, state));
  return found.find(({ part, copy }) => part === here.part && (here.copy === undefined || copy === here.copy)) ?? found[0] ?? here;
}

function sayPart(bench: Bench, step: Step, { what, only }: Asked): string {
  const { state } = bench;
  switch (what) {
    case 'in full':
      return sentence(sayWording(state, step.show));
    case 'tools':
      if (only !== undefined) return sayOnly(step, only);
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

/** Of the tools those of a kind, in the order in which they are used. */
function sayOnly({ tools }: Step, only: NonNullable<Asked['only']>): string {
  const [first, ...more] = tools.filter((tool) => tool.endsWith(only)).map((tool) => `the ${tool}`);
  return first === undefined ? `This step needs no ${only}.` : sentence([first, ...more].join(', then '));
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
