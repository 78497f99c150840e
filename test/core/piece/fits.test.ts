import { describe, expect, test } from 'vitest';
import { nanometres, NANOMETRES_PER_INCH } from '../../../core/length/length.ts';
import { evaluate, sizeOf } from '../../../core/piece/evaluate.ts';
import { misfits, newMisfits, renderSentence } from '../../../core/piece/fits.ts';
import type { LoadedPiece } from '../../../core/piece/loadedPiece.ts';
import type { Measurement } from '../../../core/piece/measurement.ts';
import { writeExact } from '../../../core/piece/writeExact.ts';
import { DEMO_TEXT, loadSound } from './demo.ts';

const piece = loadSound(DEMO_TEXT);

function made(size: string, inches: number, copy?: number): Measurement {
  return { size, length: nanometres(inches * NANOMETRES_PER_INCH), ...(copy === undefined ? {} : { copy }) };
}

function told(measurements: readonly Measurement[], of: LoadedPiece = piece): readonly string[] {
  const sizes = evaluate(of, measurements);
  return misfits(of, measurements).map(({ severity, say }) => `${severity}: ${renderSentence(say, ({ size, copy }) => sizeOf(sizes, size, copy)?.length, writeExact)}`);
}

function changed(...changes: readonly (readonly [string, string])[]): LoadedPiece {
  return loadSound(changes.reduce((text, [from, to]) => {
    expect(text).toContain(from);
    return text.replace(from, to);
  }, DEMO_TEXT));
}

test("the baker's work table fits together as it is planned", () => {
  expect(told([])).toEqual([]);
});

