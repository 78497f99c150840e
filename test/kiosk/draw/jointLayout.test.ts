import { expect } from '@open-wc/testing';
import { nanometres } from '../../../core/length/length.ts';
import { layJoint } from '../../../kiosk/draw/jointLayout.ts';
import type { JointLayout, JointShape } from '../../../kiosk/draw/jointLayout.ts';
import { jointShapeOf } from '../../../kiosk/screens/pieceView.ts';
import { PIECE, UNDER_WAY } from '../sampleViews.ts';

const INCH = 25_400_000;
const inches = (count: number): JointShape['fromTop'] => nanometres(count * INCH);

const RAIL_IN_LEG: JointShape = {
  railWidth: inches(5), railThickness: inches(1.25), legAcross: inches(3.25), legInto: inches(3.25), tenonLength: inches(1.75), tenonWidth: inches(3.5),
  tenonThickness: inches(0.5), topShoulder: inches(1), outerShoulder: inches(0.375), mortiseLength: inches(3.5), mortiseWidth: inches(0.5), mortiseDepth: inches(1.8125),
  setback: inches(0.25), fromTop: inches(1), pitchDown: inches(0), pitchAcross: inches(0), gap: inches(0),
};
const HAUNCHED: JointShape = { ...RAIL_IN_LEG, haunch: { width: inches(1), length: inches(0.5), sloped: false } };
const TWINS: JointShape = { ...RAIL_IN_LEG, railWidth: inches(8), tenonWidth: inches(2.25), mortiseLength: inches(2.25), gap: inches(2), pitchDown: inches(4.25) };
const STRETCHER_IN_LEG: JointShape = { ...RAIL_IN_LEG, railWidth: inches(3), tenonWidth: inches(2), mortiseLength: inches(2), topShoulder: inches(0.5), fromTop: inches(19.75) };
const TENON = ['tenonLength', 'tenonWidth', 'tenonThickness', 'topShoulder', 'bottomShoulder', 'outerShoulder'];
const MORTISE = ['mortiseLength', 'mortiseWidth', 'mortiseDepth', 'setback', 'fromTop'];
const [WIDTH, HEIGHT, LETTER] = [420, 260, 20];

const lay = (shape: JointShape, picked: string): JointLayout => layJoint(shape, picked, WIDTH, HEIGHT, LETTER);

/** What a dimension spans in the drawing, taken back to a length. */
function spanned(layout: JointLayout, key: string): number {
  const found = layout.dimensions.find((each) => each.key === key);
  if (found === undefined) throw new Error(`no dimension ${key}`);
  return Math.hypot(found.to.x - found.from.x, found.to.y - found.from.y) / layout.scale;
}

describe('the drawing of a mortise and tenon', () => {
  it('shows a haunch and its socket, and both of twins with the gap between them', () => {
    expect(spanned(lay(HAUNCHED, 'haunchLength'), 'haunchLength')).to.be.closeTo(inches(0.5), 1);
    expect(spanned(lay(HAUNCHED, 'haunchWidth'), 'haunchWidth')).to.be.closeTo(inches(1), 1);
    expect(lay(HAUNCHED, 'tenonLength').outlines.length).to.equal(lay(RAIL_IN_LEG, 'tenonLength').outlines.length + 1);
    expect(lay(HAUNCHED, 'mortiseDepth').waste.length).to.equal(4);
    expect(spanned(lay(TWINS, 'gap'), 'gap')).to.be.closeTo(inches(2), 1);
    expect(lay(TWINS, 'mortiseDepth').waste.length).to.equal(4);
    expect(spanned(lay(TWINS, 'bottomShoulder'), 'bottomShoulder')).to.be.closeTo(inches(8 - 1 - 4.25 - 2.25), 1);
  });

  it('spans every size at its own length', () => {
    for (const key of [...TENON, ...MORTISE]) {
      const expected = key === 'bottomShoulder' ? inches(0.5) : RAIL_IN_LEG[key as Exclude<keyof JointShape, 'haunch' | 'open'>];
      expect(spanned(lay(RAIL_IN_LEG, key), key), key).to.be.closeTo(expected, 1);
    }
  });

  it('leaves the slot of a bridle open at the end of its part, in the view of its edge and in the section', () => {
    const bridle: JointShape = { ...RAIL_IN_LEG, fromTop: inches(0), tenonWidth: inches(5), mortiseLength: inches(5), topShoulder: inches(0), mortiseDepth: inches(3.25), open: 'top' };
    const { openings, waste, outlines } = lay(bridle, 'mortiseLength');
    expect(openings.map(({ from, to }) => [from.y, to.y])).to.deep.equal(waste.map(({ y }) => [y, y]));
    expect(openings.map(({ from }) => from.y)).to.deep.equal(outlines.map(({ y }) => y));
    expect(lay(RAIL_IN_LEG, 'mortiseLength').openings).to.deep.equal([]);
  });

  it('hatches the mortise and nothing else, where the setback and the shoulder put it', () => {
    const { waste, outlines, scale } = lay(RAIL_IN_LEG, 'mortiseWidth');
    const [leg] = outlines;
    const [mortise, section] = waste;
    expect(waste).to.have.length(2);
    expect(((mortise?.x ?? 0) - (leg?.x ?? 0)) / scale, 'outer face of the leg to the mortise').to.be.closeTo(inches(0.625), 1);
    expect((section?.width ?? 0) / scale).to.be.closeTo(inches(1.8125), 1);
    expect(lay(RAIL_IN_LEG, 'tenonLength').waste).to.deep.equal([]);
  });

  it('breaks the leg above a mortise that is far down, and still measures from the top end', () => {
    const near = lay(RAIL_IN_LEG, 'fromTop');
    const far = lay(STRETCHER_IN_LEG, 'fromTop');
    expect(far.breaks.length).to.equal(near.breaks.length + 2);
    const dimension = far.dimensions.find(({ key }) => key === 'fromTop');
    expect(dimension?.from.y).to.equal(far.outlines[0]?.y);
    expect(dimension?.to.y).to.equal(far.waste[0]?.y);
    expect(dimension?.length).to.equal(inches(19.75));
  });

  it('stays on the sheet', () => {
    for (const shape of [RAIL_IN_LEG, STRETCHER_IN_LEG]) {
      for (const picked of [...TENON, ...MORTISE]) {
        const { outlines, dimensions } = lay(shape, picked);
        for (const box of outlines) {
          expect(box.x).to.be.at.least(0);
          expect(box.y).to.be.at.least(0);
          expect(box.x + box.width, picked).to.be.at.most(WIDTH);
          expect(box.y + box.height, picked).to.be.at.most(HEIGHT);
        }
        const figure = dimensions.find(({ key }) => key === picked)?.figure;
        expect(figure?.y, `${picked} figure`).to.be.within(LETTER * 0.6, HEIGHT - LETTER * 0.6);
        expect(figure?.x, `${picked} figure`).to.be.within(LETTER * 1.2, WIDTH - LETTER * 1.2);
      }
    }
  });

  it('is there for every mortise and tenon of the demo piece', () => {
    const joints = PIECE.file.joints.filter(({ kind }) => kind === 'mortise and tenon');
    expect(joints.length).to.be.greaterThan(0);
    for (const { id } of joints) expect(jointShapeOf(UNDER_WAY, id), id).to.not.equal(undefined);
  });
});
