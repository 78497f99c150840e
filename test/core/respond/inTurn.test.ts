import { expect, test } from 'vitest';
import { countWords, MOST_WORDS, portionsOf } from '../../../core/respond/inTurn.ts';
import { whatCanBeSaid } from '../../../core/talk/sayable.ts';
import { Session } from './session.ts';

const noteOf = ({ bench }: Session) => bench.conversation.lastReply?.note;
const screenOf = ({ bench }: Session) => bench.conversation.screen.name;

test('the marks of a leg are told joint by joint: how many, the first, and next, again and back lead through them', () => {
  const session = Session.withDemo();
  expect(session.say('where do the joints go on leg one')).toBe('Leg one. Five to mark; the first: Long rail mortise: from one inch to four, and a half inches, from the top end. Say next for the one after.');
  expect(noteOf(session)).toBe('1 of 5: long rail mortise: from 1 in to 4 1/2 in, from the top end');
  const second = session.say('next');
  expect(second).toMatch(/^Short rail mortise: from one inch/);
  expect(session.say('again')).toBe(second);
  expect(session.say('next')).toMatch(/^Side stretcher mortise: /);
  expect(session.say('back')).toBe(second);
  expect(session.say('from the beginning')).toMatch(/^Long rail mortise: /);
  for (let joint = 2; joint < 5; joint += 1) session.say('next');
  expect(session.say('next')).toMatch(/^The last: Foot bevel: .* to hear its sides and its depth\.$/);
  expect(session.say('next')).toBe('That was the last of five.');
  session.say('next');
  expect(screenOf(session), 'and then next is of the work again').toBe('step');
});

test('what is looked up in between keeps the place, and next comes back to the marks', () => {
  const session = Session.withDemo();
  session.say('where do the joints go on leg one');
  session.say('how wide is leg two');
  expect(screenOf(session)).toBe('size');
  session.say('start a twenty minute timer');
  expect(session.say('next')).toMatch(/^Short rail mortise: /);
  expect(screenOf(session)).toBe('reckoning');
});

test('whoever goes elsewhere, writes something down that they stand on, or has had enough, is not led on', () => {
  for (const words of ['where am I', 'leg two width is three and nine thirty seconds', 'enough']) {
    const session = Session.withDemo();
    session.say('where do the joints go on leg one');
    session.say(words);
    expect(session.bench.conversation.inTurn, words).toBeUndefined();
    expect(session.say('read on'), words).toMatch(/^Nothing is being told piece by piece\./);
  }
});

test('marks of equal spaces come one by one where they are many, each of them a size to go on with, and all at once where they are few', () => {
  const session = Session.withDemo();
  expect(session.say('divide sixty inches into five equal spaces')).toContain('Marks from one end: twelve inches; twenty-four inches; thirty-six inches; forty-eight inches.');
  session.say('divide sixty inches into twenty equal spaces');
  expect(session.say('next')).toBe('Six inches.');
  expect(session.say('half of that')).toContain('is three inches');
  expect(session.say('next')).toBe('Nine inches.');
});

test('while it is told, what leads through it is what can be said first', () => {
  const session = Session.withDemo();
  session.say('where do the joints go on leg one');
  expect(whatCanBeSaid(session.bench).slice(0, 5)).toEqual(['next', 'say again', 'back', 'from the beginning', 'enough']);
});

test('a long reply is divided at its pauses, nothing of it lost', () => {
  const say = `Gauge ${'a little '.repeat(12)}here. Then ${'plane it '.repeat(14)}; ${'and look '.repeat(12)}. Done.`;
  const portions = portionsOf(say);
  expect(portions.length).toBeGreaterThan(2);
  expect(portions.join(' ').replaceAll(/[.;]/g, '').replaceAll(/\s+/g, ' ').toLowerCase()).toBe(say.replaceAll(/[.;]/g, '').replaceAll(/\s+/g, ' ').trim().toLowerCase());
  const session = Session.withDemo();
  expect(countWords(session.say('check the short rail tenon'))).toBeLessThanOrEqual(MOST_WORDS);
  expect(session.bench.conversation.inTurn?.items.length).toBeGreaterThan(1);
});
