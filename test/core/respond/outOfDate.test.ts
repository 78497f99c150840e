import { describe, expect, it } from 'vitest';
import { readRecord } from '../../../core/journal/record.ts';
import { takenPlan } from '../../../core/respond/cuttingState.ts';
import { outOfDate } from '../../../core/respond/outOfDate.ts';
import { parseRequest } from '../../../core/talk/parse.ts';
import { found, taken } from './planned.ts';
import { Session } from './session.ts';

const STACK = ['new board ninety six by nine eight quarter', 'new board one hundred and twenty by ten', 'new board one hundred by nine and a half'];
const planned = () => taken(STACK);
const plan = (session: Session) => takenPlan(session.bench.state);
const reply = (session: Session, words: string) => session.request(parseRequest(words, session.bench));

describe('a cutting plan whose grounds have changed', () => {
  it('is out of date at once, whatever was told, and is planned anew by itself while nothing is cut', () => {
    for (const [words, why] of [
      ['the saw takes one eighth', 'the saw takes something else'], ['trim two inches off each end', 'something else is trimmed off the ends'], ['resaw the thick boards', 'boards are resawn otherwise'],
      ['cut layers one quarter wider', 'other rough sizes: leg layer'], ['cut the long rails one half longer', 'other rough sizes: long rail'], ['the rough length allowance is one and one quarter', 'other rough sizes: '],
      ['the long rail may hide a knot', 'may hide a knot now: long rail'],
    ] as const) {
      const session = planned();
      const { say, note, planning, question } = reply(session, words);
      expect([words, say]).toEqual([words, expect.stringContaining(`The cutting plan is out of date: ${why}`)]);
      expect(say).toMatch(/I plan anew\.$/);
      expect(note).toContain('out of date');
      expect([planning, question]).toEqual(['begin', undefined]);
      expect(session.bench.conversation.offer?.looking).toBe(true);
    }
  });

  it('is brought back by taking back what was told, and the plan that was looked for goes', () => {
    const session = planned();
    const before = plan(session);
    session.say('the saw takes one eighth');
    expect(found(session)).toContain('What changes');
    expect(session.say('what do I cut next')).toMatch(/^The cutting plan is out of date: the saw takes something else\. /);
    expect(reply(session, 'scratch that')).toMatchObject({ planning: 'over', say: expect.stringContaining('The cutting plan holds again.') as string });
    expect(session.bench.conversation.offer).toBeUndefined();
    expect(plan(session)).toEqual(before);
    expect(outOfDate(session.bench.state)).toEqual([]);
    expect(session.say('what do I cut next')).not.toContain('out of date');
    expect(session.say('put it back')).toContain('I plan anew.');
  });

  it('holds once the new one is taken; taken back, the old one is there, out of date, and with the setting it holds', () => {
    const session = planned();
    const before = plan(session);
    session.say('the saw takes one eighth');
    found(session);
    session.say('take the plan');
    expect(outOfDate(session.bench.state)).toEqual([]);
    for (const record of session.bench.records) expect(readRecord(JSON.parse(JSON.stringify(record)))).toEqual({ ok: true, value: record });
    session.say('scratch that');
    expect(plan(session)).toEqual(before);
    expect(outOfDate(session.bench.state)).toEqual(['the saw takes something else']);
    session.say('scratch that');
    expect(outOfDate(session.bench.state)).toEqual([]);
  });

  it('is asked about where the saw was in it: what is begun stays, the rest is planned on yes', () => {
    const session = planned();
    for (let cuts = 0; cuts < 2; cuts++) session.say('the cut is made');
    const told = reply(session, 'trim two inches off each end');
    expect(told.say).toMatch(/The cutting plan is out of date: something else is trimmed off the ends\. Board \w+ is begun and stays as it is\. Shall I plan the rest anew\?$/);
    expect(session.bench.conversation.offer).toBeUndefined();
    expect(session.say('what do I cut next')).not.toContain('out of date');
    reply(session, 'trim three inches off each end');
    expect(session.say('yes')).toMatch(/^Planning \w+/);
    found(session);
    session.say('take the plan');
    expect(plan(session)?.boards.filter(({ made }) => made > 0)).toHaveLength(1);
    expect(outOfDate(session.bench.state)).toEqual([]);
  });

  it('is none where it changes nothing: a price, a grade, a size of what is all cut', () => {
    const session = planned();
    for (const words of ['a board foot costs nine', 'boards at the yard are nine inches wide', 'the saw takes one sixteenth', 'leg two is three and a quarter wide']) expect([words, session.say(words)]).toEqual([words, expect.not.stringContaining('cutting plan')]);
    const sawn = taken(['new board thirty by four eight quarter']);
    for (let cuts = 0; cuts < 40; cuts++) sawn.say('the cut is made');
    expect(sawn.say('the saw takes one eighth')).toBe('The saw takes one eighth of an inch.');
  });

  it('is planned again too while it is only offered, and is marked when a changed piece file is opened', () => {
    const session = Session.withDemo();
    for (const words of [...STACK, 'plan the cutting']) session.say(words);
    found(session);
    expect(reply(session, 'the saw takes one eighth')).toMatchObject({ planning: 'begin', say: 'The saw takes one eighth of an inch. I plan again.' });
    const other = planned();
    const text = (other.request({ kind: 'save piece' }).file?.text ?? '').replace('"roughLength": "1 in"', '"roughLength": "2 in"');
    const said = other.request({ kind: 'load piece', text, from: 'a file' });
    expect(said.say).toContain('out of date: other rough sizes');
    expect(said.planning).toBeUndefined();
  });
});
