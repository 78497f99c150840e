import { describe, expect, it } from 'vitest';
import { takenPlan } from '../../../core/respond/cuttingState.ts';
import { loadPiece } from '../../../core/piece/load.ts';
import { taken } from './planned.ts';
import { DEMO_TEXT, Session } from './session.ts';

const planned = () => taken(['new board ninety six by nine eight quarter', 'knot from thirty to thirty four', 'across one to two', 'sapwood one half', 'new board one hundred and twenty by ten', 'it tapers to nine', 'new board one hundred by nine and a half']);
const saved = (session: Session): string => session.request({ kind: 'save piece' }).file?.text ?? '';
const opened = (session: Session, text: string) => session.request({ kind: 'load piece', text, from: 'a file' });

describe('boards and plan in the piece file', () => {
  it('come onto another bench as they were, with what is cut already', () => {
    const here = planned();
    for (let cuts = 0; cuts < 4; cuts++) here.say('the cut is made');
    const there = new Session();
    expect(opened(there, saved(here)).say).toContain('of the file are on the rack. Its cutting plan is taken.');
    expect(new Map([...there.bench.state.rack].sort())).toEqual(new Map([...here.bench.state.rack].sort()));
    expect(takenPlan(there.bench.state)).toEqual(takenPlan(here.bench.state));
    expect(saved(there)).toBe(saved(here));
  });

  it('come with a plan that was made anew inside a board that split when it was begun', () => {
    const here = planned();
    const [begun] = takenPlan(here.bench.state)?.boards ?? [];
    here.say(`cut board ${String(begun?.board)}`);
    for (let cuts = 0; cuts < 3; cuts++) here.say('the cut is made');
    here.say(`board ${String(begun?.board)} has a split from fifty to sixty`);
    here.request({ kind: 'take plan' });
    const there = new Session();
    expect(opened(there, saved(here)).say).toContain('Its cutting plan is taken.');
    expect(takenPlan(there.bench.state)).toEqual(takenPlan(here.bench.state));
  });

  it('are not doubled on the bench that has them, nor brought back when they were used up or told otherwise since', () => {
    const session = planned();
    const text = saved(session);
    session.say('board one is used up');
    session.say('board two tapers to seven');
    const rack = session.bench.state.rack;
    opened(session, text);
    expect(session.entries.map(({ kind }) => kind)).toEqual(['piece loaded']);
    expect(session.bench.state.rack).toEqual(rack);
  });

  it('get the next number where another board has theirs', () => {
    const there = Session.withDemo();
    there.say('new board fifty by five');
    const here = Session.withDemo();
    here.say('new board ninety six by eight');
    expect(opened(there, saved(here)).say).toContain('There was a board one here already: that of the file is board two, mark it.');
    expect([...there.bench.state.rack.keys()]).toEqual([1, 2]);
  });

  it('with a fault leave everything as it is, and the fault says where and what to do', () => {
    const session = new Session();
    const here = Session.withDemo();
    here.say('new board ninety six by eight');
    for (const [right, wrong, said] of [['"length": "96 in"', '"length": "long"', 'length'], ['"width": "8 in"', '"width": "0 in"', 'width'], ['"board": 1', '"board": 0', 'number']] as const) {
      const text = saved(here).replace(new RegExp(`${right}(?![^]*${right})`), wrong);
      const reply = opened(session, text);
      expect(session.entries).toEqual([]);
      expect(reply.note).toMatch(new RegExp(`^line \\d+, column \\d+, \\$\\.boards\\[0\\].*${said}`));
    }
    const reply = opened(session, saved(here).replace(/\}\n$/, ', "plan": { "boards": 3 } }'));
    expect(reply.note).toMatch(/^line \d+, column \d+, \$\.plan: boards.* plan again\./);
  });

  it('are refused where the plan could not be cut: a part beyond its board, or one part across another', () => {
    const text = saved(planned());
    const file = JSON.parse(text) as { plan: { boards: { placed: { from: number; fromEdge: number }[] }[] } };
    const changed = (change: (placed: { from: number; fromEdge: number }[]) => void): string => {
      const copy = structuredClone(file);
      copy.plan.boards.forEach(({ placed }) => { if (placed.length > 1) change(placed); });
      return JSON.stringify(copy);
    };
    const far = changed((placed) => placed.forEach((blank) => { blank.from += 5_000_000_000; }));
    const across = changed((placed) => placed.forEach((blank) => { blank.from = 0; blank.fromEdge = 0; }));
    for (const [wrong, said] of [[far, 'reaches beyond board'], [across, 'no order of cuts']] as const) {
      const session = new Session();
      const reply = opened(session, wrong);
      expect(reply.note).toMatch(new RegExp(`\\$\\.plan: .*${said}.* plan again\\.`));
      expect(session.entries).toEqual([]);
    }
  });

  it('may be missing, as in every file of before', () => {
    expect(loadPiece(DEMO_TEXT).ok).toBe(true);
    expect(opened(new Session(), DEMO_TEXT).say).not.toContain('rack');
  });
});
