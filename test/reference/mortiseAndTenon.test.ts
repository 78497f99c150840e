import { describe, expect, it } from 'vitest';
import { planJoint, type RailInLeg } from '../../core/joint/railInLeg.ts';
import { nanometres } from '../../core/length/length.ts';
import { waysToMeet, type Comer } from '../../core/tenon/meeting.ts';
import { squareTenon } from '../../core/tenon/solid.ts';
import { inches, millimetres } from '../core/joint/shop.ts';

/** A table's long rail in its leg: 4 1/2 by 1 1/8 in, set a quarter of an inch back in a leg 3 in square, level with its top. */
const LONG_RAIL: RailInLeg = {
  rail: { width: inches(9, 2), thickness: inches(9, 8) }, leg: { into: inches(3), across: inches(3), length: inches(30) }, setback: inches(1, 4), fromTop: nanometres(0),
  chisels: [inches(1, 4), inches(3, 8), inches(1, 2)], joint: 'blind', haunch: 'square', clearance: inches(1, 16), widestTenon: inches(9, 2), step: inches(1, 16),
};

function planned(change: Partial<RailInLeg> = {}) {
  const plan = planJoint({ ...LONG_RAIL, ...change });
  if (!plan.ok) throw new Error(JSON.stringify(plan.fault));
  return plan.value;
}

function published(of: string, book: string) {
  const found = planned().proportions.find((each) => each.of === of)?.published ?? [];
  return found.filter((each) => JSON.stringify(each).includes(book)).map(({ says }) => says);
}

describe('a rail in a leg, worked by hand from the books\' proportions', () => {
  it('the end is divided into three (Noyes, Handwork in Wood, 1910, ch. VII): of 1 1/8 in, 3/8, which an owned chisel has; three equal parts', () => {
    expect(planned()).toMatchObject({ chisel: inches(3, 8), outerShoulder: inches(3, 8), innerShoulder: inches(3, 8) });
  });

  it('the mortise goes to the nearest chisel, a little over a third (Joyce, The Technique of Furniture Making): 1 in stuff and chisels of 1/4 and 3/8 give 3/8', () => {
    expect(planned({ rail: { width: inches(9, 2), thickness: inches(1) } }).chisel).toBe(inches(3, 8));
  });

  it('a third of the corner rail goes to the haunch (Joyce): 1 1/2 of 4 1/2 in; half of it to the tenon (Noyes): 2 1/4', () => {
    expect(published('top shoulder', 'Joyce')).toContain(inches(3, 2));
    expect(published('top shoulder', 'Noyes')).toContain(inches(9, 4));
  });

  it('the outer wall is the setback and the shoulder: 1/4 + 3/8 = 5/8; the rest of the 3 in leg on the inside: 3 − 5/8 − 3/8 = 2', () => {
    expect(planned()).toMatchObject({ outerWall: inches(5, 8), innerWall: inches(2) });
  });

  it('seven eighths of the leg are 2 5/8 in (Fairham, Woodwork Joints); less 1/16 in for the glue, a tenon of 2 9/16', () => {
    expect(planned()).toMatchObject({ mortiseDepth: inches(21, 8), tenonLength: inches(41, 16), floor: inches(3, 8) });
  });
});

/** Two rails, a tenon of 10 mm each that lies 20 mm in from the outer face, in a leg of 80 mm; at most 70 mm deep. */
const TENON: Comer = { into: millimetres(80), near: millimetres(20), thickness: millimetres(10), top: millimetres(25), bottom: millimetres(95), most: millimetres(70) };
const TOUCHING = { clearance: nanometres(0), web: nanometres(0) };

describe('two tenons that meet in a leg, by plain geometry (drawn from above with the outer corner as origin)', () => {
  const way = (name: string, limits = TOUCHING, second = TENON) => waysToMeet(TENON, second, limits).find((each) => each.way === name);

  it('one runs past to its 70 mm, the other stops at the inner cheek of its mortise: 80 − 20 − 10 = 50', () => {
    expect(way('first runs past')).toMatchObject({ first: squareTenon(TENON, millimetres(70)), second: squareTenon(TENON, millimetres(50)) });
  });

  it('mitred, the outer cheek reaches 80 − 20 = 60 mm and the inner 50: a mitre of 45 degrees over 10 mm', () => {
    expect(way('mitred')).toMatchObject({ first: [{ outerCheek: millimetres(60), innerCheek: millimetres(50) }], second: [{ outerCheek: millimetres(60), innerCheek: millimetres(50) }], mitreDegrees: [45, 45] });
  });

  it('a web of 2 mm and a clearance of 1 mm shorten the one that stops by 3 mm', () => {
    expect(way('first runs past', { clearance: millimetres(1), web: millimetres(2) })?.second).toEqual(squareTenon(TENON, millimetres(47)));
  });

  it('with tenons of 10 and 20 mm, the mitre on the thin one is longer: atan(10/20) = 26.57 degrees to its cheek, 63.43 on the thick one', () => {
    const thick: Comer = { ...TENON, thickness: millimetres(20) };
    const [thin, wide] = way('mitred', TOUCHING, thick)?.mitreDegrees ?? [NaN, NaN];
    expect(thin).toBeCloseTo(26.565, 2);
    expect(wide).toBeCloseTo(63.435, 2);
  });

  it('with 5 mm more height between them than the web they do not meet at all', () => {
    const below: Comer = { ...TENON, top: millimetres(100), bottom: millimetres(150) };
    expect(waysToMeet(TENON, below, { clearance: millimetres(1), web: millimetres(5) }).map((each) => each.way)).toEqual(['clear of each other']);
  });
});
