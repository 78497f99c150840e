import { describe, expect, it } from 'vitest';
import { atTheEndFrame, DEMO_TEXT, Session } from './session.ts';

const MINUTE_MS = 60_000;

/** The demo's leg step where the long rail's mortises are chopped. */
function atTheMortise(): Session {
  const session = Session.withDemo();
  session.say('go to chop mortises');
  return session;
}

describe('how long the clamps must stay on, before they are on', () => {
  it('is the time of the class of glue, for a warm shop while nothing is known of it', () => {
    const session = Session.withDemo();
    expect(session.say('how long do the clamps stay on')).toMatch(/^Yellow glue: the clamps stay on one hour, by common practice\. That is for twenty-one degrees; colder, they stay on longer\./);
    expect(session.bench.conversation.screen).toEqual({ name: 'air' });
  });

  it('is the time of the label in the cold of the shop, the very one that the clock then runs', () => {
    const session = Session.withDemo();
    session.say('the label says clamp time thirty minutes');
    session.say('the shop is sixteen degrees');
    // Drying glues from once at 21 °C to twice at their lowest temperature, here 10 °C: 30 min × (1 + 5/11). See core/glue/stretch.ts for the source.
    expect(session.say('how long must the clamps stay on')).toMatch(/^Yellow glue: the clamps stay on forty-three minutes and thirty-eight seconds, by your label, one point five times for sixteen degrees\. Safe to work in /);
    session.say('start the clamp timer');
    expect(session.bench.state.timers.at(-1)?.durationMs).toBe(2_618_000);
  });

  it('says first that it is too cold to glue', () => {
    const session = Session.withDemo();
    session.say('the shop is five degrees');
    const said = session.say('how long do I leave the clamps on');
    expect(said).toMatch(/^Do not glue tonight\./);
    expect(said).toMatch(/Then yellow glue: the clamps stay on two hours, by common practice, two times for ten degrees\.$/);
  });

  it('is what is left of it once a clamp clock runs', () => {
    const session = Session.withDemo();
    session.say('start the clamp timer for forty minutes');
    session.wait(10 * MINUTE_MS);
    expect(session.say('how long must the clamps stay on')).toBe('Clamp, thirty minutes left.');
  });

  it('leaves the open time by itself', () => {
    expect(Session.withDemo().say('how long does the glue stay open')).toMatch(/^Yellow glue: it stays open four minutes, by common practice\./);
  });
});

describe('which copy is which', () => {
  it('goes by the number on its end, until it has a place', () => {
    const session = Session.withDemo();
    expect(session.say('which leg is which')).toBe('Each leg goes by the number on its end. None of the legs has its place yet: it goes front left, front right, back left or back right.');
    session.say('leg two goes back left');
    session.say('leg one goes front left, face B to the front');
    expect(session.say('which leg is which')).toBe('Each leg goes by the number on its end. Leg one front left, face B to the front; leg two back left. Without a place yet: legs three and four.');
    expect(session.bench.conversation.screen).toEqual({ name: 'faces', part: 'leg' });
  });

  it('is told of parts that go anywhere, and of what there is one of', () => {
    const session = Session.withDemo();
    expect(session.say('which button is which')).toBe('The twelve buttons have no places of their own. Each goes by the number on it, and its sizes are kept by that.');
    expect(session.say('which top is which')).toBe('There is only one top.');
  });
});

describe('what wood it is', () => {
  it('is told of the piece, and of a part', () => {
    const session = Session.withDemo();
    expect(session.say('what wood is it')).toBe('All of it is of hard maple.');
    expect(session.say('what are the legs made of')).toBe('The legs are of hard maple.');
    expect(session.bench.conversation.screen).toEqual({ name: 'part', part: 'leg' });
    expect(session.say('what wood is this')).toBe('The legs are of hard maple.');
    expect(session.entries).toEqual([]);
  });

  it('names each wood with its parts when there are several', () => {
    const session = new Session();
    const piece = JSON.parse(DEMO_TEXT) as { parts: { name: string; species: string }[] };
    session.request({ kind: 'load piece', text: JSON.stringify({ ...piece, parts: piece.parts.map((part) => (part.name === 'top' ? { ...part, species: 'black walnut' } : part)) }), from: 'a test' });
    expect(session.say('which wood do I need')).toMatch(/^Hard maple: legs, .*\. Black walnut: top\.$/);
  });
});

describe('where a mortise and its haunch lie', () => {
  it('is told of the joint at hand without its name', () => {
    const session = atTheMortise();
    expect(session.say('how far down is the mortise')).toBe('Leg, long rail mortise, start, one inch from the top end.');
    expect(session.say('how deep is the haunch')).toBe('Leg, long rail mortise, depth of the haunch socket, half an inch from the face that is chopped; it is open at the end.');
  });

  it('is asked about when no joint is at hand, and a piece of the name is answer enough', () => {
    const session = Session.withDemo();
    expect(session.say('how deep is the haunch')).toBe('Long rail haunch or short rail haunch?');
    expect(session.say('short rail')).toMatch(/^Leg, short rail mortise, depth of the haunch socket, half an inch/);
  });

  it('is told among the joints of the part that was last spoken of', () => {
    const session = Session.withDemo();
    session.say('show me the long rail');
    expect(session.say('how far from the top is the mortise')).toBe('Leg, long rail mortise, start, one inch from the top end.');
  });
});

