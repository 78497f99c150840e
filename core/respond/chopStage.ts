import type { Bench } from '../bench/bench.ts';
import type { Response } from '../bench/reply.ts';
import type { JointRequest } from '../bench/request.ts';
import type { ChopStage } from '../joint/chopStages.ts';
import { hollowOf, mateOf } from '../joint/mates.ts';
import { stagesFor } from '../joint/ofPiece.ts';
import { sayNumber } from '../length/say.ts';
import type { MortiseAndTenon } from '../piece/file.ts';
import { renderTelling } from '../reckoning/telling.ts';
import { currentStep } from '../work/progress.ts';
import type { Jointing } from './jointing.ts';
import { refuse, tell } from './plain.ts';
import { sentence, spoken } from './saying.ts';
import { stepsOf } from './views.ts';

type Wanted = Extract<JointRequest, { kind: 'chop stage' }>['to'];

/** One stage of the chopping, drawn and said; the step of the work stays where it is. */
export function tellChopStage(bench: Bench, { state, piece, sizes }: Jointing, joint: MortiseAndTenon, to: Wanted): Response {
  const step = currentStep(stepsOf(state), state);
  const here = step?.operation === 'chop mortises' && step.joint === joint.id ? step : undefined;
  const planned = stagesFor(piece, sizes, joint, here?.copy);
  if (!planned.ok) return refuse(renderTelling(planned.fault.message, (length) => spoken(state, length)));
  const stages = planned.value;
  const name = `${mateOf(piece.file, joint)} ${hollowOf(joint)}`;
  const number = stageNumber(stages, leftAt(bench, joint, here?.id), to);
  if (typeof number === 'string') return refuse(number);
  const stage = stages[number - 1];
  if (!stage) return refuse(`There is no stage ${sayNumber(number)}; the ${name} is cut in ${sayNumber(stages.length)}.`);
  const { drawing: { startMark, endMark, flag } } = stage;
  return tell({
    say: `${number === 1 ? sentence(`${name}, ${sayNumber(stages.length)} stages`) : ''} ${sentence(`stage ${sayNumber(number)}`)} ${renderTelling(stage.say, (length) => spoken(state, length))}`.trim(),
    screen: { name: 'chopping', joint: joint.id, stage: number, ...(here === undefined ? {} : { step: here.id }) },
    lengths: flag === undefined ? [startMark, endMark] : [flag],
  });
}

/** Where the guide was left, if it was in this mortise of this step: each mortise is begun anew. */
function leftAt({ conversation: { chopping } }: Bench, joint: MortiseAndTenon, step: string | undefined): number | undefined {
  return chopping?.joint === joint.id && (chopping.step === undefined || chopping.step === step) ? chopping.stage : undefined;
}

function stageNumber(stages: readonly ChopStage[], left: number | undefined, to: Wanted): number | string {
  switch (to) {
    case 'here': return left ?? 1;
    case 'first': return 1;
    case 'next':
      if (left === undefined) return 1;
      return left < stages.length ? left + 1 : 'That was the last stage. Try the mortise as the step says, and tell me when it is done.';
    case 'back':
      return left === undefined || left <= 1 ? 'This is the first stage.' : left - 1;
    default: return to;
  }
}
