import { mateOf as mateIn } from '../joint/mates.ts';
import type { MortiseAndTenon, Part } from '../piece/file.ts';
import { idOf, type TitleWords } from './draft.ts';
import { copiesOf, type Ground } from './ground.ts';
import { allOf, listed, pluralOf } from './names.ts';
import type { StepId } from './step.ts';

/** What a mortise is for: the part that comes into it, or the joint's own name where that part has several. */
export function mateOf(ground: Ground, joint: MortiseAndTenon): string {
  return mateIn(ground.file, joint);
}

function hasSeveral(ground: Ground, joint: MortiseAndTenon): boolean {
  return ground.tenonJoints.filter(({ tenonOn }) => tenonOn === joint.tenonOn).length > 1;
}

/** Which tenons: said only of a part that has several kinds. */
export function tenonDetail(ground: Ground, joint: MortiseAndTenon): TitleWords {
  return hasSeveral(ground, joint) ? { detail: joint.name } : {};
}

/** 'the four legs', or 'the back left and back right legs' when only those have the joint. */
export function mortisedOf(joint: MortiseAndTenon, part: Part): string {
  return joint.places === undefined ? allOf(part) : `the ${listed(joint.places)} ${joint.places.length === 1 ? part.name : pluralOf(part)}`;
}

/** A copy that has the joint: by its number, or by its place where only some places have it, for which copy that is only the maker can say. */
export interface Mortised {
  readonly copy: number;
  readonly place?: string;
}

export function mortisedCopies(joint: MortiseAndTenon, part: Part): readonly Mortised[] {
  if (joint.places === undefined) return copiesOf(part).map((copy) => ({ copy }));
  return joint.places.map((place, index) => ({ place, copy: (part.places?.indexOf(place) ?? -1) + 1 || index + 1 }));
}

export function chopOf(joint: MortiseAndTenon, { copy, place }: Mortised): StepId {
  return idOf('chop mortises', joint.mortiseIn, place ?? copy, joint.id);
}
