import { add, fractionOf, subtract } from '../length/arithmetic.ts';
import { nanometres, NANOMETRES_PER_INCH, ZERO_LENGTH, type Length } from '../length/length.ts';
import type { InputFault } from '../reckoning/reckoning.ts';
import { telling } from '../reckoning/telling.ts';
import { failure, success, type Result } from '../result.ts';
import type { ChopDrawing, ChopStage } from './chopStages.ts';

/** The open mortise of a bridle, marked out: it is sawn, and only its bottom is chopped. */
export interface SlotToCut {
  /** From the end of the part that it runs out of, along the grain, to its bottom. */
  readonly deep: Length;
  /** As wide as the chisel. */
  readonly width: Length;
  /** Of the part, from the edge that the slot opens in to the far one. */
  readonly wood: Length;
  readonly end: 'top' | 'bottom';
}

/** Past the middle from each edge, so that the two cuts meet (common practice, no source). */
const PAST = nanometres(NANOMETRES_PER_INCH / 16);

type Sawn = NonNullable<ChopDrawing['slot']>['sawn'];

/** The stages of cutting a slot in their order; all common practice, no source. */
export function slotStages(slot: SlotToCut): Result<readonly ChopStage[], InputFault> {
  const fault = faultOf(slot);
  return fault === undefined ? success([mark(slot), ...sawing(slot), ...chopping(slot), paring(slot)]) : failure(fault);
}

function faultOf({ deep, width, wood }: SlotToCut): InputFault | undefined {
  if (width <= 0) return { key: 'width', message: 'A slot is as wide as a chisel: more than nothing.' };
  if (deep <= 0) return { key: 'deep', message: 'A slot has some depth from its end: more than nothing.' };
  return wood <= 0 ? { key: 'wood', message: 'The part has some width: more than nothing.' } : undefined;
}

function drawing({ deep, wood, end }: SlotToCut, face: ChopDrawing['face'], sawn: Sawn, more: Partial<ChopDrawing> = {}): ChopDrawing {
  return { face, wood, startMark: ZERO_LENGTH, endMark: deep, chisels: [], slot: { end, sawn }, ...more };
}

function mark(slot: SlotToCut): ChopStage {
  const { deep, width } = slot;
  return {
    kind: 'mark', drawing: drawing(slot, 'first', []),
    say: telling`Square the bottom line round, ${deep} from the end. Gauge ${width} over the end and both edges.`,
    show: telling`Square the line of the bottom round, ${deep} from the end. Set the two pins to the chisel, ${width}, and gauge both sides from the bottom line on one edge, over the end, to the line on the other, stock on the reference face. Hatch the waste.`,
  };
}

/** From both edges by turns, so that the saw follows a line that the eye sees. */
function sawing(slot: SlotToCut): readonly ChopStage[] {
  const { deep, wood } = slot;
  const [near, far] = [ZERO_LENGTH, wood];
  const spot = (along: Length, down: Length): Sawn[number] => ({ along, down });
  const one = [spot(ZERO_LENGTH, near), spot(deep, near), spot(ZERO_LENGTH, far)];
  const both = [spot(ZERO_LENGTH, near), spot(deep, near), spot(fractionOf(deep, 1, 2), fractionOf(wood, 1, 2)), spot(deep, far), spot(ZERO_LENGTH, far)];
  return [
    { kind: 'saw', drawing: drawing(slot, 'first', one), say: 'Upright in the vise. Saw both cheeks in the waste, corner to corner, down to the line on this edge.', show: telling`Clamp it upright, leaning away. Saw beside both gauge lines, in the waste: from the near corner over the end to the far one, and down this edge to the line, ${deep}.` },
    { kind: 'saw', drawing: drawing(slot, 'second', both), say: 'Turn it round, and the same from the other edge.', show: 'Turn it round. Saw from the other edge in the same kerfs, down to the line there.' },
    { kind: 'saw', drawing: drawing(slot, 'second', rectangle(slot)), say: 'Now upright, and straight down to the line.', show: 'Stand it upright. Saw straight down until the saw meets the line on both edges, and no further.' },
  ];
}

function rectangle({ deep, wood }: SlotToCut): Sawn {
  return [{ along: ZERO_LENGTH, down: ZERO_LENGTH }, { along: deep, down: ZERO_LENGTH }, { along: deep, down: wood }, { along: ZERO_LENGTH, down: wood }];
}

/** The bottom is chopped half from each edge, the chisel's back to the line. */
function chopping(slot: SlotToCut): readonly ChopStage[] {
  const { deep, width, wood } = slot;
  const half = nanometres(Math.min(wood, add(fractionOf(wood, 1, 2), PAST)));
  const from = subtract(deep, nanometres(Math.min(width, deep)));
  const chopped = (face: ChopDrawing['face']): ChopDrawing => drawing(slot, face, rectangle(slot), {
    waste: { from, to: deep, top: ZERO_LENGTH, bottom: half }, flag: half, chisels: [{ at: deep, down: half, bevel: 'towards the start' }],
  });
  return [
    { kind: 'pass', pass: 1, drawing: chopped('first'), say: telling`Lay it down. Chop the bottom to ${half}, the chisel's back to the line.`, show: telling`Lay it flat on the bench and clamp it. Stand the chisel a hair before the line, its back to the line, and chop down; split the chips out towards the end, cut again on the line, and go on to ${half}, just past the middle.` },
    { kind: 'turn over', drawing: drawing(slot, 'second', rectangle(slot)), say: 'Clear the chips, and turn it over.', show: 'Turn the part over, and clear the bench of chips first, so that the edge is not bruised.' },
    { kind: 'pass', pass: 2, drawing: chopped('second'), say: 'The same from the second edge, until the waste falls out.', show: telling`The same from the second edge, to ${half}, until the waste falls out.` },
  ];
}

function paring(slot: SlotToCut): ChopStage {
  return {
    kind: 'clear the bottom', drawing: drawing(slot, 'second', [], { cut: { from: ZERO_LENGTH, to: slot.deep, down: slot.wood } }),
    say: 'Pare the bottom square, a hair hollow in the middle, and the cheeks flat to the lines.',
    show: 'Pare the bottom from both edges to the middle, square to the face and a hair hollow. Pare the cheeks flat to the gauge lines, and try the square on both.',
  };
}
