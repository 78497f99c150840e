import { freeGauges, gaugesOwned, planGauges } from '../layout/gaugePlan.ts';
import { layoutJobs, type LayoutJob } from '../layout/gaugings.ts';
import type { Sizes } from '../piece/evaluate.ts';
import type { PieceFile } from '../piece/file.ts';

/** Which layout comes how early: by the plan that takes the fewest settings of the gauges, at the planned sizes. */
export type LayoutOrder = (part: string, joint: string) => number;

/** Joints are laid out first, then what holds the top. What no gauge is needed for comes last, in the order of the file. */
export function layoutOrder(file: PieceFile, planned: Sizes): LayoutOrder {
  const jobs = layoutJobs(file, planned);
  const isTenon = ({ joint }: LayoutJob): boolean => file.joints.some(({ id, kind }) => id === joint && kind === 'mortise and tenon');
  // What only holds another part is shaped when all else is done.
  const stages = [jobs.filter(isTenon), jobs.filter((job) => !isTenon(job) && job.joint !== undefined), jobs.filter(({ joint }) => joint === undefined)];
  const ranks = new Map(planGauges(stages, freeGauges(gaugesOwned(file.tools))).map(({ job }, index) => [`${job.part}/${job.joint ?? ''}`, index]));
  return (part, joint) => ranks.get(`${part}/${joint}`) ?? ranks.size;
}

/** The same things in that order; what comes equally early stays as it was. */
export function inLayoutOrder<Item>(items: readonly Item[], earliness: (item: Item) => number): readonly Item[] {
  return [...items].sort((one, other) => earliness(one) - earliness(other));
}
