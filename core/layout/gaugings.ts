import { add, fractionOf, subtract } from '../length/arithmetic.ts';
import type { Length } from '../length/length.ts';
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

/** Outer face of the tenoned part to the tenon; in the middle of the thickness where the file does not say. */
function outerShoulder({ id, tenonOn }: MortiseAndTenon, sizes: Sizes): Length | undefined {
  return lengthOf(sizes, id, 'outerShoulder') ?? half(lengthOf(sizes, tenonOn, 'thickness'), lengthOf(sizes, id, 'tenonThickness'));
}

function half(whole: Length | undefined, less: Length | undefined): Length | undefined {
  return whole === undefined || less === undefined ? undefined : fractionOf(subtract(whole, less), 1, 2);
}

function mortises(joint: MortiseAndTenon, partOf: PartOf, sizes: Sizes): LayoutJob | undefined {
  const [part, rail] = [partOf(joint.mortiseIn), partOf(joint.tenonOn)];
  const [setback, shoulder, pins] = [lengthOf(sizes, joint.id, 'setback'), outerShoulder(joint, sizes), lengthOf(sizes, joint.id, 'mortiseWidth')];
  if (!part || !rail || setback === undefined || shoulder === undefined || pins === undefined) return undefined;
  return {
    part: part.id, joint: joint.id, say: `mortises for the ${rail.name} in the ${many(part)}`,
    gaugings: usable([{ tool: 'mortise gauge', distance: add(setback, shoulder), pins, from: 'outer face', marks: 'both walls of the mortise' }]),
  };
}

function tenons(joint: MortiseAndTenon, partOf: PartOf, sizes: Sizes): LayoutJob | undefined {
  const part = partOf(joint.tenonOn);
  const [shoulder, pins] = [outerShoulder(joint, sizes), lengthOf(sizes, joint.id, 'tenonThickness')];
  if (!part || shoulder === undefined || pins === undefined) return undefined;
  const [railWidth, tenonWidth] = [lengthOf(sizes, part.id, 'width'), lengthOf(sizes, joint.id, 'tenonWidth')];
  const top = lengthOf(sizes, joint.id, 'topShoulder') ?? half(railWidth, tenonWidth);
  const bottom = top === undefined || tenonWidth === undefined ? undefined : add(top, tenonWidth);
  const edge = part.referenceEdge ?? 'reference edge';
  return {
    part: part.id, joint: joint.id, say: `tenons of the ${many(part)}`,
    gaugings: usable([
      { tool: 'mortise gauge', distance: shoulder, pins, from: part.referenceFace ?? 'reference face', marks: 'both cheeks of the tenon' },
      ...line(top, edge, 'top of the tenon'),
      ...(bottom === railWidth ? [] : line(bottom, edge, 'bottom of the tenon')),
    ]),
  };
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
