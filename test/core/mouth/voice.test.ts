import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import type { Result } from '../../../core/result.ts';
import type { Phrase } from '../../../kiosk/mouth/flite.ts';
import type { VoiceAnswer, VoiceRequest } from '../../../kiosk/mouth/messages.ts';
import { createVoice, VOICE_TIMES, type VoiceWorker } from '../../../kiosk/mouth/voice.ts';
import type { Sound } from '../../../sounds/wav.ts';

beforeEach(() => { vi.useFakeTimers(); });
afterEach(() => { vi.useRealTimers(); });

const PHRASE: Phrase = { text: 'thirty-one', voice: 'kal16', stretch: 1 };
const SOUND: Sound = { samples: new Float32Array(10), rate: 16_000 };

/** How a worker behaves: what it answers to each request, or nothing at all. */
type Manner = (request: VoiceRequest) => VoiceAnswer | 'error' | undefined;

const healthy: Manner = (request) => request.kind === 'load' ? { kind: 'loaded' } : { kind: 'spoken', number: request.number, sound: SOUND };
const missing: Manner = () => ({ kind: 'not loaded', fault: '/mouth/flite.wasm: the server answered 404' });
const broken: Manner = (request) => request.kind === 'load' ? { kind: 'loaded' } : { kind: 'not spoken', number: request.number, fault: 'the voice broke off' };
const hung: Manner = (request) => request.kind === 'load' ? { kind: 'loaded' } : undefined;
const silent: Manner = () => undefined;
const unstartable: Manner = () => 'error';

/** A voice whose workers behave in turn as told, the last manner for all that follow. */
function voiceOf(...manners: readonly [Manner, ...Manner[]]) {
  const log: string[] = [];
  let started = 0;
  const startWorker = (): VoiceWorker => {
    const manner = manners[Math.min(started++, manners.length - 1)] ?? manners[0];
    const listeners = new Map<string, ((event: Event) => void)[]>();
    const tell = (kind: string, event: object) => { for (const listener of listeners.get(kind) ?? []) listener(event as Event); };
    log.push('worker starts');
    return {
      addEventListener: (kind: string, listener: (event: Event) => void) => { listeners.set(kind, [...listeners.get(kind) ?? [], listener]); },
      postMessage: (request: VoiceRequest) => {
        const answer = manner(request);
        if (answer !== undefined) setTimeout(() => { if (answer === 'error') tell('error', { message: '' }); else tell('message', { data: answer }); }, 1);
      },
      terminate: () => { log.push('worker ends'); },
    };
  };
  const voice = createVoice({ startWorker, wasmUrl: '/mouth/flite.wasm', changed: (state) => log.push(state) });
  return { voice, log };
}

/** The result of a promise after some time has passed. */
async function after<Value>(promise: Promise<Value>, ms: number): Promise<Value> {
  await vi.advanceTimersByTimeAsync(ms);
  return promise;
}

const fault = (spoken: Result<Sound, string>) => spoken.ok ? 'none' : spoken.fault;

describe('the voice\'s worker is looked after', () => {
  it('starts once, loads once, and speaks', async () => {
    const { voice, log } = voiceOf(healthy);
    await after(voice.load(), 5);
    expect((await after(voice.speak(PHRASE), 5)).ok).toBe(true);
    expect((await after(voice.speak(PHRASE), 5)).ok).toBe(true);
    expect(log).toEqual(['worker starts', 'starting', 'ready']);
  });

  it('tells of a missing voice, lets it rest, and then tries again by itself', async () => {
    const { voice, log } = voiceOf(missing, healthy);
    await after(voice.load(), 5);
    expect(fault(await after(voice.speak(PHRASE), 5))).toContain('404');
    expect(log).toEqual(['worker starts', 'starting', 'worker ends', 'broken']);
    await vi.advanceTimersByTimeAsync(VOICE_TIMES.restMs);
    expect((await after(voice.speak(PHRASE), 5)).ok).toBe(true);
    expect(log.slice(4)).toEqual(['worker starts', 'starting', 'ready']);
  });

  it('tries again at once when asked to', async () => {
    const { voice } = voiceOf(missing, healthy);
    await after(voice.load(), 5);
    voice.retry();
    expect((await after(voice.speak(PHRASE), 5)).ok).toBe(true);
  });

  it('replaces a worker that broke off, and says the phrase all the same', async () => {
    const { voice, log } = voiceOf(broken, healthy);
    expect((await after(voice.speak(PHRASE), 10)).ok).toBe(true);
    expect(log).toEqual(['worker starts', 'starting', 'ready', 'worker ends', 'worker starts', 'starting', 'ready']);
  });

  it('replaces a worker that hangs, at its deadline', async () => {
    const { voice } = voiceOf(hung, healthy);
    expect((await after(voice.speak(PHRASE), VOICE_TIMES.phraseMs + 20)).ok).toBe(true);
  });

  it('gives up a phrase that breaks two workers', async () => {
    const { voice, log } = voiceOf(broken);
    expect(fault(await after(voice.speak(PHRASE), 10))).toBe('the voice broke off');
    expect(log.at(-1)).toBe('broken');
  });

  it('settles by a deadline when nothing ever answers', async () => {
    const { voice } = voiceOf(silent);
    expect(fault(await after(voice.speak(PHRASE), VOICE_TIMES.loadMs + 1))).toContain('not loaded in time');
  });

  it('tells of a script that does not start', async () => {
    const { voice } = voiceOf(unstartable);
    expect(fault(await after(voice.speak(PHRASE), 5))).toContain('its script did not load');
  });

  it('tells of a worker that the page may not start', async () => {
    const states: string[] = [];
    const voice = createVoice({ startWorker: () => { throw new TypeError('not allowed'); }, wasmUrl: '', changed: (state) => states.push(state) });
    expect(fault(await after(voice.speak(PHRASE), 5))).toContain('not allowed');
    expect(states).toEqual(['broken']);
  });

  it('settles what is under way when it is closed', async () => {
    const { voice } = voiceOf(hung);
    const spoken = voice.speak(PHRASE);
    await vi.advanceTimersByTimeAsync(5);
    voice.close();
    expect(fault(await after(spoken, 2 * VOICE_TIMES.phraseMs + 20))).not.toBe('none');
  });
});
