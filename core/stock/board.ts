import { ZERO_LENGTH, type Length } from '../length/length.ts';

/** Something in a board that a part must not hold: where it lies from the marked end and from the reference edge, and on which faces it shows. */
export interface Defect {
  readonly what: string;
  readonly from: Length;
  readonly to: Length;
  readonly fromEdge: Length;
  readonly toEdge: Length;
  /** 'through' for what shows on both faces; else the one face it spoils. */
  readonly face: 'through' | 'marked face' | 'other face';
}

/** A board of the rack. Its marked end carries its number; lengths run from there, widths from the reference edge. */
export interface Board {
  readonly number: number;
  readonly species: string;
  readonly length: Length;
  readonly width: Length;
  /** Width at the end away from the mark, for a tapered board. */
  readonly farWidth: Length;
  readonly thickness: Length;
  readonly defects: readonly Defect[];
  /** Width of sapwood along the edge away from the reference edge. */
  readonly sapwood: Length;
  readonly grain?: 'flat' | 'rift' | 'quarter';
  readonly pithSide?: 'marked face' | 'other face';
  /** Boards of one group match in colour. */
  readonly colour?: string;
  /** What it cost, in whole cents. */
  readonly cents?: number;
  /** Ends that were sawn already, of a piece of a board: sound, nothing is trimmed off them. */
  readonly sawn?: 'both ends' | 'marked end' | 'far end';
  /** The board it was cut from, for an off-cut. */
  readonly cutFrom?: number;
}

/** Rough pieces to be cut, alike: `together` says how many of them come from one stretch of one board (the layers of one leg). */
export interface Blank {
  readonly id: string;
  readonly name: string;
  readonly species: string;
  readonly length: Length;
  readonly width: Length;
  readonly thickness: Length;
  readonly count: number;
  readonly together: number;
  /** How many are resawn from one thickness of the board they are planned on; one when absent. Set by the planner. */
  readonly deep?: number;
  /** A blemish on one face alone does not matter: that face is hidden. */
  readonly mayHideDefect: boolean;
}

export interface SawSettings {
  readonly kerf: Length;
  /** Taken off each end of a board before anything else: checked ends. Not off an end that was sawn (`trimsOf`). */
  readonly endTrim: Length;
  /** Crosscut the ripped strips again where that helps. */
  readonly cutAgain: boolean;
  /** What one resaw takes, its kerf and both new faces planed flat; boards are not resawn when it is nothing or absent. */
  readonly resaw?: Length;
}

/** What is taken off a board at its marked end and at its far end. */
export function trimsOf({ sawn }: Pick<Board, 'sawn'>, { endTrim }: Pick<SawSettings, 'endTrim'>): { readonly marked: Length; readonly far: Length } {
  return { marked: sawn === 'both ends' || sawn === 'marked end' ? ZERO_LENGTH : endTrim, far: sawn === 'both ends' || sawn === 'far end' ? ZERO_LENGTH : endTrim };
}

/**
 * A blank as it comes from a board so thick: where resawing is allowed, two or more from one thickness, n × blank + (n − 1) × what a resaw takes.
 * A set that stays together comes from one thickness whole, or is not resawn.
 */
export function resawnFrom(blank: Blank, thickness: Length, { resaw = ZERO_LENGTH }: SawSettings): Blank {
  const deep = resaw === 0 ? 1 : Math.floor((thickness + resaw) / (blank.thickness + resaw));
  if (deep < 2 || deep < blank.together) return blank;
  return blank.together === 1 ? { ...blank, together: deep, deep } : { ...blank, deep: blank.together };
}
