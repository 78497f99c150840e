import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkDiagonals, diagonalOf } from '../../../core/layout/diagonals.ts';
import { checkFourSided } from '../../../core/layout/fourSided.ts';
import { sideOfSquare } from '../../../core/layout/root.ts';
import { nanometres, type Length } from '../../../core/length/length.ts';
import { Session } from '../respond/session.ts';

const mm = (count: number): Length => nanometres(Math.round(count * 1_000_000));
const side = fc.integer({ min: 50_000_000, max: 3_000_000_000 }).map(nanometres);

function valueOf<Value>(result: { readonly ok: true; readonly value: Value } | { readonly ok: false }): Value {
  if (!result.ok) throw new Error('there should be an answer');
  return result.value;
}

describe('the two diagonals of a rectangle', () => {
  it('give back the lean that the frame was pushed out by, and the corner to pull', () => {
    fc.assert(fc.property(side, side, fc.double({ min: -0.2, max: 0.2, noNaN: true }), (along, across, lean) => {
      // Pushed over: the far side goes to the right and comes nearer; the sides keep their length.
      const right = across * Math.sin(lean);
      const far = across * Math.cos(lean);
      const first = nanometres(Math.round(Math.hypot(along + right, far)));
      const second = nanometres(Math.round(Math.hypot(along - right, far)));
      const { longer, sides, whenSquare, clampCloses } = valueOf(checkDiagonals(first, second, { along, across }));
      expect(Math.abs((sides?.farSideRight ?? NaN) - right)).toBeLessThan(4 + (4 * across) / along);
      expect(Math.abs((sides?.offDegrees ?? NaN) - Math.abs((lean * 180) / Math.PI))).toBeLessThan(1e-3);
      expect(Math.abs(whenSquare - diagonalOf({ along, across }))).toBeLessThanOrEqual(2);
      expect(clampCloses).toBe(Math.max(first, second) - whenSquare);
      if (Math.abs(right) > 100) expect(longer).toBe(right > 0 ? 'first' : 'second');
    }));
  });

  it('that no frame with such sides has are refused', () => {
    expect(checkDiagonals(mm(900), mm(500), { along: mm(500), across: mm(300) })).toMatchObject({ ok: false, fault: { key: 'first' } });
    expect(checkDiagonals(mm(500), mm(0))).toMatchObject({ ok: false, fault: { key: 'second' } });
  });
});

describe('a frame with four sides of any length', () => {
  const corner = fc.integer({ min: 0, max: 300_000_000 });

  it('has the corners that it was drawn with', () => {
    fc.assert(fc.property(fc.array(fc.tuple(corner, corner), { minLength: 4, maxLength: 4 }), (off) => {
      const base = [[0, 0], [1e9, 0], [1e9, 8e8], [0, 8e8]] as const;
      const points = base.map(([x, y], index) => [x + (off[index]?.[0] ?? 0), y + (off[index]?.[1] ?? 0)] as const);
      const between = (one: number, other: number): Length => {
        const [p, q] = [points[one % 4] ?? [0, 0], points[other % 4] ?? [0, 0]];
        return nanometres(Math.round(Math.hypot(p[0] - q[0], p[1] - q[1])));
      };
      const found = valueOf(checkFourSided({ ab: between(0, 1), bc: between(1, 2), cd: between(2, 3), da: between(3, 0), ac: between(0, 2), bd: between(1, 3) }));
      expect(found.corners.reduce((sum, { degrees }) => sum + degrees, 0)).toBeCloseTo(360, 9);
      expect(Math.abs(found.otherDiagonalOff ?? NaN)).toBeLessThan(50);
      found.corners.forEach(({ degrees }, index) => {
        const [p, q, r] = [points[(index + 3) % 4] ?? [0, 0], points[index] ?? [0, 0], points[(index + 1) % 4] ?? [0, 0]];
        const drawn = Math.atan2(p[1] - q[1], p[0] - q[0]) - Math.atan2(r[1] - q[1], r[0] - q[0]);
        expect(degrees).toBeCloseTo((((drawn * 180) / Math.PI) + 360) % 360, 4);
      });
    }));
  });

  it('folded along its diagonal shows as wind: the other diagonal comes out short', () => {
    // A square of 400 mm folded by 0.02 radian about A–C: B–D is the square's diagonal times cos(0.01).
    const square = { ab: mm(400), bc: mm(400), cd: mm(400), da: mm(400), ac: sideOfSquare(320_000_000_000_000_000n) };
    const { otherDiagonalOff = 0 } = valueOf(checkFourSided({ ...square, bd: nanometres(Math.round(square.ac * Math.cos(0.01))) }));
    expect(otherDiagonalOff / 1e6).toBeCloseTo(-565.685 * (1 - Math.cos(0.01)), 3);
  });

  it('whose sides do not close, or whose corner points inwards, is refused', () => {
    expect(checkFourSided({ ab: mm(100), bc: mm(100), cd: mm(300), da: mm(300), ac: mm(250) })).toMatchObject({ ok: false, fault: { key: 'ac' } });
    expect(checkFourSided({ ab: mm(100), bc: mm(199), cd: mm(150), da: mm(100), ac: mm(100) })).toMatchObject({ ok: false, fault: { key: 'ac', message: expect.stringContaining('corner A points inwards') as string } });
    expect(checkFourSided({ ab: mm(100), bc: mm(100), cd: mm(300), da: mm(300), ac: mm(-1) })).toMatchObject({ ok: false, fault: { key: 'ac' } });
  });
});

