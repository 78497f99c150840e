import { readFileSync } from 'node:fs';
import { beforeAll, expect, test } from 'vitest';
import { TIMER_KINDS } from '../../../core/clock/timer.ts';
import { countWords, MOST_WORDS_OF_A_WARNING } from '../../../core/respond/inTurn.ts';
import { respond } from '../../../core/respond/respond.ts';
import { examplesFor } from '../../../core/talk/expand.ts';
import { phrasesOf } from '../../../core/talk/grammar.ts';
import { looksUp } from '../../../core/talk/looksUp.ts';
import { understood } from '../../../core/talk/parse.ts';
import { WHOLE_REQUESTS } from '../../../core/talk/table.ts';
import { splitWords } from '../../../core/talk/words.ts';
import { LONGEST_HOLD_MS } from '../../../kiosk/ear/deafness.ts';
import { everythingSaid, shapesOf } from './said/everything.ts';
import { Session } from './session.ts';
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

/** Where a sentence could be taken up: at its beginning, after a colon or a quotation mark, and where the maker is told what to say. */
function* partsOf(text: string): Generator<string> {
  const stretches = text.split(/(?<=[.,;:?!“”])\s*/);
  for (const [from, stretch] of stretches.entries()) {
    if (from > 0 && !/[.:;?!“”]$/.test(stretches[from - 1] ?? '') && !/\b(?:say|ask)\b/i.test(stretch)) continue;
    for (let to = from + 1; to <= Math.min(stretches.length, from + 3); to += 1) {
      const part = stretches.slice(from, to).join(' ').replaceAll(/[.,;:?!“”]/g, '');
      yield part;
      const told = /^.*?\b(?:say|ask) (.+)$/i.exec(part)?.[1];
      if (told !== undefined) yield told;
    }
  }
}

/** Without pauses, and without what is left over the fraction of the rule: it may be less by then. */
const withoutRest = (text: string): string => text.replaceAll(/[.,;:?!]| (?:full|scant)\b/g, '');

test('should it hear itself, nothing would be done by it: no reply holds a whole request that acts, unless it reads back what that very request has just done', () => {
  const { now } = new Session();
  const tried = new Set<string>();
  const acting = shapesOf(walked).flatMap(({ text, bench }) => [...partsOf(text)].filter((part) => {
    if (part === '' || tried.has(part)) return false;
    tried.add(part);
    const alone = { ...bench, conversation: { ...bench.conversation, question: null } };
    const request = understood(splitWords(part), alone);
    if (request === undefined || request.kind === 'note') return false;
    const { entries, reply } = respond(alone, request, now);
    const readsBack = withoutRest(reply.say).includes(withoutRest(part));
    return (entries.length > 0 || reply.planning !== undefined) && !readsBack;
  }).map((part) => `${part} | ${text}`));
  expect(acting).toEqual([]);
  expect(tried.size).toBeGreaterThan(1000);
});

test('what is said to only look something up writes nothing', () => {
  const { bench, now } = Session.withDemo();
  const examples = examplesFor(bench);
  const asked = WHOLE_REQUESTS.flatMap((row) => phrasesOf(row, examples).slice(0, 1)).flatMap((phrase) => understood(splitWords(phrase), bench) ?? []).filter(looksUp);
  const once = [...new Map(asked.map((request) => [request.kind, request])).values()];
  expect(once.length).toBeGreaterThan(30);
  for (const request of once) expect(respond(bench, request, now).entries.filter(({ kind }) => kind !== 'caution said' && kind !== 'went to step'), request.kind).toEqual([]);
});

/** What may take longer: nothing leads through what the bench says of its own accord, and a move of the work keeps its cautions. */
const MAY_BE_LONGER = /^(?:I do not know how long the power was off|Glue-up of the )/;

test('nothing that is asked for takes longer than half a minute to say: more is told piece by piece', () => {
  const longer = [...walked.said.keys()].filter((text) => countWords(text) > MOST_WORDS_OF_A_WARNING && !MAY_BE_LONGER.test(text));
  expect(longer).toEqual([]);
  expect([...walked.said.keys()].filter((text) => text.endsWith('Say next for the one after.')).length).toBeGreaterThan(3);
});

test('the longest of it, at the slow pace of 110 words a minute, is over in half the time after which a hold of the ear is thought forgotten', () => {
  const words = Math.max(...[...walked.said.keys()].map(countWords));
  expect((words / 110) * 60_000).toBeLessThan(LONGEST_HOLD_MS / 2);
});
