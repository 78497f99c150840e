import { describe, expect, it } from 'vitest';
import { earState } from '../../../kiosk/ear/state.ts';
import type { EarFacts } from '../../../kiosk/ear/state.ts';

const WELL: EarFacts = { on: true, engine: 'ready', engineReason: '', microphone: 'hearing', deaf: false, attending: false, addressWord: 'bench' };
const named = (facts: Partial<EarFacts>) => earState({ ...WELL, ...facts }).name;

describe('what the screen says of the ear', () => {
  it('names its word when it is well', () => {
    expect(earState(WELL)).toEqual({ name: 'asleep', sentence: 'Say "bench" first.' });
  });

  it('tells every fault with something to do, and that the keys go on', () => {
    const faults: Partial<EarFacts>[] = [
      { engine: 'no model' }, { engine: 'broken model' }, { engine: 'engine failed' }, { microphone: 'no microphone' }, { microphone: 'not allowed' }, { microphone: 'busy' },
    ];
    for (const fault of faults) {
      const { sentence } = earState({ ...WELL, ...fault });
      expect(sentence, JSON.stringify(fault)).toMatch(/(Install|Press|Plug|Allow|Close|plug) .*The keys do everything\.$/);
    }
    expect(earState({ ...WELL, microphone: 'untouched' }).sentence).toMatch(/Touch the screen/);
  });

  it('keeps what the engine said for whoever mends it', () => {
    expect(earState({ ...WELL, engine: 'broken model', engineReason: 'it lacks graph/HCLr.fst' }).sentence).toContain('it lacks graph/HCLr.fst');
  });

  it('shows first what stands in the way first', () => {
    expect(named({ on: false, engine: 'no model' })).toBe('off');
    expect(named({ engine: 'no model', microphone: 'no microphone' })).toBe('no model');
    expect(named({ engine: 'starting', microphone: 'no microphone' })).toBe('no microphone');
    expect(named({ engine: 'starting', deaf: true })).toBe('starting');
    expect(named({ deaf: true, attending: true })).toBe('deaf');
    expect(named({ attending: true })).toBe('attending');
  });
});
