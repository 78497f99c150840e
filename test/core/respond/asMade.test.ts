import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { marksFor, type MarkKind } from '../../../core/joint/marks.ts';
import { add, subtract } from '../../../core/length/arithmetic.ts';
import { nanometres, type Length } from '../../../core/length/length.ts';
import { evaluate, sizeOf } from '../../../core/piece/evaluate.ts';
import { misfits } from '../../../core/piece/fits.ts';
import type { Measurement } from '../../../core/piece/measurement.ts';
import { whatMoved } from '../../../core/piece/moved.ts';
import { stepsOf } from '../../../core/respond/views.ts';
import { inches } from '../joint/shop.ts';
import { DEMO_TEXT, loadSound } from '../piece/demo.ts';
import { Session } from './session.ts';

const DEMO = loadSound(DEMO_TEXT);

/** Everything that stands on a size, through whatever stands between. */
function dependents(size: string): ReadonlySet<string> {
  const { nodes, indexOf, order } = DEMO.graph;
  const found = new Set([indexOf.get(size) ?? -1]);
  for (const index of order) if (nodes[index]?.formula.references.some(({ node }) => found.has(node))) found.add(index);
  return new Set([...found].map((index) => nodes[index]?.name ?? ''));
}

describe('as made', () => {
  it('a measurement moves only what stands on it, and nothing else', () => {
    const measurable = DEMO.graph.nodes.filter(({ owner }) => owner.kind === 'part' || owner.kind === 'joint');
    const any = fc.record({ node: fc.constantFrom(...measurable), off: fc.integer({ min: -5_000_000, max: 5_000_000 }), which: fc.nat() });
    fc.assert(fc.property(any, ({ node, off, which }) => {
      const planned = sizeOf(evaluate(DEMO, []), node.name)?.length ?? 0;
      if (planned + off <= 0) return;
      const copy = node.owner.count === 1 || which % 2 === 0 ? {} : { copy: (which % node.owner.count) + 1 };
      const moved = whatMoved(DEMO, [], [{ size: node.name, length: nanometres(planned + off), ...copy }]);
      const allowed = dependents(node.name);
      expect(moved.filter(({ size }) => !allowed.has(size)).map(({ size }) => size)).toEqual([]);
      if ('copy' in copy) expect(moved.filter(({ size, copy: other }) => size.startsWith(`${node.owner.id}.`) && other !== undefined && other !== copy.copy)).toEqual([]);
    }), { numRuns: 200 });
  });

  it('what is not cut yet is told with its new size, its old one and its reference; what is cut, as off', () => {
    const session = Session.withDemo();
    expect(session.say('record leg two width three and five sixteenths')).toMatch(/Not cut yet, and now different:.*top, length, sixty, and one eighth inches instead of sixty inches, end to end/);
    expect(session.bench.conversation.lastReply?.note).toMatch(/Not cut yet, and now different:.*top, length, 60 1\/8 in instead of 60 in, end to end/);
    const other = Session.withDemo();
    for (const step of stepsOf(other.bench.state)) if (step.operation === 'ends' && step.part === 'top') other.note({ kind: 'step done', step: step.id });
    expect(other.say('record leg two width three and five sixteenths')).toMatch(/Cut already, and now off:.*top, length, one eighth of an inch too small/);
  });

  it('the critical sizes hold, and are said to; the screen shows what moved', () => {
    const session = Session.withDemo();
    session.say('record leg two width three and five sixteenths');
    const reply = session.request({ kind: 'what moved' });
    expect(reply.say).toMatch(/Inside length, inside width and height hold\.$/);
    expect(reply.screen).toEqual({ name: 'moved' });
  });

  it('a joint that is only at the back follows where the legs were put', () => {
    const slight: Measurement = { size: 'leg.width', length: inches(7, 4), copy: 1 };
    const backStretcher = (places?: ReadonlyMap<string, string>): boolean => misfits(DEMO, [slight], places).some(({ sizes }) => sizes.some(({ size }) => size === 'backStretcherTenon.mortiseDepth'));
    expect(backStretcher()).toBe(false);
    expect(backStretcher(new Map([['leg/1', 'back left']]))).toBe(true);
    const session = Session.withDemo();
    session.say('leg one is back left');
    session.request({ kind: 'record', size: 'leg.width', copy: 1, length: inches(7, 4), sure: true });
    expect(session.request({ kind: 'what no longer fits' }).note).toMatch(/mortise for the back stretcher tenon is too deep for leg 1/);
  });
});

describe('the whole table, with two legs that came out heavy and light', () => {
  const made: readonly Measurement[] = [
    { size: 'leg.width', copy: 1, length: add(inches(13, 4), inches(1, 16)) }, { size: 'leg.thickness', copy: 1, length: add(inches(13, 4), inches(3, 64)) },
    { size: 'leg.width', copy: 4, length: subtract(inches(13, 4), inches(1, 32)) },
  ];
  const sizes = evaluate(DEMO, made);
  const own = (key: string, copy: number): Length => sizeOf(sizes, `leg.${key}`, copy)?.length ?? nanometres(0);
  const mark = (part: string, copy: number, joint: string, kind: MarkKind): Length => {
    const found = marksFor(DEMO, sizes, part, copy).find((each) => each.joint === joint && each.kind === kind);
    if (found === undefined) throw new Error(`${part} ${copy} has no ${kind} of ${joint}`);
    return found.at;
  };

  it('stands with the inside size exact, laid out leg by leg', () => {
    // Legs in the order of their places: front left, front right, back left, back right. A rail's shoulders stand against the inside faces of its two legs.
    for (const [rail, joint, pairs, key, inside] of [
      ['longRail', 'longRailTenon', [[1, 2], [3, 4]], 'width', inches(46)], ['shortRail', 'shortRailTenon', [[1, 3], [2, 4]], 'thickness', inches(39, 2)],
    ] as const) {
      pairs.forEach(([left, right], index) => {
        const [first, second] = [mark(rail, index + 1, joint, 'first shoulder'), mark(rail, index + 1, joint, 'second shoulder')];
        // From the outer face of the one leg: its own width to its inside face, then shoulder to shoulder, then the other's.
        const outside = add(own(key, left), subtract(second, first), own(key, right));
        expect(subtract(outside, add(own(key, left), own(key, right)))).toBe(inside);
        // The tenon does not reach the bottom of either mortise, which is marked from the inside face: or the shoulders would stay open.
        const tenon = first;
        for (const leg of [left, right]) expect(tenon).toBeLessThan(mark('leg', leg, joint, 'mortise depth'));
      });
    }
  });

  it('has the outer faces of all rails set back alike from each leg, for mortises are gauged from the outer face', () => {
    for (const joint of ['longRailTenon', 'shortRailTenon']) {
      for (const copy of [1, 2, 3, 4]) expect(subtract(mark('leg', copy, joint, 'mortise near side'), inches(3, 8))).toBe(inches(1, 4));
    }
  });

  it('lets only the top float: it follows the stoutest leg', () => {
    expect(sizeOf(sizes, 'top.length')?.length).toBe(add(inches(46), add(inches(13, 4), inches(1, 16)), add(inches(13, 4), inches(1, 16)), inches(15, 2)));
    expect(sizeOf(sizes, 'inside.length')?.basis).toBe('planned');
    expect(misfits(DEMO, made).filter(({ severity }) => severity === 'will not go')).toEqual([]);
  });
});
