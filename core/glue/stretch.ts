import type { Label, Setting } from './adhesive.ts';

/** The temperature that label times are given for. */
export const LABEL_C = 21;

/**
 * How many times as long a glue stays in clamps at this temperature. Reacting glues by the general rule of chemistry, twice the time for every 10 °C colder
 * (an engineering rule, not a standard). Drying and gelling glues from once at 21 °C to twice at their lowest temperature, for a cold shop may need up to
 * twice the time (published); the line between is ours. Never under once: warmth is not counted on.
 */
export function clampStretch(sets: Setting, tempC: number, lowestC: number): number {
  if (tempC >= LABEL_C) return 1;
  if (sets === 'by reacting') return 2 ** ((LABEL_C - tempC) / 10);
  return 1 + (LABEL_C - tempC) / Math.max(1, LABEL_C - lowestC);
}

/** How much of the open time is left in warmth: half for every 10 °C over 21. Cold lengthens it, which is not counted on. Common practice, no source. */
export function openShare(tempC: number): number {
  return tempC <= LABEL_C ? 1 : 2 ** ((LABEL_C - tempC) / 10);
}

/** Times at a temperature, in whole seconds' milliseconds. */
export interface TimesNow {
  readonly openMs: number;
  /** From the first glue to full pressure. */
  readonly assemblyMs: number;
  readonly clampMs: number;
  readonly workMs: number;
  readonly cureMs: number;
  readonly stretch: number;
  readonly openShare: number;
}

const MINUTE_MS = 60_000;
const HOUR_MS = 60 * MINUTE_MS;

export function timesAt({ openMinutes, closedMinutes, clampMinutes, workHours, fullCureHours, lowestC }: Label, sets: Setting, tempC: number): TimesNow {
  const stretch = clampStretch(sets, tempC, lowestC);
  const share = openShare(tempC);
  return {
    openMs: seconds(openMinutes * MINUTE_MS * share), assemblyMs: seconds((openMinutes + closedMinutes) * MINUTE_MS * share),
    clampMs: seconds(clampMinutes * MINUTE_MS * stretch), workMs: seconds(workHours * HOUR_MS * stretch), cureMs: seconds(fullCureHours * HOUR_MS * stretch),
    stretch, openShare: share,
  };
}

function seconds(ms: number): number {
  return Math.max(1, Math.round(ms / 1000)) * 1000;
}
