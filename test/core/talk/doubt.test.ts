import { describe, expect, it } from 'vitest';
import { CONFUSIONS, rivalsOf } from '../../../core/talk/confusions.ts';
import { parseHeard } from '../../../core/talk/doubt.ts';
import { parseRequest } from '../../../core/talk/parse.ts';
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

  it('are taken as they are where nothing is lost by a mistake', () => {
    const words = 'half of fifteen inches';
    expect(parseHeard(words, ['fifteen'], bench())).toEqual(parseRequest(words, bench()));
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
