import { expect } from '@open-wc/testing';
import { planChopping } from '../../../core/joint/chopping.ts';
import type { ChopPlan } from '../../../core/joint/chopping.ts';
import { nanometres } from '../../../core/length/length.ts';
import type { Length } from '../../../core/length/length.ts';
import { layChop } from '../../../kiosk/draw/chopLayout.ts';

const inches = (count: number): Length => nanometres(Math.round(count * 25_400_000));
const [WIDTH, HEIGHT, LETTER] = [468, 288, 24];

function planned(more: Partial<Parameters<typeof planChopping>[0]> = {}): ChopPlan {
  const plan = planChopping({ from: inches(1), length: inches(3.5), width: inches(0.5), depth: inches(1.8125), wood: inches(3.25), hardness: 'hard', ...more });
  if (!plan.ok) throw new Error('the mortise can be chopped');
  return plan.value;
}

const MORTISES: Readonly<Record<string, ChopPlan>> = {
  'a blind mortise near the top': planned(), 'a through mortise': planned({ depth: inches(3.25) }), 'one far down': planned({ from: inches(23.75), length: inches(2) }), 'a small one': planned({ length: inches(0.75), width: inches(0.25), depth: inches(0.5), wood: inches(0.875) }),
};

describe('the drawing of a stage of chopping', () => {
  for (const [name, plan] of Object.entries(MORTISES)) {
    it(`of ${name} is at one scale, and on the sheet`, () => {
      for (const { drawing, kind, pass } of plan.stages) {
        const laid = layChop(drawing, WIDTH, HEIGHT, LETTER);
        const [start, end] = laid.marks;
        const said = `${kind} ${pass ?? ''}`;
        expect(((end?.line.x1 ?? 0) - (start?.line.x1 ?? 0)) / laid.scale, said).to.be.closeTo(drawing.endMark - drawing.startMark, 1);
        expect(laid.wood.height / laid.scale, said).to.be.closeTo(drawing.wood, 1);
        if (drawing.waste) expect([(laid.waste?.height ?? 0) / laid.scale, ((laid.waste?.y ?? 0) - laid.wood.y) / laid.scale].map(Math.round), said).to.deep.equal([drawing.waste.bottom - drawing.waste.top, drawing.waste.top]);
        if (drawing.cut) expect((laid.cut?.height ?? 0) / laid.scale, said).to.be.closeTo(drawing.cut.down, 1);
        expect(laid.wood.x, said).to.be.at.least(0);
        expect(laid.wood.x + laid.wood.width, said).to.be.at.most(WIDTH);
        expect(laid.wood.y + laid.wood.height, said).to.be.at.most(HEIGHT - LETTER);
        expect(laid.wood.y, said).to.be.at.least(40);
        if (laid.depth) expect(laid.depth.figure.x + LETTER * 1.6, said).to.be.at.most(WIDTH);
      }
    });
  }

  it('stands the chisel on its place with its back to the line and its bevel to the waste', () => {
    const pass = planned().stages.find(({ kind }) => kind === 'pass');
    if (pass === undefined) throw new Error('there is a pass');
    const laid = layChop(pass.drawing, WIDTH, HEIGHT, LETTER);
    const [far, near] = laid.chisels;
    const [start, end] = laid.marks;
    const middle = ((start?.line.x1 ?? 0) + (end?.line.x1 ?? 0)) / 2;
    for (const chisel of [far, near]) {
      const [edge, bevel] = chisel?.outline ?? [];
      expect(edge?.y).to.be.closeTo(laid.wood.y + (pass.drawing.waste?.bottom ?? 0) * laid.scale, 1e-6);
      expect(Math.abs((bevel?.x ?? 0) - middle), 'the bevel is nearer to the middle').to.be.lessThan(Math.abs((edge?.x ?? 0) - middle));
      // The flag stands level with the face when the edge is down to its depth.
      expect((chisel?.flag?.y ?? 0) + (chisel?.flag?.height ?? 0)).to.be.closeTo(laid.wood.y, 1e-6);
    }
  });

  it('shows levering from the second pass on, between the cuts, and never at the ends', () => {
    const { stages, stayOff, startMark, endMark } = planned();
    for (const { kind, pass, drawing } of stages) {
      const { lever, scale, marks } = layChop(drawing, WIDTH, HEIGHT, LETTER);
      expect(lever !== null, `${kind} ${pass ?? ''}`).to.equal(kind === 'pass' && (pass ?? 0) > 1);
      if (lever) expect([(lever.x1 - (marks[0]?.line.x1 ?? 0)) / scale, (lever.x2 - (marks[0]?.line.x1 ?? 0)) / scale].map(Math.round)).to.deep.equal([stayOff, endMark - startMark - stayOff]);
    }
  });
});
