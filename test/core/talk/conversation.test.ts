import { describe, expect, it } from 'vitest';
import type { Bench } from '../../../core/bench/bench.ts';
import type { Request } from '../../../core/bench/request.ts';
import { parseRequest } from '../../../core/talk/parse.ts';
import { whatCanBeSaid } from '../../../core/talk/sayable.ts';
import type { PieceFile } from '../../../core/piece/file.ts';
import { DEMO_TEXT, loadSound } from '../piece/demo.ts';
import { bench, inches, TALKATIVE } from './benches.ts';

const WHICH_RAIL = bench({ question: { kind: 'which', choices: [
  { say: 'long rail', request: { kind: 'size', size: 'longRail.length' } },
  { say: 'short rail', request: { kind: 'size', size: 'shortRail.length' } },
] } });
const ASKED_WIDTH = bench({ question: { kind: 'length', size: 'leg.width', copy: 2 }, screen: { name: 'record', size: 'leg.width', copy: 2 } });
const SURE = bench({ question: { kind: 'yes or no', onYes: { kind: 'step done' } } });

function refusal(words: string, at: Bench = bench()): Extract<Request, { kind: 'not understood' }> {
  const request = parseRequest(words, at);
  if (request.kind !== 'not understood') throw new Error(`understood as ${JSON.stringify(request)}`);
  return request;
}

describe('a subject that could be several', () => {
  it('is asked for: long rail or short rail?', () => {
    expect(parseRequest('how long is the rail', bench())).toEqual({ kind: 'which', choices: [
      { say: 'long rail', request: { kind: 'size', size: 'longRail.length' } },
      { say: 'short rail', request: { kind: 'size', size: 'shortRail.length' } },
    ] });
  });

  it('is not asked for when something goes by the whole of the name', () => {
    expect(parseRequest('how wide is the rail', bench())).toEqual({ kind: 'size', size: 'rail.width' });
  });

  it('is asked for among joints and among parameters too', () => {
    const mortises = parseRequest('how deep is the leg mortise', bench());
    expect(mortises.kind === 'which' && mortises.choices.map(({ say }) => say)).toEqual(['long rail mortise', 'short rail mortise', 'side stretcher mortise', 'back stretcher mortise']);
    const overhangs = parseRequest('what is the overhang', bench());
    expect(overhangs.kind === 'which' && overhangs.choices.map(({ say }) => say)).toEqual(['overhang at the ends', 'overhang at the sides']);
  });

  it('is not read out as an endless list', () => {
    const file = JSON.parse(DEMO_TEXT) as PieceFile;
    const top = file.parts.find(({ id }) => id === 'top');
    if (!top) throw new Error('the demo piece has no top');
    const slats = ['first', 'odd', 'even', 'wide', 'narrow', 'left', 'right'].map((kind, index) => ({ ...top, id: `slat${index}`, name: `${kind} slat`, alsoCalled: [], sizes: { length: '12 in', width: '2 in', thickness: '1/2 in' } }));
    const slatted = bench({ state: { piece: loadSound(JSON.stringify({ ...file, parts: [...file.parts, ...slats] })) } });
    expect(refusal('how long is the slat', slatted).because).toContain('that may be 7 things');
    expect(parseRequest('how long is the odd slat', slatted)).toEqual({ kind: 'size', size: 'slat1.length' });
  });

  it('is asked for when a measurement is recorded, so that nothing is written down of the wrong part', () => {
    expect(parseRequest('record rail shoulders forty six inches', bench()).kind).toBe('which');
  });
});

describe('a dimension that was not said', () => {
  it('is asked for before anything is written down', () => {
    expect(parseRequest('record leg two three and a quarter', bench())).toEqual({ kind: 'which', choices: [
      { say: 'length', request: { kind: 'record', size: 'leg.length', copy: 2, length: inches(3.25) } },
      { say: 'width', request: { kind: 'record', size: 'leg.width', copy: 2, length: inches(3.25) } },
      { say: 'thickness', request: { kind: 'record', size: 'leg.thickness', copy: 2, length: inches(3.25) } },
    ] });
    expect(parseRequest('the long rail is forty six inches', bench()).kind).toBe('which');
  });

  it('is asked for before the pad is shown', () => {
    const asked = parseRequest('measure the top', bench());
    expect(asked.kind === 'which' && asked.choices.map(({ say }) => say)).toEqual(['length', 'width', 'thickness']);
  });
});

