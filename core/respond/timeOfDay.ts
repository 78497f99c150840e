import type { Response } from '../bench/reply.ts';
import type { Moment } from '../clock/moment.ts';
import type { State } from '../journal/state.ts';
import { sayNumber } from '../length/sayNumber.ts';
import { tell } from './plain.ts';
import { sentence } from './saying.ts';
import { sayTimeLeft } from './timeLeft.ts';

/**
 * The time of day as far as the machine's clock can be believed. Where nothing vouches for it (no network, no battery: a power cut leaves it wrong), that is said, and
 * what is known all the same: the clocks that run.
 */
export function tellTime(state: State, now: Moment): Response {
  const time = sayTimeOfDay(now.wallMs);
  const running = state.timers.filter(({ acknowledgedAt, kind }) => acknowledgedAt === undefined || kind === 'break').map((timer) => sentence(sayTimeLeft(timer, now)));
  const trusted = sentence(`it is ${time}, by this machine’s clock`);
  if (now.wallTrusted) return tell({ say: trusted, note: trusted });
  const known = running.length > 0 ? running : ['No clock is running.'];
  return tell({ say: [`This machine’s clock shows ${time}, but nothing vouches for it: after a power cut it may be wrong.`, ...known].join(' '), screen: { name: 'clocks' } });
}

const HOUR_AND_MINUTE = new Intl.DateTimeFormat('en-GB', { hour: '2-digit', minute: '2-digit', hourCycle: 'h23' });

/** 'six forty-five in the evening', 'noon', 'five past nine in the morning': in the machine's own zone. */
function sayTimeOfDay(wallMs: number): string {
  const [hour = 0, minute = 0] = HOUR_AND_MINUTE.format(wallMs).split(':').map(Number);
  if (minute === 0 && hour % 12 === 0) return hour === 0 ? 'midnight' : 'noon';
  const part = hour < 12 ? 'in the morning' : hour < 18 ? 'in the afternoon' : 'in the evening';
  const twelve = sayNumber(hour % 12 === 0 ? 12 : hour % 12);
  const clock = minute === 0 ? `${twelve} o’clock` : minute < 10 ? `${sayNumber(minute)} past ${twelve}` : `${twelve} ${sayNumber(minute)}`;
  return `${clock} ${part}`;
}
