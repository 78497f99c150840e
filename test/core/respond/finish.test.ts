import { beforeEach, describe, expect, it } from 'vitest';
import { finishKindOf } from '../../../core/piece/finishKinds.ts';
import { stepsOf } from '../../../core/respond/views.ts';
import { DEMO_TEXT, Session } from './session.ts';

const HOUR_MS = 3_600_000;
let session: Session;
const say = (...all: readonly string[]): string => all.map((words) => session.say(words)).at(-1) ?? '';

/** The demo table with everything done but the finish, of this kind. */
function finishing(kind: string, recoatHours: number): Session {
  const made = new Session();
  made.request({ kind: 'load piece', text: DEMO_TEXT.replace('"kind": "mineral oil", "coats": 3, "recoatHours": 24', `"kind": "${kind}", "coats": 2, "recoatHours": ${recoatHours}`), from: 'the test' });
  for (const { id, operation } of stepsOf(made.bench.state)) if (operation !== 'finish') made.note({ kind: 'step done', step: id });
  return made;
}
const clocks = () => session.bench.state.timers.map(({ name, durationMs }) => [name, durationMs / HOUR_MS]);

describe('the clocks of the finish', () => {
  beforeEach(() => { session = finishing('shellac', 2); });

  it('run from coat to coat by the piece file, and after the last one until it has cured', () => {
    expect(say('how many coats')).toBe('No coat is on yet. The piece gets two coats of shellac, two hours apart; the last has cured after three days.');
    say('done');
    expect(clocks()).toEqual([['coat one dries', 2]]);
    session.wait(HOUR_MS);
    expect(say('when does the next coat go on')).toBe('Coat one of two is on. Coat one dries, one hour left.');
    expect(say('done')).toMatch(/drying/);
    session.wait(HOUR_MS);
    expect(say('how many coats are on')).toBe('Coat one of two is on. Coat two can follow.');
    say('got it', 'done');
    expect(clocks().at(-1)).toEqual(['the finish cures', 72]);
    expect(say('how many coats are left')).toMatch(/^All two coats are on\. The finish cures, three days left\.$/);
  });

  it('are started by voice too, for as long as is said, and not once more when the coat is done', () => {
    expect(say('start the recoat clock')).toBe('Coat one dries, two hours, running; your piece file.');
    say('done');
    expect(clocks()).toEqual([['coat one dries', 2]]);
    say('stop the clock');
    expect(say('start the drying timer for ninety minutes')).toBe('Coat two dries, one hour and thirty minutes, running.');
    expect(say('start the cure clock')).toBe('The finish cures, three days, running; common practice; the label rules.');
  });

  it('can be taken back', () => {
    say('start the cure clock', 'scratch that');
    expect(clocks()).toEqual([]);
  });
});

describe('the clocks of the finish in a cold shop', () => {
  const SLOWER = 'at ten degrees a finish dries slower, no source says by how much: try a hidden spot first';
  beforeEach(() => { session = finishing('varnish', 24); });

  it('are not stretched by a figure of our own, and say so when they start, when they are up, and before the next coat', () => {
    say('use celsius', 'the shop is ten degrees');
    expect(say('start the recoat clock')).toBe(`Coat one dries, one day, running; your piece file; ${SLOWER}.`);
    say('stop the clock');
    expect(say('done')).toContain(`Coat one dries, one day, running; ${SLOWER}.`);
    expect(clocks()).toEqual([['coat one dries', 24]]);
    expect(session.bench.state.timers[0]?.basis).toContain(SLOWER);
    session.wait(5 * HOUR_MS);
    say('the shop is ten degrees');
    session.bench = { ...session.bench, state: { ...session.bench.state, timers: [] } };
    expect(say('how many coats are on')).toBe('Coat one of two is on. Coat two can follow. At ten degrees a finish dries slower, no source says by how much: try a hidden spot first.');
  });

  it('say nothing of it in a warm shop, in one that was not told of, and when the maker says how long', () => {
    expect(say('start the recoat clock')).not.toContain('slower');
    say('use celsius', 'the shop is twenty degrees');
    expect(say('start the cure clock')).not.toContain('slower');
    say('the shop is ten degrees');
    expect(say('start the drying timer for ninety minutes')).toMatch(/running\.$/);
  });
});

describe('the clocks of a glue that are started without a time', () => {
  // A cold shop may need up to twice the time in clamps: published, as in shared trade facts 6; on a line from once at 21 °C to twice at the lowest temperature (core/glue/stretch.ts).
  it('are as long as the glue needs at this evening\'s temperature, by the maker\'s label, like those of the steps', () => {
    session = Session.withDemo();
    const minutes = (words: string): number => { say(words); return (session.bench.state.timers.at(-1)?.durationMs ?? 0) / 60_000; };
    const warm = minutes('start the clamp timer');
    say('use celsius', 'the shop is twelve degrees');
    expect(minutes('start the clamp timer') / warm).toBeGreaterThan(1.5);
    expect(minutes('start the clamp timer') / warm).toBeLessThanOrEqual(2);
    expect(say('start the clamp timer')).toMatch(/times for twelve degrees\.$/);
    say('the label says clamp time is forty minutes');
    expect(minutes('start the clamp timer') / 40).toBeCloseTo(1 + (21 - 12) / (21 - 10), 1);
    expect(minutes('start the clamp timer for twenty minutes')).toBe(20);
    say('the shop is thirty one degrees', 'the label says open time is eight minutes');
    expect(minutes('start the open time clock'), 'half the open time for every ten degrees over twenty-one').toBe(4);
  });
});

describe('a finish that never hardens', () => {
  it('has no clock to cure by', () => {
    session = finishing('mineral oil', 24);
    expect(say('start the cure clock')).toBe('Mineral oil. It never hardens, so there is nothing to wait for: wipe off what stands on the wood.');
    session.note({ kind: 'step done', step: 'finish/coat.1' });
    say('done');
    expect(clocks()).toEqual([]);
  });
});

describe('finishes by class', () => {
  it('shellac in one to two hours, oil varnish in about a day, oil in days to weeks (trade facts, section 11; common practice)', () => {
    expect(finishKindOf('shellac').recoatHours).toBeLessThanOrEqual(2);
    expect(finishKindOf('wiping varnish').recoatHours).toBe(24);
    expect(finishKindOf('drying oil').cureHours).toBeGreaterThanOrEqual(7 * 24);
    expect(finishKindOf('water-based varnish').recoatHours).toBeLessThan(24);
    expect(finishKindOf('mineral oil').cureHours).toBeUndefined();
    expect(finishKindOf('something else')).toEqual({ recoatHours: 24, cureHours: 14 * 24 });
  });
});

describe('the force of the maker’s own clamps', () => {
  it('is common practice until it is told, and then the number of clamps goes by it (force over pressure times area; statics)', () => {
    session = Session.withDemo();
    for (const { id, operation } of stepsOf(session.bench.state)) if (operation === 'face' || operation === 'dry check') session.note({ kind: 'step done', step: id });
    session.note({ kind: 'went to step', step: 'lamination glue-up/leg/1' });
    const usual = say('how many clamps');
    expect(usual).toMatch(/What a clamp presses is common practice, no source/);
    expect(say('my clamps press two hundred pounds')).toBe('One of your clamps presses two hundred pounds.');
    const own = say('how many clamps');
    expect(own).toMatch(/Reckoned with the two hundred pounds that you said of yours\.$/);
    expect(own.split(' clamps')[0]).not.toBe(usual.split(' clamps')[0]);
    expect(say('my clamps press two pounds')).toBe('A clamp presses with twenty pounds to twenty thousand.');
  });
});
