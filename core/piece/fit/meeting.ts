import { nanometres } from '../../length/length.ts';
import type { Fitting, Misfit } from './misfit.ts';
import { at, called, copiesOf, FIT_LIMITS } from './misfit.ts';
import type { Cavity } from './mortise.ts';
import { cavityOf, takesPart } from './mortise.ts';

/** Do two mortises in one part run into each other, or nearly? */
export function meetingMisfits(fitting: Fitting): readonly Misfit[] {
  const hosts = new Set(fitting.tenons.map(({ mortiseIn }) => mortiseIn));
  return [...hosts].flatMap((host) => copiesOf(fitting, host).flatMap((copy) => {
    const cavities = fitting.tenons.filter((joint) => joint.mortiseIn === host && takesPart(fitting, joint, copy)).map((joint) => cavityOf(fitting, joint, copy));
    return pairs(cavities.filter((cavity) => cavity !== undefined)).flatMap(([one, other]) => between(fitting, one, other, copy));
  }));
}

function pairs<Item>(items: readonly Item[]): readonly (readonly [Item, Item])[] {
  return items.flatMap((one, index) => items.slice(index + 1).map((other) => [one, other] as const));
}

function between(fitting: Fitting, one: Cavity, other: Cavity, copy: number | undefined): readonly Misfit[] {
  if (neverInOnePlace(one, other)) return [];
  const gap = gapBetween(one, other);
  const mitred = one.into !== other.into && one.joint.tenonEnds === 'mitred' && other.joint.tenonEnds === 'mitred';
  if (mitred || gap >= FIT_LIMITS.web) return [];
  const host = called(fitting.part(one.joint.mortiseIn)?.name ?? one.joint.mortiseIn, copy);
  const sizes = [at(`${one.joint.id}.mortiseDepth`), at(`${other.joint.id}.mortiseDepth`), at(`${one.joint.mortiseIn}.${one.into}`, copy)];
  const two = `The mortises for the ${one.joint.name} and the ${other.joint.name}`;
  if (gap <= 0) {
    return [{ kind: 'mortises meet', severity: 'will not go', sizes, say: [`${two} run into each other in ${host}. Shorten the tenons, mitre their ends, or set one above the other.`] }];
  }
  return [{
    kind: 'web too thin', severity: 'weak', sizes,
    say: [`${two} leave only `, { length: nanometres(gap) }, ` of wood between them in ${host}. Shorten the tenons, or set one above the other.`],
  }];
}

/** Two joints that are in different places of the part ('front left', 'back left') never meet. */
function neverInOnePlace(one: Cavity, other: Cavity): boolean {
  const [a, b] = [one.joint.places, other.joint.places];
  return a !== undefined && b !== undefined && !a.some((place) => b.includes(place));
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
