/** What is done to an edge, the lightest first. Each does what the lighter ones do as well. */
export const CARES = ['stropped', 'honed', 'ground'] as const;
export type Care = (typeof CARES)[number];

/** One edge: since when it has been cutting, in minutes, and how often it was stropped since it was honed. */
export interface EdgeWear {
  readonly minutesSinceStrop: number;
  readonly minutesSinceHoning: number;
  readonly stropsSinceHoning: number;
  readonly honingsSinceGrinding: number;
}

export const FRESH_EDGE: EdgeWear = { minutesSinceStrop: 0, minutesSinceHoning: 0, stropsSinceHoning: 0, honingsSinceGrinding: 0 };

/** When an edge wants what. Common practice, no source; every maker's own steel decides. */
export interface UpkeepRule {
  /** Cutting minutes from one strop to the next. */
  readonly stropEveryMinutes: number;
  /** Cutting minutes after which a strop no longer brings it back. */
  readonly honeEveryMinutes: number;
  readonly honingsToGrinding: number;
}

export const USUAL_UPKEEP: UpkeepRule = { stropEveryMinutes: 1, honeEveryMinutes: 20, honingsToGrinding: 8 };

export function cutFor(wear: EdgeWear, minutes: number): EdgeWear {
  return { ...wear, minutesSinceStrop: wear.minutesSinceStrop + minutes, minutesSinceHoning: wear.minutesSinceHoning + minutes };
}

export function caredFor(wear: EdgeWear, care: Care): EdgeWear {
  switch (care) {
    case 'stropped': return { ...wear, minutesSinceStrop: 0, stropsSinceHoning: wear.stropsSinceHoning + 1 };
    case 'honed': return { ...FRESH_EDGE, honingsSinceGrinding: wear.honingsSinceGrinding + 1 };
    case 'ground': return FRESH_EDGE;
  }
}

/** What the edge wants now: the heaviest care that is due; undefined while it may go on cutting. */
export function careDue(wear: EdgeWear, rule: UpkeepRule): Care | undefined {
  if (wear.honingsSinceGrinding >= rule.honingsToGrinding) return 'ground';
  if (wear.minutesSinceHoning >= rule.honeEveryMinutes) return 'honed';
  return wear.minutesSinceStrop >= rule.stropEveryMinutes ? 'stropped' : undefined;
}

/**
 * Whether honing now pays: a dull edge costs `slowerPercent` of the time that is still to be cut, honing costs its own minutes. In minutes won (less than nothing: lost).
 */
export function minutesWonByHoning(minutesToCut: number, slowerPercent: number, honingMinutes: number): number {
  return (minutesToCut * slowerPercent) / (100 + slowerPercent) - honingMinutes;
}
