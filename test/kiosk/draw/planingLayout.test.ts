import { expect } from '@open-wc/testing';
import { nanometres, NANOMETRES_PER_INCH, type Length } from '../../../core/length/length.ts';
import { planingPlan } from '../../../core/true/planing.ts';
import { firstFace } from '../../../core/true/plane.ts';
import { surfaceOf } from '../../../core/true/surface.ts';
import { layPlaning } from '../../../kiosk/draw/planingLayout.ts';
import type { PlaningDrawing } from '../../../kiosk/draw/planingLayout.ts';

const inches = (count: number): Length => nanometres(Math.round(count * NANOMETRES_PER_INCH));

/** A board of 50 by 6 inches, hollow along by so many thousandths in the middle. */
function hollow(thousandths: number, stations: readonly number[] = [1, 9, 17, 25.5, 33.5, 41.5, 49.5]): PlaningDrawing {
  const middle = 25.5;
  const surface = surfaceOf({ length: inches(50.5), width: inches(6), stations: stations.map(inches), along: stations.map((at) => inches((thousandths / 1000) * Math.max(0, 1 - Math.abs(at - middle) / 25))) });
  if (!surface.ok) throw new Error(JSON.stringify(surface.fault));
  const found = firstFace(surface.value);
  if (!found.ok) throw new Error(found.fault);
  const { shavings } = planingPlan(surface.value, found.value.depths, inches(0.001));
  return { surface: surface.value, depths: found.value.depths, shavings, levels: [inches((thousandths / 1000) * 0.5), nanometres(0)] };
}

const xs = (path: string): number[] => [...path.matchAll(/[ML](-?[\d.]+) /g)].map(([, x]) => Number(x));

describe('a side of a board laid out for planing', () => {
  it('has its contour where the depth is that of the level: of a hollow, half of the way to the middle on both sides', () => {
    const { bands, board } = layPlaning(hollow(40), 456, 250);
    const contour = xs(bands[0]?.contour ?? '');
    const along = (at: number): number => board.x + (board.width * at) / 50.5;
    expect(contour.length).to.be.greaterThan(0);
    for (const x of contour) expect(Math.min(Math.abs(x - along(25.5 - 12.5)), Math.abs(x - along(25.5 + 12.5)))).to.be.lessThan(6);
  });

  it('fills what stands over a level, to the ends of the board, and nothing where nothing does', () => {
    const { bands, board } = layPlaning(hollow(40), 456, 250);
    const filled = xs(bands[0]?.area ?? '');
    expect(Math.min(...filled)).to.be.closeTo(board.x, 0.2);
    expect(Math.max(...filled)).to.be.closeTo(board.x + board.width, 0.2);
    expect(layPlaning({ ...hollow(40), levels: [inches(1)] }, 456, 250).bands).to.deep.equal([{ area: '', contour: '' }]);
  });

  it('keeps the figures inside the board and off each other, however many places there are', () => {
    for (const stations of [[1, 25.5, 49.5], [1, 9, 17, 25.5, 33.5, 41.5, 49.5], [0, 3, 6, 10, 25.5, 40, 50.5]]) {
      const { counts, letter, board } = layPlaning(hollow(40, stations), 456, 250);
      const half = (count: number): number => String(count).length * 0.32 * letter;
      for (const { x, y, count } of counts) {
        expect(x - half(count)).to.be.at.least(board.x);
        expect(x + half(count)).to.be.at.most(board.x + board.width);
        expect(counts.filter((other) => other.y === y && other.x > x && other.x - half(other.count) < x + half(count))).to.deep.equal([]);
      }
    }
  });

  it('marks the highest places, the same as the plan counts', () => {
    const drawing = hollow(40);
    const { counts } = layPlaning(drawing, 456, 250);
    const most = Math.max(...drawing.shavings);
    expect(counts.filter(({ highest }) => highest).map(({ count }) => count)).to.deep.equal(drawing.shavings.filter((count) => count === most));
  });
});
