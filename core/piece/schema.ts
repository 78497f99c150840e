import type { JsonArray, JsonNode, JsonObject } from './jsonNode.ts';
import { childPath, memberOf } from './jsonNode.ts';
import { quote } from './jsonReader.ts';
import type { JsonFault } from './jsonReader.ts';
import { nearestName } from './nearest.ts';

/**
 * The keywords of JSON Schema (draft 2020-12) that the piece schema uses. A general validator would weigh more than the rest of
 * this folder and speaks of pointers and keywords; this one walks the tree that knows lines and columns and says what was expected in
 * the schema's own descriptions. The tests hold it to a general validator's verdicts and refuse keywords that it does not know.
 */
export interface Schema {
  readonly $ref?: string;
  readonly $defs?: Readonly<Record<string, Schema>>;
  readonly description?: string;
  readonly type?: string;
  readonly const?: string | number;
  readonly enum?: readonly string[];
  readonly anyOf?: readonly Schema[];
  readonly oneOf?: readonly Schema[];
  readonly properties?: Readonly<Record<string, Schema>>;
  readonly required?: readonly string[];
  readonly additionalProperties?: boolean | Schema;
  readonly propertyNames?: Schema;
  readonly maxProperties?: number;
  readonly items?: Schema;
  readonly minItems?: number;
  readonly maxItems?: number;
  readonly minLength?: number;
  readonly maxLength?: number;
  readonly pattern?: string;
  readonly minimum?: number;
  readonly maximum?: number;
}

type Report = (fault: JsonFault) => void;

/** Holds a tree to the schema and reports every fault. What could not be read, or was lost with the end of the file, is not reported again. */
export function checkAgainst(root: Schema, node: JsonNode, report: Report): void {
  check(root, root, node, report);
}

function check(root: Schema, given: Schema, node: JsonNode, report: Report): void {
  if (node.kind === 'unreadable') return;
  const schema = choose(root, resolve(root, given), node);
  if (schema === undefined || !hasType(schema, node)) { report(wrong(resolve(root, given), node)); return; }
  if (schema.const !== undefined && !('value' in node && node.value === schema.const)) report(wrong(schema, node));
  if (schema.enum !== undefined && !(node.kind === 'text' && schema.enum.includes(node.value))) report(wrong(schema, node));
  if (node.kind === 'object') checkObject(root, schema, node, report);
  if (node.kind === 'list') checkList(root, schema, node, report);
  if (node.kind === 'text' && !textFits(schema, node.value)) report(wrong(schema, node));
  if (node.kind === 'number' && (node.value < (schema.minimum ?? -Infinity) || node.value > (schema.maximum ?? Infinity))) report(wrong(schema, node));
}

function resolve(root: Schema, schema: Schema): Schema {
  if (schema.$ref === undefined) return schema;
  const named = root.$defs?.[schema.$ref.replace('#/$defs/', '')];
  if (named === undefined) throw new Error(`the schema has no ${schema.$ref}`);
  return named;
}

/** Of several forms, the one that the node means to be: by its type, and by its `kind`. Undefined when it is none of them. */
function choose(root: Schema, schema: Schema, node: JsonNode): Schema | undefined {
  const forms = schema.anyOf ?? schema.oneOf;
  if (forms === undefined) return schema;
  return forms.map((form) => resolve(root, form)).find((form) => hasType(form, node) && kindFits(form, node));
}

function kindFits(form: Schema, node: JsonNode): boolean {
  const wanted = form.properties?.['kind']?.const;
  if (wanted === undefined) return true;
  const kind = memberOf(node, 'kind');
  return kind?.kind === 'text' && kind.value === wanted;
}

function hasType(schema: Schema, node: JsonNode): boolean {
  switch (schema.type) {
    case undefined: return true;
    case 'object': return node.kind === 'object';
    case 'array': return node.kind === 'list';
    case 'string': return node.kind === 'text';
    case 'number': return node.kind === 'number';
    case 'integer': return node.kind === 'number' && Number.isInteger(node.value);
    case 'boolean': return node.kind === 'true or false';
    default: throw new Error(`the schema's type ${schema.type} is not known here`);
  }
}

function textFits(schema: Schema, value: string): boolean {
  // In characters as JSON Schema counts them: two surrogates are one.
  const length = value.length - (value.match(/[\uD800-\uDBFF][\uDC00-\uDFFF]/g)?.length ?? 0);
  if (length < (schema.minLength ?? 0) || length > (schema.maxLength ?? Infinity)) return false;
  return schema.pattern === undefined || compiled(schema.pattern).test(value);
}

/** Compiled once: making an expression costs more than using it. */
const patterns = new Map<string, RegExp>();

