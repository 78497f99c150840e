import { describe, expect, it } from 'vitest';
import { mouthState, type MouthFacts, type OutputState } from '../../../kiosk/mouth/state.ts';
import type { VoiceState } from '../../../kiosk/mouth/voice.ts';

const OUTPUTS: readonly OutputState[] = ['starting', 'open', 'waiting for a key', 'no loudspeaker'];
const VOICES: readonly VoiceState[] = ['starting', 'ready', 'broken'];
const all: readonly MouthFacts[] = OUTPUTS.flatMap((output) => VOICES.map((voice) => ({ output, voice, voiceFault: '404' })));

describe('the state of the mouth', () => {
  it('is ready only when sound can leave and the voice is there', () => {
    for (const facts of all) expect(mouthState(facts).name === 'ready').toBe(facts.output === 'open' && facts.voice === 'ready');
  });

  it('tells of what keeps all sound back before what keeps back words', () => {
    expect(mouthState({ output: 'waiting for a key', voice: 'broken', voiceFault: '404' }).name).toBe('waiting for a key');
    expect(mouthState({ output: 'open', voice: 'broken', voiceFault: '404' }).name).toBe('no voice');
  });

  it('has a sentence for every fault: what is so, what to do, and that the words are on the screen', () => {
    for (const facts of all) {
      const { name, sentence } = mouthState(facts);
      if (name === 'ready') expect(sentence).toBe('');
      else expect(sentence).toMatch(/\.$/);
      if (name !== 'ready' && name !== 'starting') expect(sentence).toMatch(/screen/);
    }
  });
});
