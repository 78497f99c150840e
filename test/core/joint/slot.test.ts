import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { slotStages, type SlotToCut } from '../../../core/joint/slotStages.ts';
import { sayLength } from '../../../core/length/say.ts';
import { renderTelling } from '../../../core/reckoning/telling.ts';
import type { ChopStage } from '../../../core/joint/chopStages.ts';
import { everyJointFile } from './everyJoint.ts';
import { writePiece } from '../../../core/piece/load.ts';
import { Session } from '../respond/session.ts';
import { inches, millimetres } from './shop.ts';

const SLOT: SlotToCut = { deep: inches(2), width: inches(1, 4), wood: inches(2), end: 'top' };

function stages(slot: SlotToCut): readonly ChopStage[] {
  const found = slotStages(slot);
  if (!found.ok) throw new Error(JSON.stringify(found.fault));
  return found.value;
}

/** The shoelace formula. */
function area(points: readonly { readonly along: number; readonly down: number }[]): number {
  return Math.abs(points.reduce((sum, { along, down }, index) => { const next = points[(index + 1) % points.length] ?? { along: 0, down: 0 }; return sum + along * next.down - next.along * down; }, 0)) / 2;
}

describe('the slot of a bridle', () => {
  it('is marked, sawn from both edges and straight down, and only its bottom is chopped, half from each edge', () => {
    expect(stages(SLOT).map(({ kind, drawing: { face } }) => [kind, face])).toEqual([
      ['mark', 'first'], ['saw', 'first'], ['saw', 'second'], ['saw', 'second'], ['pass', 'first'], ['turn over', 'second'], ['pass', 'second'], ['clear the bottom', 'second'],
    ]);
  });

  it('is sawn corner to corner: half of each cheek, three quarters, and then all of it, never beyond its bottom', () => {
    const slots = fc.record({ deep: fc.integer({ min: 10, max: 200 }), wood: fc.integer({ min: 10, max: 200 }), width: fc.integer({ min: 3, max: 20 }), end: fc.constantFrom('top' as const, 'bottom' as const) })
      .map((each): SlotToCut => ({ deep: millimetres(each.deep), wood: millimetres(each.wood), width: millimetres(each.width), end: each.end }));
    fc.assert(fc.property(slots, (slot) => {
      const sawn = stages(slot).filter(({ kind }) => kind === 'saw').map(({ drawing }) => drawing.slot?.sawn ?? []);
      expect(sawn.map((points) => area(points) / (slot.deep * slot.wood)).map((share) => Math.round(share * 1e6) / 1e6)).toEqual([0.5, 0.75, 1]);
      for (const { along, down } of sawn.flat()) expect(along >= 0 && along <= slot.deep && down >= 0 && down <= slot.wood).toBe(true);
      const chopped = stages(slot).flatMap(({ drawing: { waste } }) => waste ?? []);
      expect(chopped.reduce((sum, { top, bottom }) => sum + bottom - top, 0)).toBeGreaterThanOrEqual(slot.wood);
      for (const { from, to } of chopped) expect(from >= 0 && to === slot.deep).toBe(true);
    }));
  });

  it('that has no depth, or no width, is refused', () => {
    for (const change of [{ deep: inches(0) }, { width: inches(0) }, { wood: inches(0) }]) expect(slotStages({ ...SLOT, ...change }).ok).toBe(false);
  });

  it('is led through by voice as a slot, and by nothing that speaks of a mortise', () => {
    const session = new Session();
    session.request({ kind: 'load piece', text: writePiece(everyJointFile()), from: 'the shop' });
    const said = [session.say('lead me through the top frame slot'), ...Array.from({ length: 7 }, () => session.say('next stage'))];
    expect(said[0]).toBe('Top frame slot, eight stages. Stage one. Square the bottom line round, two inches from the end. Gauge one quarter of an inch over the end and both edges.');
    expect(said[1]).toBe('Stage two. Upright in the vise. Saw both cheeks in the waste, corner to corner, down to the line on this edge.');
    expect(said.join(' ')).not.toMatch(/mortise|lever/);
    expect(session.bench.conversation.screen).toMatchObject({ name: 'chopping', joint: 'cornerBridle', stage: 8 });
  });
});

describe('what is said of a stage', () => {
  it('is shorter for the ear than what stands on the screen', () => {
    for (const { kind, say, show } of stages(SLOT)) {
      const put = (telling: ChopStage['say']): string => renderTelling(telling, (length) => sayLength(length, { unit: 'inch', denominator: 32 }));
      expect(put(say).length, kind).toBeLessThanOrEqual(put(show).length);
      expect(put(say).split(' ').length, kind).toBeLessThanOrEqual(25);
    }
  });
});
