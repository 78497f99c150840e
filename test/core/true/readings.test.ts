import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { nanometres, NANOMETRES_PER_INCH, type Length } from '../../../core/length/length.ts';
import { nextWanted, sideAsRead, type SideAsRead, type SideToTrue } from '../../../core/true/asRead.ts';
import { readingsOf } from '../../../core/true/fromReadings.ts';
import { placeAt, stationsFor, wantedOn } from '../../../core/true/guide.ts';
import { firstFace, squareFace } from '../../../core/true/plane.ts';
import { faceKey, READING_KINDS, TRUED_FACES, withReading, type FaceReading } from '../../../core/true/readings.ts';
import { surfaceOf } from '../../../core/true/surface.ts';

const inches = (count: number): Length => nanometres(Math.round(count * NANOMETRES_PER_INCH));
const SIZE = { length: inches(50), width: inches(6) };
const side = (taken: readonly FaceReading[], about: Partial<SideToTrue> = {}): SideToTrue => ({ size: SIZE, face: 'face', limit: { limit: inches(1 / 64), source: '' }, taken, stick: inches(24), shaving: inches(0.005), unit: 'inch', planned: inches(1), ...about });
function come(taken: readonly FaceReading[], about: Partial<SideToTrue> = {}): SideAsRead {
  const found = sideAsRead(side(taken, about));
  if (!found.ok) throw new Error(JSON.stringify(found.fault));
  return found.value;
}

const place = fc.integer({ min: 0, max: 50 }).map(inches);
const shaping = fc.record({ what: fc.constantFrom('sticks' as const, 'across' as const), fromEnd: place, gap: fc.integer({ min: -60, max: 60 }).map((count) => inches(count / 1000)) });
const along = fc.record({ what: fc.constant('along' as const), fromEnd: place, gap: fc.integer({ min: 0, max: 60 }).map((count) => inches(count / 1000)) });
const thick = fc.record({ what: fc.constant('thickness' as const), fromEnd: place, gap: fc.integer({ min: 980, max: 1300 }).map((count) => inches(count / 1000)) });
const square = fc.record({ what: fc.constant('square' as const), fromEnd: place, gap: fc.integer({ min: -40, max: 40 }).map((count) => inches(count / 1000)) });
const scattered = fc.array(fc.oneof(shaping, along), { maxLength: 40 }).map((all) => all.reduce<readonly FaceReading[]>(withReading, []));

describe('readings that are kept', () => {
  it('come to the same in whatever order they were taken', () => {
    fc.assert(fc.property(scattered, fc.integer(), (taken, seed) => {
      const other = [...taken].sort((one, two) => ((one.fromEnd + one.gap) * (seed | 1)) % 97 - ((two.fromEnd + two.gap) * (seed | 1)) % 97);
      expect(come(other).board).toEqual(come(taken).board);
    }), { numRuns: 60 });
  });

  it('hold one of each kind at a place, the last one', () => {
    fc.assert(fc.property(fc.array(fc.oneof(shaping, along, thick, square), { maxLength: 60 }), (all) => {
      const kept = all.reduce<readonly FaceReading[]>(withReading, []);
      expect(new Set(kept.map(({ what, fromEnd }) => `${what} ${fromEnd}`)).size).toBe(kept.length);
      for (const one of kept) expect(one).toEqual(all.findLast(({ what, fromEnd }) => what === one.what && fromEnd === one.fromEnd));
    }));
  });

  it('of different sides never share a key', () => {
    const keys = ['leg', 'rail'].flatMap((part) => [undefined, 1, 2].flatMap((copy) => [undefined, 1, 2].flatMap((board) => TRUED_FACES.map((face) => faceKey({ part, face, ...(copy === undefined ? {} : { copy }), ...(board === undefined ? {} : { board }) })))));
    expect(new Set(keys).size).toBe(keys.length);
  });
});

describe('what is put together from them', () => {
  it('agrees with each reading where it was taken, and runs straight between two', () => {
    const taken: readonly FaceReading[] = [{ what: 'along', fromEnd: inches(10), gap: inches(0.02) }, { what: 'along', fromEnd: inches(20), gap: inches(0.04) }];
    const { stations, along: row } = readingsOf(SIZE, inches(24), [inches(1), inches(15), inches(49)], taken);
    expect(stations.map((at, index) => [at / NANOMETRES_PER_INCH, (row?.[index] ?? 0) / NANOMETRES_PER_INCH])).toEqual([[1, 0], [10, 0.02], [15, 0.03], [20, 0.04], [49, 0]]);
  });

  it('is refused in the words of the readings when the sticks are shorter than the board is wide', () => {
    const found = sideAsRead(side([{ what: 'sticks', fromEnd: inches(49), gap: inches(0.1) }], { stick: inches(4) }));
    expect(found.ok || found.fault.key).toBe('stick');
  });

  it('never beats the plane of least depth by any other plane (a hundred tried at random)', () => {
    fc.assert(fc.property(scattered, fc.array(fc.tuple(fc.double({ min: -0.05, max: 0.05, noNaN: true }), fc.double({ min: -0.05, max: 0.05, noNaN: true })), { minLength: 100, maxLength: 100 }), (taken, tilts) => {
      const { surface, outOfFlat } = come(taken);
      for (const [end, edge] of tilts) {
        const over = surface.points.map(({ fromEnd, fromLeft, height }) => height - NANOMETRES_PER_INCH * (end * (fromEnd / surface.length) + edge * (fromLeft / surface.width)));
        expect(Math.max(...over) - Math.min(...over)).toBeGreaterThanOrEqual(outOfFlat - 10);
      }
    }), { numRuns: 20 });
  });
});

