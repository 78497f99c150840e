import { add, fractionOf, subtract, timesWhole } from '../length/arithmetic.ts';
import { ZERO_LENGTH, type Length } from '../length/length.ts';
import type { MortiseAndTenon, Part } from './file.ts';
import type { SizeName } from './measurement.ts';

/** How a size stands, of one copy or of the set; undefined when the piece does not have it. */
export type ReadSize = (size: SizeName, copy?: number) => Length | undefined;

/** Which of two: of twins one above the other, or side by side from the outer face. */
export type Which = 'upper' | 'lower' | 'outer' | 'inner';

/** The room that one mortise, or the socket of a haunch, takes up in its part: from the outer faces and the top end. */
export interface Cavity {
  readonly joint: MortiseAndTenon;
  readonly kind: 'mortise' | 'haunch socket';
  /** Absent for the only mortise of a joint. */
  readonly which?: Which;
  /** Which size of the part it goes into. */
  readonly into: 'width' | 'thickness';
  /** Of the part, in the direction of the mortise and across it. */
  readonly deepest: Length;
  readonly across: Length;
  readonly depth: Length;
  /** Across: from the outer face to the near cheek and the far one. */
  readonly near: Length;
  readonly far: Length;
  readonly top: Length;
  readonly bottom: Length;
}

/** One tenon on the end of its rail. */
export interface TenonOnRail {
  readonly which?: Which;
  /** From the reference face (of a rail that lies flat, from its outer edge) to the outer cheek. */
  readonly outer: Length;
  readonly thickness: Length;
  /** From the top edge (of a rail that lies flat, from its top face) to the top of the tenon. */
  readonly top: Length;
  readonly width: Length;
}

/** Which sizes of the rail lie across the leg and along it. */
export function railSizes({ lies }: MortiseAndTenon): { readonly across: 'width' | 'thickness'; readonly along: 'width' | 'thickness' } {
  return lies === 'flat' ? { across: 'width', along: 'thickness' } : { across: 'thickness', along: 'width' };
}

/** The tenons on one end of a rail: where the file does not say, in the middle of it. `copy` is the rail's. */
export function tenonsOf(joint: MortiseAndTenon, read: ReadSize, copy?: number): readonly TenonOnRail[] {
  const of = (key: string): Length => read(`${joint.id}.${key}`) ?? ZERO_LENGTH;
  const { across, along } = railSizes(joint);
  const rail = (key: string): Length => read(`${joint.tenonOn}.${key}`, copy) ?? ZERO_LENGTH;
  const pitch = pitchOf(joint, of);
  const thickness = of('tenonThickness');
  const width = of('tenonWidth');
  const outer = read(`${joint.id}.outerShoulder`) ?? fractionOf(subtract(rail(across), add(pitch.across, thickness)), 1, 2);
  const top = read(`${joint.id}.topShoulder`) ?? fractionOf(subtract(rail(along), add(pitch.along, width)), 1, 2);
  return whichOf(joint).map((which, index) => ({
    ...named(which), thickness, width, outer: add(outer, timesWhole(pitch.across, index)), top: add(top, timesWhole(pitch.along, index)),
  }));
}

/** The mortises of a joint in one copy of the mortised part, and its haunch's socket last. Empty when the part is not there. */
export function cavitiesOf(joint: MortiseAndTenon, read: ReadSize, copy?: number): readonly Cavity[] {
  const into = joint.mortiseInto ?? 'width';
  const deepest = read(`${joint.mortiseIn}.${into}`, copy);
  const across = read(`${joint.mortiseIn}.${into === 'width' ? 'thickness' : 'width'}`, copy);
  if (deepest === undefined || across === undefined) return [];
  const of = (key: string): Length => read(`${joint.id}.${key}`) ?? ZERO_LENGTH;
  const pitch = pitchOf(joint, of);
  const near = add(of('setback'), tenonsOf(joint, read)[0]?.outer ?? ZERO_LENGTH);
  const mortises = whichOf(joint).map((which, index): Cavity => {
    const from = add(near, timesWhole(pitch.across, index));
    const top = add(of('fromTop'), timesWhole(pitch.along, index));
    return { joint, kind: 'mortise', ...named(which), into, deepest, across, depth: of('mortiseDepth'), near: from, far: add(from, of('mortiseWidth')), top, bottom: add(top, of('mortiseLength')) };
  });
  const [first] = mortises;
  return first === undefined || joint.haunch === undefined ? mortises : [...mortises, socketOver(first, of)];
}

/** Above the uppermost mortise; it is open at the end of the leg when the rail is level with it. */
function socketOver(mortise: Cavity, of: (key: string) => Length): Cavity {
  const top = subtract(mortise.top, of('haunchWidth'));
  return { ...mortise, kind: 'haunch socket', top: top < 0 ? ZERO_LENGTH : top, bottom: mortise.top, depth: of('haunchLength') };
}

function whichOf({ tenons }: MortiseAndTenon): readonly (Which | undefined)[] {
  switch (tenons) {
    case 'one above the other': return ['upper', 'lower'];
    case 'side by side': return ['outer', 'inner'];
    default: return [undefined];
  }
}

function named(which: Which | undefined): { readonly which?: Which } {
  return which === undefined ? {} : { which };
}

/** From one twin to the other. */
function pitchOf({ tenons }: MortiseAndTenon, of: (key: string) => Length): { readonly across: Length; readonly along: Length } {
  switch (tenons) {
    case 'one above the other': return { across: ZERO_LENGTH, along: add(of('tenonWidth'), of('gap')) };
    case 'side by side': return { across: add(of('tenonThickness'), of('gap')), along: ZERO_LENGTH };
    default: return { across: ZERO_LENGTH, along: ZERO_LENGTH };
  }
}

/**
 * Whether a copy of the mortised part has the joint, which may be in some places only ('back left'). Without a place, a copy stands in the order of the
 * places; with null, it may yet stand anywhere.
 */
export function hasJoint(joint: MortiseAndTenon, part: Part, copy: number | undefined, place: string | null | undefined): boolean {
  if (joint.places === undefined || copy === undefined || place === null) return true;
  const stands = place ?? part.places?.[copy - 1];
  return stands === undefined || joint.places.includes(stands);
}

/** Whether a copy may have both joints: two that are in different places ('front left', 'back left') never meet. */
export function inOnePlace({ places: one }: MortiseAndTenon, { places: other }: MortiseAndTenon): boolean {
  return one === undefined || other === undefined || one.some((place) => other.includes(place));
}