describe('what was made is checked as a maker would check it', () => {
  test('a tenon left fat does not enter, and only that one is named', () => {
    expect(told([made('longRailTenon.tenonThickness', 17 / 32, 3)])).toEqual(['will not go: Long rail tenon 3 is 1/32 in thicker than its mortise is wide: 17/32 in against 1/2 in. Pare its cheeks.']);
  });

  test('a tenon pared too far is too loose for glue; within a sixty-fourth it is let be', () => {
    expect(told([made('longRailTenon.tenonThickness', 15 / 32, 1)])).toEqual(['weak: Long rail tenon 1 is 1/32 in thinner than its mortise is wide, too loose for glue. Glue a shaving to its cheek and fit it again.']);
    expect(told([made('longRailTenon.tenonThickness', 31 / 64, 1)])).toEqual([]);
  });

  test('a mortise chopped too shallow stops the tenon before its shoulder closes', () => {
    expect(told([made('shortRailTenon.mortiseDepth', 1 + 11 / 16, 2)])).toEqual([expect.stringContaining('Short rail tenon 2 meets the bottom of its mortise before its shoulder closes: 1 3/4 in long, 1 11/16 in deep.')]);
  });

  test('a mortise chopped too short stops the tenon at its edge', () => {
    expect(told([made('longRailTenon.mortiseLength', 3.25, 1)])).toEqual([expect.stringContaining('Long rail tenon 1 is wider than its mortise is long: 3 1/2 in against 3 1/4 in.')]);
  });

  test('two mortises chopped so deep that they meet; one alone passes behind the other', () => {
    // Each ends 1 1/8 in from the outer face across its depth: both 2 1/8 in deep touch at a corner.
    const deep = (inches: number): readonly Measurement[] => ['longRailTenon', 'shortRailTenon'].map((joint) => made(`${joint}.mortiseDepth`, inches));
    expect(told(deep(2.25))).toEqual(['weak: The mortises for the long rail tenon and the short rail tenon run into each other in the leg; the tenons clear each other by 3/8 in. There is less wood to glue to than planned.']);
    expect(told(deep(2.0625))).toEqual([expect.stringMatching(/^weak: .* leave only 1\/16 in of wood between them/u)]);
    expect(told(deep(2))).toEqual([]);
    expect(told([made('longRailTenon.mortiseDepth', 2.25)])).toEqual([]);
  });

  test('legs planed too slight for the mortises', () => {
    const slight = told([made('leg.width', 1.75), made('leg.thickness', 1.75)]);
    expect(slight.filter((line) => line.startsWith('will not go: The mortise for the'))).toHaveLength(4);
    expect(slight).toContainEqual(expect.stringContaining('too deep for the leg: 1 13/16 in into 1 3/4 in, it would break through'));
  });

  test('one slight leg is named, the others are not; a stretcher at the back is no matter to a front leg', () => {
    const slight = told([made('leg.width', 1.75, 1)]);
    expect(slight.some((line) => line.includes('leg 1'))).toBe(true);
    expect(slight.some((line) => /leg [234]/u.test(line))).toBe(false);
    expect(slight.some((line) => line.includes('back stretcher') && line.includes('leg 1'))).toBe(false);
    expect(told([made('leg.width', 1.75, 3)]).some((line) => line.includes('mortise for the back stretcher tenon is too deep for leg 3'))).toBe(true);
  });

  test('two rails of a pair that differ by a thirty-second put the frame out of square', () => {
    expect(told([made('longRail.shoulders', 46, 1), made('longRail.shoulders', 46 + 1 / 32, 2)])).toEqual([
      'weak: Long rail 2 and 1 differ by 1/32 in: shoulder to shoulder 46 1/32 in and 46 in. Trim the longer to the shorter, or the frame will not be square.',
    ]);
    expect(told([made('longRail.shoulders', 46, 1), made('longRail.shoulders', 46 + 1 / 64, 2)])).toEqual([]);
  });

  test('a rail not made yet is not held against the one that is', () => {
    expect(told([made('longRail.shoulders', 46 + 1 / 8, 1)])).toEqual([]);
  });

  test('a stretcher and a rail between the same legs that do not agree', () => {
    expect(told([made('sideStretcher.shoulders', 19.25)])).toEqual([expect.stringContaining('The short rail and the side stretcher hold the same legs 1/4 in differently: 19 1/2 in and 19 1/4 in')]);
  });

  test('a rail cut too short for its shoulders and tenons', () => {
    expect(told([made('longRail.length', 49.25, 1)])).toEqual([expect.stringContaining('Long rail 1 is 1/4 in too short for its shoulders and both tenons')]);
  });

  test('layers that no longer make the leg', () => {
    expect(told([made('leg.layerThickness', 1 + 1 / 16, 3)])).toEqual(['will not go: The 3 layers of leg 3 make only 3 3/16 in, and it is to be 3 1/4 in thick. Add a layer, or make the whole set thinner.']);
  });

  test('boards too thin for what is to come out of them', () => {
    expect(told([made('top.stock', 1.5)])).toEqual([expect.stringContaining('will not go: The top is to be 1 3/4 in thick, and its boards are 1 1/2 in')]);
    expect(told([made('top.stock', 1.8125)])).toEqual([expect.stringContaining('look at it: The boards for the top leave only 1/16 in to true off')]);
    expect(told([made('top.stock', 1.5), made('top.thickness', 1.75)])).toEqual([]);
  });

  test('a rail planed thinner than its tenon', () => {
    expect(told([made('longRail.thickness', 0.75)])).toEqual([expect.stringContaining('runs through the haunch of the long rail tenon')]);
    expect(told([made('longRail.thickness', 0.4375, 1), made('longRail.thickness', 0.4375, 2)])).toContainEqual(expect.stringContaining('is too thin for its tenon'));
  });

  test('a button whose tongue is too fat, too long, or does not draw', () => {
    expect(told([made('longRailButtons.tongueThickness', 0.5)])).toContainEqual(expect.stringContaining('tongue of the long rail button is thicker than its groove is wide'));
    expect(told([made('longRailButtons.tongueLength', 0.625)])).toContainEqual(expect.stringContaining('meets the bottom of its groove'));
    expect(told([made('longRailButtons.step', 0.5)])).toContainEqual(expect.stringContaining('does not draw the top down: its step is 1/2 in'));
  });

  test('a size that a measurement leaves nothing of', () => {
    expect(told([made('leg.width', 1), made('leg.thickness', 1)])).toContainEqual(expect.stringContaining('The setback of the side stretcher tenon comes out at -1/8 in, which cannot be'));
  });

  test('a size that can no longer be worked out keeps its plan, and says so', () => {
    const ratio = changed(['"2 1/4 in"', '"2 1/4 in * height / (leg.width - stretcher.width)"']);
    const equal = [made('stretcher.width', 3.25)];
    expect(sizeOf(evaluate(ratio, equal), 'button.length')?.basis).toBe('planned');
    expect(told(equal, ratio)).toContainEqual(expect.stringContaining('The length of the button can no longer be worked out, and keeps its plan'));
  });

  test('what did not fit before is not told again', () => {
    const before = [made('longRailTenon.tenonThickness', 17 / 32, 3)];
    const after = [...before, made('longRail.length', 49.25, 1)];
    expect(newMisfits(piece, before, after).map(({ kind }) => kind)).toEqual(['part too short']);
  });
});

