import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { SpeechQueue, WANTED_MS, type SayEnd, type SayPriority, type Utterance } from '../../../kiosk/mouth/speechQueue.ts';

const RANK: Readonly<Record<SayPriority, number>> = { due: 2, mark: 1, reply: 0 };

/** A mouth that takes as long for a text as its number of letters, in seconds, on a clock that is moved by hand. */
class PretendedMouth {
  now = 0;
  readonly told: string[] = [];
  readonly queue = new SpeechQueue({ now: () => this.now, perform: (utterance) => this.#perform(utterance) });
  #sounding: { readonly utterance: Utterance; readonly endsAt: number; readonly end: (end: SayEnd) => void } | undefined;
  failing = false;

  get sounding(): Utterance | undefined {
    return this.#sounding?.utterance;
  }

  say(text: string, priority: SayPriority, key?: string, slow = false): Promise<SayEnd> {
    return this.queue.say({ text, priority, slow, ...(key === undefined ? {} : { key }) });
  }

  /** Moves the clock on, ending what ends meanwhile. */
  async pass(seconds: number): Promise<void> {
    const until = this.now + 1000 * seconds;
    for (;;) {
      await settle();
      const next = this.#sounding;
      if (next === undefined || next.endsAt > until) break;
      this.now = next.endsAt;
      this.#cease(`ends ${next.utterance.text}`);
      next.end(this.failing ? 'failed' : 'said');
    }
    this.now = until;
    await settle();
  }

  #perform(utterance: Utterance) {
    if (this.#sounding !== undefined) throw new Error(`${utterance.text} over ${this.#sounding.utterance.text}`);
    let end: (end: SayEnd) => void = () => undefined;
    const ended = new Promise<SayEnd>((resolve) => { end = resolve; });
    const own = { utterance, endsAt: this.now + 1000 * utterance.text.length, end };
    this.#sounding = own;
    this.told.push(`says ${utterance.text}`);
    return {
      ended,
      stop: () => {
        if (this.#sounding === own) this.#cease(`cuts ${utterance.text}`);
        end('interrupted');
      },
    };
  }

  #cease(how: string): void {
    this.#sounding = undefined;
    this.told.push(how);
  }
}

async function settle(): Promise<void> {
  for (let round = 0; round < 8; round++) await Promise.resolve();
}

describe('one thing is said at a time', () => {
  it('a due timer interrupts a size, which is then said from its start', async () => {
    const mouth = new PretendedMouth();
    const size = mouth.say('size', 'reply');
    await mouth.pass(2);
    const due = mouth.say('due', 'due');
    await mouth.pass(20);
    expect(mouth.told).toEqual(['says size', 'cuts size', 'says due', 'ends due', 'says size', 'ends size']);
    expect(await Promise.all([size, due])).toEqual(['said', 'said']);
  });

  it('a size never interrupts a due timer', async () => {
    const mouth = new PretendedMouth();
    void mouth.say('due', 'due');
    void mouth.say('size', 'reply');
    await mouth.pass(20);
    expect(mouth.told).toEqual(['says due', 'ends due', 'says size', 'ends size']);
  });

  it('of what waits, the due goes first, then the mark, then the reply', async () => {
    const mouth = new PretendedMouth();
    void mouth.say('x', 'due');
    void mouth.say('r', 'reply');
    void mouth.say('m', 'mark');
    void mouth.say('d', 'due');
    await mouth.pass(20);
    expect(mouth.told.filter((line) => line.startsWith('says'))).toEqual(['says x', 'says d', 'says m', 'says r']);
  });

  it('a newer message takes the place of an older one of its key', async () => {
    const mouth = new PretendedMouth();
    const first = mouth.say('older', 'reply', 'reply');
    await mouth.pass(1);
    const second = mouth.say('newer', 'reply', 'reply');
    await mouth.pass(20);
    expect(mouth.told).toEqual(['says older', 'cuts older', 'says newer', 'ends newer']);
    expect(await Promise.all([first, second])).toEqual(['interrupted', 'said']);
  });

  it('the same words of one key are said once, and both who asked are told', async () => {
    const mouth = new PretendedMouth();
    const both = [mouth.say('glue', 'due', 'timer 1'), mouth.say('glue', 'due', 'timer 1')];
    await mouth.pass(20);
    expect(mouth.told).toEqual(['says glue', 'ends glue']);
    expect(await Promise.all(both)).toEqual(['said', 'said']);
  });

  it('the same words asked for slowly are said anew', async () => {
    const mouth = new PretendedMouth();
    void mouth.say('size', 'reply', 'reply');
    void mouth.say('size', 'reply', 'reply', true);
    await mouth.pass(20);
    expect(mouth.told).toEqual(['says size', 'cuts size', 'says size', 'ends size']);
  });

  it('a reply that waited too long is no longer wanted; what is due stays due', async () => {
    const mouth = new PretendedMouth();
    const long = mouth.say('d'.repeat(WANTED_MS.reply / 1000 + 1), 'due');
    const reply = mouth.say('size', 'reply');
    const due = mouth.say('due', 'due');
    await mouth.pass(100);
    expect(await Promise.all([long, reply, due])).toEqual(['said', 'interrupted', 'said']);
    expect(mouth.told).not.toContain('says size');
  });

  it('hush ends what is said and all that waits', async () => {
    const mouth = new PretendedMouth();
    const all = [mouth.say('one', 'reply'), mouth.say('two', 'reply'), mouth.say('due', 'due')];
    mouth.queue.hush();
    await mouth.pass(20);
    expect(await Promise.all(all)).toEqual(['interrupted', 'interrupted', 'interrupted']);
    expect(mouth.told.at(-1)).toBe('cuts due');
    const after = mouth.say('three', 'reply');
    await mouth.pass(20);
    expect(await after).toBe('said');
  });

  it('tells who asked that words could not be sounded, and goes on', async () => {
    const mouth = new PretendedMouth();
    mouth.failing = true;
    const both = [mouth.say('one', 'reply'), mouth.say('two', 'reply')];
    await mouth.pass(20);
    expect(await Promise.all(both)).toEqual(['failed', 'failed']);
  });
});

type Act = { readonly kind: 'say'; readonly text: string; readonly priority: SayPriority; readonly key: string | undefined; readonly slow: boolean } | { readonly kind: 'pass'; readonly seconds: number } | { readonly kind: 'hush' };

const act: fc.Arbitrary<Act> = fc.oneof(
  { weight: 5, arbitrary: fc.record({ kind: fc.constant('say' as const), text: fc.stringMatching(/^[a-c]{1,6}$/), priority: fc.constantFrom<SayPriority>('due', 'mark', 'reply'), key: fc.constantFrom(undefined, 'k', 'l'), slow: fc.boolean() }) },
  { weight: 4, arbitrary: fc.record({ kind: fc.constant('pass' as const), seconds: fc.integer({ min: 0, max: 30 }) }) },
  { weight: 1, arbitrary: fc.constant({ kind: 'hush' as const }) },
);

describe('whatever is asked, in whatever order', () => {
  it('nothing waits behind what is less urgent, sounds never overlap, every beginning has its end, and everyone is told', async () => {
    await fc.assert(fc.asyncProperty(fc.array(act, { maxLength: 40 }), async (acts) => {
      const mouth = new PretendedMouth();
      const asked: { readonly priority: SayPriority; end: SayEnd | undefined }[] = [];
      for (const each of acts) {
        switch (each.kind) {
          case 'say': {
            const record: (typeof asked)[number] = { priority: each.priority, end: undefined };
            asked.push(record);
            void mouth.say(each.text, each.priority, each.key, each.slow).then((end) => { record.end = end; });
            break;
          }
          case 'pass': await mouth.pass(each.seconds); break;
          case 'hush': mouth.queue.hush(); break;
        }
        await settle();
        const open = asked.filter(({ end }) => end === undefined).map(({ priority }) => RANK[priority]);
        // A message may be dropped for a newer one of its key, but never left behind one that is less urgent.
        if (open.length > 0) expect(RANK[mouth.sounding?.priority ?? 'reply']).toBe(Math.max(...open));
        else expect(mouth.sounding).toBeUndefined();
      }
      await mouth.pass(1_000);
      expect(asked.every(({ end }) => end !== undefined)).toBe(true);
      expect(mouth.sounding).toBeUndefined();
      mouth.told.forEach((line, index) => expect(line.startsWith('says')).toBe(index % 2 === 0));
    }), { numRuns: 500 });
  });
});
