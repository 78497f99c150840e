import { expect } from '@open-wc/testing';
import { nanometres } from '../../../core/length/length.ts';
import { layPart } from '../../../kiosk/draw/partLayout.ts';
import type { PartLayout, PartShape } from '../../../kiosk/draw/partLayout.ts';
import type { State } from '../../../core/journal/state.ts';
import { shapeOf } from '../../../kiosk/screens/pieceView.ts';
import { FRESH } from '../sampleViews.ts';

const INCH = 25_400_000;
const inches = (count: number): PartShape['length'] => nanometres(count * INCH);

const RAIL: PartShape = { length: inches(20), width: inches(5), thickness: inches(1.25), shoulders: inches(16.5), tenonWidth: inches(4), tenonFromEdge: inches(0.5), layers: 1, boards: 1 };
const LEG: PartShape = { length: inches(32.25), width: inches(3.25), thickness: inches(3.25), layers: 3, boards: 1 };
const BATTEN: PartShape = { length: inches(60), width: inches(2), thickness: inches(0.75), layers: 1, boards: 1 };
const [WIDTH, HEIGHT, LETTER] = [784, 160, 26];

const dimension = (layout: PartLayout, key: string): PartLayout['dimensions'][number] => {
  const found = layout.dimensions.find((each) => each.key === key);
  if (found === undefined) throw new Error(`no dimension ${key}`);
  return found;
};

describe('the drawing of a part', () => {
  it('draws length, width and thickness at one scale', () => {
    const { front, end, scale, broken } = layPart(RAIL, WIDTH, HEIGHT, LETTER);
    expect(broken).to.equal(false);
    expect(front.width / scale).to.be.closeTo(RAIL.length, 1);
    expect(front.height / scale).to.be.closeTo(RAIL.width, 1);
    expect(end.width / scale).to.be.closeTo(RAIL.thickness, 1);
    expect(end.height).to.equal(front.height);
    expect(end.y, 'the end stands level with the face').to.equal(front.y);
  });

  it('stays on the sheet, figures and all', () => {
    for (const shape of [RAIL, LEG, BATTEN]) {
      for (const picked of ['', 'length', 'width', 'thickness', 'shoulders']) {
        const { front, end, dimensions } = layPart(shape, WIDTH, HEIGHT, LETTER, picked);
        for (const box of [front, end]) {
          expect(box.x).to.be.at.least(0);
          expect(box.x + box.width).to.be.at.most(WIDTH);
          expect(box.y).to.be.at.least(0);
          expect(box.y + box.height).to.be.at.most(HEIGHT);
        }
        expect(end.x).to.be.greaterThan(front.x + front.width);
        for (const { key, from, to, figure } of dimensions) {
          for (const { x, y } of [from, to]) {
            expect(x, key).to.be.within(0, WIDTH);
            expect(y, key).to.be.within(0, HEIGHT);
          }
          if (picked === '' || picked === key) {
            expect(figure.y - LETTER * 0.6, `${key} figure`).to.be.at.least(-1);
            expect(figure.y + LETTER * 0.6, `${key} figure`).to.be.at.most(HEIGHT + 1);
          }
        }
      }
    }
  });

  it('measures each size between its own lines', () => {
    const layout = layPart(RAIL, WIDTH, HEIGHT, LETTER);
    const { scale, front, end } = layout;
    const across = (key: string): number => dimension(layout, key).to.x - dimension(layout, key).from.x;
    expect(across('length') / scale).to.be.closeTo(RAIL.length, 1);
    expect(across('shoulders') / scale).to.be.closeTo(inches(16.5), 1);
    expect(across('thickness') / scale).to.be.closeTo(RAIL.thickness, 1);
    expect((dimension(layout, 'width').to.y - dimension(layout, 'width').from.y) / scale).to.be.closeTo(RAIL.width, 1);
    expect(dimension(layout, 'length').from.x).to.equal(front.x);
    expect(dimension(layout, 'thickness').from.x).to.equal(end.x);
    expect(dimension(layout, 'shoulders').from.x - front.x, 'one tenon in from the end').to.be.closeTo(1.75 * INCH * scale, 1e-6);
  });

  it('draws the tenons at both ends, in from the reference edge', () => {
    const { tenons, front, scale } = layPart(RAIL, WIDTH, HEIGHT, LETTER);
    expect(tenons).to.have.length(2);
    for (const tenon of tenons) {
      expect(tenon.width / scale).to.be.closeTo(inches(1.75), 1);
      expect(tenon.height / scale).to.be.closeTo(inches(4), 1);
      expect((tenon.y - front.y) / scale).to.be.closeTo(inches(0.5), 1);
    }
    expect(Math.max(...tenons.map(({ x, width }) => x + width))).to.be.closeTo(front.x + front.width, 1e-6);
  });

  it('draws a glue line between layers, and between boards', () => {
    const leg = layPart(LEG, WIDTH, HEIGHT, LETTER);
    const places = leg.glueLines.map(({ x1 }) => (x1 - leg.end.x) / leg.end.width);
    expect(places).to.have.length(2);
    [1 / 3, 2 / 3].forEach((place, index) => expect(places[index]).to.be.closeTo(place, 1e-9));
    const top = layPart({ ...RAIL, boards: 6 }, WIDTH, HEIGHT, LETTER);
    expect(top.glueLines.filter(({ x1 }) => x1 === top.front.x)).to.have.length(5);
  });

  it('breaks a slender part in the middle rather than drawing it as a hair', () => {
    const { broken, front, scale } = layPart(BATTEN, WIDTH, HEIGHT, LETTER);
    expect(broken).to.equal(true);
    expect(front.width).to.be.lessThan(BATTEN.length * scale);
    expect(front.height).to.be.greaterThan(30);
  });
});

describe('the letters of a leg that stands', () => {
  const faces = (copy: number, told: State['likes'] = new Map()): PartShape['faces'] => shapeOf({
    ...FRESH, places: new Map([['leg/1', 'front left'], ['leg/2', 'front right']]), turns: new Map([['leg/1', { front: 'A', up: 'numbered' }], ['leg/2', { front: 'A', up: 'numbered' }]]), likes: told,
  }, 'leg', copy)?.faces;

  // Seen from the front with its top laid over to the left, what was on the right is above.
  it('are its own, as it is seen from the front', () => {
    expect(faces(1)).to.deep.equal({ drawn: 'A', upper: 'D', lower: 'B', behind: 'C', outer: ['A', 'B'], mortised: ['C', 'D'], edge: 'upper' });
    expect(faces(2)).to.deep.equal({ drawn: 'A', upper: 'D', lower: 'B', behind: 'C', outer: ['A', 'D'], mortised: ['B', 'C'], edge: 'upper' });
  });

  it('are drawn with the face side towards the eye, and the edge mark at the face edge', () => {
    const told: State['likes'] = new Map([['leg/1', { faces: { B: { mark: 'face side' }, A: { mark: 'face edge' } } }]]);
    expect(faces(1, told)).to.deep.include({ drawn: 'B', upper: 'A', lower: 'C', behind: 'D', edge: 'upper' });
  });

  it('are left out while nobody has said which way it is turned', () => {
    expect(shapeOf({ ...FRESH, places: new Map([['leg/1', 'front left']]) }, 'leg', 1)?.faces).to.equal(undefined);
  });
});
