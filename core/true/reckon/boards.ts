import { nanometres } from '../../length/length.ts';
import { reckoning } from '../../reckoning/reckoning.ts';
import { telling } from '../../reckoning/telling.ts';
import { failure, success } from '../../result.ts';
import { speciesCalled, SPECIES_NAMES, SPECIES_SOURCE } from '../../wood/species.ts';
import { N_PER_MM2_PER_PSI } from '../../wood/woodStrength.ts';
import { mate } from '../mating.ts';
import { seenBySticks } from '../shape.ts';
import { forceToClose, usualSpring } from '../springJoint.ts';
import { outOfSquareOver, squarenessOf } from '../squareEdge.ts';
import { surfaceOf } from '../surface.ts';
import { flatnessLimit } from '../tolerance.ts';
import { FACE_FIELDS, readingsFrom } from './inputs.ts';

export const sticks = reckoning({
  name: 'winding-sticks',
  about: 'what winding sticks show of a twist in the board itself',
  inputs: {
    twist: { kind: 'length', say: 'how far one far corner stands up over the width of the board' },
    width: { kind: 'length', say: 'width of the board' },
    stick: { kind: 'length', say: 'length of the sticks', default: '24 in' },
  },
  reckon: ({ twist, width, stick }) => {
    if (width <= 0) return failure({ key: 'width', message: 'A board has a width.' });
    return success({
      result: [{ key: 'shows', length: seenBySticks(twist, stick, width) }, { key: 'magnifies', number: stick / width, unit: 'times' }, { key: 'angle', number: (Math.atan2(twist, width) * 180) / Math.PI, unit: 'degrees' }],
      how: ['The sticks show twist × stick / width.'], source: ['similar triangles'],
    });
  },
});

const SECOND = { along2: 'along', sticks2: 'sticks', across2: 'across' } as const;

export const matingFaces = reckoning({
  name: 'mating-faces',
  about: 'whether two faces will meet when one is laid on the other, where they gape and whether they rock',
  inputs: {
    ...FACE_FIELDS,
    along2: { ...FACE_FIELDS.along, say: 'of the second face: gap along its middle, at each place' },
    sticks2: { ...FACE_FIELDS.sticks, say: 'of the second face: how much higher the left end of the far stick stands' },
    across2: { ...FACE_FIELDS.across, say: 'of the second face: gap in the middle across; less than nothing where crowned' },
    adhesiveGap: { kind: 'length', say: 'widest gap that the adhesive bridges', optional: true },
  },
  reckon: (inputs) => {
    const first = surfaceOf(readingsFrom(inputs));
    if (!first.ok) return first;
    const second = surfaceOf(readingsFrom({ ...inputs, along: inputs.along2, sticks: inputs.sticks2, across: inputs.across2 }));
    if (!second.ok) return failure({ ...second.fault, key: Object.entries(SECOND).find(([, key]) => key === second.fault.key)?.[0] ?? second.fault.key ?? 'stations' });
    const { greatest, rocks } = mate(first.value, second.value);
    const { limit, source } = flatnessLimit('glue', inputs.length, inputs.adhesiveGap);
    return success({
      result: [
        { key: 'greatestGap', length: greatest.gap }, { key: 'fromMarkedEnd', length: greatest.fromEnd }, { key: 'fromLeft', length: greatest.fromLeft },
        { key: 'allowed', length: limit }, { key: 'closesByItself', text: greatest.gap <= limit ? 'yes' : 'no' }, { key: 'rocks', text: rocks.length === 0 ? 'no' : rocks.join(', ') },
      ],
      how: ['The second face is turned over on to the first about its long axis, marked ends together, and sinks until it rests; what is open then are the gaps.'],
      source: ['plane geometry', source],
      warnings: rocks.length === 0 ? [] : ['They rock on a high spot: plane that down before anything else. Clamps only hide it until the glue lets go.'],
    });
  },
});

export const squareEdge = reckoning({
  name: 'square-edge',
  about: 'what a try square says along an edge, and what comes off which arris',
  inputs: {
    thickness: { kind: 'length', say: 'thickness of the board' },
    stations: { kind: 'lengths', say: 'where the square was tried, from the marked end' },
    gaps: { kind: 'lengths', say: 'light at the far side of the edge, at each place; -1/64 in where it is at the reference face', mayBeNegative: true },
    over: { kind: 'length', say: 'how far a corner stands off over this length', default: '4 in' },
  },
  reckon: ({ thickness, stations, gaps, over }) => {
    const found = squarenessOf({ thickness, stations, gaps });
    if (!found.ok) return found;
    const { worst, offReferenceArris, offOtherArris, wind } = found.value;
    return success({
      result: [
        { key: 'worst', length: nanometres(Math.abs(worst.gap)) }, { key: 'at', length: worst.at }, { key: 'offSquare', number: worst.degrees, unit: 'degrees' },
        { key: 'offReferenceArris', lengths: offReferenceArris }, { key: 'offOtherArris', lengths: offOtherArris }, { key: 'windOfTheEdge', length: wind },
        { key: 'standsOffOver', length: outOfSquareOver(nanometres(Math.abs(worst.gap)), thickness, over) },
      ],
      how: ['Light at the far side means that the arris at the reference face is high: take that much off it, and nothing off the other.', telling`Over ${over} a corner set against it stands off in proportion.`],
      source: ['plane geometry'],
    });
  },
});

export const springJoint = reckoning({
  name: 'spring-joint',
  about: 'what it takes to close the gap in the middle of two edges that are to be glued',
  inputs: {
    length: { kind: 'length', say: 'length of the edges' },
    width: { kind: 'length', say: 'width of the one board' },
    otherWidth: { kind: 'length', say: 'width of the other board; the same when not given', optional: true },
    thickness: { kind: 'length', say: 'thickness of both' },
    gap: { kind: 'length', say: 'gap in the middle, ends touching', optional: true },
    species: { kind: 'choice', options: SPECIES_NAMES, say: 'wood', default: 'hard maple' },
  },
  reckon: ({ length, width, otherWidth, thickness, gap, species }) => {
    const strength = speciesCalled(species)?.strength;
    if (!strength) return failure({ key: 'species', message: `How stiff ${species} is, is not in the table. Choose a wood that is about as hard.` });
    const taken = gap ?? usualSpring(length);
    const found = forceToClose({ length, boardWidths: [width, otherWidth ?? width], thickness, gap: taken, elasticityMpa: strength.stiffnessMpsi * 1_000_000 * N_PER_MM2_PER_PSI });
    if (!found.ok) return found;
    return success({
      result: [{ key: 'gap', length: taken }, { key: 'force', number: found.value.forceN, unit: 'N' }, { key: 'pressure', number: found.value.pressureMpa / N_PER_MM2_PER_PSI, unit: 'psi' }],
      how: ['Each board is a beam on two supports under an even load; both bend under the same load until the gap is closed.'],
      source: ['Wood Handbook, chapter 9 (deflection under uniform load)', SPECIES_SOURCE, ...(gap === undefined ? ['gap of 1/32 in for 4 ft: common practice, no source'] : [])],
      warnings: found.value.pressureMpa / N_PER_MM2_PER_PSI > 25 ? ['That eats up much of the clamps: take the hollow down. A spring joint is a shaving or two, not a gap to be seen across the shop.'] : [],
    });
  },
});
