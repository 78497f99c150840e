import { existsSync, readFileSync } from 'node:fs';
import type { Moment } from '../core/clock/moment.ts';

/** A moment, and why the wall clock is believed or not, in words. */
export interface ClockReading extends Moment {
  readonly basis: string;
}

/** What the machine is asked; a test gives its own. */
export interface Machine {
  wallMs(): number;
  readText(file: string): string | undefined;
  exists(file: string): boolean;
  /** Milliseconds since this process began, never stepping. */
  processMs(): number;
}

export const THIS_MACHINE: Machine = {
  wallMs: () => Date.now(),
  readText(file) {
    try {
      return readFileSync(file, 'utf8');
    } catch {
      return undefined;
    }
  },
  exists: existsSync,
  processMs: () => Math.floor(performance.now()),
};

/** How far the battery's clock and the system's may lie apart while one still vouches for the other. */
const RTC_AGREES_MS = 5 * 60_000;

/** No bench ran this before then: a clock that says so was never set. */
const EARLIEST_WALL_MS = Date.UTC(2026, 0, 1);

const PROCESS_BOOT_ID = `server ${process.pid} ${Date.now().toString(36)}`;

/**
 * Reads the machine's clocks.
 * @param seenWallMs the latest wall time known to have been; a wall clock before it has gone back and is not believed
 */
export function readClock(machine: Machine = THIS_MACHINE, seenWallMs = 0): ClockReading {
  const wallMs = machine.wallMs();
  return { wallMs, ...wallTrust(machine, wallMs, seenWallMs), ...bootClock(machine) };
}

/** Boot identity and time since boot, suspend included (/proc/uptime reads CLOCK_BOOTTIME, to 10 ms). */
function bootClock(machine: Machine): Pick<Moment, 'bootId' | 'monotonicMs'> {
  const bootId = machine.readText('/proc/sys/kernel/random/boot_id')?.trim();
  const uptime = /^\d+(\.\d+)?/.exec(machine.readText('/proc/uptime') ?? '')?.[0];
  if (bootId && uptime !== undefined) return { bootId, monotonicMs: Math.round(Number(uptime) * 1000) };
  // Elsewhere only this process knows how long it has run: each start of the server then counts as a start of the machine.
  return { bootId: PROCESS_BOOT_ID, monotonicMs: machine.processMs() };
}

function wallTrust(machine: Machine, wallMs: number, seenWallMs: number): { wallTrusted: boolean; basis: string } {
  if (wallMs < EARLIEST_WALL_MS) return { wallTrusted: false, basis: 'the clock was never set' };
  if (wallMs < seenWallMs) return { wallTrusted: false, basis: 'the clock stands before a time that has already been' };
  if (machine.exists('/run/systemd/timesync/synchronized')) return { wallTrusted: true, basis: 'set by a time server since this start' };
  const rtcSeconds = machine.readText('/sys/class/rtc/rtc0/since_epoch')?.trim();
  if (rtcSeconds === undefined) return { wallTrusted: false, basis: 'no battery clock, and no time server has answered' };
  const agrees = Math.abs(Number(rtcSeconds) * 1000 - wallMs) <= RTC_AGREES_MS;
  return agrees
    ? { wallTrusted: true, basis: 'kept by a battery clock' }
    : { wallTrusted: false, basis: 'the battery clock and the system clock differ' };
}