describe('an answer to an open question', () => {
  it.each([['short rail', 1], ['the short one', 1], ['two', 1], ['number two', 1], ['the second one', 1], ['the first', 0], ['long', 0], ['I mean the long rail', 0]])('“%s” chooses', (words, index) => {
    expect(parseRequest(words, WHICH_RAIL)).toEqual({ kind: 'choose', index });
  });

  it.each([['three and a sixteenth', 3.0625], ['it is three and one sixteenth inches', 3.0625], ['3 1/16', 3.0625], ['three', 3], ["that's three point one two five", 3.125], ['I get three and a quarter', 3.25]])('“%s” is the size asked for', (words, value) => {
    expect(parseRequest(words, ASKED_WIDTH)).toEqual({ kind: 'answer length', length: inches(value) });
  });

  it('is in the unit that the bench is set to', () => {
    const metric = bench({ question: { kind: 'length', size: 'leg.width' }, state: { settings: { ...ASKED_WIDTH.state.settings, rounding: { unit: 'millimetre', step: inches(1) } } } });
    expect(parseRequest('eighty two point five', metric)).toEqual({ kind: 'answer length', length: 82_500_000 });
  });

  it.each<[string, Request['kind']]>([['yes', 'yes'], ['that is right', 'yes'], ['no', 'no'], ['never mind', 'no']])('“%s” answers yes or no', (words, kind) => {
    expect(parseRequest(words, SURE)).toEqual({ kind });
  });

  it.each([WHICH_RAIL, ASKED_WIDTH, SURE])('gives way to a whole request', (asked) => {
    expect(parseRequest('how long is the top', asked)).toEqual({ kind: 'size', size: 'top.length' });
    expect(parseRequest('next', asked)).toEqual({ kind: 'next step' });
    expect(parseRequest('scratch that', asked)).toEqual({ kind: 'scratch that' });
  });

  it('that could mean two sizes is refused with both', () => {
    expect(refusal('twenty seven sixteenths', ASKED_WIDTH).because).toContain('1 and 11/16 or 20 and 7/16');
    expect(refusal('fifteen fifty', ASKED_WIDTH).because).toContain('two numbers');
  });
});

describe('a half sentence', () => {
  const onLegTwo = bench({ screen: { name: 'size', size: 'leg.width', copy: 2 } });
  it.each<[string, Request]>([
    ['and the thickness?', { kind: 'size', size: 'leg.thickness', copy: 2 }],
    ['what about leg three', { kind: 'size', size: 'leg.width', copy: 3 }],
    ['leg four?', { kind: 'size', size: 'leg.width', copy: 4 }],
    ['and the long rail', { kind: 'size', size: 'longRail.width' }],
    ['why', { kind: 'why', size: 'leg.width', copy: 2 }],
    ['record that', { kind: 'show', screen: { name: 'record', size: 'leg.width', copy: 2 } }],
  ])('“%s” stands on the size said last', (words, request) => {
    expect(parseRequest(words, onLegTwo)).toEqual(request);
  });

  it('records the size that the pad shows', () => {
    const pad = bench({ screen: { name: 'record', size: 'leg.width', copy: 2 } });
    expect(parseRequest('record three and a quarter', pad)).toEqual({ kind: 'record', size: 'leg.width', copy: 2, length: inches(3.25) });
  });

  it('withdraws the measurement made last', () => {
    expect(parseRequest('forget that measurement', TALKATIVE)).toEqual({ kind: 'withdraw measurement', size: 'leg.width', copy: 2 });
  });

  it('is refused with nothing to stand on', () => {
    expect(refusal('and the thickness?').because).toContain('needs its part');
    expect(refusal('why').because).toContain('no size was asked for yet');
    expect(refusal('forget that measurement').because).toContain('nothing has been measured');
    expect(refusal('three and a sixteenth').because).toContain('that is a size');
    expect(refusal('it is three and a sixteenth').because).toContain('asked for no size');
  });
});

