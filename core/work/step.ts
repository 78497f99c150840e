import type { Length } from '../length/length.ts';
import type { SizeName } from '../piece/measurement.ts';
import type { TimerRequest } from '../clock/timer.ts';

/** In the order in which a part usually meets them. */
export const OPERATIONS = [
  'rough crosscut', 'reference edge', 'rip', 'rest', 'face', 'edge', 'thickness', 'width', 'ends',
  'dry check', 'lamination glue-up', 'panel glue-up', 'scrape squeeze-out', 'true again', 'orient and mark', 'joint layout', 'chop mortises',
  'saw tenons', 'fit', 'cut fixings', 'ease edges', 'foot bevel', 'dry assembly', 'glue-up', 'level', 'fix top', 'finish',
] as const;
export type Operation = (typeof OPERATIONS)[number];

/** Stable across reloads and edits of the piece: 'face/leg/3', 'chop mortises/leg/3/longRailJoint', 'glue-up/piece'. */
export type StepId = string;

/** Text with sizes in it, put into words at the rounding the maker chose. */
export type Wording = readonly (string | SizeMention)[];

export interface SizeMention {
  readonly size: SizeName;
  readonly copy?: number;
}

export interface Caution {
  readonly id: string;
  /** Short, our own words, for the ear and the eye alike. */
  readonly say: string;
}

export interface Check {
  readonly say: Wording;
  /** How far off is still right. Said by sayTolerance, never by the maker's rounding: six thousandths would round away. */
  readonly tolerance?: Length;
}

export interface StepTimer extends TimerRequest {
  readonly starts: 'when asked' | 'when done';
}

/** One made copy of a part; copies count from 1. */
export interface PartCopy {
  readonly part: string;
  readonly copy: number;
}

/** A step that comes first, and what goes wrong otherwise. */
export interface Before {
  readonly step: StepId;
  readonly because: string;
  /** What follows cannot be undone: skipping that step does not let this one through. */
  readonly gate?: true;
}

/** One step of the work: one operation on one copy of one part, on a set of copies, or on the piece as a whole. */
export interface Step {
  readonly id: StepId;
  readonly operation: Operation;
  /** Absent for the piece as a whole. */
  readonly part?: string;
  /** Present when the step is about exactly one copy of a part that has several. */
  readonly copy?: number;
  /** The joint that is laid out, cut or fitted. */
  readonly joint?: string;
  /** Every copy of every part that the step works on. */
  readonly covers: readonly PartCopy[];
  /** 'Face, leg 3 of 4' */
  readonly title: string;
  /** One short sentence for the ear. */
  readonly say: Wording;
  /** Fuller, for the eye. */
  readonly show: Wording;
  readonly sizes: readonly SizeMention[];
  readonly tools: readonly string[];
  readonly check: Check;
  readonly cautions: readonly Caution[];
  /** Started when the step is begun or done, as the step's kind says. */
  readonly timer?: StepTimer;
  /** A second clock, for glue-ups: `timer` keeps the open time, this one the clamps. */
  readonly clampTimer?: StepTimer;
  /** Sizes to measure and record when the step is done. */
  readonly record: readonly SizeMention[];
  /** What must be done first, and what goes wrong otherwise. */
  readonly after: readonly Before[];
  /** Steps whose clock must have run out first: clamps, cure, rest. */
  readonly waits: readonly Before[];
}

/** The clocks that start at that moment of the step. */
export function timersStarting(step: Step, starts: StepTimer['starts']): readonly StepTimer[] {
  return [step.timer, step.clampTimer].filter((timer) => timer !== undefined).filter((timer) => timer.starts === starts);
}
