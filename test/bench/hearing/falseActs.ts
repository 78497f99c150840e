import type { Bench } from '../../../core/bench/bench.ts';
import { dependsOn } from '../../../core/talk/dependence.ts';
import { parseHeard } from '../../../core/talk/doubt.ts';
import { Attention } from '../../../kiosk/ear/attention.ts';
import { Gain } from '../../../kiosk/ear/gain.ts';
import { Gate } from '../../../kiosk/ear/gate.ts';
import { trustSettingsAt, trustedWords } from '../../../kiosk/ear/trust.ts';
import { joined, mixed, quiet, randomNumbers, RATE_HZ } from '../../voice/sound.ts';
import { ADDRESS } from './listener.ts';
import type { Heard, Listener } from './listener.ts';
import { REMARKS } from './remarks.ts';
import { noise } from './sounds.ts';
import type { SoundFolder } from './sounds.ts';

const BLOCK = 1_600;
/** Longer talk, as from people in the room or a radio; 'bench' is among it, not at the beginning. */
const TALK = ['i went to the market on saturday and bought some bread and cheese for the children', 'the weather was cold all week and the river was frozen by the bridge',
  'there was a long line at the bank and only one person working', 'he sat on a bench in the park and read the newspaper', 'she put the books on the table and opened the window',
  'it costs about twenty dollars but you can get it for less', 'i can never remember where i left my keys or my glasses', 'what time are your parents coming to dinner on sunday',
  'the next train leaves at fifteen minutes past four from platform two', 'they measured the room and found it was three feet too short for the carpet'];
/** Everyday sentences of other languages. */
const FOREIGN: readonly (readonly [voice: string, words: string])[] = [
  ['de', 'Morgen gehen wir alle zusammen auf den Markt und kaufen Brot, Käse und frisches Gemüse.'], ['fr-fr', 'Demain nous irons tous ensemble au marché pour acheter du pain et du fromage.'],
  ['es', 'Mañana vamos todos juntos al mercado a comprar pan, queso y verduras frescas.'], ['it', 'Domani andiamo tutti insieme al mercato a comprare pane, formaggio e verdura.'],
  ['nl', 'Morgen gaan we allemaal samen naar de markt om brood en kaas te kopen.'], ['sv', 'I morgon går vi alla tillsammans till torget och köper bröd och ost.'],
  ['pl', 'Jutro wszyscy razem idziemy na targ kupić chleb, ser i świeże warzywa.'], ['pt', 'Amanhã vamos todos juntos ao mercado comprar pão, queijo e legumes.'],
  ['ru', 'Завтра мы все вместе пойдём на рынок за хлебом и сыром.'], ['fi', 'Huomenna menemme kaikki yhdessä torille ostamaan leipää ja juustoa.'], ['tr', 'Yarın hep birlikte pazara gidip ekmek ve peynir alacağız.'], ['hu', 'Holnap mindannyian együtt megyünk a piacra kenyeret és sajtot venni.'],
];
const ENGLISH = ['flite slt', 'flite awb', 'flite rms', 'flite kal16', 'espeak-ng en-us', 'espeak-ng en-gb', 'espeak-ng en-us+f4', 'espeak-ng en-gb-scotland+m7', 'espeak-ng en-029'];

export interface FalseActs { readonly seconds: number; readonly passedSeconds: number; readonly acts: readonly string[]; readonly addresses: number }

/** Hours of a shop in which nobody speaks to the bench, through gate, gain, recogniser, attention and parser; what it took for a request. `eachHour` is called once for each. */
export function falseActs(listener: Listener, folder: SoundFolder, bench: Bench, hours: number, eachHour: (hour: number) => void): FalseActs {
  const ear = new QuietEar(listener, bench);
  const random = randomNumbers(12);
  for (let scene = 0, hour = 1; ear.seconds < hours * 3600; scene += 1) {
    ear.hear(sceneOf(folder, scene, random));
    if (ear.seconds < hour * 3600) continue;
    eachHour(hour);
    hour += 1;
  }
  return ear;
}

