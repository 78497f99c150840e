import { phrasesFor } from '../../../core/talk/grammar.ts';
import { TALKATIVE } from '../../core/talk/benches.ts';
import type { NodeEngine } from '../../voice/earInNode.ts';
import { impulse, IMPULSES, inARow } from '../../voice/impulses.ts';
import type { Impulse } from '../../voice/impulses.ts';
import { joined, mixed, quiet, RATE_HZ } from '../../voice/sound.ts';
import { HELD_OUT_VOICES } from '../hearing/sounds.ts';
import type { SoundFolder } from '../hearing/sounds.ts';

const COMMANDS = ['next step', 'how long is the long rail', 'what is left'] as const;
const PEAK = 0.9;

interface Setting {
  readonly name: string;
  /** What is heard with a command that begins half a second into it. */
  readonly around: (seconds: number) => Float32Array;
}

/** `ms` from the blow to the first sound of the command; recordings have half a second of quiet before it. */
const before = (kind: Impulse, ms: number): Setting => ({ name: `${kind} ${ms} ms before`, around: () => joined(new Float32Array(Math.round((0.5 - ms / 1_000) * RATE_HZ)), impulse(kind, PEAK)) });
const SETTINGS: readonly Setting[] = [
  { name: 'no blow', around: () => new Float32Array(0) },
  ...IMPULSES.flatMap((kind) => [before(kind, 150), before(kind, 300)]),
  { name: 'mallet blows each 1.2 s, all the while', around: (seconds) => inARow('mallet blow', seconds, 1.2, PEAK / 2) },
  { name: 'mallet blows each 0.8 s, all the while', around: (seconds) => inARow('mallet blow', seconds, 0.8, PEAK / 2) },
];

/** Commands close to blows and between them, at the usual loudness and softer. */
export function heardAfterBlows(engine: NodeEngine, folder: SoundFolder, share: number): void {
  const commands = COMMANDS.slice(0, Math.max(1, Math.round(COMMANDS.length * share)));
  for (const softerDb of [0, 12]) {
    for (const { name, around } of SETTINGS) {
      const count = { said: 0, noticed: 0, right: 0 };
      for (const voice of HELD_OUT_VOICES) {
        const ear = engine.ear(phrasesFor(TALKATIVE), 'bench');
        ear.hear(quiet(2));
        for (const command of commands) {
          const speech = folder.spoken(`bench, ${command}`, voice).map((sample) => sample / 10 ** (softerDb / 20));
          const first = ear.notes.length;
          ear.hear(joined(mixed(mixed(speech, around(speech.length / RATE_HZ)), quiet(speech.length / RATE_HZ)), quiet(2)));
          const notes = ear.notes.slice(first);
          count.said += 1;
          if (notes.length > 0) count.noticed += 1;
          if (notes.some(({ noticed }) => noticed.kind === 'heard' && noticed.words === command)) count.right += 1;
          ear.leave();
        }
        ear.end();
      }
      console.log(`${name.padEnd(40)} ${softerDb} dB softer   said ${count.said}  word noticed ${count.noticed}  whole command right ${count.right}`);
    }
  }
}

/** Blows and falls alone, with attention open all the while: what they are taken for. */
export function blowsAlone(engine: NodeEngine, times: number): void {
  for (const kind of IMPULSES) {
    const ear = engine.ear(phrasesFor(TALKATIVE), 'bench');
    ear.hear(quiet(2));
    for (let at = 0; at < times; at += 1) {
      ear.listenNow();
      ear.hear(joined(impulse(kind, PEAK, at), quiet(1)));
    }
    const taken = ear.notes.map(({ noticed }) => (noticed.kind === 'heard' ? noticed.words : 'its word'));
    console.log(`${times} times a ${kind} while it listens: taken for a command ${taken.length} times ${taken.join(', ')}; the gate let ${(ear.passedMs / times).toFixed(0)} ms of each through`);
    ear.end();
  }
}
