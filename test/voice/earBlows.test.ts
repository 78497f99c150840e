import { afterEach, beforeAll, describe, expect, test } from 'vitest';
import { NodeEngine } from './earInNode.ts';
import type { EarInNode } from './earInNode.ts';
import { impulse, IMPULSES, inARow } from './impulses.ts';
import { TALKATIVE } from '../core/talk/benches.ts';
import { joined, mixed, quiet, recording, RATE_HZ } from './sound.ts';

/** Blows and falls, and words soon after them: heard by gate, engine and attention, in the time of the sound. */
const LOUD = 0.9;

let engine: NodeEngine;
let ear: EarInNode;
beforeAll(async () => { engine = await NodeEngine.start(); });
afterEach(() => ear.end());

function listen(): EarInNode {
  ear = engine.earOf(TALKATIVE);
  ear.hear(quiet(2));
  return ear;
}

const heardWords = () => ear.notes.flatMap(({ noticed }) => (noticed.kind === 'heard' ? [noticed.words] : []));
/** The recording's own silence before its first word. */
const speech = (() => {
  const whole = recording('bench-next-step');
  return whole.slice(Math.max(0, whole.findIndex((sample) => Math.abs(sample) > 0.01)));
})();

describe.each(IMPULSES)('a %s', (kind) => {
  test('asks for nothing, also while the bench listens for a command', () => {
    listen();
    for (let times = 0; times < 4; times += 1) ear.hear(joined(impulse(kind, LOUD, times), quiet(1.1)));
    for (let times = 0; times < 3; times += 1) {
      ear.listenNow();
      ear.hear(joined(impulse(kind, LOUD, times), quiet(1.5)));
    }
    expect(ear.notes).toEqual([]);
  });

  test.each([150, 300])('is no reason to miss a command %d ms after it', (pauseMs) => {
    listen();
    const length = (pauseMs / 1_000) * RATE_HZ;
    const after = mixed(impulse(kind, LOUD), joined(new Float32Array(length), speech));
    ear.hear(mixed(joined(after, new Float32Array(2 * RATE_HZ)), quiet(after.length / RATE_HZ + 2)));
    expect(heardWords()).toEqual(['next step']);
  });

  test('is no reason to miss a soft command after it', () => {
    listen();
    const soft = speech.map((sample) => sample / 8);
    ear.hear(mixed(joined(mixed(impulse(kind, LOUD), joined(new Float32Array(0.3 * RATE_HZ), soft)), new Float32Array(2 * RATE_HZ)), quiet(6)));
    expect(heardWords()).toEqual(['next step']);
  });
});

test('regular blows ask for nothing, and a command after the last of them is heard', () => {
  listen();
  ear.hear(mixed(inARow('mallet blow', 12, 0.7, LOUD), quiet(12)));
  expect(ear.notes).toEqual([]);
  ear.hear(joined(quiet(0.2), speech, quiet(2)));
  expect(heardWords()).toEqual(['next step']);
});
