import { describe, expect, it } from 'vitest';
import type { Request } from '../../../core/bench/request.ts';
import { Session } from './session.ts';

const MUTTERED: Request = { kind: 'not understood', heard: 'bananas', because: 'I do not know what “bananas” means', nearest: 'say again' };
const REFUSED = 'I do not know what “bananas” means.';

/** Every step is ticked off in turn, until the bench asks what one has come to. */
function atThicknessOfTheRail(): Session {
  const session = Session.withDemo();
  while (session.bench.conversation.question === null) {
    session.wait(100 * 3_600_000);
    session.say('done');
  }
  expect(session.bench.conversation.question).toEqual({ kind: 'length', size: 'longRail.thickness', copy: 1 });
  return session;
}

describe('a question is still open after a word that was misheard', () => {
  it('for a size: it is asked again, and the size is then written down', () => {
    const session = atThicknessOfTheRail();
    const { question } = session.bench.conversation;
    expect(session.request(MUTTERED)).toMatchObject({ say: `${REFUSED} long rail one, thickness: what does it measure?`, signal: 'not understood', question });
    session.say('one and a quarter');
    expect(session.bench.state.measurements.at(-1)).toMatchObject({ size: 'longRail.thickness', copy: 1 });
  });

  it('in the middle of a face\'s readings, with the way of the gap already told', () => {
    const session = Session.withDemo();
    session.say('read leg two layer one');
    const first = session.bench.conversation.lastReply?.say ?? '';
    expect(session.request(MUTTERED).say).toBe(`${REFUSED} ${first.slice(first.indexOf('Near stick'))}`);
    session.say('left end high');
    expect(session.request(MUTTERED).say).toBe(`${REFUSED} Left end high; by how much?`);
    session.say('one thirty second');
    expect(session.bench.conversation.question).toMatchObject({ kind: 'surface reading' });
    expect(JSON.stringify(session.entries)).toContain('sticks');
  });

  it('of which of several, and of yes or no', () => {
    const session = Session.withDemo();
    session.request({ kind: 'which', choices: [{ say: 'fifteen', request: { kind: 'what time' } }, { say: 'fifty', request: { kind: 'where am I' } }] });
    expect(session.request(MUTTERED).say).toBe(`${REFUSED} Fifteen or fifty?`);
    expect(session.say('the first')).not.toContain('asked');
    expect(session.bench.conversation.question).toBeNull();
    session.say('record leg two width nine');
    expect(session.bench.conversation.question).toMatchObject({ kind: 'yes or no' });
    expect(session.request(MUTTERED).say).toBe(`${REFUSED} Is leg two, width really nine inches?`);
    for (const time of ['twice', 'three times']) expect([time, session.request(MUTTERED).note]).toEqual([time, 'Heard “bananas”. Is leg two, width really 9 in?']);
    session.say('louder');
    expect(session.request(MUTTERED).say).toBe(`${REFUSED} Yes, or no?`);
    session.say('no');
    expect(session.bench.conversation.question).toBeNull();
  });

  it('but is asked no third time, for a radio could go on with it for ever', () => {
    const session = atThicknessOfTheRail();
    const { question } = session.bench.conversation;
    expect(session.request(MUTTERED).unasked).toBeUndefined();
    expect(session.request(MUTTERED)).toMatchObject({ say: `${REFUSED} I leave the question open: say bench first, then the answer.`, question, unasked: true });
    expect(session.bench.conversation.question).toEqual(question);
    session.say('one and a quarter');
    expect(session.bench.state.measurements.at(-1)).toMatchObject({ size: 'longRail.thickness', copy: 1 });
  });

  it('and while it is made louder, softer or silent', () => {
    const session = atThicknessOfTheRail();
    const { question } = session.bench.conversation;
    for (const words of ['louder', 'quieter', 'be quiet']) {
      session.say(words);
      expect([words, session.bench.conversation.question]).toEqual([words, question]);
    }
  });

  it('but not after another request, nor after it is cancelled', () => {
    for (const words of ['how long is the long rail', 'cancel']) {
      const session = atThicknessOfTheRail();
      session.request(MUTTERED);
      session.say(words);
      expect([words, session.bench.conversation.question]).toEqual([words, null]);
    }
  });
});
