import type { SizeValue, Sizes } from './evaluate.ts';
import { evaluate, sizeOf } from './evaluate.ts';
import type { SizeNode } from './graph.ts';
import { splitCopy } from './graph.ts';
import type { LoadedPiece } from './loadedPiece.ts';
import type { Measurement, SizeName } from './measurement.ts';
import type { SizeMention } from './sentence.ts';

/** One size in the answer to 'why': its value, and what it stands on. */
export interface WhyLink extends SizeMention {
  readonly value: SizeValue;
  /**
   * 'given': written down in the file. 'worked out': from the sizes it stands on. 'measured': as made, whatever the plan says.
   * 'largest made': copies were measured and differ; the set counts as the largest.
   */
  readonly reason: 'given' | 'worked out' | 'measured' | 'largest made';
  /** Its expression, as written. */
  readonly is: string;
  /** Empty for what is given or measured. */
  readonly standsOn: readonly SizeMention[];
  /** Steps from the size that was asked for; 0 is that size itself. */
  readonly depth: number;
}

/**
 * Why a size is what it is: the size itself, then what it stands on, and so on down to given sizes and measurements, nearest first and each once.
 * Empty when the piece has no such size or copy.
 */
export function explain(piece: LoadedPiece, measurements: readonly Measurement[], name: SizeName, copy?: number): readonly WhyLink[] {
  const sizes = evaluate(piece, measurements);
  const links: WhyLink[] = [];
  const asked = mention(piece, name, copy);
  const waiting: { readonly of: SizeMention; readonly depth: number }[] = [{ of: asked, depth: 0 }];
  const seen = new Set([keyOf(asked)]);
  for (let next = waiting.shift(); next !== undefined; next = waiting.shift()) {
    const link = explainOne(piece, sizes, next.of, next.depth);
    if (link === undefined) continue;
    links.push(link);
    for (const under of link.standsOn) {
      if (seen.has(keyOf(under))) continue;
      seen.add(keyOf(under));
      waiting.push({ of: under, depth: next.depth + 1 });
    }
  }
  return links;
}

function explainOne(piece: LoadedPiece, sizes: Sizes, of: SizeMention, depth: number): WhyLink | undefined {
  const node = piece.graph.nodes[piece.graph.indexOf.get(of.size) ?? -1];
  const value = sizeOf(sizes, of.size, of.copy);
  if (node === undefined || value === undefined) return undefined;
  const standsOn = standsOnOf(piece, node, value, of.copy);
  return { ...of, value, reason: reasonOf(value, standsOn), is: node.is, standsOn, depth };
}

function standsOnOf(piece: LoadedPiece, node: SizeNode, value: SizeValue, copy: number | undefined): readonly SizeMention[] {
  if (value.basis === 'measured') return value.largestCopy === undefined ? [] : [{ size: node.name, copy: value.largestCopy }];
  return node.formula.references.map(({ node: under, copy: named }) => {
    const other = piece.graph.nodes[under];
    const own = other?.owner === node.owner ? copy : undefined;
    return mention(piece, other?.name ?? '', named ?? own);
  });
}

function reasonOf(value: SizeValue, standsOn: readonly SizeMention[]): WhyLink['reason'] {
  if (value.basis === 'measured') return value.largestCopy === undefined ? 'measured' : 'largest made';
  return standsOn.length === 0 ? 'given' : 'worked out';
}

/** `leg.2.width` becomes the width of copy 2; of a thing there is one of, no copy is named. */
function mention({ graph }: LoadedPiece, name: SizeName, copy: number | undefined): SizeMention {
  const split = graph.indexOf.has(name) ? { name, copy } : splitCopy(name);
  const which = split.copy ?? copy;
  const count = graph.nodes[graph.indexOf.get(split.name) ?? -1]?.owner.count;
  return which === undefined || (count === 1 && which === 1) ? { size: split.name } : { size: split.name, copy: which };
}

function keyOf({ size, copy }: SizeMention): string {
  return `${size} ${copy ?? ''}`;
}
