import type { Length } from '../length/length.ts';
import { evaluate, sizeOf } from './evaluate.ts';
import { haunchMisfits } from './fit/haunch.ts';
import { chiselMisfits, fixingMisfits } from './fit/fixing.ts';
import { grooveMisfits } from './fit/groove.ts';
import { meetingMisfits } from './fit/meeting.ts';
import type { Fitting, Misfit } from './fit/misfit.ts';
import { at, copiesOf } from './fit/misfit.ts';
import { mortiseMisfits } from './fit/mortise.ts';
import { partMisfits } from './fit/parts.ts';
import { shoulderMisfits } from './fit/shoulders.ts';
import { tenonMisfits } from './fit/tenon.ts';
import { absurdity, SIZE_LIMITS } from './limits.ts';
import { describeSize } from './describe.ts';
import type { Part } from './file.ts';
import type { SizeNode } from './graph.ts';
import type { LoadedPiece } from './loadedPiece.ts';
import type { Measurement } from './measurement.ts';
import type { Sentence, SizeMention } from './sentence.ts';

export type { Misfit } from './fit/misfit.ts';

const CHECKS: readonly ((fitting: Fitting) => readonly Misfit[])[] = [
  impossibleSizes, tenonMisfits, haunchMisfits, mortiseMisfits, meetingMisfits, partMisfits, shoulderMisfits, fixingMisfits, grooveMisfits, chiselMisfits,
];

/**
 * What does not fit at the sizes as they stand, the worst first; with no measurements, what does not fit in the plan itself. Guidance from
 * common practice: it does not stand for a calculation of strength. `places` says where copies were put (`leg/2` → 'back left'); without, they stand in
 * the order of the file.
 */
export function misfits(piece: LoadedPiece, measurements: readonly Measurement[], places: Places = NOWHERE): readonly Misfit[] {
  const fitting: Fitting = {
    piece,
    sizes: evaluate(piece, measurements),
    part: (id) => piece.file.parts.find((part) => part.id === id),
    tenons: piece.file.joints.filter((joint) => joint.kind === 'mortise and tenon'),
    placeOf: (part, copy) => placeOf(places, part, copy),
  };
  const found = CHECKS.flatMap((check) => check(fitting));
  const rank = { 'will not go': 0, weak: 1, 'look at it': 2 };
  return [...found].sort((a, b) => rank[a.severity] - rank[b.severity]);
}

/** `${part}/${copy}` → place */
type Places = ReadonlyMap<string, string>;
const NOWHERE: Places = new Map();

/** As the maker said; else as the file has it, unless another copy was put there: then it is open. */
function placeOf(places: Places, part: Part, copy: number): string | null | undefined {
  const said = places.get(`${part.id}/${copy}`);
  const usual = part.places?.[copy - 1];
  if (said !== undefined || usual === undefined) return said;
  const taken = part.places?.some((_, index) => places.get(`${part.id}/${index + 1}`) === usual) ?? false;
  return taken ? null : usual;
}

/** The misfits of `after` that were not there before: what no longer fits. */
export function newMisfits(piece: LoadedPiece, before: readonly Measurement[], after: readonly Measurement[], places: Places = NOWHERE): readonly Misfit[] {
  const known = new Set(misfits(piece, before, places).map(keyOf));
  return misfits(piece, after, places).filter((misfit) => !known.has(keyOf(misfit)));
}

/** Puts a sentence into words; `sayLength` rounds as the maker chose. */
export function renderSentence(sentence: Sentence, lengthOf: (mention: SizeMention) => Length | undefined, sayLength: (length: Length) => string): string {
  return sentence.map((piece) => {
    if (typeof piece === 'string') return piece;
    const length = 'length' in piece ? piece.length : lengthOf(piece);
    return length === undefined ? '' : sayLength(length);
  }).join('');
}

function keyOf({ kind, severity, sizes }: Misfit): string {
  return JSON.stringify([kind, severity, sizes]);
}

/** Sizes that measurements of others leave nothing of, or no value at all. */
function impossibleSizes(fitting: Fitting): readonly Misfit[] {
  const { piece, sizes } = fitting;
  const unworkable = sizes.unworkable.map((name): Misfit => ({
    kind: 'cannot be worked out', severity: 'will not go', sizes: [at(name)],
    say: [`${nameOf(piece, name)} can no longer be worked out, and keeps its plan: what it is divided by has become nothing. Look at what was measured.`],
  }));
  const absurd = piece.graph.nodes.flatMap((node): readonly Misfit[] => copiesOf(fitting, node.owner.id).flatMap((copy) => absurdSize(fitting, node, copy)));
  return [...unworkable, ...absurd];
}

function absurdSize({ piece, sizes }: Fitting, { name, owner, key, derived }: SizeNode, copy: number | undefined): readonly Misfit[] {
  const value = sizeOf(sizes, name, copy);
  if (owner.kind === 'tool' || derived || value === undefined || value.basis === 'planned') return [];
  if (absurdity(owner, key, value.length, SIZE_LIMITS) === undefined) return [];
  return [{ kind: 'nothing left', severity: 'will not go', sizes: [at(name, copy)], say: [`${nameOf(piece, name)} comes out at `, at(name, copy), ', which cannot be. Look at what was measured.'] }];
}

function nameOf(piece: LoadedPiece, name: string): string {
  const described = describeSize(piece, name);
  if (described === undefined) return name;
  const { owner, say } = described;
  return owner.kind === 'parameter' ? `The ${say}` : `The ${say} of the ${owner.name}`;
}
