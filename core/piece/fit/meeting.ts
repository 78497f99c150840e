import { subtract } from '../../length/arithmetic.ts';
import { nanometres, ZERO_LENGTH, type Length } from '../../length/length.ts';
import { longestBeside, waysToMeet, type Comer, type MeetingLimits } from '../../tenon/meeting.ts';
import { longest } from '../../tenon/solid.ts';
import { inOnePlace, type Cavity } from '../cavity.ts';
import type { MortiseAndTenon } from '../file.ts';
import type { Sentence } from '../sentence.ts';
import { at, called, copiesOf, FIT_LIMITS, lengthOf, type Fitting, type Misfit } from './misfit.ts';
import { cavitiesIn } from './mortise.ts';

/** Do two mortises in one part run into each other, or nearly, or the tenons in them? */
export function meetingMisfits(fitting: Fitting): readonly Misfit[] {
  const hosts = new Set(fitting.tenons.map(({ mortiseIn }) => mortiseIn));
  return [...hosts].flatMap((host) => copiesOf(fitting, host).flatMap((copy) => {
    const cavities = fitting.tenons.filter((joint) => joint.mortiseIn === host).map((joint) => cavitiesIn(fitting, joint, copy));
    return pairs(cavities).flatMap(([ones, others]) => between(fitting, ones, others, copy));
  }));
}

function pairs<Item>(items: readonly Item[]): readonly (readonly [Item, Item])[] {
  return items.flatMap((one, index) => items.slice(index + 1).map((other) => [one, other] as const));
}

/** Of the mortises of two joints, the two that are nearest to each other. */
function between(fitting: Fitting, ones: readonly Cavity[], others: readonly Cavity[], copy: number | undefined): readonly Misfit[] {
  const all = ones.flatMap((one) => others.map((other) => ({ one, other, gap: gapBetween(one, other) }))).sort((a, b) => a.gap - b.gap);
  const [nearest] = all;
  if (nearest === undefined || !inOnePlace(nearest.one.joint, nearest.other.joint)) return [];
  const ends = sharedEnds(nearest.one, nearest.other);
  if (ends !== undefined) return shapedMisfits(fitting, all.filter(({ one, other }) => one.kind === 'mortise' && other.kind === 'mortise'), ends, copy).slice(0, 1);
  return nearest.gap >= FIT_LIMITS.web ? [] : [squareMisfit(fitting, nearest, copy)];
}

/** Mitred or stepped, when both tenons are. */
function sharedEnds(one: Cavity, other: Cavity): 'mitred' | 'stepped' | undefined {
  const { tenonEnds } = one.joint;
  return one.into === other.into || tenonEnds !== other.joint.tenonEnds || tenonEnds === 'square' ? undefined : tenonEnds;
}

interface Pair { readonly one: Cavity; readonly other: Cavity; readonly gap: number }

function squareMisfit(fitting: Fitting, { one, other, gap }: Pair, copy: number | undefined): Misfit {
  const two = `The mortises for the ${one.joint.name} and the ${other.joint.name}`;
  const host = hostOf(fitting, one, copy);
  const sizes = mentionsOf(one, other, copy);
  const room = roomBeside(fitting, one, other);
  if (gap > 0) {
    return { kind: 'web too thin', severity: 'weak', sizes, say: [`${two} leave only `, { length: nanometres(gap) }, ` of wood between them in ${host}. Shorten the tenons, or set one above the other.`, ...room] };
  }
  const clear = gapBetween(asTenon(fitting, one), asTenon(fitting, other));
  if (clear > 0) return { kind: 'mortises meet', severity: 'weak', sizes, say: [`${two} run into each other in ${host}; the tenons clear each other by `, { length: nanometres(clear) }, '. There is less wood to glue to than planned.'] };
  return { kind: 'mortises meet', severity: 'will not go', sizes, say: [`${two} run into each other in ${host}, and so do the tenons. Shorten them, mitre their ends, or set one above the other.`, ...room] };
}

/** How long the one may be beside the other as it is; nothing where it has no room at all, or where they lie side by side. */
function roomBeside(fitting: Fitting, one: Cavity, other: Cavity): Sentence {
  if (one.into === other.into || one.kind !== 'mortise' || other.kind !== 'mortise') return [];
  const room = longestBeside(comerOf(one, one.depth), comerOf(other, other.depth), tenonLength(fitting, other), limitsOf(fitting, one));
  return room <= 0 ? [] : [` Beside the ${other.joint.name} as it is, the ${one.joint.name} may be `, { length: room }, ' long.'];
}

