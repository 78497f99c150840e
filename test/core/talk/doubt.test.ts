import { describe, expect, it } from 'vitest';
import { CONFUSIONS, rivalsOf } from '../../../core/talk/confusions.ts';
import { parseHeard } from '../../../core/talk/doubt.ts';
import { bench, inches } from './benches.ts';

const ASKED = bench({ question: { kind: 'length', size: 'leg.width' } });

describe('words that were not heard clearly', () => {
  it('are asked about where a size would be written down', () => {
    expect(parseHeard('fifteen', ['fifteen'], ASKED)).toEqual({ kind: 'which', choices: [
      { say: 'fifteen', request: { kind: 'answer length', length: inches(15) } }, { say: 'fifty', request: { kind: 'answer length', length: inches(50) } },
    ] });
  });

  it('are asked about where a clock would be started', () => {
    expect(parseHeard('set a timer for fifty minutes', ['fifty'], bench())).toMatchObject({ kind: 'which', choices: [{ say: 'fifty' }, { say: 'fifteen' }] });
  });

  it('are asked about where a size is reckoned, and where a part has its place: both end up in wood', () => {
    expect(parseHeard('half of fifteen inches', ['fifteen'], bench())).toMatchObject({ kind: 'which', choices: [{ say: 'fifteen' }, { say: 'fifty' }] });
    expect(parseHeard('leg two goes front left face b to the front', ['b'], bench())).toMatchObject({ kind: 'which', choices: [{ say: 'face B', request: { kind: 'place' } }, { say: 'face D', request: { kind: 'place' } }, { say: 'face C', request: { kind: 'place' } }] });
  });

  it('are told apart by a letter said again', () => {
    const which = parseHeard('leg two goes front left face b to the front', ['b'], bench());
    if (which.kind !== 'which') throw new Error('nothing is asked');
    for (const words of ['d', 'face d']) expect(parseHeard(words, [], bench({ question: which }))).toEqual({ kind: 'choose', index: which.choices.findIndex(({ say }) => say === 'face D') });
  });

  it('are taken as they are when nothing else is like them, or would make no sense', () => {
    expect(parseHeard('seventeen', ['inches'], ASKED).kind).toBe('answer length');
    expect(parseHeard('record leg two width three and seven sixteenths', ['two', 'sixteenths'], bench()).kind).toBe('record');
  });

  it('do not trouble a request that was heard clearly', () => {
    expect(parseHeard('fifteen', [], ASKED)).toEqual({ kind: 'answer length', length: inches(15) });
  });
});

describe('the table of confusions', () => {
  it('has every teen and its ten, either way', () => {
    for (const [teen, ten] of [['thirteen', 'thirty'], ['fourteen', 'forty'], ['fifteen', 'fifty'], ['sixteen', 'sixty'], ['seventeen', 'seventy'], ['eighteen', 'eighty'], ['nineteen', 'ninety']] as const) {
      expect(rivalsOf(teen)).toContain(ten);
      expect(rivalsOf(ten)).toContain(teen);
    }
  });

  it('counts no more mistakes than there were tries', () => {
    for (const { said, heard, times, of } of CONFUSIONS) {
      expect(said).not.toBe(heard);
      expect(times).toBeGreaterThan(0);
      expect(times).toBeLessThanOrEqual(of);
    }
  });
});
