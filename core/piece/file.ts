/**
 * The piece file: what a piece of furniture is, as written on disk. JSON, version 2, held by
 * piece.schema.json; every type here has its twin there.
 */

/**
 * An arithmetic expression over named sizes with units in it, `inside.length + 2 * tenon`, or the same
 * with what the maker should know about the size.
 */
export type SizeSource = string | DescribedSize;

export interface DescribedSize {
  readonly is: string;
  /** What the size is measured from, said with it: 'from the top end', 'shoulder to shoulder'. */
  readonly from?: string;
  /** Said instead of the size's own name. */
  readonly say?: string;
  /** A critical size holds; the others may float around it. */
  readonly critical?: boolean;
}

export interface PieceFile {
  /** Where an editor finds the schema; nothing else looks at it. */
  readonly $schema?: string;
  readonly format: 'benchcall piece';
  readonly version: 2;
  readonly name: string;
  readonly about?: string;
  /** Named sizes that stand on nothing or on each other; dotted names: `inside.length`. */
  readonly parameters: Readonly<Record<string, SizeSource>>;
  readonly parts: readonly Part[];
  readonly joints: readonly Joint[];
  readonly allowances: Allowances;
  readonly tools: Tools;
  readonly adhesive: Adhesive;
  readonly finish: Finish;
  /** What the parts are cut from, a board each with the columns of the table of boards (stock/boardTable.ts). */
  readonly boards?: readonly FiledBoard[];
  /** The cutting plan that was taken, as the journal has it. */
  readonly plan?: object;
  /** What was told of parts, of copies and of boards of panels at the bench. */
  readonly told?: readonly FiledTold[];
}

type FiledFace = 'A' | 'B' | 'C' | 'D';
type FiledEnd = 'numbered' | 'other';

/** Of a part: what is left on it, whether it may hide a defect, what counts first when its copies are placed. With a copy: its faces and ends. With a board: which way it arches. */
export interface FiledTold {
  readonly part: string;
  readonly copy?: number;
  readonly board?: number;
  /** Written lengths: `1/2 in`. */
  readonly longer?: string;
  readonly wider?: string;
  readonly thicker?: string;
  readonly mayHideDefect?: boolean;
  readonly order?: readonly string[];
  readonly show?: readonly FiledFace[];
  readonly hide?: readonly FiledFace[];
  readonly best?: readonly FiledFace[];
  readonly glueLines?: readonly FiledFace[];
  readonly straight?: readonly FiledFace[];
  readonly flat?: readonly FiledFace[];
  readonly figured?: readonly FiledFace[];
  readonly faceSide?: FiledFace;
  readonly faceEdge?: FiledFace;
  readonly up?: FiledEnd;
  readonly arch?: FiledEnd;
  readonly arches?: 'up' | 'down';
}

/** Cells by the name of their column; what is not told is left out. */
export type FiledBoard = Readonly<Record<string, string | number>>;

export interface Part {
  /** Used in dotted names: letters and digits, starting with a small letter. `longRail` */
  readonly id: string;
  /** Said aloud and shown, singular: 'long rail'. */
  readonly name: string;
  /** Said aloud for more than one; when absent made by the usual rules. */
  readonly plural?: string;
  readonly alsoCalled?: readonly string[];
  readonly count: number;
  /** Where each copy goes, once oriented: 'front left' … as many as `count`. */
  readonly places?: readonly string[];
  readonly species: string;
  /**
   * Always `length`, `width`, `thickness`; more as the part needs: `shoulders` is shoulder to shoulder, `stock` the thickness of the
   * rough boards it is cut from, `horn` what a leg or stile is left longer at its top end (`lowerHorn` at its lower end) until its joints are glued. Others follow unless they are given here (derived.ts): `roughLength`, `roughWidth`, `roughThickness`, `ripWidth`,
   * and `blankThickness` of a lamination, `boardWidth` of a panel.
   */
  readonly sizes: Readonly<Record<string, SizeSource>>;
  readonly made: Making;
  /** One of its faces is never seen: a knot that shows on one face of the board may lie in it. */
  readonly mayHideDefect?: boolean;
  /** Names of the faces: the reference pair, and which show. */
  readonly referenceFace?: string;
  readonly referenceEdge?: string;
  /** How far visible edges are eased, and the bevel around a foot, if it has one. */
  readonly easing?: SizeSource;
  readonly footBevel?: SizeSource;
  /** How far in on the end, when the bevel does not run as far in as up the sides. */
  readonly footBevelInwards?: SizeSource;
}

