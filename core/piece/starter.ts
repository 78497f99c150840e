import { failure, success } from '../result.ts';
import type { Result } from '../result.ts';
import { evaluate, sizeOf } from './evaluate.ts';
import type { PieceFile } from './file.ts';
import { finishKindOf } from './finishKinds.ts';
import { misfits, renderSentence } from './fits.ts';
import { loadPiece, writeFault, writePiece } from './load.ts';
import type { StarterInput } from './starter/fields.ts';
import { STARTER_DEFAULTS } from './starter/fields.ts';
import { jointsOf } from './starter/joints.ts';
import { longStretchers, partsOf } from './starter/parts.ts';
import type { Proportions } from './starter/proportions.ts';
import { proportionsOf } from './starter/proportions.ts';
import type { StarterFault } from './starter/readInput.ts';
import { checkInput } from './starter/readInput.ts';
import { faultsTogether } from './starter/together.ts';
import { writeExact } from './writeExact.ts';

export { STARTER_DEFAULTS, STARTER_FIELDS } from './starter/fields.ts';
export type { StarterField, StarterInput } from './starter/fields.ts';
export { expectedOf, readAnswer, readStarterInput } from './starter/readInput.ts';
export type { StarterFault } from './starter/readInput.ts';

/**
 * A complete file for a leg-and-rail table, from what it is to hold and the boards it is to be made of; what is not given takes its default.
 * It loads without a fault and fits together, or else the faults say which answers do not go together.
 */
export function starterPiece(given: Partial<StarterInput>): Result<PieceFile, readonly StarterFault[]> {
  const input: StarterInput = { ...STARTER_DEFAULTS, ...given };
  const faults = checkInput(input);
  if (faults.length > 0) return failure(faults);
  const sizes = proportionsOf(input);
  const apart = faultsTogether(input, sizes);
  if (apart.length > 0) return failure(apart);
  const file = fileOf(input, sizes);
  const wrong = whatIsWrong(file);
  return wrong.length === 0 ? success(file) : failure(wrong);
}

function fileOf(input: StarterInput, sizes: Proportions): PieceFile {
  return {
    format: 'benchcall piece',
    version: 2,
    name: input.name,
    about: 'Made by the starter: look over every size before you cut.',
    parameters: parametersOf(input, sizes),
    parts: partsOf(input, sizes),
    joints: jointsOf(input, sizes),
    allowances: { roughLength: '1 in', roughWidth: '1/4 in', roughThickness: '1/8 in', afterRest: '1/8 in' },
    tools: {
      chisels: sizes.chisels.map(writeExact), markingGauges: 2, mortiseGauges: 1,
      clamps: [{ kind: 'bar clamp', count: 6, opens: '48 in' }],
    },
    adhesive: { kind: input.adhesive },
    finish: { kind: input.finish, coats: 3, recoatHours: finishKindOf(input.finish).recoatHours },
  };
}

function parametersOf(input: StarterInput, sizes: Proportions): PieceFile['parameters'] {
  const exact = (key: 'inside.length' | 'inside.width' | 'height' | 'overhang.ends' | 'overhang.sides'): string => writeExact(input[key]);
  return {
    'inside.length': { is: exact('inside.length'), from: 'leg to leg along the front', critical: true },
    'inside.width': { is: exact('inside.width'), from: 'leg to leg at the ends', critical: true },
    height: { is: exact('height'), from: 'floor to the top face', critical: true },
    'overhang.ends': { is: exact('overhang.ends'), say: 'overhang at the ends', from: 'outer face of the leg to the end of the top' },
    'overhang.sides': { is: exact('overhang.sides'), say: 'overhang at the sides', from: 'outer face of the leg to the edge of the top' },
    'section.leg': { is: writeExact(sizes.leg), say: 'leg section' },
    'rail.width': writeExact(sizes.railWidth),
    'rail.thickness': writeExact(sizes.railThickness),
    'rail.setback': { is: writeExact(sizes.setback), from: 'from the outer face of the leg' },
    ...stretcherParameters(input, sizes),
    'mortise.width': { is: writeExact(sizes.mortise), from: 'width of the chisel as measured' },
    'mortise.clearance': { is: '1/16 in', from: 'end of the tenon to the bottom of the mortise' },
  };
}

/** Long stretchers stand an inch above the side ones, so that one mortise does not weaken the other. */
function stretcherParameters(input: StarterInput, sizes: Proportions): PieceFile['parameters'] {
  if (input.stretchers === 'none') return {};
  return {
    'stretcher.width': writeExact(sizes.stretcherWidth),
    'stretcher.thickness': writeExact(sizes.railThickness),
    'stretcher.height': { is: writeExact(sizes.stretcherHeight), say: 'side stretcher height', from: 'floor to the underside of the side stretchers' },
    ...(longStretchers(input).length === 0 ? {} : {
      'stretcher.longHeight': { is: 'stretcher.height + stretcher.width + 1 in', say: 'long stretcher height', from: 'floor to the underside of the long stretchers' },
    }),
  };
}

function whatIsWrong(file: PieceFile): readonly StarterFault[] {
  const loaded = loadPiece(writePiece(file));
  if (!loaded.ok) return loaded.fault.map((fault) => ({ key: '', expected: fault.expected, found: fault.found, message: writeFault(fault) }));
  const sizes = evaluate(loaded.value, []);
  return misfits(loaded.value, []).map(({ say }) => ({
    key: '', expected: 'sizes that go together', found: 'sizes that do not',
    message: renderSentence(say, ({ size, copy }) => sizeOf(sizes, size, copy)?.length, writeExact),
  }));
}
