import { beforeEach, describe, expect, it } from 'vitest';
import { countedUntil, wearOf } from '../../../core/journal/edges.ts';
import { parseRequest } from '../../../core/talk/parse.ts';
import { Session } from './session.ts';

const MINUTE_MS = 60_000;
let session: Session;
beforeEach(() => { session = Session.withDemo(); });
const wear = (edge: Parameters<typeof wearOf>[1]) => wearOf(countedUntil(session.bench.state, session.now), edge);

describe('chopping, told at the bench', () => {
  it('starts the clock for the strop, and counts what the chisel cuts until it is stopped', () => {
    expect(session.say('chopping')).toBe('The chisel is cutting; the strop in one minute.');
    expect(session.bench.state.timers.map(({ kind, name }) => [kind, name])).toEqual([['break', 'strop']]);
    session.wait(4 * MINUTE_MS);
    expect(session.say('stopped')).toBe('Stopped. The chisel has cut for four minutes since it was honed, not stropped since. It wants the strop.');
    expect(session.bench.state.timers).toEqual([]);
    session.wait(10 * MINUTE_MS);
    expect(wear('chisel').minutesSinceHoning).toBeCloseTo(4, 9);
  });

  it('goes on after the strop, and the strop is counted', () => {
    session.say('chopping with the mortise chisel');
    session.wait(MINUTE_MS);
    expect(session.say('stropped')).toBe('The mortise chisel is stropped now, after one minute of cutting.');
    session.wait(MINUTE_MS);
    expect(wear('mortise chisel')).toMatchObject({ minutesSinceStrop: 1, minutesSinceHoning: 2, stropsSinceHoning: 1 });
  });

  it('is not counted on for ever when stopping was forgotten, nor over a power cut', () => {
    session.say('chopping');
    session.wait(300 * MINUTE_MS);
    expect(wear('chisel').minutesSinceHoning).toBe(30);
    session.say('stopped');
    session.say('I honed the chisel');
    session.say('chopping');
    session.now = { ...session.now, bootId: 'second', wallTrusted: false, monotonicMs: 1000 };
    expect(wear('chisel').minutesSinceHoning).toBe(0);
  });

  it('has nothing to stop when nothing was told', () => {
    expect(session.say('stopped')).toBe('Nothing was cutting. Say chopping when you begin.');
    expect(session.entries).toEqual([]);
  });

  it('can be taken back', () => {
    session.say('I honed the chisel');
    session.say('scratch that');
    expect(session.bench.state.edges.size).toBe(0);
  });
});

describe('what an edge wants', () => {
  it('is the stone once a strop no longer brings it back, and the grinding after many honings', () => {
    session.say('chopping');
    session.wait(25 * MINUTE_MS);
    session.say('stropped');
    expect(session.say('how is the chisel')).toMatch(/hone it\.$/);
    for (let honing = 0; honing < 8; honing += 1) session.say('honed');
    expect(session.say('how sharp is it')).toMatch(/Grind it before you hone it again\.$/);
    expect(session.say('I ground the chisel')).not.toMatch(/Grind/);
  });

  it('is told of every edge by its name', () => {
    expect(session.say('how is the smoother')).toBe('The smoothing plane has not cut since it was honed, as far as I was told. It may go on cutting.');
    expect(parseRequest('I sharpened the marking knife', session.bench)).toEqual({ kind: 'edge care', edge: 'knife', care: 'honed' });
  });

  it('is weighed against the time at the stone', () => {
    expect(session.say('does honing pay with forty minutes left')).toMatch(/^Honing pays/);
    expect(session.say('is it worth honing with five minutes left')).toMatch(/^By time alone honing does not pay yet/);
  });
});

describe('the honing guide', () => {
  it('is asked for before it is reckoned with', () => {
    expect(session.say('how far out for thirty degrees')).toMatch(/I do not know your honing guide/);
  });

  it('tells the projection for an angle and the angle of a projection (p = (R + e cos θ) / sin θ: 38.86 mm at 30 degrees for R 12.5, e 8 mm, worked by hand)', () => {
    session.say('use millimeters');
    session.say('the guide roller is twenty five millimeters across');
    session.say('the guide axle is eight millimeters below the blade');
    expect(session.say('how far out for thirty degrees')).toMatch(/^For thirty degrees the blade stands out thirty-nine millimetres, scant/);
    expect(session.say('what angle for a projection of thirty nine millimeters')).toMatch(/at 29\.9 degrees/);
    expect(session.say('how far out for two degrees')).toBe('An edge is honed at five to sixty degrees.');
  });
});
