import { describe, expect, it } from 'vitest';
import { Session } from './session.ts';
import { taken } from './planned.ts';

/** What a maker asks in passing, with the sizes of the baker's work table as its file has them. */
describe('a question in passing', () => {
  it('is told between which shoulders is meant by the part last spoken of, and asks when none was', () => {
    const session = Session.withDemo();
    expect(session.say('how long is the long rail')).toContain('forty-nine, and a half inches');
    expect(session.say('how far apart are the shoulders')).toBe('Long rail, shoulder to shoulder, forty-six inches.');
    expect(Session.withDemo().say('shoulder to shoulder')).toBe('Long rail, short rail, side stretcher or back stretcher?');
  });

  it('finds the overhangs that a part is reckoned from, and says so of a part that has none', () => {
    const session = Session.withDemo();
    expect(session.say('how far does the top overhang')).toBe('Overhang at the ends or overhang at the sides?');
    expect(session.say('overhang at the ends')).toContain('three, and three quarters inches');
    expect(session.say('the overhang of the leg')).toContain('no overhang');
  });

  it('finds the middle of a rail along its length, and asks along which way of a top', () => {
    const session = Session.withDemo();
    expect(session.say('where is the center of the long rail')).toBe('Half of forty-nine, and a half inches is twenty-four, and three quarters inches.');
    expect(session.say('the middle of the top')).toBe('Length or width?');
    expect(session.say('width')).toBe('Half of thirty inches is fifteen inches.');
  });

  it('knows what it is by the part last spoken of, else by the step', () => {
    const session = Session.withDemo();
    session.say('how wide is the long rail');
    expect(session.say('how thick is it')).toContain('Long rail, thickness');
    expect(session.say("what's the length")).toContain('Long rail, length, end to end, forty-nine, and a half inches');
    expect(Session.withDemo().say('how long is it')).toContain('Leg, rough length, thirty-three, and one quarter inches');
    expect(new Session().say('how long is it')).toContain('No piece is on the bench');
  });

  it('tells how far apart the copies of a part stand, as the piece measures it', () => {
    const session = Session.withDemo();
    expect(session.say('how far apart are the legs')).toBe('Leg to leg along the front or leg to leg at the ends?');
    expect(session.say('leg to leg along the front')).toContain('forty-six inches');
    expect(Session.withDemo().say('how far apart are the buttons')).toContain('no size from button to button');
  });

  it('takes the clocks that run for whether it is dry, and the glue when none does', () => {
    const session = Session.withDemo();
    expect(session.say('is it dry yet')).toContain('the clamps stay on one hour');
    expect(session.say('is the glue still open')).toContain('it stays open four minutes');
    session.say('start the clamp timer for thirty minutes');
    expect(session.say('is it dry yet')).toBe('Clamp, thirty minutes left.');
  });

  it('tells where the legs stand when it is asked which one is there', () => {
    const session = Session.withDemo();
    session.say('leg three is front left');
    expect(session.say('which leg is front left')).toContain('Leg three front left');
  });

  it('counts a size in fractions of an inch, with what is left over', () => {
    const session = Session.withDemo();
    session.say('how wide is leg two');
    expect(session.say('how many sixteenths is that')).toBe('Three, and one quarter inches is fifty-two sixteenths.');
    expect(session.say('how many eighths in eleven sixteenths')).toBe('Eleven sixteenths of an inch is five eighths and one sixteenth of an inch.');
    expect(session.say('how many eighths in one sixteenth')).toContain('less than one eighth');
  });

  it('tells the gauge of the joint that is asked for, be it not its turn', () => {
    const session = Session.withDemo();
    expect(session.say('gauge setting for the long rail mortise')).toContain('five eighths of an inch to the near pin, pins half an inch apart');
    expect(session.say('set the gauge for the short rail tenon')).toContain('Tenons of the short rails');
    expect(new Session().say('gauge setting')).toContain('No piece is on the bench');
  });

  it('tells how long the clamps have been on, with what is left', () => {
    const session = Session.withDemo();
    session.say('start the clamp timer for thirty minutes');
    session.wait(600_000);
    expect(session.say('how long have the clamps been on')).toBe('Clamp, twenty minutes left. It has run for ten minutes.');
    expect(session.say('can the clamps come off yet')).toBe('Clamp, twenty minutes left.');
  });

  it('reminds of sharpening by a clock of that name, once', () => {
    const session = new Session();
    expect(session.say('remind me to sharpen in twenty minutes')).toBe('Sharpening, twenty minutes, running.');
    expect(session.entries.map(({ kind }) => kind)).toEqual(['timer started']);
    expect(session.say('mute the alarms')).toBe('Nothing is due.');
    session.wait(1_200_001);
    expect(session.say('mute the alarms')).toBe('Sharpening, heard.');
  });

  // 8 in × 8 ft / 12 is a surface measure of 5 1/3, to the nearest whole 5 (rule of the grading-rule pages in core/wood/lumber/measure.ts).
  it('tells the board feet of a board and of the rack', () => {
    const session = Session.withDemo();
    expect(session.say('how many board feet do I have')).toContain('The rack is empty');
    session.say('new board ninety six by eight eight quarter hard maple');
    expect(session.say('how many board feet is that')).toBe('Board one: ten board feet.');
    session.say('new board ninety six by six four quarter hard maple');
    expect(session.say('how many board feet do I have')).toBe('Two boards on the rack, fourteen board feet in all.');
  });

  it('tells from which boards a part is cut, once a plan is taken', () => {
    expect(Session.withDemo().say('which board are the long rails from')).toContain('No plan is taken yet');
    const board = 'new board one hundred and twenty by eight six quarter hard maple';
    const session = taken([board, board]);
    expect(session.say('which boards do I use for the legs')).toMatch(/^\w+ leg layers from board one and \w+ leg layers from board two\.$/);
    expect(session.say('which board is the top from')).toContain('no board for that');
  });

  it('asks where a knot begins and ends when only that it is there was told', () => {
    expect(Session.withDemo().say('this board has a knot')).toContain('Knot, from where to where along the board?');
  });

  it('writes down how far off a copy was made, and takes its number for the copy', () => {
    const session = Session.withDemo();
    expect(session.say('I made leg two a sixteenth too thin')).toContain('Leg two, thickness, three, and three sixteenths inches, noted.');
    expect(session.entries).toContainEqual(expect.objectContaining({ measurement: expect.objectContaining({ size: 'leg.thickness', copy: 2 }) as unknown }));
  });
});

