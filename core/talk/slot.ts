import type { Bench } from '../bench/bench.ts';
import type { GapSense, Operand, Request, SideMeant } from '../bench/request.ts';
import type { TimerKind } from '../clock/timer.ts';
import type { Care } from '../edge/upkeep.ts';
import type { EdgeName } from '../journal/edges.ts';
import type { Face } from '../faces/face.ts';
import type { Level } from '../faces/levels.ts';
import type { Liking, Quality } from '../faces/likes.ts';
import type { AddressWord } from '../journal/settings.ts';
import type { Screen } from '../bench/screen.ts';
import type { Length } from '../length/length.ts';
import type { Rounding } from '../length/rounding.ts';
import type { Objective } from '../stock/objectives.ts';
import type { DefectKind } from '../stock/rack.ts';
import type { Spot } from '../true/guide.ts';
import type { Deed } from '../work/deeds.ts';
import type { SizeMention, StepId } from '../work/step.ts';
import type { Trouble } from '../work/troubles.ts';
import type { OwnerMention } from './names.ts';
import type { Fault, Half, Misfit } from './jointFaults.ts';

/** Which way a size is off, and which size that can be said of. */
export interface Off {
  readonly dimensions: readonly string[];
  readonly sign: 1 | -1;
}

/** What may stand in a pattern between braces, and what it is read as. */
export interface SlotValues {
  /** 'leg two width', 'thickness of the top', 'long rail shoulder to shoulder' */
  readonly size: SizeMention;
  /** 'leg two', 'the long rail', 'front left leg', 'long rail tenon', 'inside': what has sizes. */
  readonly owner: OwnerMention;
  /** What has sizes, where only a joint makes sense: 'long rail tenon', 'leg mortise'. */
  readonly joint: OwnerMention;
  readonly part: { readonly part: string; readonly copy?: number };
  /** All copies of a part. */
  readonly parts: { readonly part: string; readonly copy?: number };
  /** The whole piece: 'table'. */
  readonly whole: true;
  /** What a part is glued up from: 'leg layers', 'top boards'. */
  readonly pieces: { readonly part: string };
  /** One copy of a part: 'leg three'. */
  readonly copy: { readonly part: string; readonly copy: number };
  /** Another one, beside `copy`. */
  readonly other: { readonly part: string; readonly copy: number };
  /** 'front left' */
  readonly place: string;
  /** 'A and B', 'all four faces' */
  readonly faces: readonly Face[];
  readonly face: Face;
  /** 'show A and B, hide C' */
  readonly likings: readonly Liking[];
  /** 'best', 'straight grain', 'face side': what a face is. */
  readonly quality: Quality;
  /** What counts first when legs are placed: 'pairs', 'best faces'. */
  readonly level: Level;
  readonly before: Level;
  /** 'long', 'wide', 'thick': the dimensions that it asks for, the likeliest first. */
  readonly adjective: readonly string[];
  /** 'short', 'too wide': which way a size is off. */
  readonly off: Off;
  /** 'width', 'shoulders': a dimension without its owner. */
  readonly dimension: string;
  readonly length: Length;
  /** At most a hand's breadth or two: what is trimmed, added, set out. */
  readonly small: Length;
  readonly setback: Length;
  readonly otherSetback: Length;
  /** Less than an inch, or nothing: light under a straightedge, a kerf, a shaving. */
  readonly gap: Length;
  /** So many times, or into so many. */
  readonly count: number;
  readonly spaces: number;
  /** A board by its number. */
  readonly board: number;
  /** Another copy, by its number alone. */
  readonly nth: number;
  readonly stage: number;
  readonly loudness: number;
  /** Degrees of arc, of an edge. */
  readonly angle: number;
  /** Of a board foot, in hundredths of the money. */
  readonly price: number;
  readonly fraction: { readonly numerator: number; readonly denominator: number };
  readonly of: Operand;
  readonly left: Operand;
  readonly right: Operand;
  readonly each: Operand;
  /** Two lengths measured, in the order in which they were said. */
  readonly first: Length;
  readonly second: Length;
  readonly unit: Rounding['unit'];
  readonly rounding: Rounding;
  /** Degrees Celsius, whichever scale was said. */
  readonly degrees: number;
  /** Of the air. */
  readonly percent: number;
  /** Of the wood. */
  readonly moisture: number;
  readonly grams: number;
  /** Pounds-force. */
  readonly pounds: number;
  readonly duration: number;
  /** A duration before its noun: 'a thirty minute timer'. */
  readonly span: number;
  /** A duration after 'every'. */
  readonly interval: number;
  readonly kind: TimerKind;
  /** A clock that runs, by its number. */
  readonly timer: number;
  readonly step: StepId;
  readonly screen: Screen;
  /** How thick a board is in the rough, told by quarters. */
  readonly quarter: Length;
  readonly defect: DefectKind;
  readonly species: string;
  readonly objective: Objective;
  /** Along a board, from its marked end. */
  readonly from: Length;
  readonly to: Length;
  readonly edge: EdgeName;
  /** 'stropped', 'honed': what was done to an edge. */
  readonly care: Care;
  /** A side of a board, as far as it is said. */
  readonly side: SideMeant;
  /** A place along a board, from its marked end. */
  readonly spot: Spot;
  readonly sense: GapSense;
  /** Which end of the winding sticks is high, what a straightedge shows across, and where a square shows light. */
  readonly lean: GapSense;
  readonly across: GapSense;
  readonly light: GapSense;
  /** 'is cupped', 'rocks': what is wrong with a board. */
  readonly warp: Trouble;
  /** 'tenon', 'shoulder': of a joint that is not named. */
  readonly half: Half;
  /** 'too tight', and 'has a gap': what is wrong with it. */
  readonly misfit: Misfit;
  readonly fault: Fault;
  /** 'squared': what was done to a part. */
  readonly deed: Deed;
  readonly address: AddressWord;
  readonly choice: number;
  readonly text: string;
}

export type SlotName = keyof SlotValues;

/** One way to understand the words of a slot, or why they cannot be. */
export type Reading<Value> =
  | SoundReading<Value>
  | { readonly fault: string; /** Something of it was understood, so that the reason is worth telling. */ readonly partly?: true };

export interface SoundReading<Value> {
  readonly value: Value;
  /** What tells it from the others when several are meant. */
  readonly labels?: Labels;
  /** Meant by a piece of its name only: passed over when something goes by the whole of it. */
  readonly loose?: true;
}

export type Labels = readonly [short: string, full: string];

export interface Slot<Value> {
  /** All words must belong to it. Several readings are a question to be asked; one with a fault is a reason to be told. */
  readonly read: (words: readonly string[], bench: Bench) => readonly Reading<Value>[];
  /** Enough examples that every word the slot may hold is among them. */
  readonly samples: (bench: Bench) => readonly string[];
  /** The most words it may have. */
  readonly longest: number;
}

/** What a matched pattern comes to: a request, a reason why not, or nothing after all. */
export type Built = Request | { readonly fault: string; /** It makes sense, only not at this moment. */ readonly notNow?: true } | undefined;
