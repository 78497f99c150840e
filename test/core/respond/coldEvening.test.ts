import { describe, expect, it } from 'vitest';
import { gluingNow } from '../../../core/respond/gluingState.ts';
import { atTheEndFrame, Session } from './session.ts';

const MINUTE = 60_000;

/** Goes through what stands on the screen, each move taking so long, and gives what is said at the end. */
function goThrough(session: Session, secondsEach: number): string {
  let said = '';
  while (session.bench.state.gluing) {
    session.wait(secondsEach * 1000);
    said = session.say('next');
  }
  return said;
}

describe('a cold evening, from a shop at five degrees to a frame in clamps', () => {
  const session = atTheEndFrame();

  it('asks about the shop before it says anything of the glue', () => {
    expect(session.say('can I glue tonight')).toMatch(/do not know how warm the shop is/);
  });

  it('refuses at five degrees, with the reason and what would make it a go', () => {
    expect(session.say('the shop is five degrees eighty percent')).toBe('The shop: five degrees and eighty percent humidity. Do not glue tonight.');
    const said = session.say('can I glue tonight');
    expect(said).toMatch(/^Do not glue tonight\. Wood, glue and shop are at five degrees, and this glue asks for ten degrees: colder, it chalks/);
    expect(said).toMatch(/Bring wood, glue and shop to twelve degrees, and keep them there until the clamps are off\./);
    expect(session.say('start gluing')).toMatch(/^Do not glue tonight/);
    expect(session.bench.state.gluing).toBeNull();
  });

  it('says how long to bring wood and glue inside, as an estimate', () => {
    expect(session.say('how long to warm it')).toMatch(/the wood about .* minutes.*a bottle of glue about .*\. That is an estimate/);
  });

  it('goes with care at twelve, the clamp time stretched and its basis told', () => {
    session.wait(60 * MINUTE);
    expect(session.say('the shop is twelve degrees sixty percent')).toMatch(/Go, with care\.$/);
    expect(session.say('can I glue tonight')).toMatch(/Clamps stay on one point eight times as long, for a cold shop may need up to twice the time\. Open time four minutes, clamps one hour and forty-nine minutes/);
  });

  it('a label that says more is kept with the piece', () => {
    expect(session.say('the label says open time five minutes')).toBe('From your label: open time five minutes. Kept with this piece.');
    expect(session.say('can I glue tonight')).toMatch(/Open time five minutes/);
  });

  it('will not glue unasked what was never rehearsed', () => {
    expect(session.say('start gluing')).toMatch(/It was not rehearsed/);
    expect(session.say('no')).toBeDefined();
    expect(session.bench.state.gluing).toBeNull();
  });

  it('rehearses move by move with the clock running, and finds it too long', () => {
    expect(session.say('rehearse')).toMatch(/^Rehearsal of the left end frame, dry.*Set out: parts in their order/);
    session.wait(4 * MINUTE);
    expect(session.say('next')).toMatch(/^Glue on the left short rail into the front left leg/);
    // Four joints, each spread and driven home, two clamps and the check: eleven moves of half a minute.
    const said = goThrough(session, 30);
    expect(said).toMatch(/^The rehearsal took five minutes and thirty seconds from the first glue to the last check\. The open time tonight is five minutes, and I plan for four minutes of it\. Too long\. Divided in two it fits/);
    expect(session.bench.state.timers).toEqual([]);
  });

  it('will not glue what did not fit, and divides it', () => {
    expect(session.say('start gluing')).toMatch(/Too long/);
    expect(session.say('divide it')).toMatch(/^Divided in two\. First the left short rail into the .* leg and the left side stretcher into the .* leg\./);
  });

  it('glues the first part: the open time runs from the first glue, the clamps from the check', () => {
    expect(session.say('start gluing')).toMatch(/^Glue-up of the left end frame, part one of two\..*Set out/);
    session.wait(2 * MINUTE);
    expect(session.say('next')).toMatch(/^Open time five minutes, running\. Glue on/);
    expect(session.bench.state.timers).toMatchObject([{ kind: 'open time', durationMs: 5 * MINUTE, basis: 'your label' }]);
    for (let move = 0; gluingNow(session.bench.state)?.move?.kind !== 'check'; move += 1) {
      expect(move).toBeLessThan(10);
      session.wait(20_000);
      session.say('done');
    }
    expect(session.say('next')).toMatch(/^Clamps one hour and forty-nine minutes, running\. Leave the squeeze-out until it is like rubber, and scrape it then: no wet rag in the cold\.$/);
    expect(session.bench.state.timers.map(({ kind, name, basis }) => [kind, name, basis])).toEqual([
      ['clamp', 'left end frame, part one clamps', 'common practice, one point eight times for twelve degrees'], ['plain', 'scrape the squeeze-out of left end frame', 'common practice'],
    ]);
    expect(session.say('next')).toMatch(/^Part one of two is glued\. Clamps off in .*, safe to work in .*, fully cured in/);
  });

  it('waits for those clamps before the second part', () => {
    expect(session.say('start gluing')).toMatch(/clamps of the part before still hold/);
    session.wait(110 * MINUTE);
    session.request({ kind: 'acknowledge', timer: session.bench.state.timers[0]?.id ?? 0 });
    expect(session.say('start gluing')).toMatch(/part two of two/);
    session.wait(2 * MINUTE);
    expect(goThrough(session, 20)).toMatch(/^Glued: the left end frame\. Clamps off in one hour and forty-nine minutes/);
    expect(session.bench.state.done.has('glue-up/endFrame.1')).toBe(true);
    expect(session.bench.state.timers.some(({ name }) => name === 'left end frame clamps')).toBe(true);
  });

  it('takes the last thing back as any other act', () => {
    expect(session.say('scratch that')).toMatch(/^Scratched: .*a glue-up, ended/);
    expect(session.bench.state.done.has('glue-up/endFrame.1')).toBe(false);
  });
});

