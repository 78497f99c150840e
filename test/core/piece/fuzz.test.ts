import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { evaluate, sizeOf } from '../../../core/piece/evaluate.ts';
import { sizeNames } from '../../../core/piece/describe.ts';
import { misfits } from '../../../core/piece/fits.ts';
import { loadPiece, writePiece } from '../../../core/piece/load.ts';
import { DEMO_TEXT } from './demo.ts';

/** One way to spoil a text. Offsets are shares of its length, so that they stay inside however it was changed before. */
type Mutation = (text: string) => string;

const share = fc.double({ min: 0, max: 1, noNaN: true, maxExcluded: true });

function at(text: string, where: number): number {
  return Math.floor(where * text.length);
}

const flipped = fc.tuple(share, fc.integer({ min: 0, max: 0xff })).map(([where, code]): Mutation => (text) => text.slice(0, at(text, where)) + String.fromCharCode(code) + text.slice(at(text, where) + 1));
const cut = share.map((where): Mutation => (text) => text.slice(0, at(text, where)));
const dropped = fc.tuple(share, fc.nat(400)).map(([where, length]): Mutation => (text) => text.slice(0, at(text, where)) + text.slice(at(text, where) + length));
const doubled = fc.tuple(share, fc.nat(400)).map(([where, length]): Mutation => (text) => text.slice(0, at(text, where) + length) + text.slice(at(text, where)));
const inserted = fc.tuple(share, fc.constantFrom(
  '{', '}', '[', ']', ',', ':', '"', '\\', '\u0000', '\uFEFF', '\uD800', '//', '/*', "'", '__proto__', '"__proto__": {"x": 1},', '"constructor": "1 in",', '"toString": 1,', 'NaN', '1e999', '-0', '9'.repeat(400),
  '['.repeat(5000), '{"a":'.repeat(5000), '('.repeat(300), '1 in + '.repeat(90), 'leg.width', '\u2028', 'null', '"hasOwnProperty": "2 in",',
)).map(([where, what]): Mutation => (text) => text.slice(0, at(text, where)) + what + text.slice(at(text, where)));

/** Changes the n-th thing of a kind: a value for one of another type, a number for a huge one, a name, a unit, a sign. */
function swapped(pattern: RegExp, into: fc.Arbitrary<string>): fc.Arbitrary<Mutation> {
  return fc.tuple(share, into).map(([where, to]): Mutation => (text) => {
    const found = [...text.matchAll(pattern)];
    const one = found[Math.floor(where * found.length)];
    return one === undefined ? text : text.slice(0, one.index) + to + text.slice(one.index + one[0].length);
  });
}

