import type { Bench } from '../bench/bench.ts';
import type { Reply, Response } from '../bench/reply.ts';
import type { Moment } from '../clock/moment.ts';
import type { Entry } from '../journal/entry.ts';
import { foldJournal } from '../journal/fold.ts';
import { makeRecords } from '../journal/record.ts';
import type { State } from '../journal/state.ts';
import { begunBoards, problemOf, takenPlan } from './cuttingState.ts';
import { sayBegunStays, sayOutOfDate } from './outOfDate.ts';

/** What may change the sizes in the rough or the way it is sawn. Boards of the rack look after their plan themselves. */
const MAY_CHANGE: ReadonlySet<Entry['kind']> = new Set(['sawing set', 'part rough', 'measured', 'measurement withdrawn', 'piece loaded', 'scratched', 'put back']);

/**
 * A response with what it does to the cutting plan: one that is not what would be planned now is said to be out of date at once. Where nothing is cut yet it
 * is planned anew by itself; where the saw was in it, that is asked. What is taken back brings the plan back that there was.
 */
export function withPlanLooked(bench: Bench, response: Response, now: Moment): Response {
  const { offer } = bench.conversation;
  if (!response.entries.some(({ kind }) => MAY_CHANGE.has(kind)) || (takenPlan(bench.state) === undefined && offer === undefined && bench.state.plans.size === 0)) return response;
  const after = stateAfter(bench, response.entries, now);
  const [was, is] = [sayOutOfDate(bench.state), sayOutOfDate(after)];
  const { reply } = response;
  if (response.entries.some(({ kind }) => kind === 'piece loaded')) return is === '' ? response : { ...response, reply: saying(reply, `${is} Have me plan the cutting when you want it anew.`) };
  const problem = problemOf(after);
  if (problem === undefined) return response;
  if (JSON.stringify(problemOf(bench.state)) === JSON.stringify(problem)) return response;
  if (is !== '') return { ...response, reply: anew(after, reply, is) };
  if (was !== '' && takenPlan(after) !== undefined) return { ...response, reply: saying({ ...reply, planning: 'over' }, 'The cutting plan holds again.') };
  return offer === undefined || reply.planning !== undefined ? response : { ...response, reply: saying({ ...reply, planning: 'begin' }, 'I plan again.') };
}

function stateAfter({ state, acts, records }: Bench, entries: readonly Entry[], now: Moment): State {
  return foldJournal([...records, ...makeRecords(entries, records.at(-1) ?? null, now)], { state, acts }).state;
}

function anew(state: State, reply: Reply, stale: string): Reply {
  if (begunBoards(state).length === 0) return saying({ ...reply, planning: 'begin' }, `${stale} I plan anew.`);
  const told = [stale, sayBegunStays(state)].filter(Boolean).join(' ');
  if (reply.question !== undefined) return saying(reply, `${told} Have me plan the cutting when you want the rest anew.`);
  return saying({ ...reply, planning: 'stop', question: { kind: 'yes or no', onYes: { kind: 'plan cutting' } } }, `${told} Shall I plan the rest anew?`);
}

function saying(reply: Reply, more: string): Reply {
  return { ...reply, say: [reply.say, more].filter(Boolean).join(' '), note: [reply.note, more].filter(Boolean).join(' ') };
}
