import type { Length } from '../length/length.ts';
import { N_PER_MM2_PER_PSI, type WoodStrength } from '../wood/woodStrength.ts';

/** A rectangle of one cheek that is glued: across the rail, and along the tenon from the shoulder. */
export interface GluedRectangle {
  readonly top: Length;
  readonly bottom: Length;
  readonly length: Length;
}

export interface Racking {
  /** Moment at which the tenon, as a cantilever, breaks at the shoulder. */
  readonly tenonNm: number;
  /** Moment at which the glue of both cheeks gives in torsion. */
  readonly glueNm: number;
  /** The lower of the two. */
  readonly jointNm: number;
  /** What a push at the top of a frame of four legs asks of each joint. */
  readonly askedNm: number;
  /** How many times over. */
  readonly times: number;
}

/** Of the wood's shear along the grain: cheeks are glued across the grain of the leg. An assumption, no source; published lap tests of beech come to about this. */
const GLUE_SHARE = 0.5;

/**
 * Guidance by plain statics, never approval. Tenon: M = rupture · I / c, for one tenon rupture · t · w² / 6. Glue: M = 2 · shear · J / r, over both
 * cheeks, with J the polar moment of the glued surface about its own centre and r its farthest corner. Asked: M = F · h / 4, of a push shared by
 * two frames with two joints each.
 */
export function rackingOf(cheek: readonly GluedRectangle[], thickness: Length, wood: WoodStrength, push: { readonly newtons: number; readonly heightMm: number }): Racking {
  const rupture = wood.rupturePsi * N_PER_MM2_PER_PSI;
  const shear = wood.shearPsi * N_PER_MM2_PER_PSI * GLUE_SHARE;
  const rectangles = cheek.map(({ top, bottom, length }) => ({ from: top / 1e6, width: (bottom - top) / 1e6, length: length / 1e6 }));
  const tenonNm = (rupture * sectionModulusMm3(rectangles, thickness / 1e6)) / 1000;
  const glueNm = (2 * shear * torsionMm3(rectangles)) / 1000;
  const jointNm = Math.min(tenonNm, glueNm);
  const askedNm = (push.newtons * push.heightMm) / 1000 / 4;
  return { tenonNm, glueNm, jointNm, askedNm, times: askedNm > 0 ? jointNm / askedNm : Infinity };
}

interface Rectangle { readonly from: number; readonly width: number; readonly length: number }

/** I / c of the tenons' section at the shoulder, twin tenons as one. */
function sectionModulusMm3(rectangles: readonly Rectangle[], thickness: number): number {
  const centre = weighted(rectangles, ({ width }) => width, middle);
  const inertia = rectangles.reduce((sum, one) => sum + thickness * (one.width ** 3 / 12 + one.width * (middle(one) - centre) ** 2), 0);
  const farthest = Math.max(...rectangles.map(({ from, width }) => Math.max(centre - from, from + width - centre)));
  return inertia / farthest;
}

/** J / r of one cheek. */
function torsionMm3(rectangles: readonly Rectangle[]): number {
  const area = ({ width, length }: Rectangle): number => width * length;
  const centre = { across: weighted(rectangles, area, middle), along: weighted(rectangles, area, ({ length }) => length / 2) };
  const polar = rectangles.reduce((sum, one) => {
    const offset = (middle(one) - centre.across) ** 2 + (one.length / 2 - centre.along) ** 2;
    return sum + area(one) * ((one.width ** 2 + one.length ** 2) / 12 + offset);
  }, 0);
  const corners = rectangles.flatMap(({ from, width, length }) => [from, from + width].flatMap((across) => [0, length].map((along) => Math.hypot(across - centre.across, along - centre.along))));
  return polar / Math.max(...corners);
}

function middle({ from, width }: Rectangle): number {
  return from + width / 2;
}

function weighted(rectangles: readonly Rectangle[], weight: (one: Rectangle) => number, of: (one: Rectangle) => number): number {
  return rectangles.reduce((sum, one) => sum + weight(one) * of(one), 0) / rectangles.reduce((sum, one) => sum + weight(one), 0);
}
