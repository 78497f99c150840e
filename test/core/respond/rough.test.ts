import { describe, expect, it } from 'vitest';
import { readRecord } from '../../../core/journal/record.ts';
import { allBlanks, takenPlan } from '../../../core/respond/cuttingState.ts';
import { freedBlanks } from '../../../core/stock/cutting.ts';
import { Session } from './session.ts';
import { taken } from './planned.ts';

const INCH = 25_400_000;
const blank = (session: Session, id: string) => allBlanks(session.bench.state).find((one) => one.id === id);

describe('what is left on parts in the rough', () => {
  it('is told side by side with what it is made of', () => {
    const session = Session.withDemo();
    expect(session.say('the rough size of the leg')).toBe('Leg layer, in the rough. Length thirty-three, and one quarter inches: thirty-two, and one quarter inches finished, one inch allowance. Width three, and three eighths inches: three, and one quarter inches finished, one eighth of an inch allowance. Thickness one, and one quarter inches: one, and one eighth inches finished, one eighth of an inch allowance.');
    expect(session.bench.conversation.screen).toEqual({ name: 'rough', part: 'leg' });
  });

  it('is set for layers, for boards of a panel and for one part, on every side', () => {
    const session = Session.withDemo();
    const [leg, top, rail] = ['leg', 'top', 'longRail'].map((id) => blank(session, id));
    for (const words of ['cut layers one quarter wider', 'cut layers one eighth thicker', 'cut panel boards one quarter wider', 'cut panel boards one sixteenth thicker', 'cut the long rails one half longer']) session.say(words);
    expect([blank(session, 'leg')?.width, blank(session, 'leg')?.thickness]).toEqual([(leg?.width ?? 0) + INCH / 4, (leg?.thickness ?? 0) + INCH / 8]);
    expect([blank(session, 'top')?.width, blank(session, 'top')?.thickness]).toEqual([(top?.width ?? 0) + INCH / 4, (top?.thickness ?? 0) + INCH / 16]);
    expect(blank(session, 'longRail')?.length).toBe((rail?.length ?? 0) + INCH / 2);
    expect(session.say('the rough size of the long rail')).toContain('one inch allowance and half an inch for this part');
    session.say('scratch that');
    expect(blank(session, 'longRail')?.length).toBe(rail?.length);
    expect(session.say('cut the long rails twenty inches longer')).toContain('not reckoned with');
  });

  it('lets a part hide a knot when it is told so, keeps it in the journal, and plans again where a plan was taken', () => {
    const session = taken(['new board ninety six by nine eight quarter', 'new board one hundred by nine']);
    const reply = session.say('the long rail may hide a knot');
    expect(reply).toContain('goes to its hidden face');
    expect(reply).toContain('The cutting plan is out of date: may hide a knot now: long rail. I plan anew.');
    expect(blank(session, 'longRail')?.mayHideDefect).toBe(true);
    for (const record of session.bench.records) expect(readRecord(JSON.parse(JSON.stringify(record)))).toEqual({ ok: true, value: record });
    session.say('the long rail must be clear');
    expect(blank(session, 'longRail')?.mayHideDefect).toBe(false);
  });
});

describe('faces at the saw', () => {
  it('says which face is the heart side, and that a knot goes to the hidden face, as soon as a part is free', () => {
    const session = taken(['the button may hide a knot', 'new board thirty by four eight quarter', 'the heart side is the other face', 'knot from zero to thirty', 'it is on the marked face only']);
    expect(session.say('tell me about board one')).toContain('The other face is the heart side.');
    const where = session.hearOut('where on board one');
    expect(where).toContain('the knot on the marked face goes to the hidden face');
    expect(where).toMatch(/^Board one\. The other face is the heart side\.( Button: [^.]*\.)+$/);
    const said = Array.from({ length: 12 }, () => session.say('cut')).find((one) => one.includes('write button'));
    expect(said).toContain('Button: the knot on the marked face goes to the hidden face. The other face is the heart side.');
  });
});

describe('resawing', () => {
  it('is allowed and forbidden by voice, told with its caution once for a board, and frees both blanks with one cut', () => {
    const session = taken(['resaw the thick boards', 'new board fifty three by six twelve quarter', 'trim zero off each end']);
    const cuts = takenPlan(session.bench.state)?.boards[0]?.cuts ?? [];
    expect(cuts.some(({ kind }) => kind === 'resaw')).toBe(true);
    const said = cuts.map(() => session.say('cut'));
    expect(said.filter((one) => one.includes('hold the piece upright'))).toHaveLength(1);
    expect(said.find((one) => one.includes('resaw the piece'))).toMatch(/at .* from its marked face, saw beyond the line\./);
    const taken_ = takenPlan(session.bench.state)?.boards[0];
    expect(taken_ && freedBlanks(taken_)).toHaveLength(taken_?.placed.length ?? -1);
    for (const record of session.bench.records) expect(readRecord(JSON.parse(JSON.stringify(record)))).toEqual({ ok: true, value: record });
    expect(session.say('do not resaw')).toBe('Boards are not resawn.');
    expect(session.say('a resaw takes three sixteenths')).toContain('three sixteenths of an inch');
  });
});
