import { derivedJointSizes, derivedSizes, type DerivedSize } from './derived.ts';
import type { JsonNode } from './jsonNode.ts';
import { childPath, memberOf } from './jsonNode.ts';

/** Whose size it is. Joints count their copies: a mortise and tenon has two to every rail. */
export interface Owner {
  readonly kind: 'part' | 'joint' | 'parameter' | 'allowance' | 'tool';
  /** Empty for parameters, whose names stand alone. */
  readonly id: string;
  readonly count: number;
}

/** A size as it is declared in the file, not yet read. */
export interface DeclaredSize {
  readonly name: string;
  readonly owner: Owner;
  readonly key: string;
  readonly is: string;
  readonly critical: boolean;
  readonly path: string;
  /** The opening quote of the expression in the file; the owner's place for derived sizes. */
  readonly at: number;
  readonly derived: boolean;
}

export interface Declared {
  readonly sizes: readonly DeclaredSize[];
  /** False when something that names sizes could not be read, so that a name that is not found proves nothing. */
  readonly complete: boolean;
}

interface Collecting {
  readonly sizes: DeclaredSize[];
  complete: boolean;
}

/** Every size that a file declares, as far as it can be made out: a fault in one place hides none in the others. */
export function declaredSizes(root: JsonNode): Declared {
  const all: Collecting = { sizes: [], complete: !('cut' in root && root.cut) };
  addGroup(all, { kind: 'parameter', id: '', count: 1 }, memberOf(root, 'parameters'));
  const allowances = memberOf(root, 'allowances');
  addGroup(all, { kind: 'allowance', id: 'allowance', count: 1 }, allowances);
  for (const part of itemsOf(all, memberOf(root, 'parts'))) addPart(all, part, memberOf(allowances, 'afterRest') !== undefined);
  const counts = new Map(all.sizes.filter(({ owner }) => owner.kind === 'part').map(({ owner }) => [owner.id, owner.count]));
  for (const joint of itemsOf(all, memberOf(root, 'joints'))) addJoint(all, joint, counts);
  addTools(all, memberOf(root, 'tools'));
  return all;
}

function addPart(all: Collecting, part: JsonNode, hasAfterRest: boolean): void {
  const id = textOf(memberOf(part, 'id'));
  if (id === undefined) { all.complete = false; return; }
  const owner: Owner = { kind: 'part', id, count: countOf(memberOf(part, 'count')) };
  addGroup(all, owner, memberOf(part, 'sizes'));
  for (const key of ['easing', 'footBevel', 'footBevelInwards']) addOne(all, owner, key, memberOf(part, key));
  addOne(all, owner, 'layerThickness', memberOf(memberOf(part, 'made'), 'layerThickness'));
  addDerived(all, owner, part, derivedSizes(part, id, hasAfterRest));
}

function addDerived(all: Collecting, owner: Owner, node: JsonNode, derived: readonly DerivedSize[]): void {
  const given = new Set(all.sizes.filter((size) => size.owner === owner).map(({ key }) => key));
  for (const { key, is } of derived) {
    if (!given.has(key)) all.sizes.push({ name: `${owner.id}.${key}`, owner, key, is, critical: false, path: childPath(node.path, key), at: node.start, derived: true });
  }
}

function addJoint(all: Collecting, joint: JsonNode, counts: ReadonlyMap<string, number>): void {
  const id = textOf(memberOf(joint, 'id'));
  if (id === undefined) { all.complete = false; return; }
  const rails = counts.get(textOf(memberOf(joint, 'tenonOn')) ?? '');
  const count = rails === undefined ? countOf(memberOf(joint, 'count')) : 2 * rails;
  const owner: Owner = { kind: 'joint', id, count };
  addGroup(all, owner, memberOf(joint, 'sizes'));
  addDerived(all, owner, joint, derivedJointSizes(joint, id));
}

/** Chisels and clamps have no names: they are numbered. */
function addTools(all: Collecting, tools: JsonNode | undefined): void {
  const owner: Owner = { kind: 'tool', id: 'tools', count: 1 };
  const chisels = memberOf(tools, 'chisels');
  const clamps = memberOf(tools, 'clamps');
  if (chisels?.kind === 'list') chisels.items.forEach((chisel, index) => addOne(all, owner, `chisel${index + 1}`, chisel));
  if (clamps?.kind === 'list') clamps.items.forEach((clamp, index) => addOne(all, owner, `clamp${index + 1}`, memberOf(clamp, 'opens')));
}

function itemsOf(all: Collecting, list: JsonNode | undefined): readonly JsonNode[] {
  if (list?.kind === 'list') return list.items;
  all.complete = false;
  return [];
}

function addGroup(all: Collecting, owner: Owner, group: JsonNode | undefined): void {
  if (group?.kind !== 'object') { all.complete = false; return; }
  for (const { key, value } of group.members) addOne(all, owner, key, value);
}

function addOne(all: Collecting, owner: Owner, key: string, node: JsonNode | undefined): void {
  if (node === undefined) return;
  const expression = node.kind === 'object' ? memberOf(node, 'is') : node;
  if (expression?.kind !== 'text') { all.complete = false; return; }
  const critical = memberOf(node, 'critical');
  all.sizes.push({
    name: owner.id === '' ? key : `${owner.id}.${key}`,
    owner, key, is: expression.value, derived: false,
    critical: critical?.kind === 'true or false' && critical.value,
    path: expression.path, at: expression.start,
  });
}

function textOf(node: JsonNode | undefined): string | undefined {
  return node?.kind === 'text' ? node.value : undefined;
}

function countOf(node: JsonNode | undefined): number {
  return node?.kind === 'number' && Number.isInteger(node.value) && node.value > 0 ? Math.min(node.value, 500) : 1;
}
