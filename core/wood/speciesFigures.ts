/** Where a figure was taken from: read in the table or in a reproduction of it; or from memory. */
export type Ground = 'read' | 'from memory';

/** A pair of figures across the grain: radial (through the growth rings) and tangential (along them). */
export interface Across {
  readonly radial: number;
  readonly tangential: number;
}

/** Strength at 12 percent moisture, small clear specimens. */
export interface Strength {
  /** Rupture in bending, pounds to the square inch. */
  readonly rupturePsi: number;
  /** Shear along the grain, pounds to the square inch. */
  readonly shearPsi: number;
  /** Stiffness in bending, millions of pounds to the square inch. */
  readonly stiffnessMpsi: number;
  /** Side hardness, pounds-force. */
  readonly hardnessLbf: number;
}

/** What is known of a wood. Whatever is absent was not found; a coefficient can then be computed from the shrinkage. */
export interface Species {
  readonly name: string;
  readonly also: readonly string[];
  /** Percent, from green to oven-dry. Wood Handbook, Tables 4-3 and 4-4. */
  readonly shrinkage?: Across & { readonly ground: Ground };
  /** Part of the size that it changes for one percent of moisture, from 6 to 14 percent. Wood Handbook, Table 13-5. */
  readonly coefficient?: Across & { readonly ground: Ground };
  /** Specific gravity at 12 percent moisture. Wood Handbook, Tables 5-3 and 5-5. */
  readonly gravity: number;
  readonly gravityGround: Ground;
  readonly strength?: Strength & { readonly ground: Ground };
  /** What the maker should know about these figures. */
  readonly remark?: string;
}
