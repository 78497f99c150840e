import { describe, expect, it } from 'vitest';
import { OPERATIONS } from '../../../core/work/step.ts';
import { usualTroubles } from '../../../core/work/troubles.ts';
import { Session } from './session.ts';

/** A session that stands at a step, with nothing before it done. */
function at(step: string): Session {
  const session = Session.withDemo();
  session.note({ kind: 'went to step', step });
  return session;
}

/** What a maker says at the bench about what went wrong, with the sizes of the baker's work table as its file has them. What is done about it is common practice, no source. */
describe('what went wrong under the hands', () => {
  it('of a board is told with how flat is enough there; what was read of it comes on the screen once something was', () => {
    const session = at('face/leg/1');
    expect(session.say('the board is cupped')).toMatch(/^Wedge it so that it stands still\..* Within six thousandths of an inch is enough\. Have its readings taken/);
    expect(session.entries).toEqual([]);
    expect(session.bench.conversation.screen.name).not.toBe('truing');
    session.say('take the readings');
    session.say('left high one thirty second');
    session.say('where am I');
    expect(session.say('it is cupped')).toMatch(/Ask what to plane, and I tell it from its readings\.$/);
    expect(session.bench.conversation.screen).toMatchObject({ name: 'truing', of: { part: 'leg', copy: 1 } });
    expect(Session.withDemo().say('it rocks on the bench')).toMatch(/^Two corners across from each other are high/);
  });

  it('of a joint is told with the sizes of the plan that it goes by, of the joint at hand', () => {
    const session = at('fit/longRail/1/longRailTenon');
    expect(session.say('it is too tight')).toContain('By the plan: tenon thickness, half an inch and mortise width, half an inch.');
    expect(session.say('the shoulder has a gap')).toContain('tenon length, one, and three quarters inches and mortise depth, one, and thirteen sixteenths inches');
    expect(session.say('the long rail tenon came out too short')).toMatch(/^A little short does no harm/);
    expect(session.entries).toEqual([]);
  });

  it('is asked for, of what usually goes wrong at the step at hand', () => {
    const session = at('fit/longRail/1/longRailTenon');
    expect(session.say('it went wrong')).toBe('What went wrong?');
    expect(session.bench.conversation.question).toMatchObject({ kind: 'which', choices: [{ say: 'tenon tight' }, { say: 'tenon loose' }, { say: 'shoulder open' }, {}, {}, {}, {}] });
    expect(session.say('tenon loose')).toContain('By the plan: tenon thickness, half an inch and mortise width, half an inch.');
    expect(session.entries).toEqual([]);
    expect(Session.withDemo().say('something went wrong')).toBe('I know of nothing that usually goes wrong at this step.');
  });

  it('of every work that has any can be chosen from eight keys', () => {
    for (const operation of OPERATIONS) expect([operation, usualTroubles(operation).length <= 8]).toEqual([operation, true]);
  });

  it('of a frame is told with what the longer diagonal has to lose', () => {
    expect(Session.withDemo().say('the frame is out of square by an eighth')).toContain('the longer has to lose about one sixteenth of an inch');
  });

  it('of a part without saying how much is asked for, and written down once it is told', () => {
    const session = Session.withDemo();
    expect(session.say('I planed leg two too thin')).toBe('Leg two, thickness: what does it measure?');
    expect(session.entries).toEqual([]);
    expect(session.say('three and three sixteenths')).toMatch(/^Leg two, thickness, three, and three sixteenths inches, noted\. One sixteenth of an inch under the plan\./);
  });
});

describe('a size that could not be the size itself', () => {
  it('is how much it is over', () => {
    expect(at('chop mortises/leg/1/longRailTenon').say('the mortise came out a thirty second wide')).toMatch(/^Long rail tenon, mortise width, seventeen thirty-seconds of an inch, noted\. One thirty-second of an inch over the plan\./);
    expect(Session.withDemo().say('leg two is an eighth long')).toMatch(/^Leg two, length, thirty-two, and three eighths inches, noted\./);
  });

  it('is asked about as ever where it could', () => {
    expect(Session.withDemo().say('the top is an inch thick')).toMatch(/^That is three quarters of an inch under the plan\. Is top, thickness really one inch\?$/);
  });

  it('of a mortise is of one of the joints, never of all by the name they share', () => {
    const session = Session.withDemo();
    expect(session.say('the mortise came out a thirty second wide')).toMatch(/^Long rail mortise, .* or back stretcher mortise\?$/);
    session.say('short rail');
    expect(session.bench.state.measurements.map(({ size }) => size)).toEqual(['shortRailTenon.mortiseWidth']);
  });
});

describe('a step that is done by what was done', () => {
  it('is done when it is about that', () => {
    const session = at('rough crosscut/leg');
    expect(session.say('I squared leg one')).toBe('This step is rough crosscut: a leg that is squared does not close it.');
    expect(session.entries).toEqual([]);
    for (const words of ['I squared long rail one', 'long rail one is square']) {
      const squaring = at('edge/longRail/1');
      for (const step of ['rough crosscut/longRail', 'reference edge/longRail', 'rip/longRail', 'rest/lot.solid', 'face/longRail/1']) squaring.note({ kind: 'step done', step });
      squaring.say(words);
      expect(squaring.entries, words).toContainEqual({ kind: 'step done', step: 'edge/longRail/1' });
    }
  });
});

describe('what is asked of the handwork', () => {
  it.each([
    ['which plane do I use', 'Reference edge, leg layers. The jack plane, then the jointer plane.'],
    ['how tight should the tenon be', 'Fit, long rail 1 of 2. It holds by itself when lifted, and the shoulder is closed all round. Within six thousandths of an inch.'],
    ['what is the reference edge', 'Legs: the reference face is the face side, the reference edge the face edge. All is gauged and squared from these.'],
    ['how much do I ease the top', 'The top, every arris that shows: one eighth of an inch. Leave those at shoulders and mortises crisp.'],
    ['which faces of the legs get mortises', /^Leg: long rail mortise, in the face towards the long rail; .* only back left and back right\.$/],
    ['how far is the long rail mortise from the top of the leg', 'Leg, long rail mortise, start, one inch from the top end.'],
  ] as const)('“%s”', (words, answer) => {
    const session = Session.withDemo();
    if (typeof answer === 'string') expect(session.say(words)).toBe(answer);
    else expect(session.say(words)).toMatch(answer);
    expect(session.entries).toEqual([]);
  });

  it('tells the diagonals of the end frame as its sides make them', () => {
    // 32 1/4 in of leg by 19 1/2 in and two legs of 3 1/4 in, 26 in: the hypotenuse is 41.4254 in (Pythagoras).
    const session = Session.withDemo();
    expect(session.say('what are the diagonals of the end frame')).toMatch(/Both alike, when it is square\.$/);
    expect(Number(session.bench.conversation.lastReply?.lengths?.[0]) / 25_400_000).toBeCloseTo(Math.hypot(32.25, 26), 4);
  });
});
