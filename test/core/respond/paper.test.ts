import { describe, expect, it } from 'vitest';
import { Session } from './session.ts';

describe('sheets, asked for by voice', () => {
  it('are counted before any paper is used', () => {
    const session = Session.withDemo();
    expect(session.say('how many sheets for the rod')).toMatch(/^The rod takes \w+ sheets of letter paper, joined/);
    expect(session.bench.conversation.screen).toEqual({ name: 'paper', sheet: { what: 'rod' } });
    expect(session.say('how many sheets for the leg')).toMatch(/^The layout of the leg takes/);
  });

  it('go to the printer or into a file', () => {
    const session = Session.withDemo();
    session.say('print the layout of the leg');
    expect(session.bench.conversation.lastReply?.paper).toEqual({ to: 'printer', sheet: { what: 'layout', part: 'leg' } });
    session.say('save it');
    expect(session.bench.conversation.lastReply?.paper).toEqual({ to: 'file', sheet: { what: 'layout', part: 'leg' } });
    expect(session.entries).toEqual([]);
  });

  it('follow the paper that is in the printer', () => {
    const session = Session.withDemo();
    session.say('use a four paper');
    expect(session.bench.state.settings.paper).toBe('a4');
    expect(session.say('how many sheets for the cut list')).toBe('The cut list takes one sheet of A4 paper.');
  });

  it('are refused without a piece, for a part without marks, and when nothing is chosen, with what to do', () => {
    expect(new Session().say('how many sheets for the rod')).toMatch(/No piece is on the bench/);
    const session = Session.withDemo();
    expect(session.say('print the layout of the top')).toMatch(/Nothing is marked on the top/);
    expect(session.bench.conversation.lastReply?.paper).toBeUndefined();
    expect(session.say('print it')).toMatch(/layout of each part, the rod.*Which\?$/);
  });
});

describe('a print that is measured', () => {
  it('is told how far off it is over the longest size, each way, and what to do', () => {
    const session = Session.withDemo();
    // 0.8 mm in 100 over 49 1/2 in, the longest part with a 60 in top put aside by the sheet shown: 10.06 mm.
    session.say('how many sheets for the long rail');
    const said = session.say('the bar measures ninety nine point two millimeters');
    expect(said).toMatch(/By the bar of one hundred millimetres\. Across, the print is too small by thirteen thirty-seconds of an inch, scant over forty-nine, and a half inches; the factor is one point zero zero eight one\. Not true: print again at 100 percent/);
    expect(said).toMatch(/Measure the one upright as well/);
  });

  it('may be off in one direction alone', () => {
    const said = Session.withDemo().say('the bars measure one hundred millimeters across and one hundred one millimeters upright');
    expect(said).toMatch(/Upright, the print is too large.*The other way it is true/);
  });

  it('is true as near as a rule is read, and told what that leaves', () => {
    expect(Session.withDemo().say('the bars measure four inches by four inches')).toMatch(/By the bar of four inches, true to size.*it may still be one eighth of an inch, scant off/);
  });

  it('of neither bar is refused', () => {
    expect(Session.withDemo().say('the bar measures six inches')).toMatch(/Neither bar is near six inches/);
  });
});

describe('the chopping, stage by stage', () => {
  const atTheMortise = (): Session => {
    const session = Session.withDemo();
    session.request({ kind: 'go to step', step: 'chop mortises/leg/1/longRailTenon' });
    return session;
  };

  it('is led through by next, back, a number and say again, and the step stays where it is', () => {
    const session = atTheMortise();
    expect(session.say('show me the stages')).toMatch(/^Long rail mortise, \w+ stages\. Stage one\. Knife the ends at one inch/);
    expect(session.say('next')).toMatch(/^Stage two\. Flag the chisel/);
    expect(session.say('next')).toMatch(/^Stage three\. Pass one/);
    expect(session.say('say again')).toMatch(/^Stage three\. Pass one/);
    expect(session.say('back')).toMatch(/^Stage two/);
    expect(session.say('stage four')).toMatch(/^Stage four\. Pass two/);
    expect(session.bench.state.currentStep).toBe('chop mortises/leg/1/longRailTenon');
    expect(session.entries).toEqual([]);
  });

  it('keeps its place while other things are asked', () => {
    const session = atTheMortise();
    session.say('stage three');
    expect(session.say('how deep')).toMatch(/one, and thirteen sixteenths inches/);
    expect(session.bench.conversation.screen).toMatchObject({ name: 'chopping', stage: 3 });
    session.say('how long is the long rail');
    expect(session.say('back to the chopping')).toMatch(/^Stage three/);
    expect(session.say('next')).toMatch(/^Stage four/);
  });

  it('ends with the last stage, and says what comes then', () => {
    const session = atTheMortise();
    session.say('show me the stages');
    let said = '';
    for (let count = 0; count < 40 && !said.startsWith('That was the last stage'); count++) said = session.say('next');
    expect(said).toMatch(/That was the last stage.*tell me when it is done/);
    expect(session.say('stage ninety')).toMatch(/There is no stage ninety/);
  });

  it('of the next leg begins anew', () => {
    const session = atTheMortise();
    session.say('stage five');
    session.request({ kind: 'go to step', step: 'chop mortises/leg/2/longRailTenon' });
    expect(session.say('back to the chopping')).toMatch(/Stage one/);
  });

  it('elsewhere, next is the next step', () => {
    const session = Session.withDemo();
    session.say('next');
    expect(session.bench.conversation.screen.name).toBe('step');
  });
});
