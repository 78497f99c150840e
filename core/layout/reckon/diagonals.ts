import { absolute } from '../../length/arithmetic.ts';
import { nanometres } from '../../length/length.ts';
import { reckoning } from '../../reckoning/reckoning.ts';
import { telling } from '../../reckoning/telling.ts';
import { failure, success } from '../../result.ts';
import { checkDiagonals } from '../diagonals.ts';
import { checkFourSided } from '../fourSided.ts';
import { LINEAR_SOURCE, SQUARE_SOURCE, squareTolerance } from '../generalTolerance.ts';

export const diagonals = reckoning({
  name: 'diagonals',
  about: 'how far a rectangular frame is out of square, and which way to pull the clamp',
  inputs: {
    first: { kind: 'length', say: 'diagonal from the near left corner to the far right one' },
    second: { kind: 'length', say: 'diagonal from the near right corner to the far left one' },
    along: { kind: 'length', say: 'near side and far side, when known', optional: true },
    across: { kind: 'length', say: 'left side and right side, when known', optional: true },
    tolerance: { kind: 'length', say: 'diagonals that differ by no more are right (ISO 2768-1 medium, 0.8 mm for 400 to 1000 mm)', default: '1/32 in' },
  },
  reckon: ({ first, second, along, across, tolerance }) => {
    if ((along === undefined) !== (across === undefined)) return failure({ key: along === undefined ? 'along' : 'across', message: 'Give both sides, or neither.' });
    const rectangle = along === undefined || across === undefined ? undefined : { along, across };
    const found = checkDiagonals(first, second, rectangle);
    if (!found.ok) return found;
    const { longer, difference, whenSquare, clampCloses, sides } = found.value;
    const square = difference <= tolerance;
    return success({
      result: [
        { key: 'square', text: square ? 'yes' : 'no' }, { key: 'longer', text: longer }, { key: 'difference', length: difference },
        { key: 'whenSquare', length: whenSquare }, { key: 'clampCloses', length: clampCloses },
        { key: 'clamp', text: square ? 'leave it' : `along the ${longer} diagonal` },
        ...(sides && rectangle ? [
          { key: 'farSideToTheRight', length: sides.farSideRight }, { key: 'offSquare', number: sides.offDegrees, unit: 'degrees' }, { key: 'diagonalBySides', length: sides.diagonal },
          { key: 'allowedOutOfSquare', length: squareTolerance(nanometres(Math.min(rectangle.along, rectangle.across))) },
        ] : []),
      ],
      how: [
        telling`Opposite sides taken as equal: both diagonals are ${whenSquare} when it is square, √((first² + second²) / 2).`,
        ...(sides ? ['The far side stands (first² − second²) / (4 × along) to the right; the corner is off by the angle whose sine is (first² − second²) / (4 × along × across).'] : []),
        'Clamp along the longer diagonal, a little past, and let it spring back before it is measured again.',
      ],
      source: ['parallelogram law, plane geometry', `tolerance of the diagonals: ${LINEAR_SOURCE}, medium`, ...(sides ? [SQUARE_SOURCE] : [])],
      warnings: sides && Math.abs(whenSquare - sides.diagonal) > 4 * tolerance
        ? [telling`The sides make a diagonal of ${sides.diagonal}, the diagonals one of ${whenSquare}: a side is off, or they were not measured between the same corners.`] : [],
    });
  },
});

export const fourSided = reckoning({
  name: 'four-sided',
  about: 'the corners of a frame with four sides of any length, from the sides and a diagonal',
  inputs: {
    ab: { kind: 'length', say: 'side A to B, the corners going round' },
    bc: { kind: 'length', say: 'side B to C' },
    cd: { kind: 'length', say: 'side C to D' },
    da: { kind: 'length', say: 'side D to A' },
    ac: { kind: 'length', say: 'diagonal A to C' },
    bd: { kind: 'length', say: 'diagonal B to D, to see whether it lies flat', optional: true },
    tolerance: { kind: 'length', say: 'what the second diagonal may be off before it means something (ISO 2768-1 medium, 0.8 mm for 400 to 1000 mm)', default: '1/32 in' },
  },
  reckon: ({ ab, bc, cd, da, ac, bd, tolerance }) => {
    const found = checkFourSided({ ab, bc, cd, da, ac, ...(bd === undefined ? {} : { bd }) });
    if (!found.ok) return found;
    const { corners, otherDiagonal, otherDiagonalOff: off, whenSymmetrical } = found.value;
    return success({
      result: [
        ...corners.flatMap(({ corner, degrees, leans, shorterSide }) => [
          { key: `${corner}.angle`, number: degrees, unit: 'degrees' }, { key: `${corner}.leans`, length: leans }, { key: `${corner}.allowedOutOfSquare`, length: squareTolerance(shorterSide) },
        ]),
        { key: 'otherDiagonal', length: otherDiagonal },
        ...(off === undefined ? [] : [{ key: 'otherDiagonalOff', length: off }]),
        ...(whenSymmetrical === undefined ? [] : [{ key: 'bothDiagonalsWhenSymmetrical', length: whenSymmetrical }]),
      ],
      how: [
        'The diagonal A to C makes two triangles of the frame; each angle is by the law of cosines.',
        'At each corner: how far the end of its shorter side stands off the square, outwards when positive.',
        ...(whenSymmetrical === undefined ? [] : ['Both diagonals of the symmetrical frame with these sides: √(AB · CD + BC · DA), by Ptolemy.']),
      ],
      source: ['law of cosines; Ptolemy, Almagest I.10', SQUARE_SOURCE],
      warnings: off === undefined || Math.abs(off) <= tolerance ? []
        : [off < 0 ? telling`B to D is ${absolute(off)} shorter than a flat frame has it: the frame is in wind, or a size is off. Sight across it.` : telling`B to D is ${off} longer than the sides allow: measure again.`],
    });
  },
});
