import type { PieceFile } from '../piece/file.ts';
import type { Caution } from './step.ts';

/**
 * The usual cautions, in our own words. They rest on OSHA 3080 (hand tools), OSHA 1910.1000 and NIOSH (wood dust), and on
 * fire services' and university laboratories' advice on oily rags; they take the place of no label and no local rule.
 */
export const CAUTIONS = {
  saw: { id: 'saw', say: 'Hold the work fast, start the saw gently, and keep fingers out of its line.' },
  resaw: { id: 'resaw', say: 'Resawing: hold the piece upright and fast, hands clear above and behind the saw. Fresh faces may cup: let them rest before they are planed.' },
  plane: { id: 'plane', say: 'Work against a stop, and keep fingertips off the arris: a planed edge cuts.' },
  chisel: { id: 'chisel', say: 'Clamp the work. Both hands stay behind the edge.' },
  mallet: { id: 'mallet', say: 'Eye protection on before you strike. No loose heads, no split handles.' },
  dullEdge: { id: 'dull edge', say: 'A dull edge slips. Stop and strop when it needs a push.' },
  coldGlue: { id: 'cold glue', say: 'Glue, wood and shop must be warm enough for this glue. Cold can double the clamp time.' },
  glueOnSkin: { id: 'glue on skin', say: 'Gloves and eye protection for this glue, and fresh air, as its label says.' },
  clamps: { id: 'clamps', say: 'Tighten by turns, and keep fingers out from between.' },
  scraper: { id: 'scraper', say: 'Hard glue chips fly and cut. Eye protection on.' },
  lift: { id: 'lift', say: 'Heavy and awkward: get help, or turn it on its edge first.' },
  drill: { id: 'drill', say: 'Eye protection on, and set a depth stop so that the drill stays inside.' },
  dust: { id: 'dust', say: 'Fine dust harms the lungs. Mask on if you sand, and take the dust away.' },
  fumes: { id: 'fumes', say: 'Fresh air, and no flame or spark nearby. Follow the label.' },
  oilyRags: { id: 'oily rags', say: 'Oily rags can set themselves alight. Spread them flat outdoors, or under water in a lidded metal can.' },
} as const satisfies Readonly<Record<string, Caution>>;

/** For spreading and clamping this adhesive. */
export function glueCautions({ adhesive }: PieceFile): readonly Caution[] {
  const irritant = /epoxy|polyurethane|\bpur\b|urea|\buf\b/i.test(adhesive.kind);
  return [CAUTIONS.coldGlue, ...(irritant ? [CAUTIONS.glueOnSkin] : []), CAUTIONS.clamps];
}

/** For this finish. Oils that dry by taking up oxygen heat up in a heap of rags; a finish that is not known is taken for one of them. */
export function finishCautions({ finish }: PieceFile): readonly Caution[] {
  const cannotHeat = /shellac|wax|lacquer|water|soap/i.test(finish.kind) && !/oil/i.test(finish.kind);
  const hasNoFumes = /water|soap/i.test(finish.kind);
  return [...(cannotHeat ? [] : [CAUTIONS.oilyRags]), ...(hasNoFumes ? [] : [CAUTIONS.fumes]), CAUTIONS.dust];
}
