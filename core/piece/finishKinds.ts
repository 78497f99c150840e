/** What a finish by its class asks of the clock. */
export interface FinishKind {
  /** Until the next coat. */
  readonly recoatHours: number;
  /** Until it has hardened through and the piece may be used; absent where it never hardens. */
  readonly cureHours?: number;
}

const DAY_HOURS = 24;

/**
 * Hours by class, the longer end of what is usual. Shellac may be coated again in one to two hours, an oil varnish in about a day, and oil cures in days to weeks: common
 * practice, no source; so are the others. A label rules over all of them. The first that fits is taken.
 */
const KINDS: readonly (readonly [RegExp, FinishKind])[] = [
  [/shellac/i, { recoatHours: 2, cureHours: 3 * DAY_HOURS }],
  [/mineral|paraffin/i, { recoatHours: 24 }],
  [/water/i, { recoatHours: 3, cureHours: 7 * DAY_HOURS }],
  [/lacquer/i, { recoatHours: 2, cureHours: 7 * DAY_HOURS }],
  [/varnish|polyurethane/i, { recoatHours: 24, cureHours: 14 * DAY_HOURS }],
  [/oil/i, { recoatHours: 24, cureHours: 21 * DAY_HOURS }],
  [/wax|soap/i, { recoatHours: 12 }],
];
const UNKNOWN: FinishKind = { recoatHours: 24, cureHours: 14 * DAY_HOURS };

/** The class that a finish goes by; one that is not known is taken for a slow one that hardens. */
export function finishKindOf(kind: string): FinishKind {
  return KINDS.find(([words]) => words.test(kind))?.[1] ?? UNKNOWN;
}