describe('the size on the pad', () => {
  it('is told in a sentence, and written down', () => {
    const session = Session.withDemo();
    session.say('record leg two width');
    expect(session.say("it's three and three sixteenths")).toContain('Leg two, width, three, and three sixteenths inches, noted.');
    expect(Session.withDemo().say("it's three and three sixteenths")).toBe('I have asked for no size; say part, dimension and size.');
  });
});

describe('what was understood and cannot be done', () => {
  it('is told without other words that it could have been', () => {
    const session = Session.withDemo();
    expect(session.say('left high one thirty second')).toBe('I have asked for no reading; have the readings of that side taken first.');
    expect(session.say('the winding sticks show left high one thirty second')).toBe('I have asked for no reading; have the readings of that side taken first.');
    expect(new Session().say('what length is the long rail')).toBe('There is no piece on the bench.');
  });

  it('is a reading once it was asked for', () => {
    const session = Session.withDemo();
    session.say('read leg two');
    expect(session.say('the winding sticks show left high one thirty second')).toContain('one thirty-second');
    expect(session.entries.map(({ kind }) => kind)).toEqual(['surface read']);
    const asked = session.bench.conversation.question;
    expect(session.say('what next')).toContain('which end of it is high');
    expect(session.bench.conversation.question).toEqual(asked);
    session.say('the sticks agree');
    expect(session.entries.map(({ kind }) => kind)).toEqual(['surface read']);
  });
});
