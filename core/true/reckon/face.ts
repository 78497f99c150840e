import { nanometres, type Length } from '../../length/length.ts';
import { reckoning, type Outcome } from '../../reckoning/reckoning.ts';
import { telling, type Telling } from '../../reckoning/telling.ts';
import { failure, success } from '../../result.ts';
import { trueBoard, type TruedBoard } from '../board.ts';
import { shapeOf, seenBySticks } from '../shape.ts';
import { surfaceOf } from '../surface.ts';
import { flatnessLimit, PURPOSES } from '../tolerance.ts';
import { FACE_FIELDS, readingsFrom } from './inputs.ts';

export const face = reckoning({
  name: 'face',
  about: 'what winding sticks and straightedge say of a face, and what to plane where, in shavings',
  inputs: {
    ...FACE_FIELDS,
    thicknesses: { kind: 'lengths', say: 'thickness at each place, for the second face', optional: true },
    planned: { kind: 'length', say: 'thickness that is wanted in the end', optional: true },
    shaving: { kind: 'length', say: 'one shaving of the plane as it is set (common practice, no source: jointer three to six thousandths)', default: '0.005 in' },
    for: { kind: 'choice', options: PURPOSES, say: 'what the face is for', default: 'joint' },
    adhesiveGap: { kind: 'length', say: 'widest gap that the adhesive bridges, for a glue face', optional: true },
  },
  reckon: (inputs) => {
    const surface = surfaceOf(readingsFrom(inputs));
    if (!surface.ok) return surface;
    const { thicknesses, planned, shaving } = inputs;
    if (thicknesses && thicknesses.length !== inputs.stations.length) return failure({ key: 'thicknesses', message: `There are ${inputs.stations.length} places and ${thicknesses.length} thicknesses. Give one for each place.` });
    if (shaving <= 0) return failure({ key: 'shaving', message: 'A shaving has some thickness: two to six thousandths of an inch are usual.' });
    const board = trueBoard(surface.value, shaving, thicknesses, planned);
    const shape = shapeOf(surface.value);
    const { limit, source } = flatnessLimit(inputs.for, inputs.length, inputs.adhesiveGap);
    return success({
      result: [
        { key: 'wind', length: shape.wind.lift }, { key: 'windHighFarCorner', text: shape.wind.highFarCorner }, { key: 'windDegrees', number: shape.wind.degrees, unit: 'degrees' },
        { key: 'windSeenBySticks', length: seenBySticks(shape.wind.lift, inputs.stick, inputs.width) },
        { key: 'across', length: shape.across.amount }, { key: 'along', length: shape.along.amount },
        { key: 'outOfFlat', length: board.first.greatest }, { key: 'allowed', length: limit }, { key: 'trueEnough', text: board.first.greatest <= limit ? 'yes' : 'no' },
        { key: 'mostShavings', number: board.plan.most, unit: 'shavings' }, { key: 'shavingsByPlace', text: byStation(board.plan.shavings) },
        ...thicknessFigures(board),
      ],
      how: howOf(board),
      source: ['similar triangles for the sticks (DIN EN ISO 1101 for flatness as the narrowest zone)', source],
      warnings: warningsOf(board, planned),
    });
  },
});

/** Left, middle and right of each place, from the marked end on: '13 7 13, 8 0 5'. */
function byStation(shavings: readonly number[]): string {
  return Array.from({ length: shavings.length / 3 }, (_, station) => shavings.slice(3 * station, 3 * station + 3).join(' ')).join(', ');
}

function thicknessFigures({ thickness }: TruedBoard): Outcome['result'] {
  if (!thickness) return [];
  return [{ key: 'thicknessAfterLeastFirstCut', length: thickness.afterLeastCut }, { key: 'mostThickness', length: thickness.most }];
}

function howOf({ plan, laidForThickness }: TruedBoard): readonly Telling[] {
  return [
    'Heights from the readings: the gap along, the tilt by the sticks over the width, the hollow or crown across.',
    laidForThickness ? 'The plane is laid so that the thickness wanted is left, with the least to take off at the highest point.' : 'The plane under the lowest spot that leaves the least to take off at the highest one (linear programme).',
    ...plan.stages.flatMap(({ places, shavings }, index) => [stage(index, shavings, places)]),
  ];
}

function stage(index: number, shavings: number, places: TruedBoard['plan']['stages'][number]['places']): Telling {
  const where = places.flatMap(({ place, from, to }, at): readonly (string | { readonly length: Length })[] => [
    at === 0 ? '' : ', ', `${place} `, ...(from === to ? ['at ', { length: from }] : ['from ', { length: from }, ' to ', { length: to }])]);
  return [`Stage ${index + 1}: ${shavings} ${shavings === 1 ? 'shaving' : 'shavings'} off `, ...where, '.'];
}

function warningsOf({ thickness, laidForThickness }: TruedBoard, planned: Length | undefined): readonly Telling[] {
  if (!thickness || planned === undefined) return [];
  if (thickness.most < planned) return [telling`Both faces true leave ${thickness.most} at the most, ${nanometres(planned - thickness.most)} less than the ${planned} wanted. A thinner part, a shorter or narrower piece of this board, or another board.`];
  return laidForThickness ? [telling`The least cut on this face would leave only ${thickness.afterLeastCut}; so it is laid a little deeper here for the thickness wanted.`] : [];
}
