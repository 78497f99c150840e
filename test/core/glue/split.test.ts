import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { movesOf, type GlueJoint } from '../../../core/glue/glueUp.ts';
import { jointTimes, judgeRehearsal, type Timed } from '../../../core/glue/rehearsal.ts';
import { splitGlueUp } from '../../../core/glue/split.ts';
import { glueUpPlanOf } from '../../../core/work/gluing.ts';
import { stepsFor } from '../../../core/work/plan.ts';
import { loadPiece } from '../../../core/piece/load.ts';
import { DEMO_TEXT } from '../respond/session.ts';

function demoPlan(id: string) {
  const loaded = loadPiece(DEMO_TEXT);
  if (!loaded.ok) throw new Error('the demo does not load');
  const step = stepsFor(loaded.value).find((one) => one.id === id);
  const plan = step && glueUpPlanOf(loaded.value, step);
  if (!plan) throw new Error(`no glue-up ${id}`);
  return plan;
}

/** Every move takes half a minute. */
function rehearsed(id: string): readonly Timed[] {
  return movesOf(demoPlan(id)).map((move) => ({ move, ms: 30_000 }));
}

describe('a glue-up, move by move', () => {
  it('sets out, glues and closes joint by joint, clamps each rail, checks, and leaves the squeeze-out', () => {
    expect(movesOf(demoPlan('glue-up/endFrame.1')).map(({ kind }) => kind)).toEqual(['set out', ...Array.from({ length: 4 }, () => ['spread', 'close']).flat(), 'clamp', 'clamp', 'check', 'squeeze-out']);
  });

  it('names both ends of a rail by what they go into', () => {
    expect(demoPlan('glue-up/endFrame.2').joints[1]?.say).toBe('the right short rail into the back right leg');
    expect(demoPlan('glue-up/piece').joints.map(({ joins }) => joins[1])).toEqual(['endFrame.1', 'endFrame.2', 'endFrame.1', 'endFrame.2', 'endFrame.1', 'endFrame.2']);
  });

  it('a panel is spread edge by edge and closed at once', () => {
    expect(movesOf(demoPlan('panel glue-up/top/1')).map(({ kind }) => kind)).toEqual(['set out', ...Array.from({ length: 5 }, () => 'spread'), 'close', 'clamp', 'check', 'squeeze-out']);
  });
});

describe('a rehearsal that is too long', () => {
  it('is told from one that fits by four fifths of the open time', () => {
    const timed = rehearsed('glue-up/endFrame.1');
    expect(judgeRehearsal(timed, { openMs: 600_000 })).toMatchObject({ totalMs: 330_000, allowedMs: 480_000, verdict: 'fits', longestOpenMs: 60_000 });
    expect(judgeRehearsal(timed, { openMs: 400_000 })).toMatchObject({ verdict: 'too long' });
  });

  it('of an end frame is split in two: one leg first, then the other', () => {
    const split = splitGlueUp(demoPlan('glue-up/endFrame.1').joints, jointTimes(rehearsed('glue-up/endFrame.1')), 240_000);
    expect(split?.stages.map(({ joints }) => joints.length)).toEqual([2, 2]);
    expect(split?.stages[0]?.joints.every((id) => id.endsWith('in leg/3')) || split?.stages[0]?.joints.every((id) => id.endsWith('in leg/1'))).toBe(true);
    expect(split?.longestMs).toBeLessThanOrEqual(240_000);
  });

  it('of four long joints in a row goes in halves', () => {
    const joints = [1, 2, 3].map((board): GlueJoint => ({ id: `${board}`, say: '', joins: [`b${board}`, `b${board + 1}`] }));
    const split = splitGlueUp(joints, { ofJoint: new Map(joints.map(({ id }) => [id, 60_000])), checkMs: 30_000 }, 100_000);
    expect(split?.stages.map((stage) => stage.joints)).toEqual([['1'], ['3'], ['2']]);
  });

  it('cannot be split when a single joint is too long, and then nothing is suggested', () => {
    expect(splitGlueUp(demoPlan('glue-up/endFrame.1').joints, jointTimes(rehearsed('glue-up/endFrame.1')), 60_000)).toBeUndefined();
  });

  it('whatever hangs together: every joint is glued once, each stage fits, and nothing goes between parts that are fast already', () => {
    const parts = fc.integer({ min: 2, max: 7 });
    fc.assert(fc.property(parts, fc.array(fc.tuple(fc.nat(6), fc.nat(6)), { minLength: 2, maxLength: 9 }), fc.integer({ min: 1, max: 6 }), (count, pairs, allowed) => {
      const joints = pairs.map(([a, b], index): GlueJoint => ({ id: String(index), say: '', joins: [`p${a % count}`, `p${(a + 1 + (b % (count - 1))) % count}`] }));
      const split = splitGlueUp(joints, { ofJoint: new Map(joints.map(({ id }) => [id, 1])), checkMs: 0 }, allowed);
      if (!split) return;
      expect(split.stages.flatMap((stage) => stage.joints).sort()).toEqual(joints.map(({ id }) => id).sort());
      const fast: Set<string>[] = [];
      for (const stage of split.stages) {
        expect(stage.joints.length).toBeLessThanOrEqual(allowed);
        const here = joints.filter(({ id }) => stage.joints.includes(id));
        for (const { joins: [one, other] } of here) expect(fast.some((block) => block.has(one) && block.has(other))).toBe(false);
        for (const { joins: [carrier, into] } of here) {
          const block = fast.find((one) => one.has(into));
          expect(here.filter(({ joins }) => joins[0] === carrier && block?.has(joins[1]))).toHaveLength(block ? 1 : 0);
        }
        for (const { joins } of here) fast.push(new Set(joins));
      }
    }), { numRuns: 60 });
  });
});
