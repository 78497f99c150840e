import { expect } from '@open-wc/testing';
import { render } from 'lit';
import { marksFor } from '../../../core/joint/marks.ts';
import { facesOf } from '../../../core/layout/paper/faces.ts';
import { everySheet, sheetsFor, type SheetOrder } from '../../../core/layout/paper/order.ts';
import type { Page, Stroke } from '../../../core/layout/paper/sheet.ts';
import { evaluate } from '../../../core/piece/evaluate.ts';
import { drawPage } from '../../../kiosk/draw/paperPage.ts';
import { PIECE } from '../sampleViews.ts';

const ORDER: SheetOrder = { piece: PIECE, sizes: evaluate(PIECE, []), places: new Map(), turns: new Map(), rounding: { unit: 'inch', denominator: 32 }, paper: 'a4', date: '25 November 2026' };
/** A hundredth of a millimetre. */
const TRUE_MM = 0.01;

function svgOf(page: Page): SVGSVGElement {
  const place = document.createElement('div');
  render(drawPage(page, 'sheet'), place);
  const svg = place.querySelector('svg');
  if (svg === null) throw new Error('no drawing');
  return svg;
}

/** Every named line of the drawing, its ends in millimetres on the sheet. */
function linesOf(svg: SVGSVGElement): ReadonlyMap<string, readonly (readonly number[])[]> {
  const lines = new Map<string, (readonly number[])[]>();
  for (const path of svg.querySelectorAll('path[data-of]')) {
    const name = path.getAttribute('data-of') ?? '';
    const ends = (path.getAttribute('d') ?? '').match(/-?[\d.]+(?:e-?\d+)?/g)?.map(Number) ?? [];
    lines.set(name, [...(lines.get(name) ?? []), ends]);
  }
  return lines;
}

describe('a sheet as it is drawn for the printer', () => {
  it('is as large as its paper, in millimetres', () => {
    const made = sheetsFor(ORDER, { what: 'layout', part: 'leg' });
    const [page] = made.ok ? made.value.pages : [];
    if (page === undefined) throw new Error('no sheet');
    const svg = svgOf(page);
    expect([svg.getAttribute('width'), svg.getAttribute('height'), svg.getAttribute('viewBox')]).to.deep.equal(['210mm', '297mm', '0 0 210 297']);
  });

  for (const choice of everySheet(ORDER)) {
    it(`has every line of the ${choice.what === 'layout' ? `layout of the ${choice.part}` : choice.what} within a hundredth of a millimetre`, () => {
      const made = sheetsFor(ORDER, choice);
      if (!made.ok) throw new Error(made.fault);
      for (const page of made.value.pages) {
        const read = linesOf(svgOf(page));
        const named = [...page.drawn, ...page.furniture].filter((item): item is Stroke => item.kind === 'stroke' && item.of !== undefined);
        for (const { of = '', points } of named) {
          const wanted = points.flatMap(({ x, y }) => [x / 1e6, y / 1e6]);
          const found = (read.get(of) ?? []).some((ends) => ends.length === wanted.length && ends.every((end, index) => Math.abs(end - (wanted[index] ?? 0)) < TRUE_MM));
          expect(found, of).to.equal(true);
        }
      }
    });
  }

  it('has the marks of a leg as far from its top end as the leg has them', () => {
    const made = sheetsFor(ORDER, { what: 'layout', part: 'leg' });
    const [page] = made.ok ? made.value.pages : [];
    const views = facesOf(ORDER, 'leg');
    if (page === undefined || !views.ok) throw new Error('no sheet');
    const read = linesOf(svgOf(page));
    const end = Math.min(...(read.get('outline') ?? []).map(([x = 0]) => x));
    for (const mark of marksFor(PIECE, ORDER.sizes, 'leg').filter(({ joint, kind }) => joint === 'longRailTenon' && (kind === 'mortise start' || kind === 'mortise end'))) {
      const [[x = 0] = []] = read.get(`longRailTenon/${mark.kind}`) ?? [];
      expect(x - end, mark.say).to.be.closeTo(mark.at / 1e6, TRUE_MM);
    }
  });
});
