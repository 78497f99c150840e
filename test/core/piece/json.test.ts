import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readJson } from '../../../core/piece/json.ts';
import { plainValue } from '../../../core/piece/jsonNode.ts';
import { placeAt } from '../../../core/piece/place.ts';

function faultsOf(text: string): readonly string[] {
  return readJson(text).faults.map(({ at, path, found, message }) => {
    const { line, column } = placeAt(text, at);
    return `${line}:${column} ${path} ${found} ${message}`;
  });
}

/** The reader held to JSON.parse, which follows RFC 8259: whatever one takes, the other takes, and reads the same. */
function parsed(text: string): { readonly value: unknown } | undefined {
  try {
    return { value: JSON.parse(text) as unknown };
  } catch {
    return undefined;
  }
}

describe('JSON is read as RFC 8259 has it', () => {
  test('any JSON value, compact or spread out, reads as it was written', () => {
    fc.assert(fc.property(fc.jsonValue({ maxDepth: 5 }), fc.constantFrom(0, 2), (value, indent) => {
      const { root, faults } = readJson(JSON.stringify(value, null, indent));
      expect(faults).toEqual([]);
      expect(root && plainValue(root)).toEqual(JSON.parse(JSON.stringify(value)));
    }));
  });

  test('what JSON.parse refuses is refused, and nothing else, but for names given twice', () => {
    const pieces = fc.constantFrom('{', '}', '[', ']', ',', ':', '"a"', '"b\\n"', '"\\x"', '"\\u00e9"', '"', "'", '1', '-0', '01', '1.', '.5', '1e3', '+1', 'true', 'nul', 'NaN', '//', '/*', '*/', '\n', ' ', '\t', '\\');
    fc.assert(fc.property(fc.array(pieces, { maxLength: 12 }), (tokens) => {
      const text = tokens.join('');
      const { faults } = readJson(text);
      const onlyDoubles = faults.every(({ expected }) => expected === 'each name once');
      expect(onlyDoubles).toBe(parsed(text) !== undefined);
    }), { numRuns: 20_000 });
  });

  test('a name such as __proto__ is a name like any other', () => {
    const { root } = readJson('{"__proto__": {"polluted": true}, "constructor": 1}');
    const value = root && plainValue(root);
    expect(Object.keys(value as object)).toEqual(['__proto__', 'constructor']);
    expect(({} as Record<string, unknown>)['polluted']).toBeUndefined();
  });
});

describe('every mistake is told, each at its place', () => {
  test('several in one text', () => {
    const text = '{\n  "a": 1,\n  "a": 2,\n  b: 3\n  "c": [1, 2,],\n  "d": \'x\',\n}';
    expect(faultsOf(text)).toEqual([
      '3:3 $.a "\\"a\\"" a second time Only one of the two can hold: take the other away, or rename it.'.replace('"\\"a\\""', '"a"'),
      '4:3 $ "b" Names stand in double quotes: "name": value.',
      '5:3 $ "\\"" Put a comma between two entries.',
      '5:14 $.c \']\' Take away the comma before the closing bracket.',
      '6:8 $.d "\'" Use straight double quotes.',
      '7:1 $ \'}\' Take away the comma before the closing bracket.',
    ]);
  });

  test.each([
    ['', 'The file is empty'],
    ['  \n ', 'The file is empty'],
    ['{"a": {"b": [1, 2', 'opened at line 1, column 13 is never closed'],
    ['{"a": "cut', 'Close the text with a double quote'],
    ['{"a": "two\nlines"}', 'Close the text with a double quote'],
    ['{"a" 1}', 'Write "name": value'],
    ['{"a": }', 'Write a value after the colon'],
    ['{"a": 1 // note\n}', 'JSON has no comments'],
    ['{"a": [1}', 'Close with the bracket that matches'],
    ['{"a": 1}}', 'Take away what stands after'],
    ['{"a": 3 1/4}', 'comma between two entries'],
    ['{"a": 1/4}', 'a size with a unit is text in double quotes'],
    ['{"a": "\\q"}', 'Write a backslash as two'],
    ['{"a": "\u0001"}', 'Take the character away'],
    [`${'['.repeat(40)}${']'.repeat(40)}`, 'this is some other file, or a damaged one'],
  ])('%j', (text, message) => {
    expect(faultsOf(text).join('\n')).toContain(message);
  });

  test('at most a hundred of them', () => {
    expect(faultsOf(`[${'nope,'.repeat(5000)}1]`)).toHaveLength(100);
  });

  test('a byte order mark is passed over, as RFC 8259 section 8.1 allows', () => {
    expect(faultsOf('\uFEFF{}')).toEqual([]);
  });
});