const values = fc.constantFrom('null', 'true', '0', '-1', '1e308', '1e999', '123456789012345678901234567890', '0.1', '[]', '{}', '[[]]', '"3 in"', '"' + 'x'.repeat(2000) + '"', '{"is": "1 in"}', '{"is": {}}', '"__proto__"', '"\\ud800"');
const mutation: fc.Arbitrary<Mutation> = fc.oneof(
  flipped, cut, dropped, doubled, inserted,
  swapped(/(?<=: )(?:"[^"\n]*"|\d+)/gu, values),
  swapped(/"[A-Za-z.]+"(?=:)/gu, fc.constantFrom('"__proto__"', '"constructor"', '"prototype"', '"is"', '"id"', '"sizes"', '"valueOf"', '"a.b"', '""')),
  swapped(/\d+(?:\/\d+)? (?:in|mm)/gu, fc.constantFrom('0 in', '-3 in', '1/0 in', '999999999999 m', '1 in / 0', '0.0000001 mm', '1e5 in', '3', 'in', 'leg.width * leg.width', 'top.length', 'leg.99.width', '((', '1 in / (height - height) * 1 in')),
  swapped(/[a-z]\w+\.[a-z]\w+(?=[" ])/gu, fc.constantFrom('top.length', 'longRail.length', 'leg.width', 'leg', '__proto__.x', 'constructor.name', 'leg.__proto__', 'no.such')),
);

function spoil(mutations: readonly Mutation[]): string {
  return mutations.reduce((text, mutate) => mutate(text), DEMO_TEXT);
}

/** What is wrong with the outcome; nothing when it is a whole piece or a list of placed faults. */
function complaint(text: string, loaded = loadPiece(text)): string | undefined {
  if (!loaded.ok) return complaintOfFaults(loaded.fault, text);
  const sizes = evaluate(loaded.value, []);
  const lost = sizeNames(loaded.value).find((name) => sizeOf(sizes, name) === undefined);
  if (lost !== undefined) return `${lost} has no value`;
  misfits(loaded.value, []);
  const again = loadPiece(writePiece(loaded.value.file));
  return again.ok && JSON.stringify(again.value.file) === JSON.stringify(loaded.value.file) ? undefined : 'does not read back the same';
}

function complaintOfFaults(faults: readonly { readonly line: number; readonly column: number; readonly path: string; readonly message: string; readonly expected: string; readonly found: string }[], text: string): string | undefined {
  if (faults.length === 0 || faults.length > 101) return `${faults.length} faults`;
  const lines = text.split('\n');
  for (const { line, column, path, message, expected, found } of faults) {
    const length = lines[line - 1]?.length;
    if (length === undefined || column < 1 || column > length + 1) return `line ${line}, column ${column} is not in the file`;
    if (!path.startsWith('$') || message === '' || expected === '' || found === '') return `says too little: ${JSON.stringify({ path, message, expected, found })}`;
    if (message.length + expected.length + found.length + path.length > 4000) return `says too much: ${JSON.stringify({ path, message, expected, found })}`;
  }
  return undefined;
}

describe('ten thousand spoilt files', () => {
  test('each gives a whole piece or a list of faults with line and column, never a throw, never a hang', () => {
    let [pieces, refused] = [0, 0];
    fc.assert(fc.property(fc.array(mutation, { minLength: 1, maxLength: 3 }), (mutations) => {
      const text = spoil(mutations);
      const loaded = loadPiece(text);
      const wrong = complaint(text, loaded);
      if (wrong !== undefined) throw new Error(`${wrong}\n${text.slice(0, 400)}`);
      if (loaded.ok) pieces++;
      else refused++;
    }), { numRuns: 10_000 });
    // Both outcomes must have been met, or the spoiling is not worth its name.
    expect(pieces).toBeGreaterThan(50);
    expect(refused).toBeGreaterThan(5000);
    expect(({} as Record<string, unknown>)['x']).toBeUndefined();
  }, 600_000);
});

describe('files made to be slow or to break in', () => {
  test.each<[string, string]>([
    ['a mebibyte of opening brackets', '['.repeat(1_000_000)],
    ['a mebibyte of opening quotes', '"'.repeat(1_000_000)],
    ['a mebibyte of quotes of the wrong kind', "'\n".repeat(500_000)],
    ['a mebibyte of comments that do not end', '/*'.repeat(500_000)],
    ['a mebibyte of commas', `[${','.repeat(1_000_000)}]`],
    ['a mebibyte of blanks', ' '.repeat(1_000_000)],
    ['a mebibyte of unknown keys', `{${Array.from({ length: 45_000 }, (_, index) => `"parametres${index}":1`).join(',')}}`],
    ['many parameters that know no one', DEMO_TEXT.replace('"parameters": {', `"parameters": {${Array.from({ length: 1900 }, (_, index) => `"p${index}": "nobody.knows${index} + 1 in",`).join('')}`)],
    ['many parts that stand on each other', DEMO_TEXT.replace('"parameters": {', `"parameters": {${Array.from({ length: 1900 }, (_, index) => `"p${index}": "p${index + 1} / p${index + 2} * p${index + 3}",`).join('')}"p1900": "1 in","p1901": "1 in","p1902": "2 in",`)],
    ['a path of huge names', '{"'.concat('x'.repeat(30_000), '":').repeat(30)],
  ])('%s', (_, text) => {
    expect(complaint(text)).toBeUndefined();
  }, 120_000);
});
