import type { Owner } from './declared.ts';
import type { DescribedSize, Joint, Part, SizeSource } from './file.ts';
import { splitCopy } from './graph.ts';
import type { LoadedPiece } from './loadedPiece.ts';
import type { SizeName } from './measurement.ts';
import { usualFrom, usualWords } from './sizeWords.ts';

export interface SizeOwner {
  /** Allowances are parameters to the maker. */
  readonly kind: 'part' | 'joint' | 'parameter';
  /** Of a parameter, its whole name. */
  readonly id: string;
  /** Said aloud: 'long rail', 'long rail tenon', 'inside length'. */
  readonly name: string;
  readonly plural: string;
  /** Copies; of a mortise and tenon, two to every rail. */
  readonly count: number;
}

export interface SizeDescription {
  readonly owner: SizeOwner;
  /** Within its owner: 'tenonLength'. Of a parameter, its whole name. */
  readonly sizeKey: string;
  /** What the size is called aloud: 'length', 'shoulder to shoulder', 'tenon length'. Of a parameter, all of it: 'inside length'. */
  readonly say: string;
  /** What it is measured from: 'from the top end'. */
  readonly from?: string;
  readonly critical: boolean;
}

/** Every size that can be asked for, in the order of the file; the widths of tools are not among them. */
export function sizeNames(piece: LoadedPiece): readonly SizeName[] {
  return piece.graph.nodes.filter(({ owner }) => owner.kind !== 'tool').map(({ name }) => name);
}

/** How a size is spoken of. A copy in the name (`leg.2.width`) is passed over. Undefined when the piece has no such size. */
export function describeSize(piece: LoadedPiece, name: SizeName): SizeDescription | undefined {
  const index = piece.graph.indexOf.get(name) ?? piece.graph.indexOf.get(splitCopy(name).name);
  const node = piece.graph.nodes[index ?? -1];
  if (node === undefined) return undefined;
  const part = piece.file.parts.find(({ id }) => id === node.owner.id);
  const joint = piece.file.joints.find(({ id }) => id === node.owner.id);
  const source = sourceOf(piece, node.owner, node.key, part, joint);
  const described: Partial<DescribedSize> = typeof source === 'object' ? source : {};
  const say = described.say ?? usualWords(node.owner.kind, node.key);
  const from = described.from ?? usualFrom(node.owner.kind, node.key, part);
  return { owner: ownerOf(node.owner, node.name, say, part ?? joint), sizeKey: node.key, say, critical: node.critical, ...(from === undefined ? {} : { from }) };
}

function sourceOf({ file }: LoadedPiece, owner: Owner, key: string, part: Part | undefined, joint: Joint | undefined): SizeSource | undefined {
  switch (owner.kind) {
    case 'parameter': return file.parameters[key];
    case 'allowance': return file.allowances[key as keyof typeof file.allowances];
    case 'joint': return joint?.sizes[key];
    case 'tool': return undefined;
    case 'part':
      if (key === 'easing' || key === 'footBevel' || key === 'footBevelInwards') return part?.[key];
      return key === 'layerThickness' && part?.made.kind === 'laminated' ? part.made.layerThickness : part?.sizes[key];
  }
}

function ownerOf(owner: Owner, name: SizeName, say: string, named: Part | Joint | undefined): SizeOwner {
  const { id, count } = owner;
  if (named === undefined) return { kind: 'parameter', id: name, name: say, plural: say, count: 1 };
  const plural = ('plural' in named ? named.plural : undefined) ?? pluralOf(named.name);
  return { kind: owner.kind === 'joint' ? 'joint' : 'part', id, name: named.name, plural, count };
}

/** The plural by the usual rules: legs, benches, boxes, shelves, trays, bodies. */
export function pluralOf(name: string): string {
  if (/(?:s|x|z|ch|sh)$/u.test(name)) return `${name}es`;
  if (/(?:el|ea|al|ol)f$/u.test(name)) return `${name.slice(0, -1)}ves`;
  if (/[^aeiou]y$/u.test(name)) return `${name.slice(0, -1)}ies`;
  return `${name}s`;
}