/** Tenons with shaped ends may use the whole of the room that the mitre or the step leaves them, and no more. */
function shapedMisfits(fitting: Fitting, found: readonly Pair[], ends: 'mitred' | 'stepped', copy: number | undefined): readonly Misfit[] {
  return found.flatMap(({ one, other }): readonly Misfit[] => {
    const planned = [tenonLength(fitting, one), tenonLength(fitting, other)] as const;
    const ways = waysToMeet(comerOf(one, planned[0]), comerOf(other, planned[1]), limitsOf(fitting, one));
    if (ways[0]?.way === 'clear of each other') return [];
    const way = ways.find((each) => each.way === ends);
    const sizes = [at(`${one.joint.id}.tenonLength`), at(`${other.joint.id}.tenonLength`)];
    const host = hostOf(fitting, one, copy);
    if (way === undefined) {
      return [{ kind: 'tenons hit', severity: 'will not go', sizes, say: [`There is no room in ${host} to ${ends === 'mitred' ? 'mitre' : 'step'} the ${one.joint.name} and the ${other.joint.name}. Set one above the other, or use a stouter part.`] }];
    }
    const limits = [longest(way.first), longest(way.second)] as const;
    return ([[one.joint, 0], [other.joint, 1]] as const).flatMap(([joint, index]) => (planned[index] <= limits[index] ? [] : [tooLong(joint, planned[index], limits[index], { ends, host, sizes })]));
  });
}

function tooLong({ name }: MortiseAndTenon, planned: Length, limit: Length, { ends, host, sizes }: { readonly ends: string; readonly host: string; readonly sizes: Misfit['sizes'] }): Misfit {
  return {
    kind: 'tenons hit', severity: 'will not go', sizes,
    say: [`The ${name}, ${ends}, still hits the other in ${host}: it is `, { length: subtract(planned, limit) }, ' too long. At the longest it may be ', { length: limit }, ', on its longer side.'],
  };
}

function tenonLength(fitting: Fitting, { joint }: Cavity): Length {
  return lengthOf(fitting, `${joint.id}.tenonLength`) ?? ZERO_LENGTH;
}

function comerOf({ deepest, near, far, top, bottom }: Cavity, most: Length): Comer {
  return { into: deepest, near, thickness: subtract(far, near), top, bottom, most };
}

function limitsOf(fitting: Fitting, cavity: Cavity): MeetingLimits {
  return { clearance: nanometres(Math.max(0, cavity.depth - tenonLength(fitting, cavity))), web: FIT_LIMITS.web };
}

/** What stands in the cavity once the joint is together. */
function asTenon(fitting: Fitting, cavity: Cavity): Cavity {
  return cavity.kind === 'mortise' ? { ...cavity, depth: tenonLength(fitting, cavity) } : cavity;
}

function mentionsOf(one: Cavity, other: Cavity, copy: number | undefined): Misfit['sizes'] {
  const depth = ({ joint, kind }: Cavity): string => `${joint.id}.${kind === 'mortise' ? 'mortiseDepth' : 'haunchLength'}`;
  return [at(depth(one)), at(depth(other)), at(`${one.joint.mortiseIn}.${one.into}`, copy)];
}

function hostOf(fitting: Fitting, { joint }: Cavity, copy: number | undefined): string {
  return called(fitting.part(joint.mortiseIn)?.name ?? joint.mortiseIn, copy);
}

/**
 * The wood between two mortises, less than nothing where they meet: the largest of the gaps in the three directions, for one gap is enough
 * to keep two boxes apart. Mortises come in from the inside faces.
 */
function gapBetween(one: Cavity, other: Cavity): number {
  const [a, b] = [extent(one), extent(other)];
  return Math.max(apart(a.width, b.width), apart(a.thickness, b.thickness), apart(a.length, b.length));
}

type Range = readonly [from: number, to: number];

function extent({ into, deepest, depth, near, far, top, bottom }: Cavity): { readonly width: Range; readonly thickness: Range; readonly length: Range } {
  const inward: Range = [deepest - depth, deepest];
  const sideways: Range = [near, far];
  return into === 'width' ? { width: inward, thickness: sideways, length: [top, bottom] } : { width: sideways, thickness: inward, length: [top, bottom] };
}

function apart([from, to]: Range, [otherFrom, otherTo]: Range): number {
  return Math.max(otherFrom - to, from - otherTo);
}