describe('what is not understood', () => {
  it.each([
    ['how long is the banana', 'nothing in this piece is called “banana”'],
    ['leg nine width', 'there is no leg nine; this piece has four'],
    ['record the back right leg width three and a quarter', 'no leg has been put back right yet'],
    ['how deep is the leg', 'leg has no depth'],
    ['record leg two width twenty seven sixteenths', 'may be 1 and 11/16 or 20 and 7/16'],
    ['record leg two width sixteen banana', 'is no length'],
    ['go to step nine hundred', 'there is no step nine hundred'],
    ['stop the rest timer', 'no rest clock is running'],
    ['set the volume to eleven', 'from zero to ten'],
    ['divide sixty inches into five equal spaces with four parts of an inch', 'four parts have three gaps'],
    ['', 'heard nothing'],
    ['   ', 'heard nothing'],
    ['banana', 'I do not know what “banana” means'],
    ['word '.repeat(100), 'too much at once'],
  ])('“%s” is told why', (words, because) => {
    expect(refusal(words).because).toContain(because);
  });

  it.each([
    ['how long is the long nail', 'how long is the long rail'], ['how wide is the log', 'how wide is the leg'], ['what is the chuck', 'what is the check'], ['where am eye', 'where am i'], ['scrape that', 'scratch that'], ['start a thirty minute time', 'start a thirty minute timer'],
  ])('“%s” is answered with the nearest thing', (words, nearest) => {
    expect(refusal(words).nearest).toBe(nearest);
  });

  it('offers nothing when nothing is near', () => {
    expect(refusal('colourless green ideas sleep furiously').nearest).toBeUndefined();
  });

  it.each(['what grit before the first coat', 'how long have I been at it', 'where did I put the knife', 'what do I put on', 'how heavy is the leg'])('“%s” is about nothing that can be asked, and is offered nothing far-fetched', (words) => {
    expect(refusal(words).nearest).toBeUndefined();
  });

  it('needs a piece on the bench to know its names', () => {
    expect(refusal('how long is the long rail', bench({ state: { piece: null } })).because).toContain('no piece on the bench');
    expect(parseRequest('show the files', bench({ state: { piece: null } })).kind).toBe('show');
  });
});

describe('what can be said', () => {
  const screens = ['menu', 'step', 'steps', 'parts', 'reckoning', 'clocks', 'journal', 'settings', 'files', 'help', 'boards', 'cutting', 'buying'] as const;
  const benches: readonly Bench[] = [
    ...screens.map((name) => bench({ screen: { name } })),
    bench({ screen: { name: 'part', part: 'leg', copy: 2 } }), bench({ screen: { name: 'size', size: 'leg.width', copy: 2 } }), bench({ screen: { name: 'why', size: 'height' } }),
    WHICH_RAIL, SURE, ASKED_WIDTH,
  ].map((one) => ({ ...one, state: { ...one.state, measurements: [{ size: 'leg.width', length: inches(3.25) }] } }));

  it('is understood, on every screen and at every question', () => {
    for (const at of benches) {
      for (const words of whatCanBeSaid(at)) expect([at.conversation, words, parseRequest(words, at).kind]).not.toContain('not understood');
    }
  });

  it('is short, begins with the answers and differs from screen to screen', () => {
    for (const at of benches) expect(whatCanBeSaid(at).length).toBeLessThanOrEqual(20);
    expect(whatCanBeSaid(WHICH_RAIL).slice(0, 2)).toEqual(['long rail', 'short rail']);
    expect(whatCanBeSaid(bench({ screen: { name: 'clocks' } }))[0]).not.toBe(whatCanBeSaid(bench({ screen: { name: 'step' } }))[0]);
  });

  it('is still something without a piece', () => {
    const bare = bench({ state: { piece: null } });
    expect(whatCanBeSaid(bare).length).toBeGreaterThan(5);
    for (const words of whatCanBeSaid(bare)) expect([words, parseRequest(words, bare).kind]).not.toContain('not understood');
  });
});
