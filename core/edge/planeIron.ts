import { nanometres, NANOMETRES_PER_INCH, type Length } from '../length/length.ts';

export const PLANES = ['smoothing plane', 'jointer plane', 'jack plane'] as const;
export type PlaneName = (typeof PLANES)[number];

interface IronSetting {
  /** From the edge of the iron to the edge of the cap iron. */
  readonly capIronBack: Length;
  readonly shaving: readonly [least: Length, most: Length];
  readonly source: string;
}

const thousandths = (count: number): Length => nanometres(count * 25_400);
const thirtySeconds = (count: number): Length => nanometres((count * NANOMETRES_PER_INCH) / 32);

/** Noyes, Handwork in Wood (1910) for smoothing and jack plane; what lies between them, and the shavings, is common practice (from memory). */
export const IRON_SETTINGS: Readonly<Record<PlaneName, IronSetting>> = {
  'smoothing plane': { capIronBack: thirtySeconds(1), shaving: [thousandths(1), thousandths(2)], source: 'Noyes, Handwork in Wood, 1910; shaving: usual talk' },
  'jointer plane': { capIronBack: thirtySeconds(2), shaving: [thousandths(3), thousandths(6)], source: 'common practice, no source (from memory)' },
  'jack plane': { capIronBack: thirtySeconds(4), shaving: [thousandths(5), thousandths(15)], source: 'Noyes, Handwork in Wood, 1910; shaving: common practice (from memory)' },
};
