import { assertNever } from '../result.ts';
import type { Mark } from './marks.ts';
import type { TimerReading } from './reading.ts';
import { sayDuration } from './sayDuration.ts';
import type { Timer, TimerKind } from './timer.ts';

/** What the maker asked for needs no source. */
const OWN_BASES: readonly string[] = ['', 'as you said', 'your setting'];
/** A mark that is told no later than this is told as if it were now. */
const LATE_MS = 5_000;

interface MarkToSay {
  readonly timer: Timer;
  readonly reading: TimerReading;
  readonly mark: Mark;
  /** It was not yet due when the clocks last spoke. */
  readonly wentDueInGap: boolean;
  /** The machine was restarted since. */
  readonly restarted: boolean;
}

/** 'open time: one minute left'; 'leg two clamps: time is up, thirty minutes, common practice'. */
export function sayMark({ timer, reading, mark, wentDueInGap, restarted }: MarkToSay): string {
  const lateMs = reading.elapsedMs - mark.atMs;
  if (reading.due) {
    const overdueMs = reading.overdueMs;
    if (mark.name === 'still due' && !wentDueInGap) return `${timer.name}: ${upSince(reading)}`;
    if (overdueMs <= LATE_MS && !restarted) return timeIsUp(timer);
    const while_ = restarted ? 'while the power was off' : 'while the bench was not looking';
    return `${timer.name}: went due ${ago(reading)}${wentDueInGap ? `, ${while_}` : ''}${byWallClock(reading)}`;
  }
  const atMost = reading.certainty === 'unknown' ? 'at most ' : '';
  const exactly = lateMs <= LATE_MS;
  const left = sayDuration(exactly ? timer.durationMs - mark.atMs : reading.leftMs);
  return `${timer.name}: ${mark.name === 'half' && exactly && atMost === '' ? 'half time, ' : ''}${atMost}${left} left${restarted ? byWallClock(reading) : ''}`;
}

function timeIsUp(timer: Timer): string {
  // A break is called after what is to be done in it.
  if (timer.kind === 'break') return `time to stop: ${timer.name}`;
  const basis = OWN_BASES.includes(timer.basis) ? '' : `, ${timer.basis}`;
  return `${timer.name}: time is up, ${sayDuration(timer.durationMs)}${basis}`;
}

function upSince(reading: TimerReading): string {
  return `time has been up for ${reading.certainty === 'unknown' ? 'at least ' : ''}${sayAbout(reading.overdueMs)}`;
}

function ago(reading: TimerReading): string {
  return `${reading.certainty === 'unknown' ? 'at least ' : ''}${sayAbout(reading.overdueMs)} ago`;
}

function byWallClock(reading: TimerReading): string {
  return reading.certainty === 'wall clock' ? ', by the wall clock' : '';
}

/** As one would say it in passing, and never more than it was: whole seconds under a minute, then whole minutes, then whole hours. */
function sayAbout(ms: number): string {
  const unit = ms < 60_000 ? 1_000 : ms < 86_400_000 ? 60_000 : 3_600_000;
  return sayDuration(Math.floor(ms / unit) * unit);
}

/** One honest sentence about the power cut, then what is certain of each timer and what is usually done about it. */
export function sayDoubt(inDoubt: readonly { timer: Timer; reading: TimerReading }[]): string {
  const each = inDoubt.map(({ timer, reading }) =>
    `${timer.name}: at least ${sayDuration(reading.elapsedMs)} of ${sayDuration(timer.durationMs)} have passed${whenInDoubt(timer.kind)}`);
  return ['I do not know how long the power was off', ...each].join('. ');
}

/** The side on which a mistake does least harm; common practice, no source. */
function whenInDoubt(kind: TimerKind): string {
  switch (kind) {
    case 'open time':
      return '; take it as over';
    case 'clamp':
      return '; leave them on and count again if in doubt';
    case 'rest':
    case 'break':
    case 'plain':
      return '';
    default:
      return assertNever(kind);
  }
}
