import type { Length } from '../../length/length.ts';
import type { Fields, Figure, ValuesOf } from '../../reckoning/reckoning.ts';
import { reckoning } from '../../reckoning/reckoning.ts';
import { telling, type Telling } from '../../reckoning/telling.ts';
import { failure, success } from '../../result.ts';
import { chooseWay, waysToMeet, type Meeting } from '../../tenon/meeting.ts';
import { placeOfJoint, planJoint, type RailInLeg } from '../railInLeg.ts';
import { cheekAreaMm2, longest, shortest } from '../../tenon/solid.ts';
import { RAIL_FIELDS, railOf } from './rail.ts';

const FIELDS = {
  ...RAIL_FIELDS,
  'second.width': { kind: 'length', say: 'width of the other rail; as the first when not given', optional: true },
  'second.thickness': { kind: 'length', say: 'thickness of the other rail; as the first when not given', optional: true },
  'second.setback': { kind: 'length', say: 'setback of the other rail; as the first when not given', optional: true },
  'second.fromTop': { kind: 'length', say: 'top end of the leg to the other rail; as the first when not given', optional: true },
  ends: { kind: 'choice', options: ['best', 'square', 'mitred', 'stepped'], say: 'how the ends of the tenons are to be', default: 'best' },
  web: { kind: 'length', say: 'wood between mortises that do not open into each other', default: '1/8 in' },
} as const satisfies Fields;

export const tenonsMeeting = reckoning({
  name: 'tenons-meeting',
  about: 'the longest tenons of two rails that meet inside a leg without hitting each other',
  inputs: FIELDS,
  reckon: (values) => {
    const [first, second] = [railOf(values), secondOf(values)];
    const [one, other] = [planJoint(first), planJoint(second)];
    if (!one.ok) return one;
    if (!other.ok) return failure({ key: 'second', message: other.fault.message });
    const ways = waysToMeet(placeOfJoint(first, one.value), placeOfJoint(second, other.value), { clearance: values.clearance, web: values.web });
    const chosen = chooseWay(ways, values.ends);
    if (!chosen) return failure({ key: 'ends', message: `There is no room for ${values.ends === 'best' ? 'both tenons' : `${values.ends} ends`} in this leg. Use a heavier leg, thinner rails or a smaller setback, or set one rail above the other.` });
    return success({
      result: [{ key: 'chosen', text: chosen.way }, ...figuresOf(chosen, one.value.gap === undefined && other.value.gap === undefined), { key: 'ways', data: ways.map(summaryOf), unit: 'nanometres' }],
      how: [
        'Seen from the end of the leg, each tenon runs along one axis from the inside face; they can only hit where each has passed the inner cheek of the other.',
        HOW[chosen.way],
        'Of the ways allowed, the one that leaves the weaker tenon the most glue is chosen; stepped ends only when asked for.',
      ],
      source: ['plane geometry of the leg seen from its end', 'web and clearance: common practice, no source'],
      warnings: [...one.value.warnings, ...stubby(chosen.first, one.value.chisel, 'first'), ...stubby(chosen.second, other.value.chisel, 'second')],
    });
  },
});

/** A tenon shorter than three times its thickness is a stub (common practice, no source). */
function stubby(steps: Meeting['first'], thickness: Length, name: string): readonly Telling[] {
  const length = shortest(steps);
  return length >= 3 * thickness ? [] : [telling`The ${name} tenon is only ${length} long where it is shortest, for a thickness of ${thickness}: a stub. Look at the other ways.`];
}

const HOW: Readonly<Record<Meeting['way'], string>> = {
  'clear of each other': 'They do not reach each other: both are as long as the leg allows.',
  'first runs past': 'The first runs as deep as the leg allows; the second stops a web of wood before its mortise.',
  'second runs past': 'The second runs as deep as the leg allows; the first stops a web of wood before its mortise.',
  mitred: 'The mitre runs from where the inner cheeks cross to where the outer ones do, each end drawn back by the clearance. Lengths are given on the outer and the inner cheek.',
  stepped: 'The height that they share is halved: each runs deep in one half and stops short in the other, with the clearance between.',
};

function secondOf(values: ValuesOf<typeof FIELDS>): RailInLeg {
  const first = railOf(values);
  return {
    ...first,
    rail: { width: values['second.width'] ?? first.rail.width, thickness: values['second.thickness'] ?? first.rail.thickness },
    leg: { ...first.leg, into: first.leg.across, across: first.leg.into },
    setback: values['second.setback'] ?? first.setback, fromTop: values['second.fromTop'] ?? first.fromTop,
  };
}

/** The glue surface is only told of single tenons: of twins, the gap between them is no glue. */
function figuresOf({ first, second, mitreDegrees }: Meeting, single: boolean): readonly Figure[] {
  const lengths = (name: string, steps: Meeting['first']): readonly Figure[] => [
    { key: `${name}Longest`, length: longest(steps) }, { key: `${name}Shortest`, length: shortest(steps) },
    { key: `${name}Steps`, data: steps, unit: 'nanometres' },
    ...(single ? [{ key: `${name}CheekArea`, number: cheekAreaMm2(steps), unit: 'mm2, both cheeks' }] : []),
  ];
  return [...lengths('first', first), ...lengths('second', second), ...(mitreDegrees ? [{ key: 'firstMitre', number: mitreDegrees[0], unit: 'degrees' }, { key: 'secondMitre', number: mitreDegrees[1], unit: 'degrees' }] : [])];
}

function summaryOf({ way, first, second }: Meeting): { readonly way: string; readonly first: Length; readonly second: Length; readonly firstShortest: Length; readonly secondShortest: Length } {
  return { way, first: longest(first), second: longest(second), firstShortest: shortest(first), secondShortest: shortest(second) };
}
