import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { OVERLAP, pageForm, PAPERS } from '../../../../core/layout/paper/paperSize.ts';
import { line, mm, rectangle, spot, type Band, type Page } from '../../../../core/layout/paper/sheet.ts';
import { everySheet, sheetsFor } from '../../../../core/layout/paper/order.ts';
import { MOST_SHEETS, tile, tilesAlong } from '../../../../core/layout/paper/tile.ts';
import { nanometres } from '../../../../core/length/length.ts';
import { DEMO, orderFor } from './shop.ts';

const PAPER = fc.constantFrom('a4', 'letter');

function drawing(length: number, depth: number): Parameters<typeof tile>[0] {
  const band: Band = { title: 'band', length: nanometres(length), depth: nanometres(depth), items: [rectangle('outline', { x: mm(0), y: mm(0), width: nanometres(length), height: nanometres(depth) })] };
  return { name: 'drawing', title: 'drawing', drawn: '', bands: [band], longest: nanometres(length) };
}

function crossesOf({ furniture, window, place }: Page): ReadonlyMap<string, string> {
  return new Map(furniture.flatMap((item) => (item.kind === 'stroke' && item.of?.startsWith('cross') === true && item.points[0]?.y === item.points[1]?.y && item.points[0] && place
    ? [[item.of, `${item.points[0].x - window.x + place.from.x}, ${item.points[0].y - window.y + place.from.y}`] as const] : [])));
}

describe('paper', () => {
  // ISO 216 (2007), A4: 210 mm by 297 mm. ANSI/ASME Y14.1 (2012), size A: 8 1/2 in by 11 in, 215.9 mm by 279.4 mm.
  it.each([['a4', 210, 297], ['letter', 215.9, 279.4]] as const)('%s is as its standard has it', (paper, short, long) => {
    expect([PAPERS[paper].short / 1e6, PAPERS[paper].long / 1e6]).toEqual([short, long]);
  });
});

describe('sheets that are joined', () => {
  const sizes = fc.record({ length: fc.integer({ min: 10, max: 2200 }), depth: fc.integer({ min: 5, max: 500 }), paper: PAPER });

  it('show the whole drawing, each overlapping its neighbours by as much as it should', () => {
    fc.assert(fc.property(sizes, ({ length, depth, paper }) => {
      const made = tile(drawing(length * 1e6, depth * 1e6), paper);
      if (!made.ok) return;
      const { pages, groups: [grid] } = made.value;
      const [first] = pages;
      if (!first || !grid) throw new Error('there is one sheet at least');
      expect(pages).toHaveLength(grid.rows * grid.columns);
      expect((grid.columns - 1) * (first.window.width - OVERLAP) + first.window.width).toBeGreaterThanOrEqual(length * 1e6);
      expect((grid.rows - 1) * (first.window.height - OVERLAP) + first.window.height).toBeGreaterThanOrEqual(depth * 1e6);
      for (const { place, window } of pages) {
        if (!place) throw new Error('a joined sheet has its place');
        expect([place.from.x, place.from.y]).toEqual([(place.column - 1) * (window.width - OVERLAP), (place.row - 1) * (window.height - OVERLAP)]);
      }
    }), { numRuns: 80 });
  }, 60_000);

  it('bear their crosses at the same places of the drawing on both sides of a seam', () => {
    fc.assert(fc.property(sizes, ({ length, depth, paper }) => {
      const made = tile(drawing(length * 1e6, depth * 1e6), paper);
      const pages = made.ok ? made.value.pages : [];
      for (const page of pages) {
        for (const other of pages) {
          const [one, two] = [page.place, other.place];
          if (!one || !two) throw new Error('a joined sheet has its place');
          const beside = one.row === two.row && two.column === one.column + 1;
          const below = one.column === two.column && two.row === one.row + 1;
          if (!beside && !below) continue;
          const seam = beside ? `cross c${one.column}/` : `cross r${one.row}/`;
          const [mine, theirs] = [crossesOf(page), crossesOf(other)].map((crosses) => [...crosses].filter(([name]) => name.startsWith(seam)));
          expect(mine).toHaveLength(2);
          expect(mine).toEqual(theirs);
        }
      }
    }), { numRuns: 30 });
  }, 60_000);

  it('are never more than can be joined by hand: a drawing that takes more is refused with what to do', () => {
    const made = tile(drawing(20_000e6, 400e6), 'a4');
    expect(made.ok ? '' : made.fault).toMatch(new RegExp(`takes \\d+ sheets of A4; more than ${MOST_SHEETS} cannot be joined.*from the figures`));
  });

  it('a face that fits is not cut along its length', () => {
    const deep = pageForm('a4', 'lying').window.height;
    const band = (at: number): Band => ({ title: `${at}`, length: mm(100), depth: nanometres(deep - 1_000_000), items: [line('mark', spot(0, 0), spot(1, 1), `${at}`)] });
    const made = tile({ ...drawing(1e6, 1e6), bands: [band(1), band(2)] }, 'a4');
    expect(made.ok && made.value.groups.every(({ rows }) => rows === 1)).toBe(true);
  });

  it('one window shows what it is long for, and no sheet is wasted', () => {
    expect(tilesAlong(mm(180), mm(180))).toBe(1);
    expect(tilesAlong(mm(180.1), mm(180))).toBe(2);
    expect(tilesAlong(mm(180 + 165), mm(180))).toBe(2);
  });
});

it('every sheet of the demo piece bears the bars, 100 mm and 4 in, across and upright, inside the paper', () => {
  for (const paper of ['a4', 'letter'] as const) {
    const order = orderFor(DEMO, paper);
    for (const choice of everySheet(order)) {
      const made = sheetsFor(order, choice);
      if (!made.ok) throw new Error(made.fault);
      for (const page of made.value.pages) {
        const bar = (name: string): number => { const found = page.furniture.find((item) => item.kind === 'stroke' && item.of === name); const [from, to] = found?.kind === 'stroke' ? found.points : []; return from && to ? Math.hypot(to.x - from.x, to.y - from.y) : 0; };
        expect(['bar across, millimetres', 'bar across, inches', 'bar upright, millimetres', 'bar upright, inches'].map(bar)).toEqual([100e6, 101.6e6, 100e6, 101.6e6]);
        for (const item of page.furniture) for (const { x, y } of item.kind === 'stroke' ? item.points : [item.at]) expect(x > 0 && y > 0 && x < page.width && y < page.height).toBe(true);
      }
    }
  }
});
