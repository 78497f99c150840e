import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { marksFor } from '../../../../core/joint/marks.ts';
import { facesOf } from '../../../../core/layout/paper/faces.ts';
import { sheetsFor, type SheetOrder } from '../../../../core/layout/paper/order.ts';
import type { Page, SheetSet, Stroke } from '../../../../core/layout/paper/sheet.ts';
import type { FaceView } from '../../../../core/layout/paper/faceView.ts';
import type { LoadedPiece } from '../../../../core/piece/loadedPiece.ts';
import { DEMO, orderFor, TABLES } from './shop.ts';

function faces(order: SheetOrder, part: string): readonly FaceView[] {
  const found = facesOf(order, part);
  return found.ok ? found.value : [];
}

function sheets(order: SheetOrder, part: string): SheetSet | undefined {
  const made = sheetsFor(order, { what: 'layout', part });
  return made.ok ? made.value : undefined;
}

function strokes({ drawn }: Page): readonly Stroke[] {
  return drawn.filter((item) => item.kind === 'stroke');
}

/** Where a line stands in its direction, in the drawing that the sheets were cut from. */
function inDrawing(page: Page, { points: [from, to] }: Stroke): { readonly x1: number; readonly y1: number; readonly x2: number; readonly y2: number } {
  const { place, window } = page;
  if (!from || !to || !place) throw new Error('a line of a drawing has two ends');
  const [right, down] = [place.from.x - window.x, place.from.y - window.y];
  return { x1: from.x + right, y1: from.y + down, x2: to.x + right, y2: to.y + down };
}

/** Every mark of the part is a line exactly as far from its reference as it says, and inside the part. */
function everyMarkIsDrawn(piece: LoadedPiece, part: string): void {
  const order = orderFor(piece);
  const views = faces(order, part);
  for (const mark of marksFor(piece, order.sizes, part).filter(({ tool }) => tool !== 'depth flag')) {
    const lines = views.flatMap((view) => view.lines.filter((line) => line.mark.kind === mark.kind && line.mark.joint === mark.joint).map((line) => ({ view, line })));
    expect(lines.length, `${part}, ${mark.say}`).toBeGreaterThan(0);
    for (const { view, line } of lines) {
      const whole = line.lies === 'across' ? view.along : view.across;
      const fromReference = /^the bottom end$/.test(mark.from.say) ? [whole - line.at] : /^each/.test(mark.from.say) ? [line.at, whole - line.at] : [line.at];
      expect(fromReference, mark.say).toContain(mark.at);
      expect(line.at >= 0 && line.at <= whole && line.from >= 0 && line.to <= (line.lies === 'across' ? view.across : view.along), mark.say).toBe(true);
    }
  }
}

describe('marks at full size', () => {
  it.each(DEMO.file.parts.map(({ id }) => id))('of the %s stand as far from their references as they say', (part) => everyMarkIsDrawn(DEMO, part));

  it('of whatever table stand right, and inside the part', () => {
    fc.assert(fc.property(TABLES, (piece) => {
      for (const { id } of piece.file.parts) everyMarkIsDrawn(piece, id);
    }), { numRuns: 12 });
  }, 60_000);

  it('hatch as waste what the chisel and the saw take: a mortise between its lines, all beside a tenon', () => {
    const order = orderFor(DEMO);
    const [leg] = faces(order, 'leg');
    // The socket for the haunch from the end on, the mortise to 4 1/2 in from the top; 5/8 in to 1 1/8 in from the outer face: 114.3, 15.875 and 28.575 mm.
    expect(leg?.waste[0]).toEqual({ from: 0, to: 114_300_000, top: 15_875_000, bottom: 28_575_000 });
    const [rail] = faces(order, 'longRail');
    expect(rail?.waste).toHaveLength(4);
  });

  it('are on every sheet that shows their place, at the same place of the drawing', () => {
    const order = orderFor(DEMO);
    for (const { id } of DEMO.file.parts) {
      const set = sheets(order, id);
      const where = new Map<string, Set<string>>();
      for (const page of set?.pages ?? []) {
        for (const stroke of strokes(page).filter(({ of, look }) => of !== undefined && (look === 'mark' || look === 'gauge') && of.includes('/'))) {
          const key = `${page.place?.group ?? 0} ${stroke.of ?? ''}`;
          where.set(key, (where.get(key) ?? new Set()).add(JSON.stringify(inDrawing(page, stroke))));
        }
      }
      const faceCount = faces(order, id).length;
      // A mark may stand on several faces and at both ends, never in more places than that.
      for (const [key, places] of where) expect(places.size, key).toBeLessThanOrEqual(2 * faceCount);
    }
  });
});

describe('what is refused', () => {
  it.each([
    ['an unknown part', orderFor(DEMO), { what: 'layout', part: 'drawer' }, /no part called drawer.*leg, long rail/],
    ['a copy that there is not', orderFor(DEMO), { what: 'layout', part: 'leg', copy: 9 }, /no leg 9; this piece has 4/],
    ['a part without marks', orderFor(DEMO), { what: 'layout', part: 'top' }, /Nothing is marked on the top/],
  ] as const)('%s', (_, order, choice, sentence) => {
    const made = sheetsFor(order, choice);
    expect(made.ok ? '' : made.fault).toMatch(sentence);
  });
});
