import { add, fractionOf, shareOut, subtract, timesWhole } from '../length/arithmetic.ts';
import type { Length } from '../length/length.ts';
import type { InputFault } from '../reckoning/reckoning.ts';
import { telling } from '../reckoning/telling.ts';
import { failure, success, type Result } from '../result.ts';
import { chooseChisel, FIFTH, THIRD } from './chisel.ts';
import { deepestMortise, downTo } from './depth.ts';

/** The corner of a frame as an open mortise, with a tenon of the rail's whole width: strong in glue, and seen on two sides. */
export interface Bridle {
  readonly chisel: Length;
  readonly outerShoulder: Length;
  readonly innerShoulder: Length;
  /** The tenon is as long as the stile is wide, and the slot as deep as the rail is wide; both may be left a little proud. */
  readonly tenonLength: Length;
  readonly slotDepth: Length;
  readonly tenonWidth: Length;
}

export function planBridle({ rail, stile, chisels, proud }: {
  readonly rail: { readonly width: Length; readonly thickness: Length };
  readonly stile: { readonly width: Length; readonly thickness: Length };
  readonly chisels: readonly Length[];
  /** Left on both ends to be planed off. */
  readonly proud: Length;
}): Result<Bridle, InputFault> {
  if (rail.width <= 0 || stile.width <= 0 || rail.thickness <= 0) return failure({ message: 'Rail and stile have some width and thickness: more than nothing.' });
  if (rail.thickness !== stile.thickness) {
    return failure({ key: 'stile.thickness', message: telling`The corner of a bridle joint is flush on both faces: rail and stile are to be of one thickness, not ${rail.thickness} and ${stile.thickness}.` });
  }
  const chisel = chooseChisel(rail.thickness, chisels, THIRD);
  if (!chisel.ok) return chisel;
  const outerShoulder = fractionOf(subtract(rail.thickness, chisel.value), 1, 2);
  return success({
    chisel: chisel.value, outerShoulder, innerShoulder: subtract(rail.thickness, add(outerShoulder, chisel.value)),
    tenonLength: add(stile.width, proud), slotDepth: add(rail.width, proud), tenonWidth: rail.width,
  });
}

/** A drawer rail lies flat between the legs and is held by two tenons side by side. */
export interface DrawerRail {
  readonly chisel: Length;
  /** From the front edge of the rail to each tenon's near cheek. */
  readonly tenons: readonly { readonly fromFront: Length; readonly width: Length }[];
  /** Above and below; the tenon's height is what is left. */
  readonly edgeShoulder: Length;
  readonly tenonHeight: Length;
  readonly tenonLength: Length;
  readonly mortiseDepth: Length;
}

/** Rail `width` runs from front to back, `thickness` is its height as it lies. Spaces and tenons as even as the chisel allows. */
export function planDrawerRail({ rail, legInto, legAcross, setback, chisels, clearance, step }: {
  readonly rail: { readonly width: Length; readonly thickness: Length };
  readonly legInto: Length;
  readonly legAcross: Length;
  readonly setback: Length;
  readonly chisels: readonly Length[];
  readonly clearance: Length;
  readonly step: Length;
}): Result<DrawerRail, InputFault> {
  if (rail.width <= 0 || rail.thickness <= 0 || legInto <= 0) return failure({ message: 'Rail and leg have some size: more than nothing.' });
  if (setback < 0) return failure({ key: 'setback', message: 'The rail would stand proud of the leg in front. Give nothing for one that is flush.' });
  if (add(setback, rail.width) > legAcross) return failure({ key: 'rail.width', message: telling`A drawer rail ${rail.width} wide, set back ${setback}, is wider than the leg, ${legAcross}. Let the rest of it run behind the leg, and give the width at the leg.` });
  const chisel = chooseChisel(rail.width, chisels, FIFTH);
  if (!chisel.ok) return chisel;
  const [first, second, third] = shareOut(subtract(rail.width, timesWhole(chisel.value, 2)), 3);
  const longest = subtract(deepestMortise(legInto).depth, clearance);
  if (first === undefined || second === undefined || third === undefined || first <= 0 || longest <= 0) return failure({ key: 'rail.width', message: 'Nothing is left for two tenons with spaces between them.' });
  const edgeShoulder = fractionOf(rail.thickness, 1, 8);
  const tenonLength = downTo(step, longest);
  return success({
    chisel: chisel.value,
    tenons: [{ fromFront: first, width: chisel.value }, { fromFront: add(first, chisel.value, second), width: chisel.value }],
    edgeShoulder, tenonHeight: subtract(rail.thickness, timesWhole(edgeShoulder, 2)),
    tenonLength, mortiseDepth: add(tenonLength, clearance),
  });
}
