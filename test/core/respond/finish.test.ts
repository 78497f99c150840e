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
    expect(say('how many coats')).toBe('No coat is on yet. The piece gets two coats of shellac, two hours apart.');
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