describe('an edge that was honed', () => {
  it('is taken for the chisel when nothing else was told of, and that is said', () => {
    const session = Session.withDemo();
    expect(session.say('I honed it')).toBe('The chisel is honed now. I took it for the chisel; name the edge if it was another.');
    expect(session.say('I sharpened the chisel')).toBe('The chisel is honed now.');
  });

  it('starts the clock for the strop again while it cuts; another edge does not', () => {
    const session = Session.withDemo();
    session.say('chopping');
    session.wait(20_000);
    session.say('I honed the jack plane');
    expect(session.say('how long is left')).toBe('Strop, forty seconds left.');
    expect(session.say('I honed it')).toBe('The chisel is honed now, after less than a minute of cutting.');
    expect(session.say('how long is left')).toBe('Strop, one minute left.');
    session.say('scratch that');
    expect(session.say('how long is left')).toBe('Strop, forty seconds left.');
  });

  it('is the plane that was told of last, or it is asked which', () => {
    const session = Session.withDemo();
    expect(session.say('I honed the plane')).toBe('Jack plane, jointer plane, smoothing plane or block plane?');
    expect(session.say('smoothing')).toBe('The smoothing plane is honed now.');
    session.say('I honed the jack plane');
    session.say('I honed the smoothing plane');
    session.say('I honed the chisel');
    expect(session.say('I stropped the plane')).toBe('The smoothing plane is stropped now.');
  });
});

describe('a step that is done, told by what was made', () => {
  it('is ticked off when it is about that one, and only then', () => {
    const session = atTheMortise();
    expect(session.say('leg two is done')).toMatch(/^This step is about another leg; it stays open\./);
    expect(session.say('the top is done')).toMatch(/^This step is not about the top; it stays open\./);
    expect(session.say('leg one is done')).toMatch(/^Not yet\. There are no mortise lines to chop to\./);
  });

  it('is about every copy, and done with the last of them', () => {
    const session = Session.withDemo();
    expect(session.say('this leg is done')).toMatch(/^This step is about every leg; it is done when all of them are\./);
    expect(session.entries).toEqual([]);
    session.say('all the legs are done');
    expect(session.entries.map(({ kind }) => kind)).toContain('step done');
  });
});

describe('a size that came out off', () => {
  it('is written down as what it is, read back, and taken back as ever', () => {
    const session = Session.withDemo();
    expect(session.say('leg two is a sixteenth short')).toMatch(/^Leg two, length, thirty-two, and three sixteenths inches, noted\. One sixteenth of an inch under the plan\./);
    expect(session.say('it is one thirty second too wide')).toMatch(/^Leg two, width, three, and nine thirty-seconds inches, noted\. One thirty-second of an inch over the plan\./);
    session.say('scratch that');
    expect(session.bench.state.measurements.map(({ size }) => size)).toEqual(['leg.length']);
  });

  it('is off from what it should be, not from what was written down before', () => {
    const session = Session.withDemo();
    session.say('leg two is a sixteenth short');
    expect(session.say('leg two came out one thirty second too long')).toMatch(/^Leg two, length, thirty-two, and nine thirty-seconds inches, noted\./);
  });

  it('is asked about when it is much', () => {
    expect(Session.withDemo().say('the top came out three quarters too thin')).toMatch(/^That is three quarters of an inch under the plan\. Is top, thickness really one inch\?$/);
  });
});

describe('glue and clamps, told as they come', () => {
  it('the open time starts once', () => {
    const session = Session.withDemo();
    session.say('the glue is on');
    expect(session.bench.state.timers.map(({ kind }) => kind)).toEqual(['open time']);
    session.wait(MINUTE_MS);
    expect(session.say('the glue is on')).toBe('Open time, three minutes left.');
    session.say('the clamps are on');
    session.say('the clamps are off');
    expect(session.bench.state.timers.map(({ kind }) => kind)).toEqual(['open time']);
    expect(session.say('the clamps are off')).toMatch(/^No clock of clamps is running\./);
  });

  it('that the clamps are on, told twice, is one clock; a while later it is of other clamps', () => {
    const session = Session.withDemo();
    session.say('clamps on');
    session.wait(MINUTE_MS);
    expect(session.say('the clamps are on')).toBe('Clamp, fifty-nine minutes left. For others tell me to start one more clock.');
    session.say('start a clamp timer');
    expect(session.bench.state.timers.map(({ name }) => name)).toEqual(['clamp', 'clamp two']);
    session.wait(10 * MINUTE_MS);
    session.say('clamps on');
    expect(session.bench.state.timers.map(({ name }) => name)).toEqual(['clamp', 'clamp two', 'clamp three']);
  });

  it('in a rehearsal the glue that is on is the move that is done', () => {
    const session = atTheEndFrame();
    session.say('rehearse');
    session.say('the glue is on');
    expect(session.entries.map(({ kind }) => kind)).toEqual(['gluing move done']);
  });
});

