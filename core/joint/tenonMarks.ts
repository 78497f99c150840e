import { add, subtract } from '../length/arithmetic.ts';
import { ZERO_LENGTH, type Length } from '../length/length.ts';
import { railSizes, tenonsOf, type TenonOnRail } from '../piece/cavity.ts';
import type { MortiseAndTenon } from '../piece/file.ts';
import type { TenonSteps } from '../tenon/solid.ts';
import { plannedEnds } from './comers.ts';
import { marker, ownSize, type Laying, type Mark, type Reference } from './laying.ts';

const END: Reference = { kind: 'end', say: 'one end' };
const EACH_END: Reference = { kind: 'end', say: 'each end' };
const ENDS = 'both ends, and back to the shoulders';

/** Marks of a joint on the tenoned part: its shoulders, and of each tenon cheeks and edges, haunch, and the shape of its end. */
export function tenonMarks(laying: Laying, joint: MortiseAndTenon): readonly Mark[] {
  const length = ownSize(laying, 'length');
  const tenon = laying.read(`${joint.id}.tenonLength`) ?? ZERO_LENGTH;
  const shoulders = ownSize(laying, 'shoulders');
  const second = shoulders === undefined ? subtract(length ?? ZERO_LENGTH, tenon) : add(tenon, shoulders);
  const tenons = tenonsOf(joint, laying.read, laying.copy);
  // As wide as its rail, as at a bridle, a tenon has two shoulders and not four.
  const around = marker(laying, { joint: joint.id }, tenons.every((one) => isFull(laying, joint, one)) ? 'both faces' : 'all four sides');
  const ends = plannedEnds(laying.piece.file, joint, laying.read);
  return [
    ...around('first shoulder', 'first shoulder', END, tenon, length, 'marking knife'),
    ...around('second shoulder', 'second shoulder', END, second, length, 'marking knife'),
    ...tenons.flatMap((one, index) => [...edgesOf(laying, joint, one), ...shapedEnd(laying, joint, one, ends[index] ?? [])]),
    ...haunchMarks(laying, joint),
  ];
}

/** As wide as its rail: then its edges are the rail's. */
function isFull(laying: Laying, joint: MortiseAndTenon, { top, width }: TenonOnRail): boolean {
  return top === 0 && width === ownSize(laying, railSizes(joint).along);
}

function edgesOf(laying: Laying, joint: MortiseAndTenon, tenon: TenonOnRail): readonly Mark[] {
  const { which, outer, thickness, top, width } = tenon;
  const { across, along } = railSizes(joint);
  const [face, edge] = references(laying, joint);
  const name = which === undefined ? 'tenon' : `${which} tenon`;
  const ends = marker(laying, { joint: joint.id, ...(which === undefined ? {} : { which }) }, ENDS);
  return [
    ...ends('outer cheek', `outer cheek of the ${name}`, face, outer, ownSize(laying, across), 'mortise gauge'),
    ...ends('inner cheek', `inner cheek of the ${name}`, face, add(outer, thickness), ownSize(laying, across), 'mortise gauge'),
    ...(isFull(laying, joint, tenon) ? [] : [
      ...ends('tenon top', `top of the ${name}`, edge, top, ownSize(laying, along), 'marking gauge'),
      ...ends('tenon bottom', `bottom of the ${name}`, edge, add(top, width), ownSize(laying, along), 'marking gauge'),
    ]),
  ];
}

/** A rail that lies flat has its tenons across its width: cheeks from the edge, edges from the face. */
function references({ part }: Laying, { lies }: MortiseAndTenon): readonly [face: Reference, edge: Reference] {
  const face: Reference = { kind: 'face', say: `the ${part.referenceFace ?? 'face side'}` };
  const edge: Reference = { kind: 'edge', say: `the ${part.referenceEdge ?? 'face edge'}` };
  return lies === 'flat' ? [edge, face] : [face, edge];
}

function haunchMarks(laying: Laying, joint: MortiseAndTenon): readonly Mark[] {
  if (joint.haunch === undefined) return [];
  const of = (key: string): Length => laying.read(`${joint.id}.${key}`) ?? ZERO_LENGTH;
  const first = tenonsOf(joint, laying.read, laying.copy)[0];
  const [, edge] = references(laying, joint);
  const ends = marker(laying, { joint: joint.id }, ENDS);
  const top = subtract(first?.top ?? ZERO_LENGTH, of('haunchWidth'));
  return [
    ...ends('haunch end', joint.haunch === 'sloped' ? 'end of the haunch, at the tenon' : 'end of the haunch', EACH_END, subtract(of('tenonLength'), of('haunchLength')), ownSize(laying, 'length'), 'marking knife'),
    ...(top > 0 ? ends('haunch top', 'top of the haunch', edge, top, ownSize(laying, railSizes(joint).along), 'marking gauge') : []),
  ];
}

/** What comes off the end of a tenon that meets another in the leg: to a slant over its thickness, or over a part of its width. */
function shapedEnd(laying: Laying, joint: MortiseAndTenon, one: TenonOnRail, steps: TenonSteps): readonly Mark[] {
  const tenon = laying.read(`${joint.id}.tenonLength`) ?? ZERO_LENGTH;
  const within = ownSize(laying, 'length');
  const ends = marker(laying, { joint: joint.id, ...(one.which === undefined ? {} : { which: one.which }) }, ENDS);
  const [first, second] = steps;
  if (first === undefined) return [];
  if (second === undefined) {
    if (first.innerCheek === first.outerCheek) return [];
    return ends('mitre', 'mitre, on the inner cheek', EACH_END, subtract(tenon, first.innerCheek), within, 'marking knife');
  }
  const [, edge] = references(laying, joint);
  const lower = first.outerCheek > second.outerCheek;
  const step = lower ? subtract(first.bottom, first.top) : subtract(second.top, first.top);
  return [
    ...ends('step', 'step of the tenon', edge, add(one.top, step), ownSize(laying, railSizes(joint).along), 'marking gauge'),
    ...ends('short end', `end of the ${lower ? 'lower' : 'upper'}, shorter half`, EACH_END, subtract(tenon, (lower ? second : first).outerCheek), within, 'marking knife'),
  ];
}
