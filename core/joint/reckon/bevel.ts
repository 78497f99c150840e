import type { Length } from '../../length/length.ts';
import type { Figure } from '../../reckoning/reckoning.ts';
import { reckoning } from '../../reckoning/reckoning.ts';
import { telling, type Telling } from '../../reckoning/telling.ts';
import { failure, success } from '../../result.ts';
import { bevelOf, setbackForFace, type Bevel } from '../bevel.ts';

const GEOMETRY = 'plane geometry of a right-angled arris';

export const bevel = reckoning({
  name: 'bevel',
  about: 'the angle, face, lines and shavings of a foot bevel or a chamfer from its setbacks',
  inputs: {
    setback: { kind: 'length', say: 'setback up the side, or on the first face', default: '1/4 in' },
    otherSetback: { kind: 'length', say: 'setback on the end, or on the other face, when it is not the same', optional: true },
    across: { kind: 'choice', options: ['end grain', 'long grain'], say: 'what the plane cuts across', default: 'end grain' },
    width: { kind: 'length', say: 'width of the section that the bevel runs round', optional: true },
    thickness: { kind: 'length', say: 'its thickness, when it is not square', optional: true },
    shaving: { kind: 'length', say: 'one shaving', default: '0.004 in' },
  },
  reckon: ({ setback, otherSetback = setback, across, width, thickness, shaving }) => {
    if (width === undefined && thickness !== undefined) return failure({ key: 'width', message: 'The thickness of a section goes with its width: give both, or neither.' });
    const section = width === undefined ? {} : { section: { width, thickness: thickness ?? width } };
    const found = bevelOf({ setback, otherSetback, shaving, across, ...section });
    if (!found.ok) return failure(found.fault);
    return success({ result: figuresOf(found.value), how: howOf(found.value, setback, otherSetback), source: [GEOMETRY, 'usual sizes and where to stop: common practice, no source'], warnings: found.value.warnings });
  },
});

function figuresOf({ angleDegrees, faceWidth, depth, shavings, lines, stops, flat }: Bevel): readonly Figure[] {
  return [
    { key: 'angle', number: angleDegrees, unit: 'degrees' },
    { key: 'faceWidth', length: faceWidth },
    { key: 'depth', length: depth },
    { key: 'shavings', number: shavings, unit: 'shavings' },
    { key: 'lines', data: lines, unit: 'nanometres' },
    ...stops.map(({ side, at }): Figure => ({ key: side === 'width' ? 'stopAlongWidth' : 'stopAlongThickness', length: at })),
    ...(flat ? [{ key: 'flatWidth', length: flat.width }, { key: 'flatThickness', length: flat.thickness }] : []),
  ];
}

function howOf({ stops, shavings, depth }: Bevel, setback: Length, other: Length): readonly Telling[] {
  return [
    telling`The angle to the first face is the one whose tangent is ${other} over ${setback}; the face is the long side of that triangle.`,
    telling`The plane goes down ${depth} at the arris: ${{ count: shavings }} shavings, the last one perhaps thinner.`,
    ...(stops.length === 0 ? [] : ['On end grain, plane from each corner to the middle and no further: the far corner would split away.']),
  ];
}

export const bevelFromFace = reckoning({
  name: 'chamfer-setback',
  about: 'the setback of a 45 degree chamfer whose face is to be so wide',
  inputs: { face: { kind: 'length', say: 'width of the chamfer as it is seen' } },
  reckon: ({ face }) => (face > 0
    ? success({ result: [{ key: 'setback', length: setbackForFace(face) }], how: ['The setback is the face over the square root of two, to the nearest nanometre.'], source: [GEOMETRY] })
    : failure({ key: 'face', message: 'A chamfer has some width: more than nothing.' })),
});
