import type { Length } from '../length/length.ts';
import type { SizeName } from '../piece/measurement.ts';
import type { TimerRequest } from '../clock/timer.ts';

/** In the order in which a part usually meets them. */
export const OPERATIONS = [
  'rough crosscut', 'reference edge', 'rip', 'rest', 'face', 'edge', 'thickness', 'width', 'ends',
  'dry check', 'lamination glue-up', 'panel glue-up', 'scrape squeeze-out', 'true again', 'orient and mark', 'joint layout', 'chop mortises',
  'saw tenons', 'fit', 'ease edges', 'foot bevel', 'dry assembly', 'glue-up', 'level', 'fix top', 'finish',
] as const;
export type Operation = (typeof OPERATIONS)[number];

/** Stable across reloads and edits of the piece: 'face/leg/3', 'glue-up/piece'. */
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
  readonly tolerance?: Length;
}

/** One step of the work: one operation on one copy of one part, or on the piece as a whole. */
export interface Step {
  readonly id: StepId;
  readonly operation: Operation;
  /** Absent for the piece as a whole. */
  readonly part?: string;
  readonly copy?: number;
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
  readonly timer?: TimerRequest & { readonly starts: 'when asked' | 'when done' };
  /** Sizes to measure and record when the step is done. */
  readonly record: readonly SizeMention[];
  /** What must be done first, and what goes wrong otherwise. */
  readonly after: readonly { readonly step: StepId; readonly because: string }[];
}
