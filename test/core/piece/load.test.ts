import { describe, expect, test } from 'vitest';
import { LARGEST_FILE_BYTES, loadPiece, writeFault, writePiece } from '../../../core/piece/load.ts';
import type { PieceFault } from '../../../core/piece/load.ts';
import { DEMO_TEXT, loadSound } from './demo.ts';

/** The table with one text of its file changed for another. */
function changed(from: string, to: string): string {
  expect(DEMO_TEXT).toContain(from);
  return DEMO_TEXT.replace(from, to);
}

function faultsOf(text: string): readonly PieceFault[] {
  const loaded = loadPiece(text);
  return loaded.ok ? [] : loaded.fault;
}

/** Where in the text a snippet stands, as line and column. */
function placeOf(text: string, snippet: string): { readonly line: number; readonly column: number } {
  const before = text.slice(0, text.indexOf(snippet)).split('\n');
  return { line: before.length, column: (before.at(-1) ?? '').length + 1 };
}

describe('a bad piece file is told with the place, what was expected and what was found', () => {
  test.each<[string, string, string, Partial<PieceFault>, string]>([
    ['a count written as text', '"count": 12,', '"count": "twelve",', { path: '$.parts[6].count', found: 'the text "twelve"', expected: 'how many are made from 1 to 500' }, '"twelve"'],
    ['no legs at all', '"count": 4,', '"count": 0,', { path: '$.parts[0].count', found: 'the number 0' }, '0,\n      "places"'],
    ['a misspelt key', '"species": "hard maple",\n      "sizes": {\n        "length": { "is": "height', '"specise": "hard maple",\n      "sizes": {\n        "length": { "is": "height', { path: '$.parts[0].specise', message: 'Did you mean "species"?' }, '"specise"'],
    ['a size without a unit', '"2 1/4 in"', '"2 1/4"', { path: '$.parts[6].sizes.length', expected: 'a length', found: 'a number without a unit' }, '2 1/4"'],
    ['a size as a bare number', '"5 in"', '5', { path: '$.parameters["rail.width"].is', found: 'the number 5', message: 'Put it in double quotes; a size needs its unit too.' }, '5, "say": "rail width"'],
    ['an area where a length is wanted', '"section.leg",\n        "thickness"', '"section.leg * height",\n        "thickness"', { path: '$.parts[0].sizes.width', found: 'an area (a length times a length)' }, 'section.leg * height'],
    ['an unknown way of making', '"kind": "panel"', '"kind": "pannel"', { path: '$.parts[5].made', found: 'an object of kind "pannel"' }, '{ "kind": "pannel"'],
    ['a joint into a part that is not there', '"mortiseIn": "leg"', '"mortiseIn": "legg"', { path: '$.joints[0].mortiseIn', message: 'No part has this id. Did you mean "leg"?' }, '"legg"'],
    ['a part tenoned into itself', '"mortiseIn": "leg"', '"mortiseIn": "longRail"', { path: '$.joints[0].mortiseIn', message: 'A part cannot be tenoned into itself.' }, '"longRail",\n      "mortiseInto"'],
    ['three places for four legs', '"places": ["front left", "front right", "back left", "back right"]', '"places": ["front left", "back left", "back right"]', { path: '$.parts[0].places', expected: '4 places, one for each copy', found: '3' }, '["front left"'],
    ['a joint at a place that the leg does not have', '"places": ["back left", "back right"],\n      "sizes"', '"places": ["back left", "behind"],\n      "sizes"', { path: '$.joints[3].places[1]' }, '"behind"'],
    ['two parts with one name', '"name": "short rail"', '"name": "long rail"', { path: '$.parts[2].name', found: '"long rail" again' }, '"long rail",\n      "alsoCalled": ["end rail"'],
    ['an id that sizes use already', '"id": "button"', '"id": "tools"', { path: '$.parts[6].id', found: '"tools"' }, '"tools",\n      "name"'],
    ['a parameter called like a unit', '"height": {', '"mm": {', { path: '$.parameters.mm', found: '"mm"' }, '"mm"'],
    ['a name that cannot be said', '"name": "leg"', '"name": "leg #1"', { path: '$.parts[0].name' }, '"leg #1"'],
    ['nothing for a value', '"coats": 3', '"coats": null', { path: '$.finish.coats', found: 'nothing' }, 'null'],
  ])('%s', (_, from, to, fault, snippet) => {
    const text = changed(from, to);
    expect(faultsOf(text)).toContainEqual(expect.objectContaining({ ...fault, ...placeOf(text, snippet) }));
  });

  test('a missing size is missed at its part', () => {
    const text = changed('        "width": "1 1/4 in",\n', '');
    expect(faultsOf(text)).toContainEqual(expect.objectContaining({ path: '$.parts[6].sizes.width', found: 'no "width"' }));
  });

  test('all faults are told at once, in the order of the file', () => {
    const text = DEMO_TEXT.replace('"46 in"', '"46"').replace('"count": 4', '"count": -4').replace('"coats": 3', '"coats": 3,').replace('"mineral oil"', '7');
    const faults = faultsOf(text);
    expect(faults.map(({ path }) => path)).toEqual(['$.parameters["inside.length"].is', '$.parts[0].count', '$.finish.kind', '$.finish']);
    expect(faults.map(({ line }) => line)).toEqual([...faults.map(({ line }) => line)].sort((a, b) => a - b));
  });

  test('a fault reads as one line', () => {
    const [fault] = faultsOf(changed('"coats": 3', '"coats": "three"'));
    expect(fault && writeFault(fault)).toMatch(/^Line \d+, column \d+ \(\$\.finish\.coats\): expected how many coats from 1 to 50; found the text "three"\. Write the number without quotes\.$/u);
  });

  test('a file of a newer version is refused in words, and only that is said', () => {
    const faults = faultsOf(changed('"version": 2', '"version": 3, "novelty": true'));
    expect(faults).toEqual([{ path: '$.version', line: 4, column: 14, expected: 'version 2', found: 'version 3', message: expect.stringContaining('newer Benchcall') as string }]);
  });

  test('some other JSON is called that, rather than a piece that lacks everything', () => {
    for (const text of ['[]', '3', '{"records": []}']) expect(faultsOf(text)).toEqual([expect.objectContaining({ path: '$', line: 1, column: 1, found: 'some other JSON' })]);
    expect(faultsOf('{"format": "benchcall piece"}').map(({ path }) => path)).toContain('$.parts');
  });

  test('a file that is too large is not read', () => {
    expect(faultsOf(DEMO_TEXT + ' '.repeat(LARGEST_FILE_BYTES))).toEqual([expect.objectContaining({ path: '$', expected: `at most ${LARGEST_FILE_BYTES} bytes` })]);
    // Two bytes each in UTF-8, so that half a mebibyte of characters is too much.
    expect(faultsOf(JSON.stringify('é'.repeat(LARGEST_FILE_BYTES / 2)))[0]?.found).toMatch(/bytes/u);
  });

  test('a file that was cut short says where it was still open', () => {
    const faults = faultsOf(DEMO_TEXT.slice(0, 3000));
    expect(faults.at(-1)).toMatchObject({ found: 'the end of the file' });
    expect(faults.at(-1)?.message).toMatch(/never closed|double quote/u);
    // What is missing after the cut is not complained of piece by piece.
    expect(faults.length).toBeLessThanOrEqual(2);
  });
});

