import { readFileSync } from 'node:fs';
import { beforeAll, expect, test } from 'vitest';
import { TIMER_KINDS } from '../../../core/clock/timer.ts';
import { countWords, MOST_WORDS } from '../../../core/respond/inTurn.ts';
import { LONGEST_HOLD_MS } from '../../../kiosk/ear/deafness.ts';
import { everythingSaid, shapesOf } from './said/everything.ts';
import type { Walked } from './said/walk.ts';

const source = (path: string) => readFileSync(new URL(`../../../core/${path}`, import.meta.url), 'utf8');
/** The kinds of the requests, and the names of the screens, as they stand in their types. */
const KINDS = [...source('bench/request.ts').matchAll(/\|\s*\(?\{ readonly kind: '([^']+)'/g)].map(([, kind]) => kind ?? '');
const SCREENS = [...source('bench/screen.ts').matchAll(/\| \{ readonly name: '([^']+)'/g)].map(([, name]) => name ?? '');

/** What its own loudspeaker is played into the ear (npm run bench -- attention own-voice) must be all that it can say; here two phrases of each row of talk. */
let walked: Walked;
beforeAll(() => { walked = everythingSaid({ glance: true }); });

test('every kind of request is asked, so that no reply is forgotten', () => {
  expect(KINDS.length).toBeGreaterThan(100);
  expect(KINDS.filter((kind) => !walked.kinds.has(kind as never))).toEqual([]);
});

test('every screen is come to, and every kind of question', () => {
  const screens = new Set([...walked.benches.values()].map(({ conversation }) => conversation.screen.name));
  expect(SCREENS.filter((name) => !screens.has(name as never))).toEqual([]);
  const questions = new Set([...walked.benches.values()].flatMap(({ conversation: { question } }) => (question ? [question.kind] : [])));
  expect([...questions].sort()).toEqual(['length', 'surface reading', 'which', 'yes or no']);
});

test('the clocks call, whatever they are for, and the kiosk tells what it saved and what it could not keep', () => {
  const said = [...walked.said.keys()];
  for (const kind of TIMER_KINDS) expect(said.filter((text) => text.includes(`eg two ${kind}`)).length, kind).toBeGreaterThan(2);
  expect(said).toContainEqual(expect.stringMatching(/^Something went wrong inside me/));
  expect(said).toContainEqual(expect.stringMatching(/could not be written down and is not kept/));
  expect(said).toContainEqual(expect.stringMatching(/is saved in the pieces folder/));
  expect(said.filter((text) => text.includes('${'))).toEqual([]);
});

test('those that differ in their numbers alone are one shape', () => {
  const shapes = shapesOf(walked);
  expect(shapes.length).toBeLessThan(walked.said.size);
  expect(shapes.filter(({ text }) => /^Timer, .* running/.test(text)).length).toBeLessThan(3);
});

/** What may take longer: nothing leads through what the bench says of its own accord, and a move of the work keeps its cautions. */
const MAY_BE_LONGER = /^(?:I do not know how long the power was off|Glue-up of the )/;

test('nothing that is asked for takes longer than half a minute to say: more is told piece by piece', () => {
  const longer = [...walked.said.keys()].filter((text) => countWords(text) > MOST_WORDS + 13 && !MAY_BE_LONGER.test(text));
  expect(longer).toEqual([]);
  expect([...walked.said.keys()].filter((text) => text.endsWith('Say next for the one after.')).length).toBeGreaterThan(3);
});

test('the longest of it, at the slow pace of 110 words a minute, is over in half the time after which a hold of the ear is thought forgotten', () => {
  const words = Math.max(...[...walked.said.keys()].map(countWords));
  expect((words / 110) * 60_000).toBeLessThan(LONGEST_HOLD_MS / 2);
});
