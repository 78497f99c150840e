import { describe, expect, it } from 'vitest';
import { allBlanks, partsRough } from '../../../core/respond/cuttingState.ts';
import { outOfDate } from '../../../core/respond/outOfDate.ts';
import { taken } from './planned.ts';
import { DEMO_TEXT, Session } from './session.ts';

const TOLD = ['cut the long rails one half longer', 'the long rail may hide a knot', 'the button must be clear', 'leg two show A and B', 'leg two hide C', 'leg two face A is the face side', 'leg three face D is figured', 'leg one other end up', 'board three of the top arches up', 'put pairs before everything'];

function told(): Session {
  const session = Session.withDemo();
  for (const words of TOLD) session.say(words);
  return session;
}

const saved = (session: Session): string => session.request({ kind: 'save piece' }).file?.text ?? '';
const opened = (session: Session, text: string) => session.request({ kind: 'load piece', text, from: 'a file' });
const state = (session: Session) => { const { likes, faceOrders, arches } = session.bench.state; return { likes, faceOrders, arches, rough: partsRough(session.bench.state) }; };
/** The demo piece with something told of it in its file. */
const withTold = (items: unknown): string => DEMO_TEXT.replace(/\}\s*$/, `, "told": ${JSON.stringify(items)} }`);

describe('what was told part by part, in the piece file', () => {
  it('comes onto another bench as it was told', () => {
    const here = told();
    const there = new Session();
    expect(opened(there, saved(here)).say).toMatch(/What was told of .*comes with it\./);
    expect(state(there)).toEqual(state(here));
    expect(allBlanks(there.bench.state)).toEqual(allBlanks(here.bench.state));
    expect(saved(there)).toBe(saved(here));
    const file = JSON.parse(saved(here)) as { told: unknown[] };
    expect(file.told).toContainEqual({ part: 'leg', copy: 2, show: ['A', 'B'], hide: ['C'], faceSide: 'A' });
    expect(file.told).toContainEqual({ part: 'longRail', longer: '1/2 in', mayHideDefect: true });
  });

  it('doubles nothing when it is opened again, and goes with the loading when that is taken back', () => {
    const here = told();
    const text = saved(here);
    const before = state(here);
    expect(opened(here, text).say).not.toContain('told');
    expect(here.entries.map(({ kind }) => kind)).toEqual(['piece loaded']);
    expect(state(here)).toEqual(before);
    const there = Session.withDemo();
    const untold = state(there);
    opened(there, text);
    there.say('scratch that');
    expect(state(there)).toEqual(untold);
  });

  it('leaves what was told otherwise at the bench, and says so', () => {
    const here = told();
    const text = saved(here);
    for (const words of ['leg two hide D', 'the long rail must be clear', 'cut the buttons one half longer']) here.say(words);
    const before = state(here);
    const { say } = opened(here, text);
    expect(say).toContain('Of leg two and the long rail something else was told here: that stays.');
    expect(state(here)).toEqual(before);
  });

  it('keeps the plan that was made with it from being out of date on the other bench', () => {
    const here = taken(['cut the long rails one half longer', 'new board ninety six by nine eight quarter', 'new board one hundred and twenty by ten']);
    const there = new Session();
    opened(there, saved(here));
    expect(outOfDate(there.bench.state)).toEqual([]);
  });

  it.each([
    [[{ part: 'legg', longer: '1/2 in' }], /\$\.told\[0\]: no part has the id “legg”\. Expected one of: /],
    [[{ part: 'leg', longer: '1/2 in' }, { part: 'leg', copy: 9, show: ['A'] }], /\$\.told\[1\]: there is no leg 9\. Expected a copy from 1 to 4\./],
    [[{ part: 'leg', longer: 'long' }], /\$\.told\[0\]: longer: “long”/],
    [[{ part: 'leg', longer: '40 in' }], /from nothing to a foot/],
    [[{ part: 'leg', copy: 1, longer: '1 in' }], /“longer” does not belong here\. Expected, of one copy: show/],
    [[{ part: 'leg', copy: 1, show: ['A', 'B', 'C'] }], /only two faces, side by side, show/],
    [[{ part: 'leg', copy: 1, show: ['A'], hide: ['A'] }], /face A is told twice/],
    [[{ part: 'leg', board: 1, arches: 'up' }], /the leg is no panel/],
    [[{ part: 'top', board: 99, arches: 'up' }], /has no board 99/],
    [[{ part: 'leg', order: ['hidden', 'hidden', 'best', 'shown', 'pairs', 'arches', 'glue lines'] }], /wanted once/],
    [[{ part: 'leg', mayHideDefect: true }, { part: 'leg', mayHideDefect: false }], /\$\.told\[1\]: this part, copy or board is told of before/],
    [[{ part: 'leg', copy: 1, show: ['E'] }], /\$\.told\[0\]\.show\[0\]: .*A, B, C or D/],
    [[{ part: 'leg', tall: true }], /\$\.told\[0\]/],
  ])('is refused with its place where it cannot be so: %j', (items, wrong) => {
    const session = told();
    const before = session.bench.state;
    const { note, signal } = opened(session, withTold(items));
    expect(signal).toBe('wrong');
    expect(note).toMatch(/^line \d+, column \d+, /);
    expect(note).toMatch(wrong);
    expect(session.bench.state).toEqual(before);
  });
});
