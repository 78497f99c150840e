import { sayNumber } from '../length/say.ts';
import type { Moment } from './moment.ts';
import { knownRun, readTimer, runAt, surelyRun, surelyRunAt } from './reading.ts';
import type { Timer, TimerRequest } from './timer.ts';

/** A timer that runs from `now`; a name that is taken gets the next number: 'clamps', 'clamps two'. */
export function startTimer(request: TimerRequest, id: number, now: Moment, others: readonly Timer[] = []): Timer {
  const { kind, durationMs, basis } = request;
  const name = freeName(request.name, others);
  return { kind, name, durationMs, basis, id, startedAt: now, ...(name === request.name ? {} : { askedName: request.name }) };
}

/** Whether a timer was started under that name, though it may be called 'clamps two' since. */
export function wasCalled(timer: Timer, name: string): boolean {
  return (timer.askedName ?? timer.name) === name;
}

function freeName(name: string, others: readonly Timer[]): string {
  const taken = new Set(others.map((other) => other.name));
  for (let count = 1; ; count++) {
    const candidate = count === 1 ? name : `${name} ${sayNumber(count)}`;
    if (!taken.has(candidate)) return candidate;
  }
}

/**
 * Adds time, or takes it with a negative number. What is already due gets the added time from now, as when one looks
 * and gives it five minutes more; taking more than is left makes it due now.
 */
export function addTime(timer: Timer, addMs: number, now: Moment): Timer {
  const { elapsedMs, due } = readTimer(timer, now);
  const ranMs = Math.round(elapsedMs);
  const wanted = (due && addMs > 0 ? ranMs : timer.durationMs) + addMs;
  const durationMs = Math.max(1, ranMs, wanted);
  const { acknowledgedAt, heldLeftMs, ...rest } = timer;
  return {
    ...rest, durationMs,
    ...(heldLeftMs === undefined ? {} : { heldLeftMs: durationMs - (timer.durationMs - heldLeftMs) }),
    ...(acknowledgedAt === undefined || durationMs > ranMs ? {} : { acknowledgedAt }),
  };
}

/** Stands still from `now`. A timer that is held or due already stays as it is. */
export function holdTimer(timer: Timer, now: Moment): Timer {
  const { due } = readTimer(timer, now);
  if (timer.heldLeftMs !== undefined || due) return timer;
  return { ...countedTo(timer, now), heldLeftMs: timer.durationMs - Math.round(runAt(timer, now).elapsedMs) };
}

/** Runs on from `now` with what was left. What was unknown when it was held stays unknown. */
export function resumeTimer(timer: Timer, now: Moment): Timer {
  const { heldLeftMs, ...rest } = timer;
  if (heldLeftMs === undefined) return timer;
  const elapsedMs = timer.durationMs - heldLeftMs;
  const known = knownRun(timer);
  return { ...rest, setGoingMs: elapsedMs, surely: { at: now, elapsedMs }, known: known && { at: now, elapsedMs, by: known.by } };
}

/**
 * The maker has heard that it is due: silent from then on; a break starts again from `now`. A timer that nobody can
 * know to be due is taken in hand the same way; one that is surely still running stays as it is.
 */
export function acknowledgeTimer(timer: Timer, now: Moment): Timer {
  const { due, certainty } = readTimer(timer, now);
  if (!due && certainty !== 'unknown') return timer;
  if (timer.kind !== 'break') return { ...timer, acknowledgedAt: now };
  const { id, kind, name, durationMs, basis, startedAt, askedName } = timer;
  return {
    id, kind, name, durationMs, basis, startedAt, ...(askedName === undefined ? {} : { askedName }),
    setGoingMs: 0, known: { at: now, elapsedMs: 0, by: 'exact' }, surely: { at: now, elapsedMs: 0 },
  };
}

/**
 * The clocks were seen at `seen`: counts the timer up to there, so that a later power cut loses no more than what
 * follows. Across a boot it remembers where it stood before. A held timer stands still and needs none of it.
 */
export function seeClock(timer: Timer, seen: Moment): Timer {
  if (timer.heldLeftMs !== undefined) return timer;
  const before = surelyRun(timer);
  const gap = before.at.bootId === seen.bootId
    ? {} : { lastSeenAt: before.at, lastSeenMs: runAt(timer, before.at).elapsedMs };
  const { certainty } = runAt(timer, seen);
  const counted = countedTo(timer, seen);
  // While it is unknown the last known point is kept: a wall clock that is set right later may still tell.
  return certainty === 'unknown' ? { ...counted, known: knownRun(timer), ...gap } : { ...counted, ...gap };
}

/** The wall clock was shown to be wrong: what stands on it is known no more. */
export function doubtWall(timer: Timer, seen: Moment): Timer {
  const known = knownRun(timer);
  if (timer.heldLeftMs !== undefined) return known?.by === 'wall clock' ? { ...timer, known: null, heldLeftMs: timer.durationMs - surelyRun(timer).elapsedMs } : timer;
  if (known?.by === 'exact' && known.at.bootId === seen.bootId) return seeClock(timer, seen);
  return { ...seeClock(timer, seen), known: null };
}

/** Never counts back: a moment before the one it stands on, as two copies of a journal joined may bring, changes nothing. */
function countedTo(timer: Timer, moment: Moment): Timer {
  const last = surelyRun(timer).at;
  const at = last.bootId === moment.bootId && last.monotonicMs > moment.monotonicMs ? last : moment;
  const { elapsedMs, certainty } = runAt(timer, at);
  const surely = { at, elapsedMs: surelyRunAt(timer, at) };
  return { ...timer, surely, known: certainty === 'unknown' ? null : { at, elapsedMs, by: certainty } };
}