function compiled(pattern: string): RegExp {
  const known = patterns.get(pattern) ?? new RegExp(pattern, 'u');
  patterns.set(pattern, known);
  return known;
}

function checkObject(root: Schema, schema: Schema, node: JsonObject, report: Report): void {
  for (const key of schema.required ?? []) {
    if (!node.cut && memberOf(node, key) === undefined) report(missing(root, schema, node, key));
  }
  if (node.members.length > (schema.maxProperties ?? Infinity)) report(tooMany(node, node.members.length, schema.maxProperties ?? 0));
  for (const { key, keyStart, value } of node.members) {
    const known = Object.hasOwn(schema.properties ?? {}, key) ? schema.properties?.[key] : undefined;
    if (known !== undefined) { check(root, known, value, report); continue; }
    const names = schema.propertyNames === undefined ? undefined : resolve(root, schema.propertyNames);
    if (names !== undefined && !textFits(names, key)) report(badName(names, value.path, keyStart, key));
    else if (typeof schema.additionalProperties === 'object') check(root, schema.additionalProperties, value, report);
    else if (schema.additionalProperties === false) report(unknownName(schema, value.path, keyStart, key));
  }
}

function checkList(root: Schema, schema: Schema, node: JsonArray, report: Report): void {
  const most = schema.maxItems ?? Infinity;
  if (node.items.length > most) report(tooMany(node, node.items.length, most));
  if (!node.cut && node.items.length < (schema.minItems ?? 0)) {
    report({ at: node.start, path: node.path, expected: `at least ${schema.minItems ?? 0}`, found: `${node.items.length}`, message: 'Add what is missing.' });
  }
  if (schema.items !== undefined) for (const item of node.items.slice(0, most)) check(root, schema.items, item, report);
}

function wrong(schema: Schema, node: JsonNode): JsonFault {
  return { at: node.start, path: node.path, expected: expectedBy(schema), found: whatIs(node), message: adviceFor(schema, node) };
}

function expectedBy(schema: Schema): string {
  const exactly = schema.const === undefined ? '' : `${JSON.stringify(schema.const)}: `;
  const range = schema.maximum === undefined ? '' : ` from ${schema.minimum ?? 0} to ${schema.maximum}`;
  const longest = schema.maxLength === undefined ? '' : `, at most ${schema.maxLength} characters`;
  return `${exactly}${schema.description ?? 'something else'}${range}${longest}`;
}

function adviceFor(schema: Schema, node: JsonNode): string {
  if ((schema.type === 'integer' || schema.type === 'number') && node.kind === 'text') return 'Write the number without quotes.';
  if (node.kind === 'number' && (schema.anyOf !== undefined || schema.type === 'string')) return 'Put it in double quotes; a size needs its unit too.';
  if (node.kind === 'null') return 'Write a value, or take the name away.';
  return `Write ${schema.description ?? 'what was expected'}.`;
}

function whatIs(node: JsonNode): string {
  switch (node.kind) {
    case 'object': {
      const kind = memberOf(node, 'kind');
      return kind?.kind === 'text' ? `an object of kind ${quote(kind.value)}` : 'an object';
    }
    case 'list': return 'a list';
    case 'text': return `the text ${quote(node.value)}`;
    case 'number': return `the number ${node.value}`;
    case 'true or false': return String(node.value);
    case 'null':
    case 'unreadable': return 'nothing';
  }
}

function missing(root: Schema, schema: Schema, node: JsonObject, key: string): JsonFault {
  const property = schema.properties?.[key];
  const wanted = property === undefined ? 'a size' : expectedBy(resolve(root, property));
  return { at: node.start, path: childPath(node.path, key), expected: wanted, found: `no ${quote(key)}`, message: `Add ${quote(key)} here.` };
}

function badName(names: Schema, path: string, at: number, key: string): JsonFault {
  return { at, path, expected: expectedBy(names), found: `the name ${quote(key)}`, message: 'Rename it, here and wherever it is used.' };
}

function unknownName(schema: Schema, path: string, at: number, key: string): JsonFault {
  const known = Object.keys(schema.properties ?? {});
  const near = nearestName(key, known);
  return {
    at, path, expected: `one of ${known.join(', ')}`, found: `the name ${quote(key)}`,
    message: near === undefined ? 'Take it away: nothing here is called so.' : `Did you mean ${quote(near)}?`,
  };
}

function tooMany(node: JsonNode, count: number, most: number): JsonFault {
  return { at: node.start, path: node.path, expected: `at most ${most}`, found: `${count}`, message: 'That is more than a piece has: look whether something was copied too often.' };
}
