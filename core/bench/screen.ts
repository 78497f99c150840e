import type { SheetChoice } from '../layout/paper/choice.ts';
import type { Face } from '../faces/face.ts';
import type { Length } from '../length/length.ts';
import type { Board } from '../stock/board.ts';
import type { Rounding } from '../length/rounding.ts';
import type { SizeName } from '../piece/measurement.ts';
import type { BoardFace } from '../true/readings.ts';
import type { StepId } from '../work/step.ts';

/** Which screen, about what. The screen draws itself from the bench's state. */
export type Screen =
  /** Every other screen on one large key. */
  | { readonly name: 'menu' }
  /** `inFull`: everything about the step, for reading close by. */
  | { readonly name: 'step'; readonly step?: StepId; readonly inFull?: boolean }
  | { readonly name: 'steps' }
  | { readonly name: 'parts' }
  | { readonly name: 'part'; readonly part: string; readonly copy?: number }
  | { readonly name: 'size'; readonly size: SizeName; readonly copy?: number }
  /** What stands off the plan as made: to be cut differently, or cut already and off. */
  | { readonly name: 'moved' }
  | { readonly name: 'why'; readonly size: SizeName; readonly copy?: number }
  /** The fraction pad, for a size of a part or for reckoning. */
  | { readonly name: 'record'; readonly size?: SizeName; readonly copy?: number }
  | { readonly name: 'reckoning'; readonly result?: ReckoningResult }
  /** A mortise being chopped, stages counted from 1; `step` is the one that it was begun in. */
  | { readonly name: 'chopping'; readonly joint: string; readonly stage: number; readonly step?: StepId }
  /** The marks of a part or of one copy, a face at a time; faces count from 1. */
  | { readonly name: 'layout'; readonly part: string; readonly copy?: number; readonly face: number }
  /** What can be had on paper; with a choice, its sheets. */
  | { readonly name: 'paper'; readonly sheet?: SheetChoice }
  /** Shop, wood and glue tonight. */
  | { readonly name: 'air' }
  | { readonly name: 'wood'; readonly part?: string }
  | { readonly name: 'gluing' }
  /** One side of a board: what to plane where, or how it is and how thick it will be. */
  | { readonly name: 'truing'; readonly of?: BoardFace; readonly shows?: 'shape' }
  /** The corners from above, as the copies stand or as they might; of one copy, what was told of it, and of one face, what can be told. */
  | { readonly name: 'faces'; readonly part?: string; readonly copy?: number; readonly face?: Face; readonly shows?: 'best' | 'second' }
  /** The rack; with a board, that board and what can be told of it. */
  | { readonly name: 'boards'; readonly board?: number }
  /** The cutting plan, board by board: what is being looked for, or what was taken; or what is left on rough parts and how it is sawn. */
  | { readonly name: 'cutting'; readonly board?: number; readonly sizes?: true }
  /** What each part measures in the rough and what that is made of, and what is wanted of it. */
  | { readonly name: 'rough'; readonly part?: string }
  /** What the rack lacks; with a board, one that lies at the yard and what it would give. */
  | { readonly name: 'buying'; readonly board?: Board }
  | { readonly name: 'clocks' }
  /** What each edge has cut, and what it wants. */
  | { readonly name: 'edges' }
  | { readonly name: 'journal' }
  | { readonly name: 'settings' }
  | { readonly name: 'files' }
  | { readonly name: 'help' }
  /** To try the microphone: what is said there is shown, and nothing is done. */
  | { readonly name: 'microphone' };

/** The question in figures and the answer, for the eye. */
export interface ReckoningResult {
  readonly question: string;
  readonly answers: readonly { readonly label: string; readonly length: Length }[];
  readonly note?: string;
  /** Shown in this unit whatever the rounding chosen. */
  readonly unit?: Rounding['unit'];
}
