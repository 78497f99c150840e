import { describe, expect, it, test } from 'vitest';
import { stepsOf } from '../../../core/respond/views.ts';
import { atTheEndFrame, Session } from './session.ts';

const DAY_MS = 24 * 3_600_000;

/** The next run of the machine, so many days later. */
function daysLater(session: Session, days: number, wallTrusted = true): void {
  session.now = { wallMs: session.now.wallMs + days * DAY_MS, wallTrusted, bootId: `${session.now.bootId} and another`, monotonicMs: 5_000 };
}

describe('what was done', () => {
  it('is told of today, the steps by their names', () => {
    const session = Session.withDemo();
    session.say('done');
    session.say('note the oak is damp');
    expect(session.say('what did I do today')).toBe('Today: one step done, rough crosscut leg layers; one note; a piece loaded from the demo.');
    expect(session.bench.conversation.screen).toEqual({ name: 'journal' });
  });

  it('is told of the last day of work before this one, whichever it was', () => {
    const session = Session.withDemo();
    expect(session.say('what did I do yesterday')).toBe('Nothing is written down of the days before today.');
    session.say('done');
    daysLater(session, 1);
    expect(session.say('what did I do today')).toBe('Nothing is written down today.');
    expect(session.say('what did I do yesterday')).toMatch(/^Yesterday: one step done, rough crosscut leg layers;/);
    // 25 November 2026, on which the session began, is a Wednesday.
    daysLater(session, 2);
    expect(session.say('what did I do yesterday')).toMatch(/^Nothing yesterday\. The last time was Wednesday, November twenty-fifth: one step done,/);
  });

  it('is told without days where nothing vouches for the clock, and without what was scratched', () => {
    const session = Session.withDemo();
    session.say('done');
    session.say('note the oak is damp');
    session.say('scratch that');
    daysLater(session, 1, false);
    expect(session.say('what did I do yesterday')).toBe('Nothing vouches for this machine’s clock, so I cannot tell the days apart. The last: Rough crosscut, leg layers as done. Before that: a piece loaded from the demo.');
  });
});

describe('what was measured', () => {
  it('is told size by size against the plan, of a part, or the last of it', () => {
    const session = Session.withDemo();
    expect(session.say('what did I measure')).toBe('Nothing has been measured yet.');
    session.say('record long rail length forty nine and a half');
    session.say('record leg two width three and a quarter');
    session.say('record leg two width three and three sixteenths');
    expect(session.say('read me all the measurements')).toBe('Two sizes are measured. Long rail, length, forty-nine, and a half inches, as planned. Leg two, width, three, and three sixteenths inches, one sixteenth of an inch under the plan.');
    expect(session.say('did I measure the long rails')).toContain('One size is measured. Long rail, length');
    expect(session.say('how far off is leg three')).toBe('Nothing has been measured of leg three yet.');
    expect(session.say('did I measure the short rails')).toBe('Nothing has been measured of the short rails yet.');
    expect(session.say('what was the last measurement')).toMatch(/^Leg two, width,/);
  });

  // ISO 2768-1 (1989), table 1: medium, a size of 3 1/4 in (82.55 mm) may be off by 0.3 mm, which is twelve thousandths of an inch; a sixteenth is 1.6 mm.
  it('is held to the general tolerances', () => {
    const session = Session.withDemo();
    session.say('record long rail length forty nine and a half');
    expect(session.say('is anything out of tolerance')).toBe('The one size measured is within the general tolerances, ISO 2768-1, table 1.');
    session.say('record leg two width three and three sixteenths');
    expect(session.say('is anything off')).toMatch(/^Of two sizes measured, one is off by more than the general tolerances, ISO 2768-1, table 1\. Leg two, width, three, and three sixteenths inches, one sixteenth of an inch under the plan, where twelve thousandths of an inch is usual\./);
  });
});

describe('what was noted', () => {
  it('is read out, the newest first', () => {
    const session = Session.withDemo();
    expect(session.say('what are my notes')).toBe('Nothing is noted yet.');
    session.say('note the oak is damp');
    session.say('note leg two has a knot');
    expect(session.say('read me my notes')).toBe('Two notes, the newest first. Noted: leg two has a knot. Noted: the oak is damp.');
  });
});

describe('how long the rest takes', () => {
  it('is what is known of it: the steps, and what nobody can hurry', () => {
    const session = atTheEndFrame();
    expect(session.say('how long will it take')).toBe('Twenty-five steps are left; how many hours of work that is I cannot know. To wait for: three times in the clamps, one hour each; three glue-ups until they have cured, one day each; two coats until the next, one day each; some of it side by side.');
    session.say('start the clamp timer for forty minutes');
    expect(session.say('when will I be done')).toContain('Clamp, forty minutes left.');
  });
});

describe('time and glue', () => {
  it('while no clock runs, where the step glues, is what the glue gives', () => {
    expect(atTheEndFrame().say('how long do I have')).toMatch(/^No clock is running\. Yellow glue: it stays open four minutes/);
    expect(Session.withDemo().say('how long do I have')).toBe('No clock is running.');
  });

  it('asked whether it may begin tells what is in the way, and begins nothing', () => {
    const session = Session.withDemo();
    expect(session.say('am I ready to glue up')).toMatch(/^Lamination glue-up, leg 1 of 4\. Not yet\..*First: Dry check, leg 1 of 4\.$/);
    expect(session.entries).toEqual([]);
    expect(atTheEndFrame().say('am I ready to glue up')).toMatch(/^Glue-up, left end frame\. Nothing is in the way\. I do not know how warm the shop is/);
  });

  it('of a part is gone to by its name', () => {
    const session = Session.withDemo();
    session.say('glue up the top');
    expect(session.bench.state.currentStep).toBe('panel glue-up/top/1');
  });
});

describe('a coat that is on', () => {
  it('ticks off its own step and starts its clock, wherever the work is', () => {
    const session = Session.withDemo();
    expect(session.say('second coat is on')).toMatch(/^Not yet\. The coat before it is not on yet\./);
    expect(session.say('the coat is on')).toBe('This step is not about a coat.');
    expect(session.say('the sixth coat is on')).toBe('The piece gets three coats.');
    const steps = stepsOf(session.bench.state);
    for (const { id } of steps.slice(0, steps.findIndex(({ operation }) => operation === 'finish'))) session.note({ kind: 'step done', step: id });
    expect(session.say('the first coat is on')).toMatch(/^Ticked off\. Coat one dries, one day, running/);
    expect(session.say('I have put the first coat on')).toBe('That coat is ticked off already.');
  });
});

describe('a reminder to sharpen', () => {
  it('comes again and again, and is answered by the stone', () => {
    const session = Session.withDemo();
    expect(session.say('remind me to sharpen every half hour')).toBe('Sharpening, thirty minutes, running.');
    session.wait(31 * 60_000);
    session.say('I sharpened the chisel');
    expect(session.say('what is running')).toBe('Sharpening, thirty minutes left.');
  });
});

test('who asks how to set a clock, or how to undo, is told the words for just that', () => {
  expect(Session.withDemo().say('how do I set a timer')).toContain('start a twenty minute timer');
  expect(Session.withDemo().say('how do I undo something')).toContain('scratch that');
});
