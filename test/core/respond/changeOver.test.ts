import fc from 'fast-check';
import { beforeEach, describe, expect, it } from 'vitest';
import { FACES } from '../../../core/faces/face.ts';
import { stepsOf } from '../../../core/respond/views.ts';
import { Session } from './session.ts';

let session: Session;
const stands = (copy: number): unknown => [session.bench.state.places.get(`leg/${copy}`), session.bench.state.turns.get(`leg/${copy}`)?.front];

/** All legs placed, each with face A to the front. */
function placeAll(): void {
  for (const words of ['leg one goes front left, face A to the front', 'leg two goes front right, face A to the front', 'leg three goes back left, face A to the front', 'leg four goes back right, face A to the front']) session.say(words);
}

beforeEach(() => {
  session = Session.withDemo();
});

describe('two legs change over', () => {
  beforeEach(placeAll);

  it('across the diagonal each is turned half round, and its mortises stay in their faces but for those that only the back has', () => {
    expect(session.say('change over leg one and leg four')).toBe('Changed over: leg one back right, face C to the front; leg four front left, face C to the front. '
      + 'Their mortises stay in the same faces. Leg one takes the back stretcher now; leg four no longer takes the back stretcher.');
    expect([stands(1), stands(4)]).toEqual([['back right', 'C'], ['front left', 'C']]);
    expect(session.entries).toHaveLength(1);
    expect(session.say('scratch that')).toMatch(/^Scratched: leg one back right, face C to the front; leg four front left/);
    expect([stands(1), stands(4)]).toEqual([['front left', 'A'], ['back right', 'A']]);
  });

  it('to the other hand they take their mortises in other faces, and that is said', () => {
    const said = session.say('swap legs one and two');
    expect(said).toMatch(/^Changed over: leg one front right, .*leg two front left, .*\. Leg one: mortises in .*\. Leg two: mortises in /);
    expect(said).not.toMatch(/stretcher|stay/);
  });

  it('however it is said, and by their places', () => {
    for (const words of ['change leg two and leg three over', 'leg two and leg three change places', 'swap leg two for leg three', 'change legs two and three over', 'leg two changes places with leg three', 'swap the front right leg and the back left leg']) {
      session = Session.withDemo();
      placeAll();
      session.say(words);
      expect([session.bench.state.places.get('leg/2'), session.bench.state.places.get('leg/3')], words).toEqual(['back left', 'front right']);
    }
  });

  it('is asked about first when mortises are marked, and then keeps as many of them as it can', () => {
    for (const step of stepsOf(session.bench.state).filter(({ operation, part }) => operation === 'joint layout' && part === 'leg')) session.note({ kind: 'step done', step: step.id });
    expect(session.say('swap leg one and leg four')).toMatch(/^Legs one and four have mortises marked or chopped already, and would take them in other faces\. .*Leg one takes the back stretcher now.* Change them over all the same\?$/);
    expect(session.entries).toEqual([]);
    expect(stands(1)).toEqual(['front left', 'A']);
    session.say('yes');
    expect([stands(1), stands(4)]).toEqual([['back right', 'C'], ['front left', 'C']]);
  });

  it('says when a face that is to be hidden would show', () => {
    session.say('leg one hide C');
    session.say('leg one best A');
    const said = session.say('swap leg one and leg two');
    // On another corner it can be turned so that its best face is still in front.
    expect(said).not.toMatch(/worse/);
    session.say('leg two show A and B');
    session.say('leg two best A');
    expect(session.bench.state.turns.get('leg/1')?.front).toBe('A');
    expect(session.hearOut('swap leg one and leg four')).toMatch(/By what was told it is worse: face A of leg one, its best, does not come to the front\.$/);
  });

  it('never leaves two legs in one place, or a leg in none, and changed over again all stand where they stood', () => {
    fc.assert(fc.property(fc.array(fc.tuple(fc.integer({ min: 1, max: 4 }), fc.integer({ min: 1, max: 4 })), { maxLength: 6 }), fc.constantFrom(...FACES), (swaps, front) => {
      session = Session.withDemo();
      placeAll();
      session.say(`leg one goes front left, face ${front} to the front`);
      for (const [copy, other] of swaps) session.request({ kind: 'change over', part: 'leg', copy, with: other });
      expect([1, 2, 3, 4].map((copy) => session.bench.state.places.get(`leg/${copy}`)).sort()).toEqual(['back left', 'back right', 'front left', 'front right']);
      expect([1, 2, 3, 4].every((copy) => session.bench.state.turns.get(`leg/${copy}`)?.up === 'numbered')).toBe(true);
      const before = new Map(session.bench.state.places);
      for (let time = 0; time < 2; time++) session.request({ kind: 'change over', part: 'leg', copy: 1, with: 3 });
      expect(new Map(session.bench.state.places)).toEqual(before);
    }), { numRuns: 15 });
  });
});

describe('what cannot change over', () => {
  it('a leg that stands nowhere, one that there is not, a leg with itself, or a leg and a rail', () => {
    session.say('leg one goes front left, face A to the front');
    expect(session.say('swap leg one and leg two')).toBe('Leg two has no place yet, so there is nothing to change over.');
    expect(session.request({ kind: 'change over', part: 'leg', copy: 1, with: 7 }).say).toBe('There is no leg seven: this piece has four.');
    expect(session.say('swap leg one and leg one')).toMatch(/^Two different legs change over/);
    expect(session.say('swap leg one and long rail two')).toMatch(/^Only two of one part change over\./);
    expect(session.entries).toEqual([]);
  });

  it('legs with places but no turn yet change their places only; rails change over too', () => {
    session.say('leg one is front left');
    session.say('leg two is back right');
    expect(session.say('swap leg one and leg two')).toBe('Leg one goes back right; leg two goes front left. Which way they face is not settled.');
    session.say('long rail one goes front, face A outside');
    session.say('long rail two goes back, face B outside');
    session.say('long rail two goes back, face C outside');
    expect(session.say('change over long rail one and long rail two')).toBe('Changed over: long rail one back, face A outside; long rail two front, face C outside.');
  });
});
