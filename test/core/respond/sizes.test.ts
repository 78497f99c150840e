import { describe, expect, it } from 'vitest';
import { NANOMETRES_PER_INCH, nanometres } from '../../../core/length/length.ts';
import { Session } from './session.ts';

const inch = (count: number) => nanometres(count * NANOMETRES_PER_INCH);

describe('asking for sizes', () => {
  it('says a size with its part, its reference and its unit once', () => {
    expect(Session.withDemo().say('how long is the long rail shoulder to shoulder')).toBe('Long rail, shoulder to shoulder, forty-six inches.');
  });

  it('asks which rail is meant and takes the answer', () => {
    const session = Session.withDemo();
    expect(session.say('how long is the rail')).toMatch(/^Long rail(, | or )short rail.*\?$/);
    expect(session.say('short rail')).toBe('Short rail, length, end to end, twenty-three inches.');
  });

  it('shows the size that it says', () => {
    const session = Session.withDemo();
    const reply = session.request({ kind: 'size', size: 'leg.width', copy: 2 });
    expect(reply.screen).toEqual({ name: 'size', size: 'leg.width', copy: 2 });
    expect(reply.lengths).toEqual([inch(3.25)]);
  });

  it('tells why a rail is as long as it is, down to what was given', () => {
    expect(Session.withDemo().say('why is the long rail so long')).toMatch(/from .*shoulder to shoulder.* and .*tenon length/);
  });

  it('refuses a size that the piece does not have, and writes nothing', () => {
    const session = Session.withDemo();
    const reply = session.request({ kind: 'size', size: 'leg.depth' });
    expect(reply.signal).toBe('wrong');
    expect(session.entries).toEqual([]);
  });

  it('without a piece it says what to do', () => {
    const reply = new Session().request({ kind: 'size', size: 'leg.width' });
    expect(reply.say).toBe('No piece is on the bench. Load one first.');
    expect(reply.screen).toEqual({ name: 'files' });
  });

  it('counts the copies of a part', () => {
    expect(Session.withDemo().say('how many legs')).toBe('Four legs.');
  });
});

describe('recording what was measured', () => {
  it('reads the size back, says how far off the plan it is and what moved with it', () => {
    const session = Session.withDemo();
    const said = session.say('leg two width is three and three eighths');
    expect(said).toMatch(/^Leg two, width, three, and three eighths inches, noted\. One eighth of an inch over the plan\./);
    // The top is two legs longer than the inside: twice an eighth.
    expect(said).toMatch(/top, length, sixty, and one quarter inches instead of sixty inches, end to end/);
  });

  it('a critical inside size holds when a leg comes out heavy', () => {
    const session = Session.withDemo();
    session.say('leg two width is three and three eighths');
    expect(session.say('how long is the long rail between the shoulders')).toBe('Long rail, shoulder to shoulder, forty-six inches.');
  });

  it('asks before it believes a size an inch off the plan', () => {
    const session = Session.withDemo();
    const reply = session.request({ kind: 'record', size: 'leg.width', copy: 1, length: inch(4.25) });
    expect(session.entries).toEqual([]);
    expect(reply.say).toMatch(/one inch over the plan.*really four, and one quarter inches\?$/i);
    session.say('yes');
    expect(session.bench.state.measurements).toEqual([{ size: 'leg.width', copy: 1, length: inch(4.25) }]);
  });

  it('leaves the plan alone when the answer is no', () => {
    const session = Session.withDemo();
    session.request({ kind: 'record', size: 'leg.width', copy: 1, length: inch(4.25) });
    session.say('no');
    expect(session.bench.state.measurements).toEqual([]);
  });

  it('takes a withdrawn measurement back to the plan', () => {
    const session = Session.withDemo();
    session.say('leg two width is three and three eighths');
    session.request({ kind: 'withdraw measurement', size: 'leg.width', copy: 2 });
    expect(session.request({ kind: 'size', size: 'top.length' }).say).toMatch(/sixty inches\.$/);
  });

  it('what was scratched can be put back', () => {
    const session = Session.withDemo();
    session.say('leg two width is three and three eighths');
    expect(session.request({ kind: 'scratch that' }).say).toBe('Scratched: leg two, width, three, and three eighths inches.');
    expect(session.bench.state.measurements).toEqual([]);
    expect(session.request({ kind: 'put back' }).say).toBe('Put back: leg two, width, three, and three eighths inches.');
    expect(session.bench.state.measurements).toHaveLength(1);
  });

  it('refuses a length of nothing', () => {
    const session = Session.withDemo();
    expect(session.request({ kind: 'record', size: 'leg.width', copy: 1, length: nanometres(0) }).signal).toBe('wrong');
    expect(session.entries).toEqual([]);
  });
});
