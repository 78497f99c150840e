import { describe, expect, it } from 'vitest';
import { whatCanBeSaid } from '../../../core/talk/sayable.ts';
import { DEMO_TEXT, Session } from '../respond/session.ts';
import { inches } from './shop.ts';

/** A bench with the demo piece, at a step when one is named. */
function at(step?: string): Session {
  const session = Session.withDemo();
  if (step !== undefined) session.request({ kind: 'go to step', step });
  return session;
}

describe('asking for the joints at the bench', () => {
  it('where the mortises go: each along the leg, with its reference', () => {
    const say = at().hearOut('where do the mortises go on leg two');
    expect(say).toMatch(/^Leg two\. Long rail mortise: from one inch to four, and a half inches, from the top end\./);
    expect(say).toMatch(/Back stretcher mortise, only back left and back right:/);
    expect(at().hearOut('where do the mortises go')).toMatch(/Back stretcher mortise, only back left and back right: from nineteen, and three quarters inches/);
  });

  it('of a leg that was put in its place, only those that it has there', () => {
    const session = at();
    session.say('leg two is front right');
    expect(session.hearOut('where do the mortises go on leg two')).not.toMatch(/back stretcher/i);
    session.say('leg one is back left');
    expect(session.hearOut('where do the mortises go on leg one')).toMatch(/ Back stretcher mortise: from nineteen/);
  });

  it('shows no more figures than fit large, and the others in a line', () => {
    const leg = at().request({ kind: 'marks', part: 'leg' });
    expect(leg.screen).toMatchObject({ result: { answers: [{ label: 'long rail', length: inches(1) }, { label: 'short rail' }, { label: 'side stretcher' }, { label: 'back stretcher' }], note: expect.stringMatching(/^They end: long rail 4 1\/2 in, .*From the top end\.$/) as string } });
    const rail = at().request({ kind: 'marks', part: 'longRail' });
    expect(rail.screen).toMatchObject({ result: { answers: [{ label: 'first shoulder' }, { label: 'second shoulder' }, { label: 'haunch end' }], note: expect.stringMatching(/^outer cheek 3\/8 in, .*groove depth 3\/8 in$/) as string } });
  });

  it('where one starts and ends', () => {
    expect(at().say('where does the long rail mortise start')).toBe('Leg, long rail mortise, start, one inch from the top end.');
    expect(at().say('where does the back stretcher mortise end')).toBe('Leg, back stretcher mortise, end, twenty-one, and three quarters inches from the top end.');
  });

  it('all of one: face, ends, sides and depth', () => {
    expect(at().say('where is the short rail mortise')).toBe('Leg, short rail mortise, in the face towards the short rail: from one inch to four, and a half inches, from the top end; sides five eighths of an inch and one, and one eighth inches, from the outer face; one, and thirteen sixteenths inches deep; depth of the haunch socket, half an inch deep.');
    expect(at().say('where is the long rail tenon')).toMatch(/^Long rail, long rail tenon: shoulders one, and three quarters inches and forty-seven, and three quarters inches, from one end; cheeks three eighths/);
  });

  it('at a step, without naming the joint', () => {
    const session = at('chop mortises/leg/2/sideStretcherTenon');
    expect(session.say('how deep')).toBe('Leg, side stretcher mortise, depth, one, and thirteen sixteenths inches from the face that is chopped.');
    expect(session.say('which chisel')).toBe('For the side stretcher mortise, the chisel that measures half an inch; set the mortise gauge to it.');
    expect(session.say('how do I chop it')).toMatch(/^Side stretcher mortise, from twenty-three, and three quarters inches to twenty-five/);
    expect(session.say('where do the mortises go')).toMatch(/^Leg two\./);
  });

  it('asks which when several could be meant', () => {
    const session = at();
    expect(session.say('which chisel')).toMatch(/^Which mortise: /);
    expect(session.say('long rail mortise')).toMatch(/^For the long rail mortise/);
  });

  it('how to chop: start, passes, bevel, levering and strop, and the cautions on the screen', () => {
    const session = at();
    const said = session.hearOut('how do I chop the long rail mortise');
    const { screen } = session.bench.conversation;
    for (const words of [/Flag the chisel at one, and thirteen sixteenths/, /Each from the middle, two, and three quarters inches, to the far end/, /Five passes of three eighths/, /turn the bevel/, /Lever from the second pass/, /Strop after passes two and four/]) expect(said).toMatch(words);
    expect(screen).toMatchObject({ name: 'reckoning', result: { answers: [{ length: inches(1) }, { length: inches(11, 4) }, { length: inches(9, 2) }, { length: inches(29, 16) }], note: expect.stringMatching(/[Ee]ye protection/) as string } });
    expect(session.entries).toEqual([]);
  });

  it('the step itself tells passes, bevel, levering and strop', () => {
    const session = at('chop mortises/leg/2/longRailTenon');
    expect(session.hearOut('tell me more')).toMatch(/In five passes, go from the middle to one end, turn the bevel, then to the other, staying off both end lines\. Lever from the second pass on, and strop after two and four\. Then trim the ends upright\. Chop the socket of the haunch last, half an inch deep, and saw its sides first\.$/);
  });

  it('how long the tenon could be, and how strong the joint is, as guidance and no approval', () => {
    expect(at().say('how long can the long rail tenon be')).toMatch(/two, and twenty-five thirty-seconds inches with a square end.*mitred ends, two, and nine sixteenths/);
    expect(at().say('how strong is the long rail tenon')).toMatch(/not an approval; local codes/);
  });

  it('that a tenon is too long for its neighbour', () => {
    const session = at();
    for (const [key, length] of [['shortRailTenon.tenonLength', inches(5, 2)], ['longRailTenon.tenonLength', inches(5, 2)]] as const) session.request({ kind: 'record', size: key, length, sure: true });
    // It has to stop at 3 1/4 - 1 1/8 - 1/8 - 1/16, which is 1 15/16.
    expect(session.request({ kind: 'longest tenon', joint: 'longRailTenon' })).toMatchObject({ signal: 'wrong', say: expect.stringMatching(/and would hit: nine sixteenths of an inch too long\.$/) as string });
  });

  it('what can be asked stands on the help at the chopping step', () => {
    expect(whatCanBeSaid(at('chop mortises/leg/2/longRailTenon').bench).slice(0, 3)).toEqual(['show me the stages', 'how do I chop it', 'which chisel']);
  });

  it('what the joint should be by the book, with the range that is published and where the plan differs', () => {
    const say = at().hearOut('what should the long rail tenon be');
    expect(say).toMatch(/^Long rail tenon, by the book: three eighths of an inch thick, from the chisel nearest to a third; top shoulder one inch; bottom shoulder one quarter of an inch; haunch three eighths of an inch; longest tenon/);
    expect(say).toMatch(/[Pp]ublished from five sixteenths of an inch to five eighths of an inch/);
    expect(say).toMatch(/Your plan has mortise width half an inch, bottom shoulder half an inch, outer shoulder three eighths of an inch and haunch half an inch\.$/);
  });

  it('that no owned chisel fits', () => {
    const session = new Session();
    session.request({ kind: 'load piece', text: DEMO_TEXT.replace(/"chisels": \[[^\]]*\]/, '"chisels": ["1/8 in"]'), from: 'the demo' });
    expect(session.request({ kind: 'joint by the book', joint: 'longRailTenon' })).toMatchObject({ signal: 'wrong', say: expect.stringMatching(/^No chisel of yours is between five sixteenths of an inch and five eighths/) as string });
    expect(session.request({ kind: 'which chisel', joint: 'longRailTenon' })).toMatchObject({ signal: 'wrong', say: expect.stringMatching(/^No chisel of yours is half an inch wide/) as string });
  });

  it('how to bevel the foot, and where the plane stops', () => {
    expect(at().hearOut('how do I bevel the foot')).toMatch(/^Leg, foot bevel, one quarter of an inch from the bottom end on all sides.*plane from each corner to the middle, one, and five eighths inches/);
    expect(at().say('how do I bevel the top')).toBe('That part has no bevelled foot.');
  });

  it('follows what was measured', () => {
    const session = at();
    session.request({ kind: 'record', size: 'longRail.thickness', length: inches(19, 16) });
    expect(session.say('where is the long rail mortise')).toMatch(/sides nineteen thirty-seconds of an inch and one, and three thirty-seconds inches/);
  });

  it('refuses what is no joint, no part, no copy, or no piece, in a sentence', () => {
    for (const request of [{ kind: 'marks', part: 'drawer' }, { kind: 'marks', part: 'leg', copy: 9 }, { kind: 'marks', part: 'button' }, { kind: 'which chisel', joint: 'longRailButtons' }, { kind: 'foot bevel', part: 'top' }] as const) {
      expect(at().request(request)).toMatchObject({ signal: 'wrong', say: expect.stringMatching(/\.$/) as string });
    }
    expect(new Session().request({ kind: 'marks' }).say).toMatch(/No piece is on the bench/);
  });
});
