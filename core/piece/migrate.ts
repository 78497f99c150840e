import { memberOf, type JsonNode } from './jsonNode.ts';

/** The number of the present form of the piece file. */
export const PIECE_VERSION = 2;

/**
 * What each version's files need to be of the next. Version 2 added joints (twin tenons, haunches, through tenons, bridles, stepped ends, horns), all of which a file
 * may leave out: what version 1 says means the same in it.
 */
const STEPS: Readonly<Record<number, (root: JsonNode) => JsonNode>> = { 1: (root) => root };

/** The file in its present form; what is no piece file, or of a version that never was, stays as it is for the schema to refuse. Places in the text stay right. */
export function broughtUp(root: JsonNode): JsonNode {
  const format = memberOf(root, 'format');
  const version = memberOf(root, 'version');
  if (format?.kind !== 'text' || format.value !== 'benchcall piece' || version?.kind !== 'number') return root;
  const step = STEPS[version.value];
  return step === undefined ? root : broughtUp(withVersion(step(root), version.value + 1));
}

function withVersion(root: JsonNode, value: number): JsonNode {
  if (root.kind !== 'object') return root;
  const members = root.members.map((member) => (member.key === 'version' && member.value.kind === 'number' ? { ...member, value: { ...member.value, value } } : member));
  return { ...root, members };
}
