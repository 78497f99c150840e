import type { AddressWord } from '../../../core/journal/settings.ts';
import { phrasesFor } from '../../../core/talk/grammar.ts';
import { TALKATIVE } from '../../core/talk/benches.ts';
import { inRoom, roomResponse } from '../../voice/room.ts';
import { joined, mixed, quiet, RATE_HZ } from '../../voice/sound.ts';
import { HELD_OUT_VOICES } from '../hearing/sounds.ts';
import type { SoundFolder } from '../hearing/sounds.ts';
import type { NodeEngine } from '../../voice/earInNode.ts';
import { bandLimited, fan, music, scaled, speechRms, toRms } from './sounds.ts';
import { RADIO_TALK } from './radioTalk.ts';

const COMMANDS = ['next step', 'how long is the long rail', 'record leg two width three and seven sixteenths', 'what is left', 'start a timer for ten minutes', 'say again'] as const;
/** Two of them the shipped model was trained with, four it was not. */
const VOICES = [...HELD_OUT_VOICES, 'flite slt', 'espeak-ng en-gb'] as const;
/** The fan before anyone speaks: so long takes the gate to get used to it. */
const SETTLE_SECONDS = 20;
const PAUSE_SECONDS = 3.5;

interface Place {
  readonly name: string;
  readonly metres?: number;
  /** Speech above the fan where the microphone is, in decibels. */
  readonly aboveFanDb?: number;
}

export const PLACES: readonly Place[] = [
  { name: 'close, quiet' },
  { name: '3 m, quiet', metres: 3 },
  { name: '3 m, fan 15 dB under the voice', metres: 3, aboveFanDb: 15 },
  { name: '3 m, fan 10 dB under the voice', metres: 3, aboveFanDb: 10 },
  { name: '3 m, fan 5 dB under the voice', metres: 3, aboveFanDb: 5 },
];

/** Says each command after the address word, in each voice, and counts how often the word and how often all of it was heard. */
export function heardFrom(place: Place, engine: NodeEngine, folder: SoundFolder, share: number, words: readonly AddressWord[]): void {
  const response = place.metres === undefined ? undefined : roomResponse(place.metres);
  for (const word of words) {
    const count = { said: 0, noticed: 0, right: 0, wrong: 0 };
    for (const voice of VOICES) {
      const ear = engine.ear(phrasesFor(TALKATIVE), word);
      const commands = COMMANDS.slice(0, Math.max(1, Math.round(COMMANDS.length * share)));
      const said = commands.map((command) => {
        const speech = folder.spoken(`${word}, ${command}`, voice);
        return response === undefined ? speech : inRoom(speech, response);
      });
      const level = speechRms(joined(...said)) / 10 ** ((place.aboveFanDb ?? 0) / 20);
      let second = 0;
      const under = (sound: Float32Array) => (place.aboveFanDb === undefined ? mixed(sound, quiet(sound.length / RATE_HZ)) : mixed(sound, toRms(fan(sound.length / RATE_HZ, second++), level)));
      ear.hear(under(new Float32Array(SETTLE_SECONDS * RATE_HZ)));
      said.forEach((sound, at) => {
        const before = ear.notes.length;
        ear.hear(under(joined(sound, new Float32Array(PAUSE_SECONDS * RATE_HZ))));
        const notes = ear.notes.slice(before);
        ear.leave();
        count.said += 1;
        if (notes.length > 0) count.noticed += 1;
        const heard = notes.flatMap(({ noticed }) => (noticed.kind === 'heard' ? [noticed.words] : []));
        if (heard.includes(commands[at] ?? '')) count.right += 1;
        else if (heard.length > 0) count.wrong += 1;
      });
      ear.end();
    }
    console.log(`${place.name.padEnd(34)} ${word.padEnd(10)} said ${String(count.said).padStart(3)}  word noticed ${String(count.noticed).padStart(3)}  whole command right ${String(count.right).padStart(3)}, other words ${String(count.wrong).padStart(3)}`);
  }
}

const RADIO_VOICES = ['flite slt', 'flite awb', 'espeak-ng en-us', 'espeak-ng en-gb+f3', ...HELD_OUT_VOICES] as const;

/** Minutes of radio: talk in changing voices with music between and sometimes under it. */
function radio(folder: SoundFolder, minutes: number): Float32Array {
  const parts: Float32Array[] = [];
  let seconds = 0;
  for (let turn = 0; seconds < 60 * minutes; turn += 1) {
    const voice = RADIO_VOICES[turn % RADIO_VOICES.length] ?? 'flite slt';
    // Another share of the sentences for each voice, so that nothing is said twice in the first hour.
    const sentence = RADIO_TALK[(turn * 5 + Math.floor(turn / RADIO_TALK.length)) % RADIO_TALK.length] ?? '';
    const talk = folder.spoken(sentence, voice).slice(0.35 * RATE_HZ);
    const part = turn % 12 === 11 ? joined(talk, scaled(music(8, turn), -22)) : turn % 5 === 4 ? mixed(talk, scaled(music(talk.length / RATE_HZ, turn), -35)) : talk;
    parts.push(part);
    seconds += part.length / RATE_HZ;
  }
  return scaled(bandLimited(joined(...parts)), -6);
}

/** Counts what a radio wakes, in an hour of it. */
export function wokenByRadio(engine: NodeEngine, folder: SoundFolder, minutes: number, words: readonly AddressWord[]): void {
  const sound = radio(folder, minutes);
  for (const word of words) {
    const ear = engine.ear(phrasesFor(TALKATIVE), word);
    ear.hear(sound);
    const hours = ear.heardMs / 3_600_000;
    const acts = ear.notes.filter(({ noticed }) => noticed.kind === 'heard');
    const waits = ear.notes.filter(({ noticed }) => noticed.kind === 'address' && noticed.settled);
    const glimpses = ear.notes.filter(({ noticed }) => noticed.kind === 'address' && !noticed.settled);
    const each = (notes: readonly unknown[]) => `${notes.length} (${(notes.length / hours).toFixed(1)} an hour)`;
    console.log(`radio, ${(60 * hours).toFixed(0)} min   ${word.padEnd(10)} looked up ${each(glimpses)}, opened for a command ${each(waits)}, took words for a command ${each(acts)}`);
    for (const { noticed, atMs } of acts) if (noticed.kind === 'heard') console.log(`    at ${(atMs / 1000).toFixed(0)} s: "${noticed.words}"`);
    ear.end();
  }
}
