import { afterEach, expect, test } from 'vitest';
import { openEar } from './earBench.ts';
import type { EarBench, EarBenchOptions } from './earBench.ts';
import { joined, quiet, recording } from './sound.ts';

const PHRASES = ['next step', 'say again', 'how long is the long rail', 'how wide is the short rail', 'what is left', 'scratch that',
  'record leg two width', 'width three', 'three and seven sixteenths', 'three', 'seven sixteenths', 'four', 'leg one', 'leg two'];

let open: EarBench | undefined;
afterEach(async () => {
  await open?.close();
  open = undefined;
});

async function listening(options: EarBenchOptions): Promise<EarBench> {
  open = await openEar(options);
  await open.page.evaluate(async (phrases) => {
    window.page.make({});
    await window.page.ear.start();
    await window.page.ear.setGrammar(phrases, 'bench');
  }, PHRASES);
  return open;
}

const logged = (bench: EarBench, event: string) =>
  bench.page.evaluate((wanted) => window.page.log.filter((line) => line.event === wanted).map((line) => line.detail), event);
const waitFor = (bench: EarBench, event: string, detail: unknown) =>
  bench.page.waitForFunction(([wanted, what]) => window.page.log.some((line) => line.event === wanted && line.detail === what), [event, detail] as const, { timeout: 30_000 });

test('"bench, next step" said to the microphone comes out as "next step"', async () => {
  const bench = await listening({ microphone: joined(quiet(1.5), recording('bench-next-step'), quiet(2.5)) });
  await waitFor(bench, 'heard', 'next step');
  expect(new Set(await logged(bench, 'heard'))).toEqual(new Set(['next step']));
});