/** One scene of half a minute or so: noise, talk, talk under noise, another language, music. */
function sceneOf(folder: SoundFolder, scene: number, random: () => number): Float32Array {
  const one = <Item>(list: readonly Item[]): Item => list[Math.floor(random() * list.length)] as Item;
  const level = 10 ** (-(20 + 25 * random()) / 20);
  const spoken = (words: string, voice: string) => joined(folder.spoken(words, voice).map((sample) => sample * level * 4), quiet(0.5 + 3 * random()));
  const talk = () => joined(...Array.from({ length: 6 }, () => spoken(one(random() < 0.5 ? TALK : REMARKS), one(ENGLISH))));
  const foreign = () => joined(...Array.from({ length: 4 }, () => { const [voice, words] = one(FOREIGN); return spoken(words, `espeak-ng ${voice}`); }));
  const shop = (seconds: number) => noise(one(['planing', 'blows', 'fan', 'saw'] as const), seconds).map((sample) => sample * level);
  switch (scene % 6) {
    case 0: return shop(40);
    case 1: return talk();
    case 2: return foreign();
    case 3: return music(40, random).map((sample) => sample * level);
    case 4: { const said = talk(); return mixed(said, shop(said.length / RATE_HZ).map((sample) => sample * 0.3)); }
    default: return joined(quiet(20), shop(20));
  }
}

/** Chords that change twice a second, with a beat: like a radio in the corner. */
function music(seconds: number, random: () => number): Float32Array {
  const sound = new Float32Array(Math.round(seconds * RATE_HZ));
  for (let from = 0; from < sound.length; from += RATE_HZ / 2) {
    const root = 110 * 2 ** (Math.floor(12 * random()) / 12);
    const chord = [1, 1.26, 1.5, 2, 3].map((ratio) => root * ratio);
    for (let at = from; at < Math.min(sound.length, from + RATE_HZ / 2); at += 1) {
      const time = (at - from) / RATE_HZ;
      const beat = Math.exp(-40 * time) * (random() - 0.5);
      sound[at] = (Math.exp(-2 * time) * chord.reduce((sum, hertz) => sum + Math.sin((2 * Math.PI * hertz * at) / RATE_HZ), 0)) / 5 + beat;
    }
  }
  return sound;
}

/** The ear without its microphone and without its clock: time is what it heard. */
class QuietEar implements FalseActs {
  readonly acts: string[] = [];
  seconds = 0;
  passedSeconds = 0;
  addresses = 0;
  readonly #gate = new Gate();
  readonly #gain = new Gain();
  readonly #attention = new Attention(ADDRESS);
  readonly #listener: Listener;
  readonly #bench: Bench;

  constructor(listener: Listener, bench: Bench) {
    this.#listener = listener;
    this.#bench = bench;
  }

  hear(sound: Float32Array): void {
    for (let at = 0; at < sound.length; at += BLOCK) {
      const { blocks, ended } = this.#gate.take(sound.slice(at, at + BLOCK));
      for (const block of this.#gain.apply(blocks, this.#gate.floorDb)) {
        this.passedSeconds += block.length / RATE_HZ;
        this.#notice(this.#listener.take(block));
      }
      this.seconds += BLOCK / RATE_HZ;
      if (!ended) continue;
      this.#notice(this.#listener.finish());
      this.#gain.reset();
      this.#attention.fellQuiet();
    }
  }

  #notice(heard: Heard | undefined): void {
    if (heard === undefined) return;
    const trusted = trustedWords(heard.words, heard.sureness, ADDRESS, (spoken, at) => dependsOn(spoken, at, this.#bench), trustSettingsAt(heard.standsOutDb));
    const noticed = this.#attention.words(trusted.words, this.seconds * 1000);
    if (noticed?.kind === 'address') this.addresses += 1;
    if (noticed?.kind === 'heard' && parseHeard(noticed.words, trusted.doubtful, this.#bench).kind !== 'not understood') this.acts.push(heard.words);
  }
}
