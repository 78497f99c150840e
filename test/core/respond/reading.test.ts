import { describe, expect, it } from 'vitest';
import { Session } from './session.ts';

const measured = (session: Session): readonly unknown[] => session.bench.state.measurements;

/** At the pad, with the second leg's width waiting. */
function atThePad(): Session {
  const session = Session.withDemo();
  session.request({ kind: 'show', screen: { name: 'record', size: 'leg.width', copy: 2 } });
  return session;
}

describe('a caliper that types', () => {
  it('at the pad: what it reads is recorded at once and read back, with what it typed for the eye', () => {
    const session = atThePad();
    const reply = session.request({ kind: 'reading', text: '3.3125' });
    expect(reply.say).toMatch(/^Leg two, width, three, and five sixteenths inches, noted\. One sixteenth of an inch over the plan\./);
    expect(reply.note).toMatch(/^The instrument reads 3\.3125\./);
    expect(measured(session)).toEqual([{ size: 'leg.width', copy: 2, length: 84_137_500 }]);
  });

  it('in its own unit when it sends one, and in the one that it is set to when it does not', () => {
    const session = atThePad();
    session.request({ kind: 'reading', text: '84.14 mm' });
    expect(measured(session)).toEqual([{ size: 'leg.width', copy: 2, length: 84_140_000 }]);
    expect(session.say('the caliper reads millimeters')).toBe('The caliper reads millimetres where it does not send its unit.');
    session.request({ kind: 'show', screen: { name: 'record', size: 'leg.width', copy: 2 } });
    session.request({ kind: 'reading', text: '82,55' });
    expect(measured(session)).toEqual([{ size: 'leg.width', copy: 2, length: 82_550_000 }]);
  });

  it('in the wrong unit is asked about, and nothing is written before yes', () => {
    const session = atThePad();
    const reply = session.request({ kind: 'reading', text: '82.55' });
    expect(reply.say).toMatch(/Does the instrument read millimetres, and is leg two, width three, and one quarter inches\?$/);
    expect(measured(session)).toEqual([]);
    session.say('yes');
    expect(measured(session)).toEqual([{ size: 'leg.width', copy: 2, length: 82_550_000 }]);
  });

  it('off by a foot, or by an inch, is asked about as any size is, and lost on no', () => {
    const session = atThePad();
    expect(session.request({ kind: 'reading', text: '15.25 in' }).say).toMatch(/over the plan\. Is leg two, width really/);
    expect(session.say('no')).toBe('Left as it was.');
    expect(measured(session)).toEqual([]);
  });

  it('less than nothing, nothing, or no number, is told with what to do', () => {
    const session = atThePad();
    expect(session.request({ kind: 'reading', text: '-0.05' }).say).toBe('The instrument reads less than nothing. Close it, set it to zero, and measure again.');
    expect(session.request({ kind: 'reading', text: '0.00' }).say).toMatch(/^The instrument reads nothing\./);
    expect(session.request({ kind: 'reading', text: 'ERR' })).toMatchObject({ signal: 'wrong', say: expect.stringMatching(/^That was no reading/) as string });
    expect(new Session().request({ kind: 'reading', text: '3.25' }).say).toMatch(/No piece is on the bench/);
    expect(measured(session)).toEqual([]);
  });

  it('elsewhere the bench asks what it was taken of: the size shown first, then what is near in the plan', () => {
    const session = Session.withDemo();
    session.request({ kind: 'size', size: 'leg.thickness', copy: 3 });
    const reply = session.request({ kind: 'reading', text: '3.26' });
    expect(reply.say).toMatch(/Record it as leg three, thickness, leg one, width/);
    expect(measured(session)).toEqual([]);
    session.say('the first one');
    expect(measured(session)).toEqual([{ size: 'leg.thickness', copy: 3, length: 82_804_000 }]);
  });

  it('that is near to nothing in the piece is told so', () => {
    expect(Session.withDemo().request({ kind: 'reading', text: '25.5 in' }).say).toMatch(/No size of this piece is near to it\./);
  });
});
