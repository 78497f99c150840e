import { describe, expect, it } from 'vitest';
import { exportBundle, importBundle } from '../../../core/journal/bundle.ts';
import { foldRecords } from '../../../core/journal/fold.ts';
import { stepsOf } from '../../../core/respond/views.ts';
import { Session } from './session.ts';

/** Legs told of, the best faces in front. */
function told(): Session {
  const session = Session.withDemo();
  for (const words of ['leg one best A hide C', 'leg two show A and B hide D', 'leg three best D hide B', 'leg four hide C and D']) session.say(words);
  return session;
}

const placed = (): Session => {
  const session = told();
  session.say('place them');
  session.say('take it');
  return session;
};

describe('telling which faces are liked', () => {
  it('is read back and written down, one act for all that was said at once', () => {
    const session = Session.withDemo();
    expect(session.say('leg two show A and B, hide C')).toBe('Leg two: show A and B; hide C.');
    expect(session.entries).toEqual([{ kind: 'faces liked', part: 'leg', copy: 2, faces: ['A', 'B'], as: 'show' }, { kind: 'faces liked', part: 'leg', copy: 2, faces: ['C'], as: 'hide' }]);
    expect(session.bench.state.likes.get('leg/2')).toEqual({ faces: { A: { wish: 'show' }, B: { wish: 'show' }, C: { wish: 'hide' } } });
    expect(session.say('scratch that')).toBe('Scratched: leg two, show A and B and leg two, hide C.');
    expect(session.bench.state.likes.get('leg/2')).toBeUndefined();
    session.say('put it back');
    expect(session.bench.state.likes.get('leg/2')?.faces.C).toEqual({ wish: 'hide' });
  });

  it('goes on about the leg last spoken of', () => {
    const session = Session.withDemo();
    session.say('leg two face A is the best');
    expect(session.say('hide C')).toBe('Leg two: best A; hide C.');
    expect(session.say('arch up')).toBe('Leg two: arches to the numbered end.');
    expect(session.say('grain down')).toBe('Leg two: the other end up.');
    expect(session.say('hide C')).toMatch(/^Leg two is so already/);
    expect(session.entries).toEqual([]);
  });

  it.each([
    ['leg two show all four faces', /^Leg two: only two faces, side by side, show.*Nothing was written down\.$/],
    ['leg five show A', /there is no leg five/i],
    ['leg two show A hide A', /told twice/],
    ['long rail one arch up', /^A long rail lies/],
    ['long rail one show A and C', /only one side shows/],
    ['button two show A', /names no places for the button/],
    ['board nine arch up', /^The top has six boards; there is no board nine\.$/],
  ])('%s is answered in plain words and nothing is lost', (words, answer) => {
    const session = told();
    const before = session.bench.state;
    expect(session.say(words)).toMatch(answer);
    expect(session.entries).toEqual([]);
    expect(session.bench.state).toBe(before);
  });
});

describe('placing the legs by their faces', () => {
  it('proposes, says what is as good, and writes nothing', () => {
    const session = told();
    expect(session.hearOut('place the legs')).toMatch(/^Leg (?:one|three) front left, face [A-D] to the front.*Say the words take it, or ask for the second best\.$/);
    expect(session.entries).toEqual([]);
    expect(session.bench.conversation.screen).toEqual({ name: 'faces', part: 'leg', shows: 'best' });
    expect(Session.withDemo().say('place the legs')).toMatch(/Nothing was told of the legs yet, so any way is as good\./);
  });

  it('says of the second best why it lost', () => {
    const session = told();
    session.say('place them');
    expect(session.say('second best and why')).toMatch(/^Second best: legs? .* (?:changed over|turned .*|back .*|front .*); (?:it hides face|face|it shows face|the )/);
    expect(session.bench.conversation.screen).toMatchObject({ shows: 'second' });
    expect(Session.withDemo().say('second best')).toBe('There is no second best: by what was told, every way is as good.');
  });

  it('takes what is on the screen in one act that can be taken back, and stands in the export', () => {
    const session = placed();
    expect(session.entries).toMatchObject([{ kind: 'legs assigned', part: 'leg', legs: [{ copy: 1 }, { copy: 2 }, { copy: 3 }, { copy: 4 }] }]);
    expect([...session.bench.state.places.values()].sort()).toEqual(['back left', 'back right', 'front left', 'front right']);
    expect(session.bench.state.turns.size).toBe(4);
    const read = importBundle(exportBundle(session.bench.records, session.bench.state, session.now));
    expect(read.ok && [read.value.state.turns, read.value.state.likes]).toEqual([session.bench.state.turns, session.bench.state.likes]);
    expect(foldRecords(session.bench.records).turns).toEqual(session.bench.state.turns);
    expect(session.say('scratch that')).toMatch(/^Scratched: leg one /);
    expect(session.bench.state.turns.size).toBe(0);
  });

  it('proposes nothing new once they stand so, and takes nothing that is not proposed', () => {
    const session = placed();
    expect(session.say('place them')).toMatch(/They stand so already\.$/);
    expect(session.say('take it')).toBe('They stand so already.');
    expect(Session.withDemo().say('take it')).toBe('Nothing is proposed on the screen. Have me place them first.');
  });

  it('follows what counts first', () => {
    const session = Session.withDemo();
    session.say('leg one best A');
    session.say('leg one faces A and C have glue lines');
    expect(session.say('glue lines first')).toMatch(/^What counts, first to last: glue lines stay off the front; faces to hide are hidden/);
    session.say('place them');
    session.say('take it');
    expect(session.bench.state.turns.get('leg/1')?.front === 'A' && session.bench.state.places.get('leg/1')?.startsWith('front')).toBe(false);
    expect(session.say('the usual order')).toMatch(/^What counts, first to last: faces to hide are hidden/);
  });

  it('asks before it turns a leg that has its mortises already', () => {
    const session = placed();
    for (const step of stepsOf(session.bench.state).filter(({ operation }) => operation === 'joint layout')) session.note({ kind: 'step done', step: step.id });
    session.say('leg one hide A');
    session.say('leg one best C');
    session.say('place them');
    expect(session.say('take it')).toMatch(/mortises marked or chopped already, and would take them in other faces\. Take it all the same\?$/);
    expect(session.entries).toEqual([]);
    session.say('yes');
    expect(session.entries).toMatchObject([{ kind: 'legs assigned' }]);
  });

  it('by hand: leg three goes back left, face A to the front', () => {
    const session = Session.withDemo();
    expect(session.say('leg three goes back left, face A to the front')).toBe('Leg three is back left, face A to the front; mortises in A and D, gauged from B and C.');
    expect(session.entries).toEqual([{ kind: 'legs assigned', part: 'leg', legs: [{ copy: 3, place: 'back left', turn: { front: 'A', up: 'numbered' } }] }]);
    expect(session.say('what are the faces of leg three')).toMatch(/^Leg three, back left: nothing told\. Face A to the front; mortises in A and D/);
    session.say('leg three is front left');
    // In another place nobody has said yet how it is turned.
    expect(session.bench.state.turns.has('leg/3')).toBe(false);
  });

  it('rails too: their best side outside, at the front', () => {
    const session = Session.withDemo();
    session.say('long rail two best C');
    expect(session.say('place the long rails')).toMatch(/^Long rail two front, face C outside; long rail one back/);
  });
});

