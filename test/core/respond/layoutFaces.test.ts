import { beforeEach, describe, expect, it } from 'vitest';
import { Session } from './session.ts';

let session: Session;
const screen = (): unknown => session.bench.conversation.screen;

beforeEach(() => {
  session = Session.withDemo();
  session.say('leg one goes front left, face A to the front');
  session.say('leg two goes front right, face B to the front');
});

describe('the layout on the screen', () => {
  it('of one leg is shown a face at a time, each with the letters of that leg', () => {
    expect(session.hearOut('show me the layout of leg two')).toBe('Leg two, face C, towards the long rail, first of two faces. Top end to the left, face B, outer above. '
      + 'Long rail mortise: from one inch to four, and a half inches, from the top end; sides five eighths of an inch and one, and one eighth inches, from the outer face, B; one, and thirteen sixteenths inches deep; depth of the haunch socket, half an inch deep. '
      + 'Foot bevel: one quarter of an inch from the bottom end.');
    expect(screen()).toEqual({ name: 'layout', part: 'leg', copy: 2, face: 1 });
    expect(session.say('next face')).toMatch(/^Leg two, face D, towards the short rail and the side stretcher, second of two faces\. Top end to the left, face A, outer below\./);
    session.say('the other face');
    expect(screen()).toEqual({ name: 'layout', part: 'leg', copy: 2, face: 1 });
    session.say('face before');
    expect(screen()).toEqual({ name: 'layout', part: 'leg', copy: 2, face: 2 });
  });

  it('goes on to the next leg, from the last to the first again', () => {
    session.say('layout of leg four');
    session.say('next copy');
    expect(screen()).toEqual({ name: 'layout', part: 'leg', copy: 1, face: 1 });
    expect(session.say('next leg')).toMatch(/^Leg two, face C/);
    session.say('next long rail');
    expect(screen()).toEqual({ name: 'layout', part: 'longRail', copy: 1, face: 1 });
  });

  it('goes to the face that is named, and says where nothing is marked', () => {
    session.say('show the layout of leg one');
    expect(session.say('turn it to face C')).toMatch(/^Leg one, face C, towards the short rail/);
    expect(session.say('to face A')).toBe('Nothing is marked on face A; there is on D and C.');
    expect(session.say('layout of face D of leg one')).toMatch(/^Leg one, face D, towards the long rail/);
    expect(session.say('show the layout of leg three face D')).toBe('Which way it faces is not settled yet, so its faces have no letters.');
  });

  it('of what is at hand is that of the first leg that stands, open at the face of the joint that the step lays out', () => {
    expect(session.say('show the layout')).toMatch(/^Leg one, face D, towards the long rail/);
    session.note({ kind: 'went to step', step: 'joint layout/leg/shortRailTenon' });
    session.say('where am i');
    expect(session.say('show the layout')).toMatch(/^Leg one, face C, towards the short rail and the side stretcher, second of two faces/);
  });

  it('says when the leg on the screen is of the other hand than the one that is being chopped', () => {
    session.note({ kind: 'went to step', step: 'chop mortises/leg/1/longRailTenon' });
    const reply = session.say('show the layout of leg two');
    expect(reply).toMatch(/^That mark is for the other hand: leg one, at hand/);
  });

  it('is printed as it is shown', () => {
    session.say('show the layout of leg two');
    session.say('print it');
    expect(screen()).toEqual({ name: 'paper', sheet: { what: 'layout', part: 'leg', copy: 2 } });
    session.say('show the layout of leg one on paper');
    expect(screen()).toEqual({ name: 'paper', sheet: { what: 'layout', part: 'leg', copy: 1 } });
  });

  it('of a part without marks is refused, and so is a leg that there is not', () => {
    expect(session.say('show the layout of the top')).toBe('Nothing is marked on the top: there is no layout to draw.');
    expect(session.request({ kind: 'layout face', part: 'leg', copy: 7 }).say).toBe('There is no leg 7; this piece has 4.');
  });
});
