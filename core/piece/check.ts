import type { JsonNode } from './jsonNode.ts';
import { memberOf } from './jsonNode.ts';
import type { JsonFault } from './jsonReader.ts';
import { quote } from './jsonReader.ts';
import { isUnit } from './literal.ts';
import { nearestName } from './nearest.ts';

type Report = (fault: JsonFault) => void;

/** First words of size names that the file itself uses. */
const TAKEN = ['allowance', 'tools'];

/** What the schema cannot say: that ids and spoken names are used once, that joints name parts that are there, and that places are as many as copies. */
export function checkReferences(root: JsonNode, report: Report): void {
  const parts = items(memberOf(root, 'parts'));
  const joints = items(memberOf(root, 'joints'));
  checkOnce([...parts, ...joints].map((node) => memberOf(node, 'id')), 'id', report);
  checkOnce([...parts, ...joints].flatMap((node) => [memberOf(node, 'name'), ...items(memberOf(node, 'alsoCalled'))]), 'spoken name', report);
  for (const node of [...parts, ...joints]) checkNotTaken(memberOf(node, 'id'), report);
  for (const { key, keyStart, path } of parameterNames(root)) {
    if (isUnit(key)) report({ at: keyStart, path, expected: 'a name that is not a unit', found: quote(key), message: 'Rename it: this word is read as a unit.' });
  }
  for (const part of parts) checkPlaces(part, report);
  const byId = new Map(parts.map((part) => [text(memberOf(part, 'id')) ?? '', part]));
  for (const joint of joints) checkJoint(joint, byId, report);
}

function checkOnce(nodes: readonly (JsonNode | undefined)[], what: string, report: Report): void {
  const seen = new Set<string>();
  for (const node of nodes) {
    const value = text(node)?.toLowerCase();
    if (node === undefined || value === undefined) continue;
    if (seen.has(value)) report({ at: node.start, path: node.path, expected: `each ${what} once`, found: `${quote(value)} again`, message: `Give it another ${what}, so that one can tell which is meant.` });
    seen.add(value);
  }
}

function checkNotTaken(id: JsonNode | undefined, report: Report): void {
  const value = text(id);
  if (id === undefined || value === undefined || !(TAKEN.includes(value) || isUnit(value))) return;
  report({ at: id.start, path: id.path, expected: 'an id of its own', found: quote(value), message: 'This word has a meaning in sizes already: choose another id.' });
}

function parameterNames(root: JsonNode): readonly { readonly key: string; readonly keyStart: number; readonly path: string }[] {
  const parameters = memberOf(root, 'parameters');
  return parameters?.kind === 'object' ? parameters.members.map(({ key, keyStart, value }) => ({ key, keyStart, path: value.path })) : [];
}

function checkPlaces(part: JsonNode, report: Report): void {
  const places = memberOf(part, 'places');
  const count = memberOf(part, 'count');
  if (places?.kind !== 'list') return;
  checkOnce(places.items, 'place', report);
  if (count?.kind !== 'number' || count.value < 1 || places.cut || count.value === places.items.length) return;
  report({ at: places.start, path: places.path, expected: `${count.value} places, one for each copy`, found: `${places.items.length}`, message: 'Name a place for each copy, or change the count.' });
}

function checkJoint(joint: JsonNode, parts: ReadonlyMap<string, JsonNode>, report: Report): void {
  for (const role of ['tenonOn', 'mortiseIn', 'holds', 'to', 'with']) {
    const named = memberOf(joint, role);
    const id = text(named);
    if (named === undefined || id === undefined || parts.has(id)) continue;
    const near = nearestName(id, parts.keys());
    const advice = near === undefined ? `The parts are ${[...parts.keys()].slice(0, 12).join(', ')}.` : `Did you mean ${quote(near)}?`;
    report({ at: named.start, path: named.path, expected: 'the id of a part', found: quote(id), message: `No part has this id. ${advice}` });
  }
  checkSame(joint, report);
  checkShape(joint, report);
  checkJointPlaces(joint, parts, report);
}

function checkSame(joint: JsonNode, report: Report): void {
  const tenoned = text(memberOf(joint, 'tenonOn'));
  const mortised = memberOf(joint, 'mortiseIn');
  if (mortised === undefined || tenoned === undefined || tenoned !== text(mortised)) return;
  report({ at: mortised.start, path: mortised.path, expected: 'another part than the tenoned one', found: quote(tenoned), message: 'A part cannot be tenoned into itself.' });
}

/** What a shape of joint needs beside the sizes that every joint has. */
function checkShape(joint: JsonNode, report: Report): void {
  const sizes = memberOf(joint, 'sizes');
  const missing = (field: string, size: string, message: string): void => {
    const asked = memberOf(joint, field);
    if (asked === undefined || sizes?.kind !== 'object' || sizes.cut || memberOf(sizes, size) !== undefined) return;
    report({ at: asked.start, path: asked.path, expected: `the size '${size}' beside it`, found: `sizes without it`, message });
  };
  if (['one above the other', 'side by side'].includes(text(memberOf(joint, 'tenons')) ?? '')) missing('tenons', 'gap', 'Twin tenons have a gap between them: add its size, such as "gap": "1 in".');
  missing('haunch', 'topShoulder', 'A haunch fills the top shoulder: add its size, such as "topShoulder": "1 in".');
  const shape = memberOf(joint, 'shape');
  const haunch = memberOf(joint, 'haunch');
  if (text(shape) === 'bridle' && haunch !== undefined) {
    report({ at: haunch.start, path: haunch.path, expected: 'no haunch at a bridle joint', found: quote(text(haunch) ?? ''), message: 'A bridle is as wide as its rail: leave the haunch out, or the shape.' });
  }
  const ends = memberOf(joint, 'tenonEnds');
  if (ends !== undefined && shape !== undefined && ['mitred', 'stepped'].includes(text(ends) ?? '') && text(shape) !== 'blind') {
    report({ at: ends.start, path: ends.path, expected: 'square ends where the tenon goes through', found: quote(text(ends) ?? ''), message: 'Only blind tenons meet inside a leg: leave out one of the two.' });
  }
}

function checkJointPlaces(joint: JsonNode, parts: ReadonlyMap<string, JsonNode>, report: Report): void {
  const host = parts.get(text(memberOf(joint, 'mortiseIn')) ?? '');
  const known = items(memberOf(host, 'places')).map(text).filter((place) => place !== undefined);
  for (const place of items(memberOf(joint, 'places'))) {
    const name = text(place);
    if (name === undefined || host === undefined || known.includes(name)) continue;
    const advice = known.length === 0 ? 'Give the mortised part its places first.' : `Its places are ${known.slice(0, 12).join(', ')}.`;
    report({ at: place.start, path: place.path, expected: 'a place of the mortised part', found: quote(name), message: advice });
  }
}

function items(node: JsonNode | undefined): readonly JsonNode[] {
  return node?.kind === 'list' ? node.items : [];
}

function text(node: JsonNode | undefined): string | undefined {
  return node?.kind === 'text' ? node.value : undefined;
}
