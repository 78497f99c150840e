import { assertNever } from '../result.ts';
import type { Bench } from '../bench/bench.ts';
import type { Response } from '../bench/reply.ts';
import type { EdgeRequest } from '../bench/request.ts';
import type { Moment } from '../clock/moment.ts';
import { readTimer } from '../clock/reading.ts';
import { sayDuration } from '../clock/sayDuration.ts';
import { angleFor, LEAST_DEGREES, MOST_DEGREES, projectionFor } from '../edge/honing.ts';
import { careDue, caredFor, minutesWonByHoning, type Care, type EdgeWear } from '../edge/upkeep.ts';
import { countedUntil, wearOf, type EdgeName } from '../journal/edges.ts';
import type { Entry } from '../journal/entry.ts';
import type { State } from '../journal/state.ts';
import { sayNumber } from '../length/sayNumber.ts';
import { upkeepOf } from './edgeUpkeep.ts';
import { refuse, tell, write } from './plain.ts';
import { sentence, spoken, written } from './saying.ts';
import { timerStarted } from './timers.ts';
import { toSay } from './toSay.ts';

const EDGES_SCREEN = { name: 'edges' } as const;
const STROP = 'strop';
/** The clock that a maker has set who wants to be reminded of the stone. */
const SHARPENING = 'sharpening';

/** Chopping and stopping, strop, stone and grinding, and what an edge wants. */
export function respondToEdge(bench: Bench, request: EdgeRequest, now: Moment): Response {
  const { state } = bench;
  switch (request.kind) {
    case 'cutting begins': return begin(state, request.edge);
    case 'cutting stops': return stop(state, now);
    case 'edge care': return care(state, request, now);
    case 'how is the edge': return tellEdge(state, request.edge ?? edgeInHand(state), now);
    case 'does honing pay': return tellHoning(request.minutesLeft);
    case 'guide projection': return tellProjection(state, request.angleDegrees);
    case 'guide angle': return tellAngle(state, request.projection);
    default: return assertNever(request);
  }
}

/** The one that cuts, or the one that was told of last. */
function edgeInHand({ cutting, edges }: State): EdgeName {
  return cutting?.edge ?? [...edges.keys()].at(-1) ?? 'chisel';
}

/** The break clock for the strop runs while something cuts; it is there once. */
function begin(state: State, edge: EdgeName): Response {
  const running = state.timers.some(({ kind }) => kind === 'break');
  const durationMs = state.settings.breakSeconds * 1000;
  const entries: Entry[] = [{ kind: 'cutting begun', edge }];
  if (!running) entries.push(timerStarted({ kind: 'break', name: STROP, durationMs, basis: 'your setting' }));
  return write(entries, { say: sentence(`the ${edge} is cutting; the strop in ${sayDuration(durationMs)}`), signal: 'done' });
}

function stop(state: State, now: Moment): Response {
  if (!state.cutting) return refuse('Nothing was cutting. Say chopping when you begin.');
  const { edge } = state.cutting;
  const timer = state.timers.find(({ kind, name }) => kind === 'break' && name === STROP);
  const wear = wearOf(countedUntil(state, now), edge);
  return write([{ kind: 'cutting ended' }, ...(timer ? [{ kind: 'timer stopped' as const, timer: timer.id }] : [])], { say: `Stopped. ${sentence(wearWords(edge, wear))}${dueWords(state, wear)}`, signal: 'done', hush: true });
}

function care(state: State, { edge: named, care }: Extract<EdgeRequest, { kind: 'edge care' }>, now: Moment): Response {
  const edge = named ?? edgeInHand(state);
  const before = wearOf(countedUntil(state, now), edge);
  const after = caredFor(before, care);
  const cut = care === 'stropped' ? before.minutesSinceStrop : before.minutesSinceHoning;
  return write([{ kind: 'edge cared for', edge, care }, ...clockAnew(state, edge, now)], {
    say: `${sentence(`the ${edge} is ${care} now${cut === 0 ? '' : `, after ${sayMinutes(cut)} of cutting`}`)}${named ?? state.cutting ? '' : ` I took it for the ${edge}; name the edge if it was another.`}${dueWords(state, after)}`,
    screen: EDGES_SCREEN, signal: 'done', hush: true,
  });
}

