import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Bench } from '../../../core/bench/bench.ts';
import { all, either, rarely } from '../../../core/talk/strict/expression.ts';
import type { Expression } from '../../../core/talk/strict/expression.ts';
import { sentencesFor } from '../../../core/talk/strict/sentences.ts';
import { bench, inches, TALKATIVE } from './benches.ts';
import { kindOf, spokenGraph, spokenGraphs } from './spokenGraph.ts';

const SLOW = { timeout: 120_000 };
/** What changes at the bench: the question, the piece, the units, the clocks, what was put where. */
const BENCHES: readonly Bench[] = [
  TALKATIVE,
  bench({ question: { kind: 'length', size: 'leg.width' } }),
  bench({ question: { kind: 'which', choices: [{ say: 'fifteen', request: { kind: 'yes' } }, { say: 'fifty', request: { kind: 'no' } }] } }),
  bench({ question: { kind: 'yes or no', onYes: { kind: 'step done' } }, state: { timers: [] } }),
  bench({ state: { piece: null } }),
  bench({ state: { places: new Map(), settings: { ...TALKATIVE.state.settings, rounding: { unit: 'millimetre', step: inches(0.02) } } } }),
];

const anyExpression = fc.letrec<{ expression: Expression }>((tie) => ({
  expression: fc.oneof(
    { depthSize: 'small' }, fc.constantFrom('a', 'b', 'c').map((word) => all(word)), fc.array(tie('expression'), { maxLength: 3 }).map((parts) => all(...parts)),
    fc.array(tie('expression'), { maxLength: 3 }).map((options) => either(...options)), fc.tuple(tie('expression'), fc.constantFrom(0, 20, 150)).map(([rare, cost]) => either('a', rarely(rare, cost)))),
})).expression;

describe('graphs of sentences made in turn', SLOW, () => {
  it('are what each would be if it were made from nothing, whatever came before', () => {
    fc.assert(fc.property(fc.array(anyExpression, { minLength: 2, maxLength: 6 }), (expressions) => {
      const kinds = new Map<string, number>();
      const inTurn = spokenGraphs();
      expect(expressions.map((each) => kindOf(inTurn(each), kinds))).toEqual(expressions.map((each) => kindOf(spokenGraph(each), kinds)));
    }), { numRuns: 300 });
  });

  it('have the same sentences at the same costs whatever the questions, pieces and units before', () => {
    const kinds = new Map<string, number>();
    const alone = BENCHES.map((each) => kindOf(spokenGraph(sentencesFor(each)), kinds));
    expect(new Set(alone).size).toBe(BENCHES.length);
    fc.assert(fc.property(fc.shuffledSubarray([...BENCHES.keys()], { minLength: BENCHES.length }), (order) => {
      const inTurn = spokenGraphs();
      expect(order.map((at) => kindOf(inTurn(sentencesFor(BENCHES[at] ?? TALKATIVE)), kinds))).toEqual(order.map((at) => alone[at]));
    }), { numRuns: 1 });
  });
});
