import type { Moment } from '../clock/moment.ts';
import { movesOf, type GlueUpPlan, type Move } from '../glue/glueUp.ts';
import { jointTimes, judgeRehearsal, type Rehearsed, type Timed } from '../glue/rehearsal.ts';
import { splitGlueUp, type Split } from '../glue/split.ts';
import { timesAt, type TimesNow } from '../glue/stretch.ts';
import { moveTimes, type Gluing } from '../journal/craft.ts';
import type { State } from '../journal/state.ts';
import type { LoadedPiece } from '../piece/loadedPiece.ts';
import { glueUpPlanOf } from '../work/gluing.ts';
import { currentStep, stepCalled } from '../work/progress.ts';
import type { Step } from '../work/step.ts';
import { adhesiveOf, craftOf, tonightOf } from './evening.ts';
import { stepsOf } from './views.ts';

const PLANS = new WeakMap<LoadedPiece, Map<string, GlueUpPlan | undefined>>();

/** What goes together in a step, kept for as long as the piece is the same. */
function planOf(state: State, step: Step): GlueUpPlan | undefined {
  if (!state.piece) return undefined;
  const kept = PLANS.get(state.piece) ?? new Map<string, GlueUpPlan | undefined>();
  PLANS.set(state.piece, kept);
  if (!kept.has(step.id)) kept.set(step.id, glueUpPlanOf(state.piece, step));
  return kept.get(step.id);
}

/** A glue-up of the piece, and how far it is divided and glued. */
export interface GlueUpNow {
  readonly step: Step;
  readonly plan: GlueUpPlan;
  /** The joints of each part of it: one part, all joints, when it was not divided. */
  readonly stages: readonly (readonly string[])[];
  /** The part that comes next, from 0; equal to the number of parts when all is glued. */
  readonly stage: number;
}

/** The glue-up of a step; of the current step when none is named. */
export function glueUpOf(state: State, stepId?: string): GlueUpNow | undefined {
  const step = stepId === undefined ? currentStep(stepsOf(state), state) : stepCalled(stepId, stepsOf(state));
  const plan = step && planOf(state, step);
  if (!plan) return undefined;
  const craft = craftOf(state);
  const stages = craft.divided.get(step.id) ?? [plan.joints.map(({ id }) => id)];
  const glued = new Set(craft.glued.get(step.id) ?? []);
  const stage = stages.findIndex((joints) => joints.some((id) => !glued.has(id)));
  return { step, plan, stages, stage: stage < 0 ? stages.length : stage };
}

/** The glue-up or rehearsal that is going on: its moves, and the one that it stands at. */
export interface GluingNow extends GlueUpNow {
  readonly gluing: Gluing;
  readonly moves: readonly Move[];
  readonly at: number;
  readonly move: Move | undefined;
}

export function gluingNow(state: State): GluingNow | undefined {
  const { gluing } = state;
  const glueUp = gluing ? glueUpOf(state, gluing.step) : undefined;
  if (!gluing || !glueUp) return undefined;
  const moves = movesOf(glueUp.plan, gluing.joints);
  const at = gluing.doneAt.length;
  return { ...glueUp, gluing, moves, at, move: moves[at] };
}

/** Times at this evening's temperature; the label's own, as at 21 °C, when the shop was not told of. */
export function glueTimesNow(state: State, now: Moment): TimesNow {
  const { label, glue } = adhesiveOf(state);
  return tonightOf(state, now)?.times ?? timesAt(label, glue.sets, 21);
}

/** What the last rehearsal of these joints came to, against the open time now; and how it could be divided when it is too long. */
export interface RehearsalNow {
  readonly judged: Rehearsed;
  readonly split: Split | undefined;
}

export function rehearsalOf(state: State, { plan, step, stages, stage }: GlueUpNow, now: Moment): RehearsalNow | undefined {
  const kept = craftOf(state).rehearsals.get(step.id);
  const joints = stages[stage] ?? stages.at(-1) ?? [];
  if (!kept || !joints.every((id) => kept.joints.includes(id))) return undefined;
  return judgeNow(movesOf(plan, kept.joints), kept.ms, joints, plan, state, now);
}

/** The rehearsal that is going on, judged as if it ended now. */
export function judgeGoing(state: State, { gluing, moves, plan }: GluingNow, now: Moment): RehearsalNow {
  return judgeNow(moves, moveTimes({ ...gluing, doneAt: [...gluing.doneAt, now] }), gluing.joints, plan, state, now);
}

/** Of a whole rehearsal the part that these joints took. */
function judgeNow(moves: readonly Move[], ms: readonly number[], joints: readonly string[], plan: GlueUpPlan, state: State, now: Moment): RehearsalNow {
  const timed = moves.map((move, index): Timed => ({ move, ms: ms[index] ?? 0 }));
  const times = glueTimesNow(state, now);
  const mine = timed.flatMap((one): readonly Timed[] => {
    const share = one.move.joints.length === 0 ? 1 : one.move.joints.filter((id) => joints.includes(id)).length / one.move.joints.length;
    return share === 0 ? [] : [{ ...one, ms: one.ms * share }];
  });
  const judged = judgeRehearsal(mine, times);
  const split = judged.verdict === 'fits' ? undefined : splitGlueUp(plan.joints.filter(({ id }) => joints.includes(id)), jointTimes(mine), judged.allowedMs);
  return { judged, split };
}
