import { assertNever } from '../result.ts';
import type { Bench } from '../bench/bench.ts';
import type { Response } from '../bench/reply.ts';
import type { GluingRequest } from '../bench/request.ts';
import type { Moment } from '../clock/moment.ts';
import { sayDuration } from '../clock/sayDuration.ts';
import type { TimerRequest } from '../clock/timer.ts';
import { onTheClock } from '../glue/glueUp.ts';
import { sayReasons, sayRemedy, sayVerdict } from '../glue/telling.ts';
import { sayNumber } from '../length/sayNumber.ts';
import type { Entry } from '../journal/entry.ts';
import type { State } from '../journal/state.ts';
import { adhesiveOf, tonightOf } from './evening.ts';
import { glueTimesNow, glueUpOf, gluingNow, judgeGoing, rehearsalOf, type GlueUpNow, type GluingNow, type RehearsalNow } from './gluingState.ts';
import { cautionsToSay } from './announceStep.ts';
import { notYet } from './notYet.ts';
import { noPiece, refuse, tell, write } from './plain.ts';
import { sayCount, sayList, sentence } from './saying.ts';
import { isOpen } from '../work/progress.ts';
import { titleOf } from '../work/wording.ts';
import { stretchBasis } from './stretched.ts';
import { stepsOf } from './views.ts';

const GLUING = { name: 'gluing' } as const;

/** The rehearsal, dry, with the clock running; then the same with glue. */
export function respondToGluing(bench: Bench, request: GluingRequest, now: Moment): Response {
  const { state } = bench;
  if (!state.piece) return noPiece();
  switch (request.kind) {
    case 'begin gluing': return begin(bench, request.mode, request.sure ?? false, now);
    case 'ready to glue': return readyToGlue(state, now);
    case 'next move': {
      const going = gluingNow(state);
      return going ? nextMove(bench, going, now) : refuse('No glue-up is going on. Say the word rehearse, or the words start gluing.');
    }
    case 'leave gluing': return leave(state);
    case 'divide gluing': return divide(state, now);
    default: return assertNever(request);
  }
}

function begin(bench: Bench, mode: 'rehearsal' | 'glue', sure: boolean, now: Moment): Response {
  const { state } = bench;
  if (state.gluing) return tell({ say: `${state.gluing.mode === 'glue' ? 'A glue-up' : 'A rehearsal'} is going on. ${sentence(gluingNow(state)?.move?.say ?? '')}`, screen: GLUING });
  const glueUp = glueUpOf(state);
  if (!glueUp) return refuse('This step glues nothing. Go to the glue-up first.');
  if (glueUp.stage >= glueUp.stages.length) return refuse('All of this is glued already.');
  if (mode === 'glue') {
    const inTheWay = notYet(state, glueUp.step, now) ?? whyNotGlue(state, glueUp, now);
    if (inTheWay !== undefined) return refuse(inTheWay, { screen: tonightOf(state, now)?.verdict === 'do not' ? { name: 'air' } : GLUING });
    const unknown = sure ? undefined : notKnown(state, glueUp, now);
    const missing = `${unknown ?? ''} Start gluing all the same?`;
    if (unknown !== undefined) return tell({ say: missing, note: missing, question: { kind: 'yes or no', onYes: { kind: 'begin gluing', mode, sure: true } } });
  }
  const joints = glueUp.stages[glueUp.stage] ?? [];
  const going = gluingNow({ ...state, gluing: { step: glueUp.step.id, mode, joints, begunAt: now, doneAt: [] } });
  const cautions = mode === 'glue' ? cautionsToSay(state, glueUp.step, now) : [];
  const entries: Entry[] = [{ kind: 'gluing begun', step: glueUp.step.id, mode, joints }, ...cautions.map((caution): Entry => ({ kind: 'caution said', caution: caution.id }))];
  const part = glueUp.stages.length > 1 ? `, part ${sayNumber(glueUp.stage + 1)} of ${sayNumber(glueUp.stages.length)}` : '';
  const opening = mode === 'glue' ? `Glue-up of ${glueUp.plan.name}${part}. Say next after each move; the open time starts with the first glue.`
    : `Rehearsal of ${glueUp.plan.name}${part}, dry, at the pace of the real thing. Say next after each move.`;
  return write(entries, { say: [opening, ...cautions.map(({ say }) => sentence(say)), sentence(going?.move?.say ?? '')].join(' '), screen: GLUING, signal: 'done' });
}

