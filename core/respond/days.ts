import type { Moment } from '../clock/moment.ts';
import { sayOrdinal } from '../length/sayNumber.ts';

const DAY = new Intl.DateTimeFormat('en-CA', { year: 'numeric', month: '2-digit', day: '2-digit' });
const WEEKDAY_AND_MONTH = new Intl.DateTimeFormat('en-US', { weekday: 'long', month: 'long', day: 'numeric' });

/** The day of a moment in the machine's own zone, '2026-11-25'; undefined where nothing vouches for it. `now` must be trusted: within its boot the monotonic clock tells. */
export function dayOf(at: Moment, now: Moment): string | undefined {
  const wallMs = wallOf(at, now);
  return wallMs === undefined ? undefined : DAY.format(wallMs);
}

/** 'Saturday, November twenty-first': a day for the ear. */
export function sayDay(at: Moment, now: Moment): string {
  const parts = new Map(WEEKDAY_AND_MONTH.formatToParts(wallOf(at, now) ?? at.wallMs).map(({ type, value }) => [type, value]));
  return `${parts.get('weekday') ?? ''}, ${parts.get('month') ?? ''} ${sayOrdinal(Number(parts.get('day')))}`;
}

function wallOf(at: Moment, now: Moment): number | undefined {
  if (at.bootId === now.bootId) return now.wallMs - (now.monotonicMs - at.monotonicMs);
  return at.wallTrusted ? at.wallMs : undefined;
}
