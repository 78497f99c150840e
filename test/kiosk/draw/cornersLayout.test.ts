import { expect } from '@open-wc/testing';
import { layCorners } from '../../../kiosk/draw/cornersLayout.ts';
import type { LaidCopy, StandingCopy } from '../../../kiosk/draw/cornersLayout.ts';

const corner = (copy: number, place: string, mortised: StandingCopy['mortised']): StandingCopy => ({
  copy, place, sides: place.split(' ') as unknown as StandingCopy['sides'], towards: { front: 'A', left: 'B', back: 'C', right: 'D' }, numberedEndDown: false, told: {}, mortised,
});
const LEGS = [corner(1, 'front left', ['right', 'back']), corner(2, 'front right', ['left', 'back']), corner(3, 'back left', ['right', 'front']), corner(4, 'back right', ['left', 'front'])];
const laid = (): readonly LaidCopy[] => layCorners(LEGS, 470, 296);
const at = (place: string): LaidCopy => laid().find(({ copy }) => copy.place === place) as LaidCopy;

describe('the corners from above', () => {
  it('have the front below and the left at the left', () => {
    expect(at('front left').box.y).to.be.greaterThan(at('back left').box.y);
    expect(at('front left').box.x).to.be.lessThan(at('front right').box.x);
    expect(at('front left').box.x).to.equal(at('back left').box.x);
  });

  it('draw left and right as mirror images, mortises and all', () => {
    const [left, right] = [at('front left'), at('front right')];
    const mirrored = left.mortises.map(({ x, y, width, height }) => ({ x: 470 - x - width, y, width, height }));
    for (const [index, { x, y, width, height }] of right.mortises.entries()) {
      expect(x).to.be.closeTo(mirrored[index]?.x ?? NaN, 0.01);
      expect([y, width, height]).to.deep.equal([mirrored[index]?.y, mirrored[index]?.width, mirrored[index]?.height]);
    }
  });

  it('put each mortise inside its section, near the outer face that it is gauged from', () => {
    for (const { box, mortises } of laid()) {
      for (const { x, y, width, height } of mortises) {
        expect(x).to.be.at.least(box.x);
        expect(y).to.be.at.least(box.y);
        expect(x + width).to.be.at.most(box.x + box.width + 0.01);
        expect(y + height).to.be.at.most(box.y + box.height + 0.01);
      }
    }
    const [intoRight] = at('front left').mortises;
    expect(intoRight?.y).to.be.greaterThan(at('front left').middle.y);
  });

  it('show the two outer faces of every leg', () => {
    for (const { faces } of laid()) expect(faces.filter(({ shows }) => shows)).to.have.length(2);
  });

  it('have their names beside them, in the row and clear of the line between them', () => {
    for (const { box, middle, name } of laid()) {
      expect(name.anchor === 'start' ? name.x - (box.x + box.width) : box.x - name.x).to.be.greaterThan(5);
      expect(Math.abs(name.y - middle.y)).to.be.greaterThan(24);
      expect(name.y).to.be.within(box.y, box.y + box.height);
    }
  });

  it('find room for twelve', () => {
    const row = (side: string): readonly StandingCopy[] => ['left', ...[1, 2, 3, 4], 'right'].map((name, index) => ({ ...corner(index, `${side} ${name}`, []), sides: (typeof name === 'string' ? [side, name] : [side]) as unknown as StandingCopy['sides'] }));
    const boxes = layCorners([...row('front'), ...row('back')], 470, 296).map(({ box }) => box);
    for (const one of boxes) for (const other of boxes) if (one !== other) expect(one.x + one.width <= other.x || other.x + other.width <= one.x || one.y + one.height <= other.y || other.y + other.height <= one.y).to.equal(true);
  });
});
