import { Ajv2020 } from 'ajv/dist/2020.js';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readJson } from '../../../core/piece/json.ts';
import type { JsonFault } from '../../../core/piece/jsonReader.ts';
import schema from '../../../core/piece/piece.schema.json' with { type: 'json' };
import { checkAgainst } from '../../../core/piece/schema.ts';
import { DEMO_TEXT } from './demo.ts';

/** A general validator for JSON Schema, draft 2020-12: ours must come to its verdicts. */
const general = new Ajv2020({ strict: true, strictRequired: false, allErrors: true }).compile(schema);

function ours(text: string): readonly JsonFault[] {
  const faults: JsonFault[] = [];
  const { root } = readJson(text);
  if (root !== undefined) checkAgainst(schema, root, (fault) => faults.push(fault));
  return faults;
}

/** Keywords that the walker follows, and those that only describe. */
const KNOWN = new Set(['$ref', '$defs', 'description', 'type', 'const', 'enum', 'anyOf', 'oneOf', 'properties', 'required', 'additionalProperties', 'propertyNames', 'maxProperties', 'items', 'minItems', 'maxItems', 'minLength', 'maxLength', 'pattern', 'minimum', 'maximum', '$schema', '$id', 'title']);

function keywordsOf(node: unknown): readonly string[] {
  if (typeof node !== 'object' || node === null) return [];
  const forms = node as Record<string, unknown>;
  const group = (value: unknown): readonly unknown[] => (typeof value === 'object' && value !== null ? Object.values(value as Record<string, unknown>) : []);
  const under = [...['properties', '$defs', 'anyOf', 'oneOf'].flatMap((key) => group(forms[key])), forms['additionalProperties'], forms['propertyNames'], forms['items']];
  return [...Object.keys(forms), ...under.flatMap(keywordsOf)];
}

/** Every place in a value, as the keys that lead there. */
function placesIn(value: unknown, here: readonly string[] = []): readonly (readonly string[])[] {
  if (typeof value !== 'object' || value === null) return [here];
  return [here, ...Object.entries(value).flatMap(([key, inner]) => placesIn(inner, [...here, key]))];
}

/** A copy with the value at a place changed, or taken away when the new one is undefined. */
function changedAt(value: unknown, place: readonly string[], change: (old: unknown) => unknown): unknown {
  const [key, ...rest] = place;
  if (key === undefined) return change(value);
  if (Array.isArray(value)) return value.flatMap((item: unknown, index) => (String(index) === key ? without(changedAt(item, rest, change)) : [item]));
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(Object.entries(value).flatMap(([name, inner]) => (name === key ? without(changedAt(inner, rest, change)).map((item) => [name, item]) : [[name, inner] as [string, unknown]])));
}

function without(item: unknown): readonly unknown[] {
  return item === undefined ? [] : [item];
}

const demo: unknown = JSON.parse(DEMO_TEXT);
const places = placesIn(demo);

const change = fc.oneof(
  fc.constantFrom<unknown>(undefined, null, true, 0, -1, 1.5, 1e9, '', 'x', '3 in', [], {}, [1], { is: '3 in' }, { is: 3 }, { kind: 'solid' }, 'x'.repeat(600), 'tab\t', '😀'.repeat(60), '#'),
  fc.jsonValue({ maxDepth: 2 }),
).map((to) => () => to);
const addition = fc.tuple(fc.constantFrom('extra', 'kind', 'is', 'plural', 'Bad name', '__proto__', 'a.b', 'easing', 'places'), fc.constantFrom<unknown>('3 in', 3, [], ['left'])).map(([key, value]) => (old: unknown) =>
  (typeof old === 'object' && old !== null && !Array.isArray(old) ? Object.fromEntries([...Object.entries(old), [key, value]]) : value));

describe('the published schema', () => {
  test('is one that a general validator takes, and the table is held to be sound by it', () => {
    expect(general(demo)).toBe(true);
    expect(ours(DEMO_TEXT)).toEqual([]);
  });

  test('uses no keyword that the walker would pass over', () => {
    expect([...new Set(keywordsOf(schema))].filter((keyword) => !KNOWN.has(keyword))).toEqual([]);
  });

  test('is followed as a general validator follows it, whatever is changed in the table', () => {
    fc.assert(fc.property(fc.constantFrom(...places), fc.oneof(change, addition), (place, to) => {
      const changed = changedAt(demo, place, to);
      if (changed === undefined) return;
      const text = JSON.stringify(changed);
      const verdict = general(JSON.parse(text));
      expect(ours(text).length === 0, `${place.join('.')}: ${JSON.stringify(general.errors?.[0] ?? ours(text)[0])}`).toBe(verdict);
    }), { numRuns: 2000 });
  }, 120_000);
});
