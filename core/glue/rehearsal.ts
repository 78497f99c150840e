import { onTheClock, type Move } from './glueUp.ts';
import type { TimesNow } from './stretch.ts';

/** How long each move took, in its order; what was not done is absent. */
export interface Timed {
  readonly move: Move;
  readonly ms: number;
}

export interface Rehearsed {
  /** From the first glue to the last check. */
  readonly totalMs: number;
  /** The longest that one joint stood with glue on it and open. */
  readonly longestOpenMs: number;
  readonly verdict: 'fits' | 'too long';
  /** What there is, and what of it is kept in hand for gluey fingers. */
  readonly allowedMs: number;
}

/** Glue makes it slower than dry: this share of the time is planned for. Common practice, no source. */
const PLANNED_SHARE = 0.8;

/** The time that a dry rehearsal may take: four fifths of the open time, so that real glue has some in hand. */
export function allowedFor({ openMs }: Pick<TimesNow, 'openMs'>): number {
  return openMs * PLANNED_SHARE;
}

/** The rehearsal against the open time at this temperature. */
export function judgeRehearsal(timed: readonly Timed[], times: Pick<TimesNow, 'openMs'>): Rehearsed {
  const clocked = timed.filter(({ move }) => onTheClock(move));
  const totalMs = clocked.reduce((sum, { ms }) => sum + ms, 0);
  const allowedMs = allowedFor(times);
  return { totalMs, longestOpenMs: longestOpen(clocked), verdict: totalMs <= allowedMs ? 'fits' : 'too long', allowedMs };
}

/** From the start of spreading a joint to the end of closing it. */
function longestOpen(clocked: readonly Timed[]): number {
  const begun = new Map<string, number>();
  let at = 0;
  let longest = 0;
  for (const { move, ms } of clocked) {
    if (move.kind === 'spread') for (const id of move.joints) begun.set(id, at);
    at += ms;
    if (move.kind === 'close') for (const id of move.joints) longest = Math.max(longest, at - (begun.get(id) ?? at));
  }
  return longest;
}

/** What each joint took of a rehearsal, its clamps shared out over them; and the checks, which every glue-up has once. */
export interface JointTimes {
  readonly ofJoint: ReadonlyMap<string, number>;
  readonly checkMs: number;
}

export function jointTimes(timed: readonly Timed[]): JointTimes {
  const ofJoint = new Map<string, number>();
  let checkMs = 0;
  for (const { move, ms } of timed.filter(({ move: one }) => onTheClock(one))) {
    if (move.joints.length === 0) checkMs += ms;
    for (const id of move.joints) ofJoint.set(id, (ofJoint.get(id) ?? 0) + ms / move.joints.length);
  }
  return { ofJoint, checkMs };
}
