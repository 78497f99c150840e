import { nanometres } from '../../length/length.ts';
import { reckoning } from '../../reckoning/reckoning.ts';
import { telling } from '../../reckoning/telling.ts';
import { failure, success } from '../../result.ts';
import { angleFor, bevelLength, LEAST_DEGREES, MOST_DEGREES, projectionAtHeight, projectionFor, shimAngle, shimFor } from '../honing.ts';

export function angleField<const Say extends string>(say: Say) {
  return { kind: 'number', unit: 'degrees', least: LEAST_DEGREES, most: MOST_DEGREES, say } as const;
}

const TRIGONOMETRY = 'plane trigonometry';

export const honingGuide = reckoning({
  name: 'honing-guide',
  about: 'how far a blade stands out of a roller guide for an angle, or the angle that a projection gives',
  inputs: {
    angle: { ...angleField('angle at the stone'), optional: true },
    projection: { kind: 'length', say: 'or: how far the blade stands out', optional: true },
    radius: { kind: 'length', say: 'radius of the roller' },
    axis: { kind: 'length', say: 'how far the roller’s axis lies under the back of the blade' },
  },
  reckon: ({ angle, projection, radius, axis }) => {
    if ((angle === undefined) === (projection === undefined)) return failure({ key: 'angle', message: 'Give the angle or the projection, one of the two.' });
    if (radius <= 0) return failure({ key: 'radius', message: 'A roller has a radius: half of what the caliper says across it.' });
    const guide = { radius, axisBelowBack: axis };
    if (angle !== undefined) return success({ result: [{ key: 'projection', length: projectionFor(angle, guide) }], how: ['p = (R + e · cos θ) / sin θ, from the edge to straight over the roller’s axis. Make a stop block of it.'], source: [TRIGONOMETRY] });
    const found = angleFor(projection ?? nanometres(0), guide);
    return found.ok ? success({ result: [{ key: 'angle', number: found.value, unit: 'degrees' }], how: ['θ = asin(R / √(p² + e²)) + atan(e / p).'], source: [TRIGONOMETRY] }) : found;
  },
});

export const fixedHeightJig = reckoning({
  name: 'fixed-height-jig',
  about: 'how far a blade stands out of a jig that holds it at a height over the stone',
  inputs: { angle: angleField('angle at the stone'), height: { kind: 'length', say: 'height of the blade’s back over the stone, where it pivots' } },
  reckon: ({ angle, height }) => success({ result: [{ key: 'projection', length: projectionAtHeight(angle, height) }], how: ['p = h / sin θ.'], source: [TRIGONOMETRY] }),
});

export const bevel = reckoning({
  name: 'bevel-length',
  about: 'how long the bevel of a blade is, from edge to heel',
  inputs: { thickness: { kind: 'length', say: 'thickness of the blade' }, angle: angleField('angle it is ground at') },
  reckon: ({ thickness, angle }) => success({ result: [{ key: 'bevel', length: bevelLength(thickness, angle) }], how: ['t / sin θ.'], source: [TRIGONOMETRY] }),
});

export const shim = reckoning({
  name: 'honing-shim',
  about: 'what a shim changes of a honing angle (a thin rule under the back of a plane iron: the back bevel), or the shim for a change',
  inputs: {
    shim: { kind: 'length', say: 'thickness of the shim', optional: true },
    change: { kind: 'number', unit: 'degrees', least: 0.1, most: 10, say: 'or: change of angle that is wanted', optional: true },
    distance: { kind: 'length', say: 'from the edge to the shim' },
  },
  reckon: ({ shim: thickness, change, distance }) => {
    if ((thickness === undefined) === (change === undefined)) return failure({ key: 'shim', message: 'Give the shim or the change of angle, one of the two.' });
    if (change !== undefined) return success({ result: [{ key: 'shim', length: shimFor(change, distance) }], how: ['s = d · sin Δθ.'], source: [TRIGONOMETRY] });
    const found = shimAngle(thickness ?? nanometres(0), distance);
    return found.ok ? success({ result: [{ key: 'change', number: found.value, unit: 'degrees' }], how: [telling`asin(s / d), with the shim ${distance} from the edge.`], source: [TRIGONOMETRY] }) : found;
  },
});