describe('how warm it is', () => {
  it('is what was told, and how long ago', () => {
    const session = Session.withDemo();
    expect(session.say('how warm is it')).toMatch(/^Nobody has told me yet\./);
    session.say('the shop is twelve degrees sixty percent');
    session.say('the stock is at nine percent');
    expect(session.say('how warm is the shop')).toBe('The shop was at twelve degrees and sixty percent humidity, as you said. The stock was at nine percent moisture, as you said.');
    session.wait(135 * MINUTE_MS);
    expect(session.say('what is the temperature')).toMatch(/^The shop was at twelve degrees and sixty percent humidity, as you said two hours and fifteen minutes ago\./);
    session.now = { ...session.now, bootId: 'second', wallTrusted: false };
    expect(session.say('how cold is it')).toMatch(/as you said, before the power was off\./);
  });
});

describe('the time of day', () => {
  const at = (session: Session, hour: number, minute: number) => { session.now = { ...session.now, wallMs: new Date(2026, 10, 27, hour, minute).getTime() }; };

  it.each([[18, 45, 'six forty-five in the evening'], [9, 5, 'five past nine in the morning'], [13, 0, 'one o’clock in the afternoon'], [12, 0, 'noon'], [0, 0, 'midnight'], [0, 30, 'twelve thirty in the morning']])('at %i:%i is %s', (hour, minute, said) => {
    const session = Session.withDemo();
    at(session, hour, minute);
    expect(session.say('what time is it').toLowerCase()).toBe(`it is ${said}, by this machine’s clock.`);
  });

  it('is not vouched for after a power cut; the clocks that run are told with what is known of them', () => {
    const session = Session.withDemo();
    session.say('start a twenty minute timer');
    at(session, 18, 45);
    session.now = { ...session.now, wallTrusted: false };
    session.wait(5 * MINUTE_MS);
    expect(session.say('what time is it')).toBe('This machine’s clock shows six fifty in the evening, but nothing vouches for it: after a power cut it may be wrong. Timer, fifteen minutes left.');
  });
});

describe('cancel', () => {
  it('drops the question that is open', () => {
    const session = Session.withDemo();
    session.say('record the top');
    expect(session.bench.conversation.question).not.toBeNull();
    expect(session.say('cancel')).toBe('Left as it was.');
    expect(session.bench.conversation.question).toBeNull();
  });

  it.each(['cancel', 'never mind'])('“%s” undoes nothing and stops no clock where nothing is open', (words) => {
    const session = Session.withDemo();
    session.say('start a twenty minute timer');
    session.say('record leg two width three and five sixteenths');
    const { state } = session.bench;
    expect(session.say(words)).toBe('Nothing is open: I have asked nothing, and nothing was changed.');
    expect(session.entries).toEqual([]);
    expect(session.bench.state).toBe(state);
  });

  it('leaves what is told piece by piece', () => {
    const session = Session.withDemo();
    session.say('where do the mortises go');
    expect(session.bench.conversation.inTurn).toBeDefined();
    session.say('cancel');
    expect(session.bench.conversation.inTurn).toBeUndefined();
  });
});

describe('winding sticks, in the words that come first', () => {
  it.each(['left high one thirty second', 'left high by one thirty second', 'high left one thirty second', 'high on the left one thirty second', 'it is high on the left by one thirty second', 'one thirty second high on the left', 'the left is one thirty second high', 'left end is high by one thirty second', 'left end one thirty second high'])('“%s”', (words) => {
    const session = Session.withDemo();
    session.say('take the readings of the top');
    expect(session.say(words)).toMatch(/^Left end high by one thirty-second of an inch, near the far end\. Near stick/);
  });

  it('are asked for again when something else was asked between, for the place must be known', () => {
    const session = Session.withDemo();
    session.say('take the readings of the top');
    session.say('left high one thirty second');
    session.say('is the top flat');
    expect(session.say('right high one sixteenth')).toMatch(/^Top, board one, reference face\. Near stick near the marked end, far stick in the middle: which end of it is high/);
    expect(session.entries).toEqual([]);
  });

  it('are not written down while no reading is asked for', () => {
    const session = Session.withDemo();
    expect(session.say('left high one thirty second')).toMatch(/^I have asked for no reading; have the readings of that side taken first\./);
    expect(session.entries).toEqual([]);
  });
});

describe('so many inches', () => {
  it('is the size in the words that are used for sizes, or in the unit that was named', () => {
    const session = Session.withDemo();
    expect(session.say('how many inches long is the leg')).toBe('Leg, length, end to end, thirty-two, and one quarter inches.');
    expect(session.say('how many millimeters long is the leg')).toBe('Thirty-two, and one quarter inches is eight hundred nineteen millimetres, full.');
    expect(session.say('how many inches is the top')).toBe('Length, width or thickness?');
    expect(session.say('width')).toMatch(/^Top, width, /);
  });
});