describe('each leg by its own map', () => {
  /** At the chopping of leg two's mortises for the long rail, all legs placed. */
  function atLegTwo(): Session {
    const session = Session.withDemo();
    for (const words of ['leg one goes front left, face A to the front', 'leg two goes front right, face A to the front', 'leg three goes back right, face C to the front', 'leg four goes back left, face A to the front']) session.say(words);
    session.note({ kind: 'went to step', step: 'chop mortises/leg/2/longRailTenon' });
    return session;
  }

  it('tells where the mortises go in that leg\'s faces', () => {
    expect(atLegTwo().hearOut('where do the mortises go on leg two')).toMatch(/^Leg two\. Long rail mortise, in face B: from .* Short rail mortise, in face C: /);
  });

  it('says at the step which face, and which legs have no place yet', () => {
    const session = atLegTwo();
    expect(session.say('where am I')).toMatch(/Leg two in face B, gauged from A\./);
    session.note({ kind: 'went to step', step: 'joint layout/leg/longRailTenon' });
    expect(session.say('where am I')).toMatch(/Legs one and three in face D, gauged from A; leg two in face B, gauged from A; leg four in face D, gauged from C\./);
    const open = Session.withDemo();
    open.note({ kind: 'went to step', step: 'joint layout/leg/longRailTenon' });
    expect(open.say('where am I')).toMatch(/Which leg goes where, and which way it faces, is not settled yet: have me place the legs\./);
  });

  it('catches a mark for the other hand, and a leg that is turned another way, but not one that is the same', () => {
    const session = atLegTwo();
    expect(session.say('where do the mortises go on leg one')).toMatch(/^That mark is for the other hand: leg two, at hand, takes its mortises in B and C; leg one in C and D\. Leg one\. /);
    const same = Session.withDemo();
    for (const words of ['leg one goes front left, face A to the front', 'leg two goes front right, face A to the front']) same.say(words);
    same.note({ kind: 'went to step', step: 'chop mortises/leg/2/longRailTenon' });
    expect(same.say('where do the mortises go on leg two')).toMatch(/^Leg two\./);
    // Nobody said how leg three stands: nothing can be wrong with it.
    expect(same.say('where do the mortises go on leg three')).toMatch(/^Leg three\./);
    same.note({ kind: 'went to step', step: 'ease edges/leg' });
    expect(same.say('where do the mortises go on leg one')).toMatch(/^Leg one\./);
  });

  it('asks before something measured on another leg than the one at hand is written down', () => {
    const session = atLegTwo();
    expect(session.say('leg one is three and a quarter wide')).toMatch(/^That mark is for the other hand: .* Is it leg one, width, that measures three, and one quarter inches\?$/);
    expect(session.entries).toEqual([]);
    session.say('yes');
    expect(session.entries).toMatchObject([{ kind: 'measured', measurement: { size: 'leg.width', copy: 1 } }]);
    session.say('leg two is three and a quarter wide');
    expect(session.entries).toMatchObject([{ kind: 'measured', measurement: { copy: 2 } }]);
  });
});

describe('the boards of the top', () => {
  it('arch by turns but for what was told, and one that cannot is named', () => {
    const session = Session.withDemo();
    expect(session.say('which way do the boards arch')).toMatch(/board one up, board two down, .* They go by turns, one up, one down\.$/);
    session.say('board two arch up');
    expect(session.say('board three arch up')).toMatch(/Board three arches as its neighbour does, because you want it so\.$/);
    expect(session.bench.state.arches.get('top/3')).toBe('up');
    session.say('board three either way');
    expect(session.bench.state.arches.has('top/3')).toBe(false);
  });
});
