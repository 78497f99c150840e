import type { GlueJoint } from './glueUp.ts';
import type { JointTimes } from './rehearsal.ts';

/** Glue-ups one after the other, each inside the time; the joints of each. */
export interface Split {
  readonly stages: readonly { readonly joints: readonly string[]; readonly ms: number }[];
  readonly longestMs: number;
}

/** More joints than these are not gone through in every way: 2^14 ways are. */
const MOST_JOINTS = 14;

/**
 * Sub-assemblies for a glue-up that is too long: some joints are left for last, and what the others hold together is glued first, piece by piece. What is
 * left for last must lie between different sub-assemblies, for nothing can be put between parts that are fast already. Of the ways that fit, the one with
 * the fewest glue-ups, then the shortest longest one. Undefined when none fits, or there are more joints than can be gone through.
 */
export function splitGlueUp(joints: readonly GlueJoint[], times: JointTimes, allowedMs: number): Split | undefined {
  if (joints.length < 2 || joints.length > MOST_JOINTS) return undefined;
  let best: Split | undefined;
  for (let last = 1; last < 2 ** joints.length - 1; last += 1) {
    const split = splitBy(joints, last, times);
    if (split && split.longestMs <= allowedMs && (best === undefined || isBetter(split, best))) best = split;
  }
  return best;
}

function isBetter(one: Split, other: Split): boolean {
  return one.stages.length !== other.stages.length ? one.stages.length < other.stages.length : one.longestMs < other.longestMs;
}

/** With the joints whose bits are set glued last. */
function splitBy(joints: readonly GlueJoint[], last: number, times: JointTimes): Split | undefined {
  const isLast = (index: number): boolean => (last & (1 << index)) !== 0;
  const groups = groupsOf(joints.filter((_, index) => !isLast(index)));
  const finish = joints.filter((_, index) => isLast(index));
  const groupOf = new Map(groups.flatMap((group, index) => group.flatMap(({ joins }) => joins.map((part) => [part, index] as const))));
  const blockOf = (part: string): string | number => groupOf.get(part) ?? part;
  if (!finish.every(({ joins: [one, other] }) => blockOf(one) !== blockOf(other)) || !canGoIn(finish, blockOf)) return undefined;
  const stages = [...groups, finish].map((stage) => ({ joints: stage.map(({ id }) => id), ms: stage.reduce((sum, { id }) => sum + (times.ofJoint.get(id) ?? 0), times.checkMs) }));
  return { stages, longestMs: Math.max(...stages.map(({ ms }) => ms)) };
}

/** The two tenons of a rail point away from each other: both cannot go into one block that is fast already. */
function canGoIn(finish: readonly GlueJoint[], blockOf: (part: string) => string | number): boolean {
  const taken = finish.map(({ joins: [carrier, into] }) => `${carrier} in ${blockOf(into)}`);
  return new Set(taken).size === taken.length;
}

/** Joints that hang together by the parts they hold. */
function groupsOf(joints: readonly GlueJoint[]): readonly (readonly GlueJoint[])[] {
  const groups: GlueJoint[][] = [];
  for (const joint of joints) {
    const met = groups.filter((group) => group.some(({ joins }) => joins.some((part) => joint.joins.includes(part))));
    for (const group of met) groups.splice(groups.indexOf(group), 1);
    groups.push([...met.flat(), joint]);
  }
  return groups;
}