describe('sizes that cannot be are found when the file is read', () => {
  function found(to: string): readonly string[] {
    return faultsOf(changed('"longRailTenon.tenonLength + mortise.clearance"', JSON.stringify(to))).map(({ found: what, message }) => `${what} | ${message}`);
  }

  test('a name that nothing is called, with the nearest one', () => {
    expect(found('longRailTenon.tenonLenght + mortise.clearance')).toEqual(["'longRailTenon.tenonLenght' | No size is called longRailTenon.tenonLenght. Did you mean longRailTenon.tenonLength?"]);
  });

  test('the place of the name inside the size', () => {
    const text = changed('"longRail.shoulders + 2 * longRailTenon.tenonLength"', '"longRail.shoulders + 2 * longRailTenon.tenonLong"');
    expect(faultsOf(text)).toEqual([expect.objectContaining(placeOf(text, 'longRailTenon.tenonLong"'))]);
  });

  test('the place of the name after an escaped character', () => {
    const text = changed('"longRail.shoulders + 2 * longRailTenon.tenonLength"', '"longRail.shoulders \\u002b 2 * nothing.known"');
    expect(faultsOf(text)).toEqual([expect.objectContaining(placeOf(text, 'nothing.known'))]);
  });

  test('the part where its size is wanted', () => {
    expect(found('leg')[0]).toContain('leg has several sizes: name one, such as leg.length or leg.width');
  });

  test('a copy that is not made', () => {
    expect(found('leg.5.width')).toEqual(["'leg.5.width' | There are only 4: name one of those."]);
    expect(found('leg.4.width / 2')).toEqual([]);
  });

  test('a circle, by its names', () => {
    const text = changed('"is": "inside.length", "critical"', '"is": "top.length - 2 * overhang.ends - 2 * leg.width", "critical"');
    expect(faultsOf(text)).toEqual([expect.objectContaining({ found: 'the circle longRail.shoulders → top.length → longRail.shoulders' })]);
  });

  test('a size that stands on itself', () => {
    expect(found('longRailTenon.mortiseDepth / 2')[0]).toContain('the circle longRailTenon.mortiseDepth → longRailTenon.mortiseDepth');
  });

  test('two circles are both told', () => {
    const text = changed('"5 in"', '"rail.thickness"').replace('"1 1/4 in", "say": "rail thickness"', '"rail.width", "say": "rail thickness"').replace('"is": "6 in"', '"is": "stretcher.height"');
    expect(faultsOf(text).map(({ found: what }) => what)).toEqual(['the circle rail.width → rail.thickness → rail.width', 'the circle stretcher.height → stretcher.height']);
  });

  test.each([
    ['nothing left', 'longRailTenon.tenonLength - 1 3/4 in', /= 0 in \| What it is worked out from leaves nothing over/u],
    ['less than nothing', 'longRailTenon.tenonLength - 2 in', /= -1\/4 in/u],
    ['too thin', '1/65 in', /Too thin to be wood/u],
    ['too long', '21 m', /No piece of furniture is so long/u],
    ['a division by nothing', 'leg.width / (leg.width - leg.thickness) * 1 in', /divides by nothing/u],
    ['beyond all numbers', '999999999999 m * 999999999999', /beyond all bounds/u],
  ])('%s', (_, size, message) => {
    expect(found(size)).toHaveLength(1);
    expect(found(size)[0]).toMatch(message);
  });

  test('a setback of nothing is a rail flush with the leg, and no fault', () => {
    expect(faultsOf(changed('"is": "1/4 in", "say": "rail setback"', '"is": "0 in", "say": "rail setback"'))).toEqual([]);
    expect(faultsOf(changed('"is": "1/4 in", "say": "rail setback"', '"is": "-1/4 in", "say": "rail setback"'))).toHaveLength(1);
  });
});

describe('a file of the first version', () => {
  const first = DEMO_TEXT.replace('"version": 2', '"version": 1').replaceAll('      "haunch": "square",\n', '');

  test('is brought up to the present one, and means the same', () => {
    const loaded = loadSound(first);
    expect(loaded.file.version).toBe(2);
    expect({ ...loaded.file, version: 1 }).toEqual(JSON.parse(first));
    expect(loadSound(writePiece(loaded.file)).file).toEqual(loaded.file);
  });

  test('has its faults told at their own places', () => {
    expect(faultsOf(first.replace('"count": 4', '"count": "four"'))[0]).toMatchObject({ path: '$.parts[0].count', found: 'the text "four"' });
  });

  test('of a version that never was is refused', () => {
    expect(faultsOf(first.replace('"version": 1', '"version": 0'))[0]).toMatchObject({ path: '$.version' });
  });
});
