import type { Bench } from '../bench/bench.ts';
import type { Response } from '../bench/reply.ts';
import type { TimerRequests } from '../bench/request.ts';
import { wasCalled } from '../clock/change.ts';
import { readTimer } from '../clock/reading.ts';
import { isTimerDuration, LONGEST_TIMER_MS, sayDuration } from '../clock/sayDuration.ts';
import type { Moment } from '../clock/moment.ts';
import type { State } from '../journal/state.ts';
import { sayNumber } from '../length/sayNumber.ts';
import { coatClockName, CURE_CLOCK, cureTime } from '../work/finishing.ts';
import { recoatTime } from '../work/figures.ts';
import { currentStep } from '../work/progress.ts';
import type { Step } from '../work/step.ts';
import { noPiece, tell } from './plain.ts';
import { sayCount, sentence } from './saying.ts';
import { coldFinish, withCold } from './stretched.ts';
import { sayTimeLeft } from './timeLeft.ts';
import { stepsOf } from './views.ts';

type FinishClock = Extract<TimerRequests, { kind: 'finish clock' }>;

/** The coats of the piece in their order. */
function coatsOf(state: State): readonly Step[] {
  return stepsOf(state).filter(({ operation }) => operation === 'finish');
}

/** The coat that is being put on, else the last one that is on; counted from 1, 0 before the first. */
function coatInHand(state: State): number {
  const coats = coatsOf(state);
  const at = coats.findIndex(({ id }) => id === currentStep(stepsOf(state), state)?.id);
  return at >= 0 ? at + 1 : coatsOn(state);
}

function coatsOn(state: State): number {
  return coatsOf(state).filter(({ id }) => state.done.has(id)).length;
}

/** The clock until the next coat or until the finish has hardened, as the piece's finish and file say or as was said; undefined with the reason for what has none. */
export function finishTimer(state: State, { which, durationMs }: FinishClock, now: Moment): { readonly name: string; readonly durationMs: number; readonly basis: string } | string {
  const finish = state.piece?.file.finish;
  if (!finish) return 'No piece is on the bench. Load one first.';
  const usual = which === 'recoat' ? recoatTime(finish.recoatHours) : cureTime(finish.kind);
  const ms = durationMs ?? usual?.durationMs;
  if (ms === undefined) return `${sentence(finish.kind)} It never hardens, so there is nothing to wait for: wipe off what stands on the wood.`;
  if (!isTimerDuration(ms)) return `A clock runs from one second to ${sayDuration(LONGEST_TIMER_MS)}.`;
  const name = which === 'recoat' ? coatClockName(Math.max(1, coatInHand(state))) : CURE_CLOCK;
  return { name, durationMs: ms, basis: durationMs === undefined ? withCold(state, usual?.basis ?? '', now) : 'as you said' };
}

/** How many coats are on, and when the next one may follow. */
export function tellCoats({ state }: Bench, now: Moment): Response {
  if (!state.piece) return noPiece();
  const [coats, on] = [coatsOf(state).length, coatsOn(state)];
  const { finish } = state.piece.file;
  const cured = cureTime(finish.kind);
  const clock = state.timers.find((timer) => wasCalled(timer, on < coats ? coatClockName(on) : CURE_CLOCK));
  const running = clock && !readTimer(clock, now).due ? [sentence(sayTimeLeft(clock, now))] : [];
  if (on === 0) return tell({ say: `No coat is on yet. The piece gets ${sayCount(coats, 'coat', 'coats')} of ${finish.kind}, ${sayDuration(recoatTime(finish.recoatHours).durationMs)} apart${cured === undefined ? '' : `; the last has cured after ${sayDuration(cured.durationMs)}`}.` });
  if (on >= coats) return tell({ say: [`All ${sayCount(coats, 'coat is', 'coats are')} on.`, ...running].join(' ') });
  return tell({ say: [`Coat ${sayNumber(on)} of ${sayNumber(coats)} is on.`, ...(running.length > 0 ? running : [`Coat ${sayNumber(on + 1)} can follow.`, sentenceOf(coldFinish(state, now))])].filter(Boolean).join(' ') });
}

function sentenceOf(text: string): string {
  return text === '' ? '' : sentence(text);
}