type Making =
  | { readonly kind: 'solid' }
  /** Layers glued face to face to make the thickness. */
  | { readonly kind: 'laminated'; readonly layers: number; readonly layerThickness: SizeSource }
  /** Boards glued edge to edge to make the width. */
  | { readonly kind: 'panel'; readonly boards: number };

export type Joint = MortiseAndTenon | Fixing;

export interface MortiseAndTenon {
  readonly kind: 'mortise and tenon';
  readonly id: string;
  readonly name: string;
  /** The part that carries the tenons (both its ends). */
  readonly tenonOn: string;
  readonly mortiseIn: string;
  /** Which size of the mortised part the mortise goes into; its width when absent. Rails that meet in a leg differ in it. */
  readonly mortiseInto?: 'width' | 'thickness';
  /** The places of the mortised part that have this joint ('back left' …); all when absent. */
  readonly places?: readonly string[];
  /** Mitred or stepped where two tenons meet inside a leg; square when absent. */
  readonly tenonEnds?: 'square' | 'mitred' | 'stepped';
  /** Seen on the far side; or open at the end of the part as well, as at the corner of a frame. Blind when absent. */
  readonly shape?: 'blind' | 'through' | 'bridle';
  /** Twin tenons: of a wide rail one above the other, of one that lies flat side by side. */
  readonly tenons?: 'one' | 'one above the other' | 'side by side';
  /** A rail that lies flat, as one under a drawer does, has its width across the leg. On edge when absent. */
  readonly lies?: 'on edge' | 'flat';
  /** What is left of the tenon above its top shoulder, so that the rail cannot twist. */
  readonly haunch?: 'square' | 'sloped';
  /**
   * `tenonLength`, `tenonThickness`, `tenonWidth`, `mortiseDepth`, `mortiseWidth`, `mortiseLength`, of each when there are two;
   * `setback` (outer face of the rail from the outer face of the leg), `fromTop` (top of the uppermost mortise from the
   * top end of the leg), `gap` (between twin tenons). Where they are not given, `outerShoulder` (outer face of the rail to the tenon) puts the tenon in the middle of the
   * rail's thickness, and `topShoulder` (top edge of the rail to the tenon) in the middle of its width; a haunch is as wide as the top shoulder (`haunchWidth`)
   * and as long as the tenon is thick (`haunchLength`).
   */
  readonly sizes: Readonly<Record<string, SizeSource>>;
}

/** A top held so that it can move with the seasons: buttons in a groove, for one. */
export interface Fixing {
  readonly kind: 'fixing';
  readonly id: string;
  readonly name: string;
  readonly holds: string;
  readonly to: string;
  /** The part that does the holding, when it is made: the button. */
  readonly with?: string;
  readonly count: number;
  /**
   * For buttons: `tongueLength`, `tongueThickness`, `grooveWidth`, `grooveDepth`, `grooveFromTop` (top edge of the rail to the groove),
   * `step` (the button's top face to its tongue).
   */
  readonly sizes: Readonly<Record<string, SizeSource>>;
}

/** What is left on a part in the rough, over its finished sizes. */
interface Allowances {
  readonly roughLength: SizeSource;
  readonly roughWidth: SizeSource;
  readonly roughThickness: SizeSource;
  /** Left on after the first ripping, for the second truing. */
  readonly afterRest?: SizeSource;
}

interface Tools {
  /** Widths as measured, not as stamped. */
  readonly chisels: readonly SizeSource[];
  readonly markingGauges?: number;
  readonly mortiseGauges?: number;
  readonly clamps: readonly { readonly kind: string; readonly count: number; readonly opens: SizeSource }[];
  readonly others?: readonly string[];
}

/** By class, never by brand. Times are minutes; absent ones are common practice for the class. */
export interface Adhesive {
  readonly kind: string;
  readonly openMinutes?: number;
  readonly closedMinutes?: number;
  readonly clampMinutes?: number;
  readonly fullCureHours?: number;
}

interface Finish {
  readonly kind: string;
  readonly coats: number;
  readonly recoatHours: number;
}