describe('a plan that does not go together says so before any wood is cut', () => {
  test('tenons that meet in the leg, unless their ends are mitred', () => {
    const one: readonly [string, string] = ['"tenonLength": "1 3/4 in"', '"tenonLength": "2 1/4 in"'];
    const longer = [one, one] as const;
    expect(told([], changed(...longer))).toEqual([expect.stringContaining('run into each other')]);
    const mitred: readonly [string, string] = ['"mortiseInto": "width",', '"mortiseInto": "width", "tenonEnds": "mitred",'];
    const both: readonly [string, string] = ['"mortiseInto": "thickness",', '"mortiseInto": "thickness", "tenonEnds": "mitred",'];
    expect(told([], changed(...longer, mitred, both))).toEqual([]);
  });

  test('a mortise that begins too near the end splits out', () => {
    expect(told([], changed(['"topShoulder": "1 in"', '"topShoulder": "1/4 in"'])).join()).toContain('begins only 1/4 in from the top end of the leg');
  });

  test('a rail so far out that no wood is left beside the mortise', () => {
    expect(told([], changed(['"(longRail.thickness - longRailTenon.tenonThickness) / 2"', '"0 in"'], ['"setback": "rail.setback"', '"setback": "1/8 in"']))).toEqual([expect.stringContaining('leaves only 1/8 in beside it in the leg')]);
  });

  test('a rail too thick for the leg, a groove into the tenon, too few buttons, no such chisel', () => {
    expect(told([], changed(['"setback": "rail.setback"', '"setback": "2 1/8 in"'])).join()).toContain('stands 1/8 in proud of the leg');
    expect(told([], changed(['"grooveFromTop": "1/2 in"', '"grooveFromTop": "1 in"'], ['"grooveDepth": "3/8 in"', '"grooveDepth": "9/16 in"'])).join()).toContain('The groove for the long rail button cuts into the long rail tenon');
    expect(told([], changed(['"count": 12', '"count": 10']))).toEqual(['look at it: 12 of the button are needed, and only 10 are made. Make 2 more.']);
    expect(told([], changed(['"mortise.width": { "is": "1/2 in"', '"mortise.width": { "is": "7/16 in"']))).toHaveLength(4);
  });

  test('a groove that runs through the haunch, off its rail, or into another groove', () => {
    const deeper = changed(['"grooveDepth": "3/8 in"', '"grooveDepth": "1/2 in"']);
    // The haunch stands from the top edge to 1 in down, 3/8 in behind the inside face; the groove from 1/2 in to 7/8 in.
    expect(told([], deeper)).toContain('look at it: The groove for the long rail button runs through the haunch of the long rail tenon, which then does not fill its socket. Stop the groove short of the shoulders, or make it no deeper than 3/8 in.');
    expect(told([], deeper).filter((line) => line.includes('haunch'))).toHaveLength(2);
    // 1/8 in above where the tenon begins there is neither tenon nor haunch when the haunch is left out.
    expect(told([], changed(['"grooveDepth": "3/8 in"', '"grooveDepth": "1/2 in"'], ['      "haunch": "square",\n', ''])).filter((line) => line.includes('long rail button'))).toEqual([]);
    expect(told([], changed(['"grooveFromTop": "1/2 in"', '"grooveFromTop": "4 3/4 in"'])).join()).toContain('runs out over the edge of the long rail: it ends 5 1/8 in down, and the part is 5 in wide. Raise it.');
    expect(told([], changed(['"grooveDepth": "3/8 in"', '"grooveDepth": "1 3/16 in"'])).join()).toContain('leaves only 1/16 in to the face of the long rail. Make it shallower.');
    expect(told([], changed(['"grooveDepth": "3/8 in"', '"grooveDepth": "1 1/4 in"'])).join()).toContain('comes out on the face of the long rail: 1 1/4 in deep in 1 1/4 in.');
    const both = changed(['"to": "shortRail"', '"to": "longRail"'], ['"grooveFromTop": "longRailButtons.grooveFromTop"', '"grooveFromTop": "5/8 in"'], ['"step": "longRailButtons.step"', '"step": "9/16 in"']);
    expect(told([], both).join()).toContain('The grooves for the long rail button and the short rail button run into each other. Make them one');
    expect(told([], changed(['"to": "shortRail"', '"to": "longRail"']))).toEqual([]);
  });

  test('joints that lack the finer sizes are taken to be in the middle of the rail', () => {
    const plain = changed(['        "outerShoulder": "(longRail.thickness - longRailTenon.tenonThickness) / 2",\n', '']);
    expect(told([], plain)).toEqual([]);
    expect(told([made('longRailTenon.mortiseDepth', 2.25), made('shortRailTenon.mortiseDepth', 2.25)], plain)).toEqual([expect.stringContaining('run into each other')]);
  });
});
