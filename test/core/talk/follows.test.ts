import { expect, test } from 'vitest';
import { parseRequest } from '../../../core/talk/parse.ts';
import { FOLLOWS_ON, groundsOf } from '../../../core/talk/strict/follows.ts';
import { sentencesFor } from '../../../core/talk/strict/sentences.ts';
import { ANSWERS, FOLLOW_UPS, WHOLE_REQUESTS } from '../../../core/talk/table.ts';
import { respond } from '../../../core/respond/respond.ts';
import { Session } from '../respond/session.ts';
import { bench, TALKATIVE } from './benches.ts';
import { spokenGraph } from './spokenGraph.ts';
import type { Bench } from '../../../core/bench/bench.ts';

/** Nothing said, asked, measured or done yet. */
const FRESH = bench();
const HALVES = ['and the width', 'what about the thickness', 'and leg two', 'again', 'say it slower', 'digit by digit', 'undo that', 'scratch that', 'put it back', 'why', 'why is that', 'record three and a quarter', 'record it', 'forget that measurement',
  'plus a quarter', 'times three', 'in millimeters', 'half of that', 'grain up', 'read on', 'enough'];

function listensFor(to: Bench, sentences: readonly string[]): string[] {
  const graph = spokenGraph(sentencesFor(to));
  return sentences.filter((sentence) => {
    const end = sentence.split(' ').reduce<number | undefined>((state, word) => graph.states[state ?? -1]?.arcs.find((arc) => arc.word === word)?.target, graph.start);
    return end !== undefined && graph.states[end]?.ends !== undefined;
  });
}

test('what stands on nothing is not listened for, and all of it is once there is something to stand on', () => {
  expect(listensFor(FRESH, HALVES)).toEqual([]);
  expect(listensFor(TALKATIVE, HALVES)).toEqual(HALVES);
  expect(listensFor(FRESH, ['leg two', 'how long is the long rail', 'done', 'yes'])).toHaveLength(4);
});

test('typed, it is answered kindly and writes nothing', () => {
  const { now } = new Session();
  for (const words of HALVES) {
    const { entries, reply } = respond(FRESH, parseRequest(words, FRESH), now);
    expect(entries, words).toEqual([]);
    expect(reply.say.length, words).toBeGreaterThan(10);
  }
});

test('after a size was said, the next size, why, half of it and recording it can be said', () => {
  const session = Session.withDemo();
  expect([...groundsOf(session.bench)]).not.toContain('size');
  session.say('how wide is leg two');
  expect(listensFor(session.bench, ['and the thickness', 'and leg three', 'why', 'half of that', 'record three and a quarter', 'again'])).toHaveLength(6);
});

test('every row that stands on something is a row of the table', () => {
  const rows = new Set([...WHOLE_REQUESTS, ...ANSWERS, ...FOLLOW_UPS].map(({ about }) => about));
  expect([...FOLLOWS_ON.keys()].filter((about) => !rows.has(about))).toEqual([]);
});