describe('the root of an area', () => {
  it('is the nearest whole nanometre, and exact for a square', () => {
    fc.assert(fc.property(fc.bigInt({ min: 0n, max: 80_000_000_000_000_000_000n }), (area) => {
      const root = BigInt(sideOfSquare(area));
      expect((2n * root - 1n) ** 2n <= 4n * area || root === 0n).toBe(true);
      expect(4n * area <= (2n * root + 1n) ** 2n).toBe(true);
    }));
    expect(sideOfSquare(BigInt(mm(8000)) ** 2n)).toBe(mm(8000));
  });
});

describe('diagonals at the bench', () => {
  it('tell the long one, the side that leans and when to stop pulling', () => {
    const said = Session.withDemo().say('the diagonals of the frame are fifty eight and five eighths and fifty eight and a half');
    expect(said).toBe('The diagonal front left to back right is longer by one eighth of an inch. The back stands too far to the right, by one sixteenth of an inch, full. Pull the clamp along it, until both read fifty-eight, and nine sixteenths inches.');
  });

  it('that nearly agree leave the clamps alone', () => {
    expect(Session.withDemo().say('the diagonals are fifty eight and nineteen thirty seconds and fifty eight and nine sixteenths')).toMatch(/the frame is square\. Leave the clamps\.$/);
  });

  it('taken between the legs are known by their size, and those of a part by the part', () => {
    expect(Session.withDemo().say('the diagonals are forty nine and thirty one thirty seconds and forty nine and thirty one thirty seconds')).toBe('The diagonals agree: the frame is square.');
    expect(Session.withDemo().say('the diagonals of the top are sixty seven and sixty seven and a quarter')).toMatch(/near right to far left is longer by one quarter/);
  });

  it('that agree with each other and not with the sides are told so', () => {
    expect(Session.withDemo().say('the diagonals are sixty and sixty')).toMatch(/By its sides they should be fifty-eight/);
  });

  it('off by a foot are refused, and nothing is written', () => {
    const session = Session.withDemo();
    expect(session.say('the diagonals of the frame are seventy and seventy and an eighth')).toMatch(/Measure again, corner to corner\.$/);
    expect(session.entries).toEqual([]);
  });

  it('need no piece on the bench, only then no side is said', () => {
    expect(new Session().say('the diagonals are fifty and a quarter and fifty')).toBe('The diagonal near left to far right is longer by one quarter of an inch. Pull the clamp along it, until both read fifty, and one eighth inches, full.');
  });
});
