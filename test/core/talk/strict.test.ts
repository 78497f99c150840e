import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { phrasesFor } from '../../../core/talk/grammar.ts';
import { parseRequest } from '../../../core/talk/parse.ts';
import { all, either, optional, rarely, wordsIn } from '../../../core/talk/strict/expression.ts';
import type { Expression } from '../../../core/talk/strict/expression.ts';
import { sentencesFor } from '../../../core/talk/strict/sentences.ts';
import { sayLength } from '../../../core/length/say.ts';
import { anySize, INCH_ROUNDINGS } from '../length/lengths.ts';
import { bench, inches, TALKATIVE } from './benches.ts';
import { costOf, spokenGraph } from './spokenGraph.ts';
import type { SpokenGraph } from './spokenGraph.ts';

const SLOW = { timeout: 120_000 };
/** Boards are bought to sixteen feet; common practice, no source. */
const LONGEST = inches(200);
const GRAPH = spokenGraph(sentencesFor(TALKATIVE));

/** All sentences of a small graph. */
function sentencesOf({ start, states }: SpokenGraph): string[] {
  const from = (state: number): string[] => [
    ...(states[state]?.ends === undefined ? [] : ['']),
    ...(states[state]?.arcs ?? []).flatMap(({ word, target }) => from(target).map((rest) => `${word} ${rest}`.trim())),
  ];
  return from(start).sort();
}

describe('the words of the demo piece', () => {
  it('are whole: of "baker\'s work table" the stem is listened for, which a dictionary has', () => {
    const words = wordsIn(sentencesFor(TALKATIVE));
    expect(words).toContain('baker');
    expect([...words].filter((word) => word.endsWith("'"))).toEqual([]);
  });
});

describe('a graph of sentences', () => {
  it('has exactly the sentences of its expression', () => {
    expect(sentencesOf(spokenGraph(all('how', either('long', all('very', 'long'), 'wide'), optional('please'))))).toEqual(
      ['how long', 'how long please', 'how very long', 'how very long please', 'how wide', 'how wide please']);
  });

  it('joins beginnings and endings, so that it is no larger than it must be', () => {
    const { states } = spokenGraph(either('leg one width', 'leg two width', 'rail one width', 'rail two width'));
    expect(states).toHaveLength(4);
    const { states: joined } = spokenGraph(either('leg one', 'leg two'));
    expect(joined).toHaveLength(3);
  });

  it('makes a sentence cost as much as its rarest choice, and the cheaper of two ways to the same one', () => {
    const graph = spokenGraph(either('yes', rarely('no', 150), rarely(all('next', either('step', rarely('part', 20))), 30), 'next part'));
    expect(['yes', 'no', 'next step', 'next part', 'step'].map((sentence) => costOf(graph, sentence))).toEqual([0, 150, 30, 0, undefined]);
  });

  it('never loses nor makes a sentence, whatever the expression', () => {
    const small = fc.letrec<{ expression: Expression }>((tie) => ({
      expression: fc.oneof({ depthSize: 'small' }, fc.constantFrom('a', 'b', 'c').map((word) => all(word)), fc.array(tie('expression'), { maxLength: 3 }).map((parts) => all(...parts)), fc.array(tie('expression'), { minLength: 1, maxLength: 3 }).map((options) => either(...options))),
    })).expression;
    fc.assert(fc.property(small, (expression) => {
      expect(sentencesOf(spokenGraph(expression))).toEqual([...new Set(sentencesIn(expression))].sort());
    }), { numRuns: 200 });
  });
});

function sentencesIn(expression: Expression): string[] {
  switch (expression.kind) {
    case 'word': return [expression.word];
    case 'all': return expression.parts.reduce<string[]>((before, part) => before.flatMap((start) => sentencesIn(part).map((end) => `${start} ${end}`.trim())), ['']);
    case 'either': return expression.options.flatMap((option) => sentencesIn(option.expression));
  }
}

describe('the sentences of the bench', SLOW, () => {
  it('are at least all its phrases', () => {
    expect(phrasesFor(TALKATIVE).filter((phrase) => costOf(GRAPH, phrase) === undefined)).toEqual([]);
  });

  it('take any size of the piece in any fraction of the rule', () => {
    fc.assert(fc.property(anySize, fc.constantFrom(...INCH_ROUNDINGS), (length, rounding) => {
      const said = sayLength(length, rounding).replace(/[,]/g, '').replaceAll('-', ' ');
      const sentence = `record leg two width ${said}`;
      if (length > 0 && length < LONGEST && parseRequest(sentence, TALKATIVE).kind === 'record' && !/full|scant|thousand /.test(said)) expect([said, costOf(GRAPH, sentence)]).toEqual([said, expect.any(Number)]);
    }), { numRuns: 300 });
  });

  it('do not take words in an order that means nothing', () => {
    for (const words of ['long is how the rail', 'thirty start timer minute a', 'of half inches', 'scratch next', 'how long is', 'and', 'is the', 'one two three four', 'rail rail long']) {
      expect([words, costOf(GRAPH, words)]).toEqual([words, undefined]);
    }
  });

  it('make what was asked for cheaper than what was not', () => {
    const asked = spokenGraph(sentencesFor(bench({ question: { kind: 'yes or no', onYes: { kind: 'step done' } } })));
    expect(costOf(asked, 'yes it is') ?? NaN).toBeLessThan(costOf(GRAPH, 'yes it is') ?? NaN);
    expect(costOf(asked, 'next step') ?? NaN).toBeGreaterThan(costOf(GRAPH, 'next step') ?? NaN);
  });

  it('know the words of the choices only while they are asked for', () => {
    const which = sentencesFor(bench({ question: { kind: 'which', choices: [{ say: 'fifteen', request: { kind: 'yes' } }, { say: 'fifty', request: { kind: 'no' } }] } }));
    expect(costOf(spokenGraph(which), 'fifteen')).toBeDefined();
    expect(costOf(spokenGraph(which), 'the first one')).toBeDefined();
    expect(costOf(GRAPH, 'the first one')).toBeUndefined();
  });

  it('have no word of a piece that is not on the bench', () => {
    expect(wordsIn(sentencesFor(bench({ state: { piece: null } }))).has('rail')).toBe(false);
    expect(wordsIn(sentencesFor(TALKATIVE)).has('rail')).toBe(true);
  });
});
