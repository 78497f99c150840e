import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { foldJournal } from '../../../core/journal/fold.ts';
import { exportBundle } from '../../../core/journal/bundle.ts';
import { phrasesFor } from '../../../core/talk/grammar.ts';
import { DEMO_TEXT, Session } from './session.ts';

describe('whatever is said at the bench', () => {
  it('every sentence that can be said is answered, and what is written folds to what is shown', () => {
    const phrases = phrasesFor(Session.withDemo().bench);
    fc.assert(fc.property(fc.array(fc.constantFrom(...phrases), { minLength: 1, maxLength: 12 }), (said) => {
      const session = Session.withDemo();
      for (const words of said) {
        session.say(words);
        session.wait(7_000);
      }
      const { records, state } = session.bench;
      expect(foldJournal(records).state).toEqual(state);
    }), { numRuns: 25 });
  }, 120_000);

  it('a faulty file is refused with its place, and the piece on the bench stays', () => {
    const session = Session.withDemo();
    const reply = session.request({ kind: 'load piece', text: DEMO_TEXT.replace('"section.leg": {', '"section.leg": ['), from: 'a stick' });
    expect(reply.note).toMatch(/line \d+, column \d+/);
    expect(session.entries).toEqual([]);
    expect(session.bench.state.pieceName).toBe('Baker\'s work table');
  });

  it('what was not understood is told with the nearest thing that can be asked', () => {
    const reply = Session.withDemo().request({ kind: 'not understood', heard: 'long rain', because: 'I do not know what “long rain” means', nearest: 'long rail' });
    expect(reply.signal).toBe('not understood');
    expect(reply.say).toBe('I do not know what “long rain” means. You can say long rail.');
  });

  it('what would do something is not said as a sentence of its own, but shown', () => {
    const session = Session.withDemo();
    const near = session.request({ kind: 'not understood', heard: 'start a plenty minute timer', because: 'I do not know plenty', nearest: 'start a twenty minute timer' });
    expect(near.say).toBe('I do not know plenty. It may be about clocks; the words for it are on the screen.');
    expect(near.note).toContain('You can say: start a twenty minute timer.');
    const cold = session.request({ kind: 'how long to warm' });
    expect([cold.say, cold.note]).toEqual(['I do not know how cold the shop is. Tell me its degrees.', 'I do not know how cold the shop is. Say, for one: the shop is five degrees.']);
    expect(Session.withDemo().say('what can I say')).toMatch(/^You can say the word next, the word done, how long is the long rail,/);
  });

  it('says the last reply again, slower, and digit by digit', () => {
    const session = Session.withDemo();
    const said = session.say('how long is the long rail');
    expect(session.say('say again')).toBe(said);
    expect(session.request({ kind: 'say again', how: 'slower' })).toMatchObject({ say: said, slowly: true });
    expect(session.request({ kind: 'say again', how: 'digit by digit' }).say).toMatch(/four, nine/i);
  });

  it('loudness stops at both ends', () => {
    const session = Session.withDemo();
    for (let step = 0; step < 12; step++) session.request({ kind: 'louder' });
    expect(session.bench.state.settings.volume).toBe(10);
    expect(session.request({ kind: 'louder' }).signal).toBe('wrong');
  });
});

describe('a backup of everything', () => {
  const saved = () => {
    const session = Session.withDemo();
    session.say('leg two width is three and three eighths');
    return exportBundle(session.bench.records, session.bench.state, session.now);
  };

  it('is taken in only after the maker was told what it would cost and said yes', () => {
    const text = saved();
    const session = Session.withDemo();
    session.say('leg three width is three and a quarter');
    const asked = session.request({ kind: 'take in everything', text });
    expect(asked.say).toMatch(/would be replaced.*Take it in\?$/s);
    expect(session.journal).toBeUndefined();
    session.say('yes');
    expect(session.journal?.at(-1)?.entry).toMatchObject({ kind: 'measured', measurement: { size: 'leg.width', copy: 2 } });
  });

  it('that is damaged is refused, and nothing is asked', () => {
    const session = Session.withDemo();
    const reply = session.request({ kind: 'take in everything', text: saved().replace('84137500', '84137501').replace('3.375', '3.376').replace(/"checksum":"./, '"checksum":"x') });
    expect(reply.signal).toBe('wrong');
    expect(reply.question).toBeUndefined();
  });
});