describe('the glue-up at any step', () => {
  it('is not begun where nothing is glued', () => {
    expect(Session.withDemo().say('rehearse')).toMatch(/This step glues nothing/);
  });

  it('can be left, and leaves the clocks running', () => {
    const session = atTheEndFrame();
    session.say('rehearse');
    expect(session.say('leave the rehearsal')).toBe('The rehearsal is left.');
    expect(session.say('leave the rehearsal')).toMatch(/No glue-up is going on/);
  });

  it('takes a reading of a sensor without a word, and goes by it', () => {
    const session = atTheEndFrame();
    expect(session.request({ kind: 'air', place: 'shop', by: 'sensor', tempC: 21, humidityPercent: 50 }).say).toBe('');
    expect(session.say('can I glue tonight')).toMatch(/^Go\. Open time four minutes/);
    session.wait(7 * 60 * MINUTE);
    expect(session.say('can I glue tonight')).toMatch(/do not know how warm/);
  });

  it('reads degrees in the scale that is chosen or named', () => {
    const session = atTheEndFrame();
    session.say('the shop is seventy degrees fahrenheit fifty percent');
    expect(session.bench.state.airs.get('shop')?.tempC).toBeCloseTo(21.1, 1);
    session.say('use fahrenheit');
    expect(session.say('the shop is forty one degrees')).toMatch(/forty-one degrees Fahrenheit\. Do not glue tonight/);
    expect(session.bench.state.airs.get('shop')?.tempC).toBeCloseTo(5, 9);
    expect(session.say('the shop is four hundred degrees')).toMatch(/between minus forty and sixty/);
  });
});

describe('wood', () => {
  it('tells what the top does in a year, once the house is known', () => {
    const session = Session.withDemo();
    expect(session.say('what will the top do')).toMatch(/do not know the house/);
    session.say('the driest month is twenty degrees thirty percent');
    session.say('the dampest month is twenty two degrees sixty five percent');
    expect(session.say('what will the top do')).toMatch(/^The top gets .* narrower in the driest month, and .* wider in the dampest\. Held in the middle/);
    expect(session.say('is the stock ready')).toMatch(/do not know the moisture/);
    session.say('the stock is at fourteen percent');
    expect(session.say('is the stock ready')).toMatch(/^Not ready, too wet/);
    session.say('the stock is at nine percent');
    expect(session.say('is the stock ready')).toMatch(/^The stock is ready/);
  });

  it('writes down how a part rests, calls to look again, and says when it is settled', () => {
    const session = Session.withDemo();
    expect(session.say('the bow of leg two is one sixteenth')).toMatch(/^Written down\. Too early to tell.*look again in a day/);
    expect(session.bench.state.timers.map(({ name }) => name)).toEqual(['look at leg two']);
    session.wait(25 * 60 * MINUTE);
    expect(session.say('the bow of leg two is one eighth')).toMatch(/Still moving: bow\./);
    session.wait(25 * 60 * MINUTE);
    expect(session.say('leg two bow is one eighth')).toMatch(/Settled/);
    expect(session.say('has leg two settled')).toMatch(/Settled/);
    expect(session.say('has leg three settled')).toMatch(/Nothing was measured/);
  });

  it('tells how many clamps and how much glue a panel wants', () => {
    const session = Session.withDemo();
    session.note({ kind: 'went to step', step: 'panel glue-up/top/1' });
    expect(session.say('how many clamps')).toMatch(/clamps, .* apart.*You have .*grams of glue/);
  });
});
