import type { Length } from '../length/length.ts';
import { nanometres } from '../length/length.ts';
import type { Reference } from './formula.ts';
import { formulaValue } from './formula.ts';
import type { SizeGraph, SizeNode } from './graph.ts';
import { splitCopy } from './graph.ts';
import type { LoadedPiece } from './loadedPiece.ts';
import { readMeasurements } from './made.ts';
import type { Made } from './made.ts';
import type { Measurement, SizeName } from './measurement.ts';

/** Where a value comes from: the plan, a measurement of this very size, or measurements of sizes it stands on. */
export type Basis = 'planned' | 'measured' | 'follows';

export interface SizeValue {
  readonly length: Length;
  readonly planned: Length;
  readonly basis: Basis;
  /** Copies were measured singly and are not all alike: the set's value is that of the largest made one, which is this copy. */
  readonly largestCopy?: number;
}

/** All sizes of a piece as they stand after some measurements. Read it with `sizeOf`. */
export interface Sizes {
  readonly graph: SizeGraph;
  /** For each node, the value that the others stand on; all copies together. */
  readonly set: Values;
  /** Node → values by copy, for the parts and joints of which single copies were measured. */
  readonly copies: ReadonlyMap<number, Values>;
  readonly largestCopy: ReadonlyMap<number, number>;
  /** Sizes that the measurements leave without a value (a division by nothing): they keep the plan. */
  readonly unworkable: readonly SizeName[];
  /** Measurements of sizes or copies that this piece does not have: they change nothing. */
  readonly stray: readonly Measurement[];
}

interface Values {
  readonly lengths: Float64Array;
  readonly basis: Uint8Array;
}

const BASES: readonly Basis[] = ['planned', 'measured', 'follows'];
const PLANNED = 0;
const MEASURED = 1;
const FOLLOWS = 2;

interface Evaluation {
  readonly graph: SizeGraph;
  readonly made: Made;
  readonly set: Values;
  readonly copies: Map<number, Values>;
  readonly largestCopy: Map<number, number>;
  readonly unworkable: SizeName[];
}

/**
 * Works out every size from the plan and what was measured. A measurement holds for its size, and for all that stand on it. Within one part, sizes
 * of a copy stand on sizes of the same copy; other parts stand on the set, which is the largest made copy. Copies that
 * were not measured keep the plan. One pass in dependency order: time in proportion to the sizes.
 */
export function evaluate(piece: LoadedPiece, measurements: readonly Measurement[]): Sizes {
  const { graph } = piece;
  const made = readMeasurements(graph, measurements);
  const set = { lengths: graph.planned.slice(), basis: new Uint8Array(graph.nodes.length) };
  const evaluation: Evaluation = { graph, made, set, copies: new Map(), largestCopy: new Map(), unworkable: [] };
  if (made.byNode.size > 0) {
    for (const index of graph.order) {
      const node = graph.nodes[index];
      if (node === undefined) continue;
      if (made.split.has(node.owner)) evaluateCopies(evaluation, index, node);
      evaluateSet(evaluation, index, node);
    }
  }
  const { copies, largestCopy, unworkable } = evaluation;
  return { graph, set, copies, largestCopy, unworkable, stray: made.stray };
}

/** The value of a size, of one copy or of the set. Undefined when the piece has no such size or copy. `leg.2.width` names a copy too. */
export function sizeOf(sizes: Sizes, name: SizeName, copy?: number): SizeValue | undefined {
  const plain = sizes.graph.indexOf.get(name);
  if (plain !== undefined) return valueAt(sizes, plain, copy);
  const split = splitCopy(name);
  const index = sizes.graph.indexOf.get(split.name);
  return index === undefined ? undefined : valueAt(sizes, index, split.copy ?? copy);
}

function valueAt(sizes: Sizes, index: number, copy: number | undefined): SizeValue | undefined {
  const count = sizes.graph.nodes[index]?.owner.count ?? 0;
  if (copy !== undefined && !(Number.isInteger(copy) && copy >= 1 && copy <= count)) return undefined;
  const copies = copy === undefined ? undefined : sizes.copies.get(index);
  const [values, at] = copies === undefined || copy === undefined ? [sizes.set, index] : [copies, copy - 1];
  const largestCopy = copy === undefined ? sizes.largestCopy.get(index) : undefined;
  return {
    length: nanometres(values.lengths[at] ?? 0),
    planned: nanometres(sizes.graph.planned[index] ?? 0),
    basis: BASES[values.basis[at] ?? PLANNED] ?? 'planned',
    ...(largestCopy === undefined ? {} : { largestCopy }),
  };
}

function evaluateSet(evaluation: Evaluation, index: number, node: SizeNode): void {
  const { made, set } = evaluation;
  const measured = made.byNode.get(index);
  if (measured === undefined) {
    if (hasMoved(evaluation, node, undefined)) follow(evaluation, node, set, index, undefined);
    return;
  }
  set.lengths[index] = measured.largest;
  set.basis[index] = MEASURED;
  if (measured.largestCopy !== undefined) evaluation.largestCopy.set(index, measured.largestCopy);
}

function evaluateCopies(evaluation: Evaluation, index: number, node: SizeNode): void {
  const { count } = node.owner;
  const planned = evaluation.graph.planned[index] ?? 0;
  const values = { lengths: new Float64Array(count).fill(planned), basis: new Uint8Array(count) };
  evaluation.copies.set(index, values);
  const measured = evaluation.made.byNode.get(index);
  for (let copy = 1; copy <= count; copy++) {
    const length = measured?.copies.get(copy) ?? measured?.all;
    if (length !== undefined) {
      values.lengths[copy - 1] = length;
      values.basis[copy - 1] = MEASURED;
    } else if (hasMoved(evaluation, node, copy)) {
      follow(evaluation, node, values, copy - 1, copy);
    }
  }
}

/** Works a size out from its formula; keeps the plan when that cannot be done. */
function follow(evaluation: Evaluation, node: SizeNode, values: Values, at: number, copy: number | undefined): void {
  const length = formulaValue(node.formula, (reference) => lengthOf(evaluation, reference, copyOf(evaluation, node, reference, copy)));
  if (length === undefined) { evaluation.unworkable.push(node.name); return; }
  values.lengths[at] = length;
  values.basis[at] = FOLLOWS;
}

/** Whether anything that a size stands on is off the plan. */
function hasMoved(evaluation: Evaluation, node: SizeNode, copy: number | undefined): boolean {
  const { set, copies } = evaluation;
  return node.formula.references.some((reference) => {
    const which = copyOf(evaluation, node, reference, copy);
    const own = which === undefined ? undefined : copies.get(reference.node)?.basis[which - 1];
    return (own ?? set.basis[reference.node]) !== PLANNED;
  });
}

function lengthOf({ set, copies }: Evaluation, { node }: Reference, copy: number | undefined): number {
  const own = copy === undefined ? undefined : copies.get(node)?.lengths[copy - 1];
  return own ?? set.lengths[node] ?? 0;
}

/** A copy's own sizes stand on that copy's, unless another is named; those of others on the set. */
function copyOf({ graph }: Evaluation, node: SizeNode, reference: Reference, copy: number | undefined): number | undefined {
  return reference.copy ?? (copy !== undefined && graph.nodes[reference.node]?.owner === node.owner ? copy : undefined);
}
