/**
 * How well the ear hears commands: sentences of the bench, made by the synthesisers espeak-ng and flite (Debian packages of these names, with sox), clean and
 * under the noise of a shop, through gate, engine, attention and parser. Synthetic voices speak more alike and more clearly than people: the figures
 * compare grammars, models and settings with each other, and promise nothing about a person.
 */
import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { isDeepStrictEqual } from 'node:util';
import { phrasesFor } from '../../core/talk/grammar.ts';
import { parseRequest } from '../../core/talk/parse.ts';
import { TALKATIVE } from '../core/talk/benches.ts';
import { openEar } from '../voice/earBench.ts';
import type { EarBench } from '../voice/earBench.ts';
import { blows, planing } from '../voice/shopNoise.ts';
import { joined, mixed, quiet, RATE_HZ, readWav } from '../voice/sound.ts';

const COMMANDS = ['next step', 'how long is the long rail', 'how wide is the short rail', 'record leg two width three and seven sixteenths',
  'record long rail length thirty one and five eighths', 'what is left', 'say that again', 'undo', 'start a timer for ten minutes', 'how much time is left',
  'done', 'where am i', 'what tools', 'half of the long rail length', 'how thick is the top', 'why is the long rail that long', 'louder',
  'record leg one width two and a half', 'add five minutes', 'what can i say', 'skip', 'step back', 'how many legs', 'half of three and seven sixteenths',
  'three and a half plus two and a quarter', 'record short rail length fifteen and nine sixteenths', 'stop the timer', 'what moved', 'yes', 'be quiet'];
const TALK = ['i went to the market on saturday and bought some bread and cheese for the children', 'the weather was cold all week and the river was frozen by the bridge',
  'there was a long line at the bank and only one person working', 'he sat on a bench in the park and read the newspaper', 'she put the books on the table and opened the window',
  'it costs about twenty dollars but you can get it for less', 'i can never remember where i left my keys or my glasses', 'what time are your parents coming to dinner on sunday'];
const ESPEAK = ['en-us', 'en-gb', 'en-us+f3', 'en-us+m3'];
const FLITE = ['slt', 'rms', 'awb'];
const NOISY = ['en-us', 'slt', 'rms'];

const folder = mkdtempSync(join(tmpdir(), 'accuracy-'));
const heardOf = (words: string) => parseRequest(words, TALKATIVE);
const bench = await openEar();
try {
  await bench.page.evaluate(async (phrases) => {
    window.page.make({ pushed: true });
    await window.page.ear.start();
    await window.page.ear.setGrammar(phrases, 'bench');
  }, phrasesFor(TALKATIVE));
  for (const voice of [...ESPEAK, ...FLITE]) await commands(voice, [voice], (speech) => speech);
  await commands('planing, 10 dB', NOISY, (speech) => over(speech, planing(speech.length / RATE_HZ, 1), 10));
  await commands('blows, 5 dB', NOISY, (speech) => over(speech, blows(speech.length / RATE_HZ, 1), 5));
  for (const db of [12, 24]) await commands(`${db} dB softer, in the same room`, NOISY, (speech) => speech.map((sample) => sample / 10 ** (db / 20)));
  let acts = 0;
  for (const voice of NOISY) for (const remark of TALK) acts += (await hear(bench, spoken(remark, voice))).length;
  console.log(`talk that is not for the bench: ${acts} sentences taken for commands, of ${TALK.length * NOISY.length}`);
} finally {
  await bench.close();
  rmSync(folder, { recursive: true });
}

async function commands(name: string, voices: readonly string[], treat: (speech: Float32Array) => Float32Array): Promise<void> {
  const count = { right: 0, wrong: 0, refused: 0 };
  const mistakes: string[] = [];
  for (const voice of voices) {
    for (const command of COMMANDS) {
      const heard = (await hear(bench, treat(spoken(`bench, ${command}`, voice)))).join(' / ');
      const outcome = outcomeOf(command, heard);
      count[outcome] += 1;
      if (outcome !== 'right') mistakes.push(`${outcome}: "${command}" heard as "${heard}"`);
    }
  }
  console.log(`${name}: ${count.right} right, ${count.wrong} wrong acts, ${count.refused} refused, of ${COMMANDS.length * voices.length}`);
  for (const mistake of mistakes) console.log(`    ${mistake}`);
}

function outcomeOf(command: string, heard: string): 'right' | 'wrong' | 'refused' {
  const meant = heardOf(command);
  if (meant.kind === 'not understood') throw new Error(`"${command}" is not a command: ${meant.because}`);
  const request = heardOf(heard);
  if (request.kind === 'not understood') return 'refused';
  return isDeepStrictEqual(request, meant) ? 'right' : 'wrong';
}

async function hear({ page }: EarBench, sound: Float32Array): Promise<readonly string[]> {
  return page.evaluate(async (samples) => {
    const before = window.page.log.length;
    await window.page.push(Float32Array.from(samples));
    await window.page.push(new Float32Array(32_000));
    window.page.ear.closeWindow();
    return window.page.log.slice(before).filter(({ event }) => event === 'heard').map(({ detail }) => String(detail));
  }, [...joined(quiet(0.5), sound, quiet(0.5))]);
}

function spoken(words: string, voice: string): Float32Array {
  const raw = join(folder, 'raw.wav');
  const file = join(folder, 'said.wav');
  if (FLITE.includes(voice)) execFileSync('flite', ['-voice', voice, '-t', words, '-o', raw]);
  else execFileSync('espeak-ng', ['-v', voice, '-s', '150', '-w', raw, words]);
  execFileSync('sox', [raw, '-R', '-r', String(RATE_HZ), '-b', '16', '-c', '1', file, 'norm', '-12']);
  return readWav(readFileSync(file));
}

/** Speech over noise, `db` louder than it on the average. */
function over(speech: Float32Array, noise: Float32Array, db: number): Float32Array {
  const power = (sound: Float32Array) => sound.reduce((sum, sample) => sum + sample * sample, 0) / sound.length;
  const gain = Math.sqrt(power(speech) / power(noise)) / 10 ** (db / 20);
  return mixed(speech, noise.map((sample) => sample * gain));
}
