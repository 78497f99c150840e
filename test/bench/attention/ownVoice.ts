import type { Bench } from '../../../core/bench/bench.ts';
import { respond } from '../../../core/respond/respond.ts';
import { parseHeard } from '../../../core/talk/doubt.ts';
import { phrasesFor } from '../../../core/talk/grammar.ts';
import { renderSignals } from '../../../sounds/signals/recipe.ts';
import { everythingSaid, shapesOf } from '../../core/respond/said/everything.ts';
import type { Said } from '../../core/respond/said/walk.ts';
import { Session } from '../../core/respond/session.ts';
import type { EarInNode, NodeEngine } from '../../voice/earInNode.ts';
import { asMicrophoneHears, KioskVoice, tailOf } from '../../voice/kioskVoice.ts';
import { joined, quiet, RATE_HZ } from '../../voice/sound.ts';

/** After the sound, until the ear knows that it is over. */
const OVER_SECONDS = 1.6;

/** What came of its own words: how often a request was heard that is understood, and how often one that writes something down. */
class Tally {
  #understood = 0;
  #written = 0;
  readonly #examples: string[] = [];

  add(heard: readonly { readonly words: string; readonly doubtful: readonly string[] }[], { text, bench }: Said): void {
    const requests = heard.map(({ words, doubtful }) => parseHeard(words, doubtful, bench)).filter(({ kind }) => kind !== 'not understood');
    if (requests.length === 0) return;
    this.#understood += 1;
    const { now } = Session.withDemo();
    if (requests.some((request) => respond(bench, request, now).entries.length > 0)) this.#written += 1;
    this.#examples.push(`      “${text}” as ${heard.map(({ words }) => `“${words}”`).join(', ')}`);
  }

  toString(): string {
    return [`${this.#understood} understood as a request, ${this.#written} of them one that writes something down`, ...this.#examples].join('\n');
  }
}

/**
 * Everything the kiosk can say, one of each shape, and every signal, as its own microphone hears it, by the sentences that it listens for at that moment: what comes of the room's
 * tail, with attention open, after the ear woke again; and, to see what deafness is worth, what would come of the words themselves without it, with attention open and without.
 */
export function ownVoiceHeard(engine: NodeEngine, share: number): void {
  const everything = everythingSaid();
  const all = shapesOf(everything);
  const texts = all.filter((_, at) => Math.floor((at + 1) * share) > Math.floor(at * share));
  const voice = new KioskVoice();
  const [deafened, attending, unasked] = [new Tally(), new Tally(), new Tally()];
  let longestSeconds = 0;
  const signals = Object.values(renderSignals());
  const hearAll = (ear: EarInNode, sound: Float32Array, said: Said) => {
    // The words themselves need no echo to be understood; the tail is the echo alone.
    deafened.add(heardIn(ear, tailOf(sound), true), said);
    attending.add(heardIn(ear, asMicrophoneHears(sound), true), said);
    unasked.add(heardIn(ear, asMicrophoneHears(sound), false), said);
  };
  for (const { bench, group } of byListening(texts)) {
    const ear = engine.earOf(bench);
    ear.hear(quiet(2));
    for (const said of group) {
      const sound = voice.say(said.text);
      longestSeconds = Math.max(longestSeconds, sound.length / RATE_HZ);
      hearAll(ear, sound, said);
    }
    for (const { samples } of signals.splice(0)) hearAll(ear, samples, { text: 'a signal', bench });
    ear.end();
  }
  console.log(`own voice: ${everything.said.size} replies of ${all.length} shapes, ${texts.length} of these and every signal played into the ear; the longest takes ${longestSeconds.toFixed(0)} s at the usual pace`);
  console.log(`   deaf while it speaks, attention open: ${String(deafened)}`);
  console.log(`   not deaf, attention open: ${String(attending)}`);
  console.log(`   not deaf, not addressed: ${String(unasked)}`);
}

/** Those together that are heard by the same sentences, as the kiosk tells (Host.refreshGrammar). */
function byListening(texts: readonly Said[]): readonly { readonly bench: Bench; readonly group: readonly Said[] }[] {
  const groups = new Map<string, Said[]>();
  for (const said of texts) {
    const { state: { settings: { addressWord, rounding: { unit } } }, conversation: { question } } = said.bench;
    const key = [addressWord, unit, question?.kind, ...phrasesFor(said.bench)].join('|');
    groups.set(key, [...groups.get(key) ?? [], said]);
  }
  return [...groups.values()].flatMap((group) => (group[0] ? [{ bench: group[0].bench, group }] : []));
}

function heardIn(ear: EarInNode, sound: Float32Array, attending: boolean): readonly { words: string; doubtful: readonly string[] }[] {
  const before = ear.notes.length;
  if (attending) ear.listenNow();
  ear.hear(joined(sound, quiet(OVER_SECONDS)));
  ear.leave();
  return ear.notes.slice(before).flatMap(({ noticed, doubtful }) => (noticed.kind === 'heard' ? [{ words: noticed.words, doubtful }] : []));
}
