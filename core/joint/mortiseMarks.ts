import { cavitiesOf, type Cavity } from '../piece/cavity.ts';
import type { MortiseAndTenon } from '../piece/file.ts';
import { marker, ownSize, type Laying, type Mark, type Reference } from './laying.ts';
import { hollowOf, mateOf } from './mates.ts';

const OUTER_FACE: Reference = { kind: 'face', say: 'the outer face' };
const CHOPPED_FACE: Reference = { kind: 'face', say: 'the face that is chopped' };

/** Marks of a joint on the mortised part: of each mortise, and of the socket for the haunch. */
export function mortiseMarks(laying: Laying, joint: MortiseAndTenon): readonly Mark[] {
  return cavitiesOf(joint, laying.read, laying.copy).flatMap((cavity) => (cavity.kind === 'mortise' ? marksOfMortise(laying, cavity) : marksOfSocket(laying, cavity)));
}

function marksOfMortise(laying: Laying, cavity: Cavity): readonly Mark[] {
  const { joint, which, top, bottom, near, far, depth, deepest, across } = cavity;
  const length = ownSize(laying, 'length');
  const hollow = `${which === undefined ? '' : `${which} `}${hollowOf(joint)}`;
  const end = topEnd(laying);
  const blind = (joint.shape ?? 'blind') === 'blind';
  const mark = marker(laying, { joint: joint.id, ...(which === undefined ? {} : { which }) }, faceOf(laying, joint, !blind));
  // The open end of a slot is the end of the part: there is no line to draw.
  const open = (at: number): boolean => joint.shape === 'bridle' && (at <= 0 || at === length);
  return [
    ...(open(top) ? [] : mark('mortise start', `start of the ${hollow}`, end, top, length, 'marking knife')),
    ...(open(bottom) ? [] : mark('mortise end', joint.shape === 'bridle' ? `bottom of the ${hollow}` : `end of the ${hollow}`, end, bottom, length, 'marking knife')),
    ...mark('mortise near side', `near side of the ${hollow}`, OUTER_FACE, near, across, 'mortise gauge'),
    ...mark('mortise far side', `far side of the ${hollow}`, OUTER_FACE, far, across, 'mortise gauge'),
    ...(blind ? mark('mortise depth', `depth of the ${hollow}`, CHOPPED_FACE, depth, deepest, 'depth flag') : []),
  ];
}

/** Of twins one above the other, the socket belongs to the upper one. */
function marksOfSocket(laying: Laying, { joint, which, top, depth, deepest }: Cavity): readonly Mark[] {
  const mark = marker(laying, { joint: joint.id, ...(which === undefined ? {} : { which }) }, faceOf(laying, joint, false));
  const bottom = joint.haunch === 'sloped' ? 'depth of the haunch socket, where it meets the mortise' : 'depth of the haunch socket';
  return [
    // Level with the end it is open there.
    ...(top > 0 ? mark('haunch start', 'start of the haunch socket', topEnd(laying), top, ownSize(laying, 'length'), 'marking knife') : []),
    ...mark('haunch depth', bottom, CHOPPED_FACE, depth, deepest, 'depth flag'),
  ];
}

function faceOf({ piece }: Laying, joint: MortiseAndTenon, both: boolean): string {
  const face = `the face towards the ${mateOf(piece.file, joint)}`;
  return both ? `${face}, and the far one` : face;
}

/** While a horn stands on the end, the finished end is a knife line. */
function topEnd(laying: Laying): Reference {
  return { kind: 'end', say: ownSize(laying, 'horn') === undefined ? 'the top end' : 'the line of the top end, under the horn' };
}