/** What forbids it: cold, or a rehearsal that did not fit, or clamps that still hold the part before. */
function whyNotGlue(state: State, glueUp: GlueUpNow, now: Moment): string | undefined {
  const found = tonightOf(state, now);
  const scale = state.settings.temperature;
  if (found?.verdict === 'do not') return [sayVerdict(found), ...sayReasons(found.reasons, scale), sayRemedy(found, scale)].filter((one) => one !== '').map(sentence).join(' ');
  const holds = state.timers.find((timer) => timer.kind === 'clamp' && timer.name.startsWith(`${plainName(glueUp)}, part`) && timer.acknowledgedAt === undefined);
  if (holds) return `The clamps of the part before still hold. Wait until their time is up, and say that you got it.`;
  const rehearsal = rehearsalOf(state, glueUp, now);
  return rehearsal?.judged.verdict === 'too long' ? `${sayJudged(rehearsal, state, now)} ${sayWay(rehearsal, glueUp)}` : undefined;
}

/** Asked before it begins: what is in the way, else what nobody knows yet, else that all is ready. Of this step, or of the next that glues. */
function readyToGlue(state: State, now: Moment): Response {
  const next = stepsOf(state).find((step) => step.operation.endsWith('glue-up') && isOpen(step, state));
  const glueUp = glueUpOf(state) ?? (next && glueUpOf(state, next.id));
  if (!glueUp) return tell({ say: 'All of this is glued already.' });
  const [inTheWay, unknown] = [notYet(state, glueUp.step, now) ?? whyNotGlue(state, glueUp, now), notKnown(state, glueUp, now)];
  const how = inTheWay ?? (unknown === undefined ? 'It is ready: rehearsed, and warm enough.' : `Nothing is in the way. ${unknown}`);
  return tell({ say: `${titleOf(glueUp.step, state.places)}. ${how}` });
}

function notKnown(state: State, glueUp: GlueUpNow, now: Moment): string | undefined {
  if (!tonightOf(state, now)) return 'I do not know how warm the shop is, and take the times of the label as they are.';
  return rehearsalOf(state, glueUp, now) ? undefined : 'It was not rehearsed: nobody knows yet whether it fits the open time.';
}

function nextMove(bench: Bench, going: GluingNow, now: Moment): Response {
  const { state } = bench;
  const next = going.moves[going.at + 1];
  const entries: Entry[] = [{ kind: 'gluing move done' }];
  const real = going.gluing.mode === 'glue';
  const begins = going.move !== undefined && !onTheClock(going.move) && next !== undefined && onTheClock(next);
  if (real && begins) entries.push({ kind: 'timer started', timer: openTimer(state, going, now) });
  const clocked = going.move?.kind === 'check';
  if (real && clocked) entries.push(...clampsOn(state, going, now));
  if (!next) return finish(state, going, entries, now);
  const opened = real && begins ? `Open time ${sayDuration(glueTimesNow(state, now).openMs)}, running. ` : '';
  const clamped = real && clocked ? `Clamps ${sayDuration(glueTimesNow(state, now).clampMs)}, running. ` : '';
  return write(entries, { say: `${opened}${clamped}${sentence(wiped(state, next.kind, next.say))}`, screen: GLUING });
}

/** Glue that washes off may be wiped at once, but only warm: cold water and cold glue smear. */
function wiped(state: State, kind: string, say: string): string {
  if (kind !== 'squeeze-out') return say;
  const { glue } = adhesiveOf(state);
  const shop = state.airs.get('shop')?.tempC ?? WARM_ENOUGH_C;
  return glue.washes && shop >= WARM_ENOUGH_C ? 'Wipe corners that a scraper cannot reach, with a rag wrung out in warm water; scrape the rest when it is like rubber' : 'Leave the squeeze-out until it is like rubber, and scrape it then: no wet rag in the cold';
}

/** Common practice, no source. */
const WARM_ENOUGH_C = 15;

function openTimer(state: State, going: GluingNow, now: Moment): TimerRequest {
  const times = glueTimesNow(state, now);
  return { kind: 'open time', name: `${plainName(going)} open time`, durationMs: times.openMs, basis: adhesiveOf(state).basis.openMinutes };
}

/** The open time ends; the clamps, and the time when squeeze-out is like rubber (a third of the clamp time, common practice, no source), begin. */
function clampsOn(state: State, going: GluingNow, now: Moment): readonly Entry[] {
  const times = glueTimesNow(state, now);
  const open = state.timers.filter(({ kind, name, acknowledgedAt }) => kind === 'open time' && name.startsWith(plainName(going)) && acknowledgedAt === undefined);
  const last = going.stage >= going.stages.length - 1;
  const name = last ? `${plainName(going)} clamps` : `${plainName(going)}, part ${sayNumber(going.stage + 1)} clamps`;
  return [
    ...open.map(({ id }): Entry => ({ kind: 'timer stopped', timer: id })),
    { kind: 'timer started', timer: { kind: 'clamp', name, durationMs: times.clampMs, basis: stretchBasis(state, 'clampMinutes', now) } },
    { kind: 'timer started', timer: { kind: 'plain', name: `scrape the squeeze-out of ${plainName(going)}`, durationMs: Math.round(times.clampMs / 3 / 1000) * 1000, basis: 'common practice' } },
  ];
}

