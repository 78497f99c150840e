import { describe, expect, it } from 'vitest';
import { failure, success, type Result } from '../../../core/result.ts';
import { beginSaying } from '../../../kiosk/mouth/saying.ts';
import type { Sound } from '../../../sounds/wav.ts';

/** Renderer and loudspeaker told by hand, and what happened in order. */
function bench(faults: readonly string[] = []) {
  const log: string[] = [];
  const renders: (() => void)[] = [];
  let finish: (end: 'played' | 'stopped' | 'stuck') => void = () => undefined;
  const options = {
    voice: 'kal16' as const,
    renderer: {
      render: ({ text }: { text: string }) => new Promise<Result<Sound, string>>((resolve) => {
        log.push(`makes ${text}`);
        renders.push(() => { resolve(faults.includes(text) ? failure('broken') : success({ samples: new Float32Array(text.length), rate: 16_000 })); });
      }),
    },
    player: {
      speech: () => ({
        append: (sound: Sound, pauseMs: number) => { log.push(`sounds ${sound.samples.length} after ${pauseMs}`); },
        stop: () => { log.push('fades'); finish('stopped'); },
        finish: () => new Promise<'played' | 'stopped' | 'stuck'>((resolve) => { finish = resolve; }),
      }),
    },
    began: () => { log.push('began'); },
    ceased: () => { log.push('ceased'); },
    rendered: () => undefined,
  };
  const made = async () => {
    renders.shift()?.();
    for (let round = 0; round < 10; round++) await Promise.resolve();
  };
  return { log, options, made, end: (how: 'played' | 'stopped' | 'stuck') => { finish(how); } };
}

describe('a text is said', () => {
  it('the first phrase sounds while the next is made', async () => {
    const { log, options, made, end } = bench();
    const saying = beginSaying('Long rail, five', false, options);
    await made();
    expect(log).toEqual(['makes Long rail', 'sounds 9 after 0', 'began', 'makes five']);
    await made();
    expect(log.slice(4)).toEqual(['sounds 4 after 200']);
    end('played');
    expect(await saying.ended).toBe('said');
    expect(log.at(-1)).toBe('ceased');
  });

  it('stops at once, once, and says so', async () => {
    const { log, options, made } = bench();
    const saying = beginSaying('Long rail, five', false, options);
    await made();
    saying.stop();
    expect(log.slice(-2)).toEqual(['fades', 'ceased']);
    await made();
    expect(await saying.ended).toBe('interrupted');
    expect(log.filter((line) => line === 'ceased')).toHaveLength(1);
    expect(log.filter((line) => line.startsWith('sounds'))).toHaveLength(1);
  });

  it('stopped before it sounded, it never sounds and never began', async () => {
    const { log, options, made } = bench();
    const saying = beginSaying('Long rail', false, options);
    saying.stop();
    await made();
    expect(await saying.ended).toBe('interrupted');
    expect(log).toEqual(['makes Long rail']);
  });

  it('a phrase that cannot be made ends it after what sounds already', async () => {
    const { log, options, made, end } = bench(['five']);
    const saying = beginSaying('Long rail, five, six', false, options);
    await made();
    await made();
    end('played');
    expect(await saying.ended).toBe('failed');
    expect(log).not.toContain('makes six');
    expect(log.at(-1)).toBe('ceased');
  });

  it('a loudspeaker that stands still is told', async () => {
    const { options, made, end } = bench();
    const saying = beginSaying('five', false, options);
    await made();
    end('stuck');
    expect(await saying.ended).toBe('failed');
  });

  it('with nothing to say, it is said', async () => {
    const { log, options } = bench();
    expect(await beginSaying('...', false, options).ended).toBe('said');
    expect(log).toEqual([]);
  });
});
