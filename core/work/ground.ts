import type { Length } from '../length/length.ts';
import type { Fixing, Joint, MortiseAndTenon, Part, PieceFile } from '../piece/file.ts';
import type { SizeName } from '../piece/measurement.ts';
import type { LayoutOrder } from './layoutOrder.ts';
import type { PartCopy, SizeMention } from './step.ts';

/** What the plan of the work stands on: the piece file, and the sizes that its dimension graph knows. */
export interface Ground {
  readonly file: PieceFile;
  readonly part: (id: string) => Part | undefined;
  /** The joints that a part has a share in. */
  readonly jointsOf: (part: string) => readonly Joint[];
  readonly tenonJoints: readonly MortiseAndTenon[];
  readonly fixings: readonly Fixing[];
  /** Buttons and other parts that only hold one part to another: made in a row from one strip, for twelve steps to face twelve buttons would be a nuisance. */
  readonly inOneGo: (part: Part) => boolean;
  /** The copies that are a step of their own; `undefined` stands for all of them in one go. */
  readonly unitsOf: (part: Part) => readonly (number | undefined)[];
  /** A mention of a size, of one copy where the part has several; undefined when the piece does not have it. */
  readonly size: (name: SizeName, copy?: number) => SizeMention | undefined;
  /** All sizes that a joint or part has. */
  readonly sizesOf: (owner: string) => readonly SizeMention[];
  /** As planned, before anything is measured. */
  readonly planned: (name: SizeName) => Length | undefined;
  /** How early a part is laid out for a joint. */
  readonly layoutOrder: LayoutOrder;
}

/** Where the order of the layouts does not matter. */
const AS_IN_THE_FILE: LayoutOrder = () => 0;

export function groundOf(file: PieceFile, names: Iterable<SizeName>, planned: (name: SizeName) => Length | undefined, layoutOrder: LayoutOrder = AS_IN_THE_FILE): Ground {
  const known = new Set(names);
  const parts = new Map(file.parts.map((part) => [part.id, part]));
  const owned = new Map<string, SizeName[]>();
  for (const name of known) owned.set(ownerOf(name), [...(owned.get(ownerOf(name)) ?? []), name]);
  const tenonJoints = file.joints.filter((joint) => joint.kind === 'mortise and tenon');
  const fixings = file.joints.filter((joint) => joint.kind === 'fixing');
  const joined = new Set([...tenonJoints.flatMap(({ tenonOn, mortiseIn }) => [tenonOn, mortiseIn]), ...fixings.flatMap(({ holds, to }) => [holds, to])]);
  const inOneGo = new Set(fixings.flatMap(({ with: by }) => (by === undefined || joined.has(by) ? [] : by)));
  const joints = new Map(file.parts.map(({ id }) => [id, file.joints.filter((joint) => sharesIn(joint, id))]));
  return {
    file,
    tenonJoints,
    fixings,
    inOneGo: (part) => inOneGo.has(part.id),
    unitsOf: (part) => (inOneGo.has(part.id) ? [undefined] : copiesOf(part)),
    planned,
    layoutOrder,
    part: (id) => parts.get(id),
    jointsOf: (part) => joints.get(part) ?? [],
    size: (name, copy) => {
      if (!known.has(name)) return undefined;
      const several = (parts.get(ownerOf(name))?.count ?? 1) > 1;
      return copy === undefined || !several ? { size: name } : { size: name, copy };
    },
    sizesOf: (owner) => (owned.get(owner) ?? []).map((size) => ({ size })),
  };
}

function ownerOf(name: SizeName): string {
  return name.slice(0, Math.max(0, name.lastIndexOf('.')));
}

function sharesIn(joint: Joint, part: string): boolean {
  return joint.kind === 'fixing' ? [joint.holds, joint.to, joint.with].includes(part) : joint.tenonOn === part || joint.mortiseIn === part;
}

export function copiesOf(part: Part): readonly number[] {
  return Array.from({ length: part.count }, (_, index) => index + 1);
}

export function coverOf(part: Part): readonly PartCopy[] {
  return copiesOf(part).map((copy) => ({ part: part.id, copy }));
}