/** The clock for the strop starts again: when it is due, whatever was cared for; while it runs, for the edge that cuts. */
function clockAnew(state: State, edge: EdgeName, now: Moment): readonly Entry[] {
  return state.timers.filter(({ kind, name }) => kind === 'break' && (name === STROP || name === SHARPENING)).flatMap((timer): Entry[] => {
    const { due, certainty } = readTimer(timer, now);
    if (due || certainty === 'unknown' || state.cutting?.edge !== edge) return [{ kind: 'timer acknowledged', timer: timer.id }];
    return [{ kind: 'timer stopped', timer: timer.id }, timerStarted(timer)];
  });
}

function tellEdge(state: State, edge: EdgeName, now: Moment): Response {
  const wear = wearOf(countedUntil(state, now), edge);
  return tell({ say: `${sentence(wearWords(edge, wear))}${dueWords(state, wear) || ' It may go on cutting.'}`, screen: EDGES_SCREEN });
}

function wearWords(edge: EdgeName, { minutesSinceStrop, minutesSinceHoning, stropsSinceHoning }: EdgeWear): string {
  if (minutesSinceHoning === 0) return `the ${edge} has not cut since it was honed, as far as I was told`;
  const strops = stropsSinceHoning === 0 ? 'not stropped since' : `${sayMinutes(minutesSinceStrop)} since the strop`;
  return `the ${edge} has cut for ${sayMinutes(minutesSinceHoning)} since it was honed, ${strops}`;
}

const WANTS: Readonly<Record<Care, string>> = { stropped: 'It wants the strop.', honed: 'A strop will not bring it back any more: hone it.', ground: 'Grind it before you hone it again.' };

function dueWords(state: State, wear: EdgeWear): string {
  const due = careDue(wear, upkeepOf(state));
  return due === undefined ? '' : ` ${WANTS[due]}`;
}

function sayMinutes(minutes: number): string {
  return minutes < 0.5 ? 'less than a minute' : sayDuration(Math.round(minutes) * 60_000);
}

/** A third slower and eight minutes for honing: common practice, no source. */
function tellHoning(minutesLeft: number): Response {
  const won = minutesWonByHoning(minutesLeft * 1.3, 30, 8);
  const words = won > 0 ? `Honing pays: it wins about ${sayMinutes(won)}` : `By time alone honing does not pay yet: it costs about ${sayMinutes(-won)} more than it saves`;
  return tell({ say: `${words}, reckoning a dull edge a third slower and eight minutes at the stone. A dull edge slips sooner.` });
}

function tellProjection(state: State, angleDegrees: number): Response {
  const guide = guideOf(state);
  if (!guide) return askForGuide();
  if (angleDegrees < LEAST_DEGREES || angleDegrees > MOST_DEGREES) return refuse(`An edge is honed at ${sayNumber(LEAST_DEGREES)} to ${sayNumber(MOST_DEGREES)} degrees.`);
  const projection = projectionFor(angleDegrees, guide);
  return tell({ say: sentence(`for ${sayNumber(angleDegrees)} degrees the blade stands out ${spoken(state, projection)}, from the edge to straight over the roller's axis`), note: written(state, projection), lengths: [projection] });
}

function tellAngle(state: State, projection: Parameters<typeof angleFor>[0]): Response {
  const guide = guideOf(state);
  if (!guide) return askForGuide();
  const found = angleFor(projection, guide);
  if (!found.ok) return refuse(`A blade that stands out ${spoken(state, projection)} does not reach the stone in this guide. Let it stand out further.`);
  return tell({ say: sentence(`a projection of ${spoken(state, projection)} hones at ${found.value.toFixed(1)} degrees`), note: `${found.value.toFixed(1)}°` });
}

function guideOf({ settings: { guideRoller, guideAxis } }: State) {
  return guideRoller === undefined || guideAxis === undefined ? undefined : { radius: guideRoller, axisBelowBack: guideAxis };
}

function askForGuide(): Response {
  return refuse(`I do not know your honing guide. ${toSay('Tell me how wide its roller is across, and then how far its axle lies below the blade.', 'Say, for one: the guide roller is half an inch across; then: the guide axle is five sixteenths below the blade.')}`);
}
