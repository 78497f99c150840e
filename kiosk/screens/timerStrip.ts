import { css, html, nothing } from 'lit';
import type { TemplateResult } from 'lit';
import { readTimer } from '../../core/clock/reading.ts';
import { sayDuration } from '../../core/clock/sayDuration.ts';
import type { TimerReading } from '../../core/clock/reading.ts';
import type { Timer } from '../../core/clock/timer.ts';
import type { KioskView } from '../hostPort.ts';

const MINUTE_MS = 60_000;

/** Running timers in one line, for every screen that has room for it. */
export const timerStripStyles = css`
  .strip { display: flex; gap: 0.8rem; overflow: hidden; white-space: nowrap; }
  .strip li { display: flex; gap: 0.8rem; border: 0.1rem solid var(--ink); padding: 0.1rem 0.8rem; font-size: calc(2rem * var(--text)); line-height: 1.2; min-width: 0; }
  .strip .name { overflow: hidden; text-overflow: ellipsis; }
  .strip .left { font-family: var(--figures); }
`;

export interface RunningTimer {
  readonly timer: Timer;
  readonly reading: TimerReading;
  /** Due and not yet acknowledged. */
  readonly calls: boolean;
}

/** Timers that are not yet over for the maker: running, held, or due; the most pressing first. */
export function runningTimers({ bench, now }: KioskView): readonly RunningTimer[] {
  return bench.state.timers
    .map((timer) => ({ timer, reading: readTimer(timer, now) }))
    .map((each) => ({ ...each, calls: each.reading.due && each.timer.acknowledgedAt === undefined }))
    .filter(({ timer, calls }) => calls || timer.acknowledgedAt === undefined)
    .sort((a, b) => a.reading.leftMs - b.reading.leftMs || b.reading.overdueMs - a.reading.overdueMs);
}

/** '1:02:05' over an hour, else '2:05'; '3 d 4 h' over two days. Rounded up, so that 0:00 is due. */
export function writeLeft(ms: number): string {
  const seconds = Math.ceil(ms / 1000);
  const [days, hours, minutes] = [Math.floor(seconds / 86_400), Math.floor(seconds / 3600), Math.floor(seconds / 60)];
  const two = (value: number): string => String(value).padStart(2, '0');
  if (hours >= 48) return `${days} d ${hours % 24} h`;
  if (hours > 0) return `${hours}:${two(minutes % 60)}:${two(seconds % 60)}`;
  return `${minutes}:${two(seconds % 60)}`;
}

/** What stands for the time left: figures, or that nobody knows. */
export function leftText({ timer, reading }: RunningTimer): string {
  if (reading.due) return `due${reading.overdueMs >= MINUTE_MS ? ` ${sayDuration(Math.floor(reading.overdueMs / MINUTE_MS) * MINUTE_MS)} ago` : ''}`;
  const left = writeLeft(reading.leftMs);
  const certain = reading.certainty === 'unknown' ? `${left} at most` : left;
  return timer.heldLeftMs === undefined ? certain : `${certain} held`;
}

export function timerStrip(view: KioskView): TemplateResult | typeof nothing {
  const running = runningTimers(view);
  if (running.length === 0) return html`<span></span>`;
  const shown = running.slice(0, 3);
  return html`<ul class="strip" aria-label="running clocks">${shown.map((each) => html`<li class=${each.calls ? 'due' : ''}><span class="name">${each.timer.name}</span><span class="left">${leftText(each)}</span></li>`)}
    ${running.length > shown.length ? html`<li>${running.length - shown.length} more</li>` : nothing}</ul>`;
}