/** What the clocks of the step are called after: 'leg one', 'left end frame'. */
function plainName({ plan, step }: Pick<GlueUpNow, 'plan' | 'step'>): string {
  return (step.clampTimer?.name ?? plan.name).replace(/^the | clamps$/g, '');
}

function finish(state: State, going: GluingNow, entries: readonly Entry[], now: Moment): Response {
  const ended: readonly Entry[] = [...entries, { kind: 'gluing ended', finished: true }];
  if (going.gluing.mode === 'rehearsal') {
    const rehearsal = judgeGoing(state, going, now);
    const way = rehearsal.judged.verdict === 'fits' ? 'It fits. Say start gluing when all is set out.' : sayWay(rehearsal, going);
    return write(ended, { say: `${sayJudged(rehearsal, state, now)} ${way}`, screen: GLUING, signal: rehearsal.judged.verdict === 'fits' ? 'done' : 'wrong' });
  }
  const last = going.stage >= going.stages.length - 1;
  const times = glueTimesNow(state, now);
  const after = `Clamps off in ${sayDuration(times.clampMs)}, safe to work in ${sayDuration(times.workMs)}, fully cured in ${sayDuration(times.cureMs)}.`;
  if (!last) return write(ended, { say: `Part ${sayNumber(going.stage + 1)} of ${sayNumber(going.stages.length)} is glued. ${after} Then comes the next part.`, screen: GLUING, signal: 'done' });
  return write([...ended, { kind: 'step done', step: going.step.id }], { say: `Glued: ${going.plan.name}. ${after}`, screen: GLUING, signal: 'done' });
}

/** How long it took, and how long it may take. */
function sayJudged({ judged }: RehearsalNow, state: State, now: Moment): string {
  const open = sayDuration(glueTimesNow(state, now).openMs);
  return `The rehearsal took ${sayDuration(judged.totalMs)} from the first glue to the last check. The open time tonight is ${open}, and I plan for ${sayDuration(judged.allowedMs)} of it.`;
}

/** What to do when it is too long. */
function sayWay({ split }: RehearsalNow, { plan }: Pick<GlueUpNow, 'plan'>): string {
  if (!split) return 'Too long, and it cannot be divided so that each part fits. Take a glue with a longer open time, or have a second pair of hands.';
  const parts = split.stages.map(({ joints, ms }) => `${sayJoints(plan, joints)}, ${sayDuration(ms)}`);
  return `Too long. Divided in ${sayNumber(parts.length)} it fits: first ${parts.join('; then ')}. Keep the other parts on dry to hold it square. Say the words divide it.`;
}

function sayJoints(plan: GlueUpNow['plan'], joints: readonly string[]): string {
  const said = joints.map((id) => plan.joints.find((joint) => joint.id === id)?.say ?? id);
  return said.length > 3 ? sayCount(said.length, 'joint', 'joints') : sayList(said);
}

function leave({ gluing }: State): Response {
  if (!gluing) return refuse('No glue-up is going on.');
  return write([{ kind: 'gluing ended', finished: false }], { say: gluing.mode === 'glue' ? 'Left. If glue is on, wash it off or close the joints now; the clocks run on.' : 'The rehearsal is left.', screen: { name: 'step' } });
}

function divide(state: State, now: Moment): Response {
  const glueUp = glueUpOf(state, state.gluing?.step);
  const rehearsal = glueUp && rehearsalOf(state, glueUp, now);
  if (!glueUp || !rehearsal) return refuse('Rehearse it first: the time that each joint takes tells where to divide it.');
  if (rehearsal.judged.verdict === 'fits') return refuse('It fits the open time as it is.');
  if (!rehearsal.split) return refuse('It cannot be divided so that each part fits. Take a glue with a longer open time.');
  const stages = [...glueUp.stages.slice(0, glueUp.stage), ...rehearsal.split.stages.map(({ joints }) => joints), ...glueUp.stages.slice(glueUp.stage + 1)];
  return write([{ kind: 'gluing divided', step: glueUp.step.id, stages }], { say: `Divided in ${sayNumber(stages.length)}. First ${sayJoints(glueUp.plan, stages[glueUp.stage] ?? [])}. The rest stays on dry.`, screen: GLUING, signal: 'done' });
}
