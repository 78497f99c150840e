import { decibelsOf } from './volume.ts';

/**
 * How much louder than set the mouth must speak to be understood over the shop.
 *
 * What is known is how loud the shop is at the microphone (A-weighted, below its full scale) and, once the kiosk has heard itself, how loud it is there itself. What
 * is not known is what the microphone's full scale is in the air, and how loud the kiosk is at the maker's ear. The first does not matter, for both are measured by the same
 * microphone and a shop's noise is about as loud at the bench as at the kiosk. For the second the maker says where he stands, and the room is taken for a small shop.
 */
interface ShopFacts {
  readonly ambientDb: number;
  /** How much louder (negative: softer) the kiosk's voice is at the microphone than it leaves; undefined while it could not be heard. */
  readonly ownVoiceDb: number | undefined;
  /** 0 to 10. */
  readonly volume: number;
  /** From the loudspeaker to the maker's ear. */
  readonly metres: number;
}

interface SpeakUp {
  /** Added to the loudness that was set; never negative. */
  readonly raiseDb: number;
  /** What the voice then is above the shop's noise at the maker's ear. */
  readonly aboveDb: number;
}

/** A signal is heard without doubt 15 dB above the noise, both A-weighted (ISO 7731:2003, 5.2.2.1; from memory). It is a figure for signals, and speech needs about as much to be understood whole. */
export const ABOVE_NOISE_DB = 15;
/** Speech as the mouth makes it, below full scale (kiosk/mouth/loudness.ts). */
export const SPEECH_DB = -18;
/** While it cannot hear itself: a voice at full scale is taken to be 12 dB softer at the microphone beside the loudspeaker. Our assumption, no source. */
const ASSUMED_OWN_VOICE_DB = -12;
/** From the loudspeaker to the kiosk's microphone: our assumption. */
const MICROPHONE_METRES = 0.3;
/** Where the echo of a room is as loud as the direct sound: 0.057 √(Q V / T), with Q = 2 for a small loudspeaker, V = 50 m³ and T = 0.5 s (a textbook formula of room acoustics). */
const CRITICAL_METRES = 0.057 * Math.sqrt((2 * 50) / 0.5);
/** Full scale of a common digital microphone in the air: -26 dB at 94 dB (data sheets of such microphones; from memory). One that is more sensitive makes us limit too soon, which is safe. */
const FULL_SCALE_DBA = 120;
/** At the ear, never more: the upper action value of directive 2003/10/EC and the recommended limit of NIOSH (98-126) are 85 dB(A) over eight hours; a few words are far less than eight hours. */
const LOUDEST_DBA = 85;

export function speakUp({ ambientDb, ownVoiceDb = ASSUMED_OWN_VOICE_DB, volume, metres }: ShopFacts): SpeakUp {
  const setDb = decibelsOf(volume);
  const atEarDb = SPEECH_DB + setDb + ownVoiceDb - furtherDb(metres);
  const wanted = ambientDb + ABOVE_NOISE_DB - atEarDb;
  const roomOfLoudspeaker = -setDb;
  const roomOfEar = LOUDEST_DBA - FULL_SCALE_DBA - atEarDb;
  const raiseDb = Math.max(0, Math.min(wanted, roomOfLoudspeaker, roomOfEar));
  return { raiseDb, aboveDb: atEarDb + raiseDb - ambientDb };
}

/** How much softer a sound is there than at the microphone: direct sound by distance, and the room's echo that is everywhere the same. */
export function furtherDb(metres: number): number {
  const power = (distance: number) => 1 / distance ** 2 + 1 / CRITICAL_METRES ** 2;
  return 10 * Math.log10(power(MICROPHONE_METRES) / power(Math.max(MICROPHONE_METRES, metres)));
}

/** What the last measurements of its own voice say together: the middle one of five, for a blow may fall into any one. */
export class OwnVoiceMemory {
  #heard: number[] = [];

  /** `heardDb` at the microphone, when it left at `leftDb` below full scale. */
  add(heardDb: number, leftDb: number): void {
    this.#heard = [...this.#heard.slice(-4), heardDb - leftDb];
  }

  /** How much louder it is at the microphone than it leaves; undefined before the first. */
  get db(): number | undefined {
    return [...this.#heard].sort((one, other) => one - other)[this.#heard.length >> 1];
  }

  /** Another microphone, another place. */
  forget(): void {
    this.#heard = [];
  }
}
