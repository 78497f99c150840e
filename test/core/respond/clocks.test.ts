import { describe, expect, it } from 'vitest';
import { clockCalls } from '../../../core/respond/announce.ts';
import { Session } from './session.ts';

const MINUTE_MS = 60_000;

describe('clocks at the bench', () => {
  it('a twenty minute timer runs, is asked about, and is called out when it is due', () => {
    const session = Session.withDemo();
    expect(session.say('start a twenty minute timer')).toBe('Timer, twenty minutes, running.');
    session.wait(5 * MINUTE_MS);
    expect(session.say('how long is left')).toBe('Timer, fifteen minutes left.');
    const before = session.now;
    session.wait(15 * MINUTE_MS);
    const [call] = clockCalls(session.bench, before, session.now);
    expect(call?.priority).toBe('due');
    expect(call?.reply.say).toMatch(/time is up/i);
  });

  it('got it silences what is due', () => {
    const session = Session.withDemo();
    session.say('start a five minute timer');
    session.wait(6 * MINUTE_MS);
    session.request({ kind: 'acknowledge' });
    const before = session.now;
    session.wait(30 * MINUTE_MS);
    expect(clockCalls(session.bench, before, session.now)).toEqual([]);
  });

  it('asks which clock is meant when there are two', () => {
    const session = Session.withDemo();
    session.say('start the clamp timer');
    session.say('start a five minute timer');
    expect(session.request({ kind: 'stop timer' }).say).toBe('Which clock: clamp or timer?');
    session.say('clamp');
    expect(session.bench.state.timers.map(({ name }) => name)).toEqual(['timer']);
  });

  it('adds five minutes and will not take off more than is left', () => {
    const session = Session.withDemo();
    session.say('start a ten minute timer');
    expect(session.say('add five minutes')).toMatch(/fifteen minutes left/);
    expect(session.request({ kind: 'change timer', addMs: -20 * MINUTE_MS }).signal).toBe('wrong');
  });

  it('a scratched start leaves no clock behind', () => {
    const session = Session.withDemo();
    session.say('start a ten minute timer');
    session.request({ kind: 'scratch that' });
    expect(session.bench.state.timers).toEqual([]);
  });

  it('after a power cut with an untrusted wall clock it says what it does not know', () => {
    const session = Session.withDemo();
    session.say('start a thirty minute timer');
    session.wait(10 * MINUTE_MS);
    session.say('add five minutes');
    session.now = { wallMs: 0, wallTrusted: false, bootId: 'second', monotonicMs: 5_000 };
    session.note({ kind: 'clock seen', note: 'restarted' });
    expect(session.say('how long is left')).toMatch(/I do not know.*At least ten minutes/s);
  });
});
