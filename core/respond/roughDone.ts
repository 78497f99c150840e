import type { Entry } from '../journal/entry.ts';
import type { State } from '../journal/state.ts';
import { freedBlanks, type TakenBoard } from '../stock/cutting.ts';
import { idOf } from '../work/draft.ts';
import { stockOf } from '../work/names.ts';
import { isOpen, nextAfter } from '../work/progress.ts';
import type { Operation, StepId } from '../work/step.ts';
import { allBlanks, takenPlan } from './cuttingState.ts';
import { sayList, sentence } from './saying.ts';
import { stepsOf } from './views.ts';

/** What the saw has done when every blank of a part is free: whoever rips from a board's reference edge needs no other edge to rip from. */
const ROUGH: readonly Operation[] = ['rough crosscut', 'reference edge', 'rip'];

/**
 * The steps of rough cutting that are done with a cut: those of the parts whose last blank it frees. They stand in the same act as the cut,
 * so that both are taken back together; what the maker has passed over or opened again since stays as they want it.
 */
export function roughStepsDone(state: State, after: TakenBoard): { readonly entries: readonly Entry[]; readonly say: string } {
  const cutNow = partsAllCut(state, after);
  const before = partsAllCut(state);
  const parts = (state.piece?.file.parts ?? []).filter(({ id }) => cutNow.has(id) && !before.has(id));
  const steps = stepsOf(state);
  const ids = new Set<StepId>(parts.flatMap(({ id }) => ROUGH.map((operation) => idOf(operation, id))));
  const done = steps.filter((step) => ids.has(step.id) && isOpen(step, state)).map(({ id }) => id);
  if (done.length === 0) return { entries: [], say: '' };
  const titles = parts.filter(({ id }) => done.some((step) => ROUGH.some((operation) => step === idOf(operation, id)))).map((part) => stockOf(part).title);
  return { entries: [...done.map((step): Entry => ({ kind: 'step done', step })), ...movedOn(state, done)], say: sentence(`the rough cutting of ${sayList(titles)} is done`) };
}

/** Whoever stood at one of these steps stands at the next that is open. */
function movedOn(state: State, done: readonly StepId[]): readonly Entry[] {
  const steps = stepsOf(state);
  const here = steps.find(({ id }) => id === state.currentStep);
  if (here === undefined || !done.includes(here.id)) return [];
  const next = nextAfter(here, steps, { ...state, done: new Set([...state.done, ...done]) });
  return next === undefined ? [] : [{ kind: 'went to step', step: next.id }];
}

/** Parts whose every blank is free by the plan, one of its boards being as it is given. */
function partsAllCut(state: State, board?: TakenBoard): ReadonlySet<string> {
  const free = new Map<string, number>();
  const boards = takenPlan(state)?.boards ?? [];
  for (const { blank } of boards.flatMap((one) => freedBlanks(one.board === board?.board ? board : one))) free.set(blank, (free.get(blank) ?? 0) + 1);
  return new Set(allBlanks(state).filter(({ id, count }) => (free.get(id) ?? 0) >= count).map(({ id }) => id));
}
