import { ZERO_LENGTH } from '../length/length.ts';
import { sizeOf, type Sizes } from '../piece/evaluate.ts';
import type { SizeGraph, SizeNode } from '../piece/graph.ts';
import type { SizeName } from '../piece/measurement.ts';
import { product, quotient, rational, sum, type Rational } from '../piece/rational.ts';
import { failure, success, type Result } from '../result.ts';
import { linearTolerance } from './generalTolerance.ts';
import type { Share } from './stack.ts';

/** A made size that the size asked for stands on. */
export interface Contributor extends Share {
  readonly size: SizeName;
  readonly copy?: number;
  /** It was measured: it stands, and leaves nothing open. */
  readonly measured: boolean;
}

interface Term {
  readonly node: SizeNode;
  readonly copy: number | undefined;
  readonly pieces: number;
  readonly factor: Rational;
}

const ONE = rational(1n);
/** Deeper than any piece is; the graph has no circles. */
const DEEPEST = 60;

/**
 * The sizes that are cut, of parts and joints, that a size comes of. A part's size that stands on other parts' sizes is what those leave; one that stands on
 * none is its own. A size that is only named, such as an inside length, is what the first part that is cut to it makes of it. Twice a size of which
 * there are two or more is two pieces, each off in its own way. Tolerances: ISO 2768-1, fine for critical sizes and medium for the others.
 */
export function contributorsOf(sizes: Sizes, name: SizeName, copy?: number): Result<readonly Contributor[], string> {
  const { graph } = sizes;
  const node = graph.nodes[graph.indexOf.get(name) ?? -1];
  if (node === undefined) return failure('This piece has no such size.');
  const terms = isMade(node) ? expand(graph, node, ONE, 0) : realised(graph, node);
  if (terms === undefined) return failure('That size is not a sum of others: I cannot say what each part does to it.');
  const open = merged(terms.length === 0 && isMade(node) ? [{ node, copy, pieces: 1, factor: ONE }] : terms);
  return open.length === 0 ? failure('Nothing that is cut stands on that size.') : success(open.map((term) => contributor(sizes, term)));
}

function isMade({ owner }: SizeNode): boolean {
  return owner.kind === 'part' || owner.kind === 'joint';
}

/** What a formula stands on, down to made sizes and no further; names that nothing is cut to are taken as exact. Undefined where it is no sum. */
function expand(graph: SizeGraph, { formula }: SizeNode, factor: Rational, depth: number): readonly Term[] | undefined {
  const { linear, references } = formula;
  if (linear === undefined || depth > DEEPEST) return undefined;
  const terms: Term[] = [];
  for (const [index, { node: at, copy }] of references.entries()) {
    const node = graph.nodes[at];
    const count = rational(BigInt(linear.coefficients[index] ?? 0), BigInt(linear.divisor));
    if (node === undefined) continue;
    if (isMade(node)) terms.push(madeTerm(node, copy, factor, count));
    else {
      const under = expand(graph, node, product(factor, count), depth + 1);
      if (under === undefined) return undefined;
      terms.push(...under);
    }
  }
  return terms;
}

/** '2 * leg.width' is two legs; '2 * top.thickness' of the one top is that one twice. */
function madeTerm(node: SizeNode, copy: number | undefined, factor: Rational, count: Rational): Term {
  const times = Number(count.numerator < 0n ? -count.numerator : count.numerator);
  const several = count.denominator === 1n && times > 1 && times <= node.owner.count && copy === undefined;
  return several ? { node, copy, pieces: times, factor: product(factor, rational(count.numerator / BigInt(times))) } : { node, copy, pieces: 1, factor: product(factor, count) };
}

/** A named size is what is cut to it: by what that part's formula makes of it, solved for the name. */
function realised(graph: SizeGraph, named: SizeNode): readonly Term[] | undefined {
  const own = expand(graph, named, ONE, 0);
  if (own === undefined || own.length > 0) return own;
  for (const made of graph.nodes) {
    if (!isMade(made) || made.derived) continue;
    const share = shareOf(graph, made, named);
    const under = share && expand(graph, made, ONE, 0);
    if (!share || !under) continue;
    const each = quotient(ONE, share);
    if (!each) continue;
    return [{ node: made, copy: undefined, pieces: 1, factor: each }, ...under.map((term) => ({ ...term, factor: product(term.factor, product(each, rational(-1n))) }))];
  }
  return [];
}

/** How often a formula holds a named size itself, through other named sizes too; undefined for not at all. */
function shareOf(graph: SizeGraph, { formula: { linear, references } }: SizeNode, named: SizeNode, depth = 0): Rational | undefined {
  if (linear === undefined || depth > DEEPEST) return undefined;
  const shares = references.flatMap(({ node: at }, index) => {
    const node = graph.nodes[at];
    const count = rational(BigInt(linear.coefficients[index] ?? 0), BigInt(linear.divisor));
    if (node === undefined || isMade(node)) return [];
    const under = node === named ? ONE : shareOf(graph, node, named, depth + 1);
    return under ? [product(count, under)] : [];
  });
  const total = shares.reduce(sum, rational(0n));
  return total.numerator === 0n ? undefined : total;
}

/** The same pieces by two ways are one, and may cancel out. */
function merged(terms: readonly Term[]): readonly Term[] {
  const byKey = new Map<string, Term>();
  for (const term of terms) {
    const key = `${term.node.name} ${term.copy ?? ''} ${term.pieces}`;
    const other = byKey.get(key);
    byKey.set(key, other ? { ...other, factor: sum(other.factor, term.factor) } : term);
  }
  return [...byKey.values()].filter(({ factor }) => factor.numerator !== 0n);
}

function contributor(sizes: Sizes, { node, copy, pieces, factor }: Term): Contributor {
  const value = sizeOf(sizes, node.name, copy);
  const measured = value?.basis === 'measured';
  const open = linearTolerance(value?.length ?? ZERO_LENGTH, node.critical ? 'fine' : 'medium');
  return {
    size: node.name, ...(copy === undefined ? {} : { copy }), pieces, measured,
    factor: { numerator: Number(factor.numerator), denominator: Number(factor.denominator) },
    tolerance: measured ? ZERO_LENGTH : open,
  };
}
