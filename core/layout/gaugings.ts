import { add, subtract } from '../length/arithmetic.ts';
import type { Length } from '../length/length.ts';
import { hollowOf } from '../joint/mates.ts';
import { cavitiesOf, railSizes, tenonsOf, type ReadSize } from '../piece/cavity.ts';
import { sizeOf, type Sizes } from '../piece/evaluate.ts';
import type { Fixing, MortiseAndTenon, Part, PieceFile } from '../piece/file.ts';
import { pluralOf } from '../piece/describe.ts';

export const GAUGE_TOOLS = ['marking gauge', 'mortise gauge'] as const;
export type GaugeTool = (typeof GAUGE_TOOLS)[number];

/** How a gauge stands: its stock so far from the pin, or from the nearer of two pins that are `pins` apart. */
export interface Setting {
  readonly tool: GaugeTool;
  readonly distance: Length;
  readonly pins?: Length;
}

/** One line, or pair of lines, that a gauge marks. */
export interface Gauging extends Setting {
  /** Where the stock runs. */
  readonly from: string;
  /** 'top of the tenon' */
  readonly marks: string;
}

/** All that is gauged on the copies of one part for one joint, one after another on the bench. */
export interface LayoutJob {
  readonly part: string;
  /** Absent for parts that only hold others: buttons. */
  readonly joint?: string;
  readonly say: string;
  readonly gaugings: readonly Gauging[];
}

/** Two settings that are alike have the same key. */
export function settingKey({ tool, distance, pins }: Setting): string {
  return `${tool} ${distance} ${pins ?? ''}`;
}

/** Every layout by gauge that the piece has, by the sizes as they stand now: joints first, then what holds the top, each in the order of the file. */
export function layoutJobs(file: PieceFile, sizes: Sizes): readonly LayoutJob[] {
  const partOf = (id: string): Part | undefined => file.parts.find((part) => part.id === id);
  const jobs = [
    ...file.joints.flatMap((joint) => (joint.kind === 'mortise and tenon' ? [mortises(joint, partOf, sizes), tenons(joint, partOf, sizes)] : [])),
    ...file.joints.flatMap((joint) => (joint.kind === 'fixing' ? [grooves(joint, partOf, sizes), holders(joint, partOf, sizes)] : [])),
  ].filter((job) => job !== undefined && job.gaugings.length > 0) as readonly LayoutJob[];
  return [...new Map(jobs.map((job) => [`${job.part}/${job.joint ?? ''}`, job])).values()];
}

type PartOf = (id: string) => Part | undefined;

function lengthOf(sizes: Sizes, owner: string, size: string): Length | undefined {
  return sizeOf(sizes, `${owner}.${size}`)?.length;
}

function reader(sizes: Sizes): ReadSize {
  return (name, copy) => sizeOf(sizes, name, copy)?.length;
}

/** Of twins side by side both walls of each; of twins one above the other one setting does for both. */
function mortises(joint: MortiseAndTenon, partOf: PartOf, sizes: Sizes): LayoutJob | undefined {
  const [part, rail] = [partOf(joint.mortiseIn), partOf(joint.tenonOn)];
  if (!part || !rail) return undefined;
  const cavities = cavitiesOf(joint, reader(sizes)).filter(({ kind }) => kind === 'mortise');
  const hollow = hollowOf(joint);
  const gaugings = cavities.map(({ which, near, far }): Gauging => ({
    tool: 'mortise gauge', distance: near, pins: subtract(far, near), from: 'outer face', marks: `both walls of the ${which === 'outer' || which === 'inner' ? `${which} ` : ''}${hollow}`,
  }));
  return { part: part.id, joint: joint.id, say: `${hollow}s for the ${rail.name} in the ${many(part)}`, gaugings: usable(each(gaugings)) };
}

function tenons(joint: MortiseAndTenon, partOf: PartOf, sizes: Sizes): LayoutJob | undefined {
  const part = partOf(joint.tenonOn);
  if (!part) return undefined;
  const { along } = railSizes(joint);
  const face = part.referenceFace ?? 'reference face';
  const edge = part.referenceEdge ?? 'reference edge';
  const [cheeksFrom, edgesFrom] = joint.lies === 'flat' ? [edge, face] : [face, edge];
  const found = tenonsOf(joint, reader(sizes));
  const twin = (which: string | undefined): string => (which === undefined ? 'tenon' : `${which} tenon`);
  const cheeks = found.map(({ which, outer, thickness }): Gauging => ({
    tool: 'mortise gauge', distance: outer, pins: thickness, from: cheeksFrom, marks: `both cheeks of the ${joint.tenons === 'side by side' ? twin(which) : 'tenon'}`,
  }));
  const edges = found.flatMap(({ which, top, width }) => [
    ...line(top, edgesFrom, `top of the ${twin(which)}`),
    ...(add(top, width) === lengthOf(sizes, part.id, along) ? [] : line(add(top, width), edgesFrom, `bottom of the ${twin(which)}`)),
  ]);
  return { part: part.id, joint: joint.id, say: `tenons of the ${many(part)}`, gaugings: usable(each([...cheeks, ...edges])) };
}

/** Each setting once. */
function each(gaugings: readonly Gauging[]): readonly Gauging[] {
  return gaugings.filter((gauging, index) => gaugings.findIndex((other) => settingKey(other) === settingKey(gauging) && other.from === gauging.from) === index);
}

function grooves(fixing: Fixing, partOf: PartOf, sizes: Sizes): LayoutJob | undefined {
  const part = partOf(fixing.to);
  const [from, width] = [lengthOf(sizes, fixing.id, 'grooveFromTop'), lengthOf(sizes, fixing.id, 'grooveWidth')];
  if (!part || from === undefined) return undefined;
  return {
    part: part.id, joint: fixing.id, say: `${width === undefined ? 'slots' : 'groove'} in the ${many(part)}`,
    gaugings: usable([...line(from, 'top edge', 'top of the groove'), ...(width === undefined ? [] : line(add(from, width), 'top edge', 'bottom of the groove'))]),
  };
}

function holders(fixing: Fixing, partOf: PartOf, sizes: Sizes): LayoutJob | undefined {
  const part = fixing.with === undefined ? undefined : partOf(fixing.with);
  if (!part) return undefined;
  return {
    part: part.id, say: `tongues of the ${many(part)}`,
    gaugings: usable([...line(lengthOf(sizes, fixing.id, 'tongueLength'), 'end', 'shoulder of the tongue'), ...line(lengthOf(sizes, fixing.id, 'step'), 'top face', 'top of the tongue')]),
  };
}

function line(distance: Length | undefined, from: string, marks: string): readonly Gauging[] {
  return distance === undefined ? [] : [{ tool: 'marking gauge', distance, from, marks }];
}

/** A gauge does not stand at nothing: there the line is the edge itself. */
function usable(gaugings: readonly Gauging[]): readonly Gauging[] {
  return gaugings.filter(({ distance }) => distance > 0);
}

function many({ name, plural, count }: Part): string {
  return count === 1 ? name : plural ?? pluralOf(name);
}