describe('an edge', () => {
  it('is planed level across: what comes off its two arrises differs by what the square shows', () => {
    fc.assert(fc.property(fc.array(square, { minLength: 1, maxLength: 12 }), fc.array(along, { maxLength: 8 }), (squares, gaps) => {
      const { board: { first }, surface } = come([...squares, ...gaps].reduce<readonly FaceReading[]>(withReading, []), { face: 'edge', size: { length: SIZE.length, width: inches(1) } });
      for (const [index, point] of surface.points.entries()) {
        if (point.place !== 'left') continue;
        const [left, right] = [first.depths[index] ?? 0, first.depths[index + 2] ?? 0];
        expect(Math.abs(left - right - (point.height - (surface.points[index + 2]?.height ?? 0)))).toBeLessThanOrEqual(2);
      }
      expect(Math.min(...first.depths)).toBe(0);
    }), { numRuns: 60 });
  });

  it('that is evenly out of square is a plane already, and not true all the same', () => {
    const taken = stationsFor(SIZE.length, 'inch').map((fromEnd): FaceReading => ({ what: 'square', fromEnd, gap: inches(0.01) }));
    const found = come(taken, { face: 'edge', size: { length: SIZE.length, width: inches(1) }, squareWithin: inches(0.004) });
    const surface = surfaceOf(readingsOf({ length: SIZE.length, width: inches(1) }, inches(24), stationsFor(SIZE.length, 'inch'), taken));
    const anyPlane = surface.ok ? firstFace(surface.value) : surface;
    expect(anyPlane.ok && Math.max(...anyPlane.value.depths)).toBeLessThanOrEqual(1);
    expect(surface.ok && squareFace(surface.value).greatest).toBe(inches(0.01));
    expect(found.trueEnough).toBe(false);
    expect(found.outOfSquare?.gap).toBe(inches(0.01));
  });
});

describe('the other face', () => {
  it('is brought to the planned thickness wherever the wood reaches, and never below', () => {
    fc.assert(fc.property(fc.array(thick, { minLength: 1, maxLength: 10 }), (all) => {
      const taken = all.reduce<readonly FaceReading[]>(withReading, []);
      const { board, calipers } = come(taken, { face: 'other face' });
      const least = calipers?.least ?? nanometres(0);
      expect(board.thickness?.most).toBe(Math.min(inches(1), least));
      expect(Math.max(...board.first.depths)).toBe(Math.max(0, (calipers?.most ?? 0) - inches(1)));
      expect(Math.min(...board.first.depths)).toBeGreaterThanOrEqual(0);
    }), { numRuns: 80 });
  });
});

describe('the diagonals of a board', () => {
  it('tell how far its ends run out over the width, whatever parallelogram it is', () => {
    fc.assert(fc.property(fc.integer({ min: 10, max: 96 }), fc.integer({ min: 2, max: 30 }), fc.integer({ min: -500, max: 500 }), (length, width, off) => {
      const end = off / 1000;
      const [first, second] = [Math.hypot(length + end, width), Math.hypot(length - end, width)];
      const { diagonals } = come([{ what: 'first diagonal', fromEnd: inches(0), gap: inches(first) }, { what: 'second diagonal', fromEnd: inches(0), gap: inches(second) }], { size: { length: inches(length), width: inches(width) }, stick: inches(40) });
      expect(Math.abs((diagonals?.endsOff ?? -1) - Math.abs(inches(end)))).toBeLessThanOrEqual(100);
      expect(diagonals?.longer).toBe(off > 0 ? 'first' : off < 0 ? 'second' : 'neither');
    }));
  });
});

describe('the guide', () => {
  const lengths = fc.integer({ min: 3, max: 240 }).map(inches);

  it('goes to an odd number of places on the board, from the marked end on, the middle among them', () => {
    fc.assert(fc.property(lengths, fc.constantFrom('inch' as const, 'millimetre' as const), (length, unit) => {
      const stations = stationsFor(length, unit);
      expect(stations.length % 2).toBe(1);
      expect(stations.every((at, index) => at > (stations[index - 1] ?? -1) && at < length)).toBe(true);
      expect(Math.abs(placeAt('middle', stations) - length / 2)).toBeLessThanOrEqual(inches(0.25));
      expect([placeAt('marked end', stations), placeAt('far end', stations)]).toEqual([stations[0], stations.at(-1)]);
    }));
  });

  it('asks for each reading once, and for no more when all are taken or left out', () => {
    fc.assert(fc.property(lengths, fc.constantFrom(...TRUED_FACES, 'thickness' as const, 'diagonals' as const), fc.array(fc.boolean(), { minLength: 60, maxLength: 60 }), (length, about, take) => {
      const size = { length, width: inches(4) };
      const wanted = wantedOn(about, stationsFor(length, 'inch'));
      let taken: readonly FaceReading[] = [];
      const leftOut: (typeof wanted)[number][] = [];
      for (const [index] of wanted.entries()) {
        const next = nextWanted({ size, unit: 'inch' }, about, taken, leftOut);
        expect(next).toBeDefined();
        if (next && take[index] === true) taken = withReading(taken, { ...next, gap: inches(0.01) });
        else if (next) leftOut.push(next);
      }
      expect(nextWanted({ size, unit: 'inch' }, about, taken, leftOut)).toBeUndefined();
      expect(taken.every(({ what }) => READING_KINDS.includes(what))).toBe(true);
    }));
  });
});
