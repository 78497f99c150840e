import type { Settings, Standing } from '../../core/journal/settings.ts';
import type { ShopSound } from '../ear/shopSound.ts';
import { OwnVoiceMemory, speakUp, SPEECH_DB } from '../mouth/speakUp.ts';
import { decibelsOf } from '../mouth/volume.ts';

/** Ears beside the loudspeaker, at a bench an arm's length off, at the other end of a garage. */
const METRES: Readonly<Record<Standing, number>> = { close: 0.5, 'at the bench': 1.5, 'across the shop': 4 };
/** Less above the noise than this, and words are lost even to someone who knows them (speech at the level of the noise is half understood; common practice, no source). */
const HARDLY_HEARD_DB = 6;

/** What the host knows of the noise in the shop, and what follows from it for the mouth and the clocks. */
export class LoudShop {
  readonly #ownVoice = new OwnVoiceMemory();
  readonly #shop: () => ShopSound | undefined;
  readonly #settings: () => Settings;
  /** How loud the mouth was last, below full scale. */
  #leftDb = SPEECH_DB;

  constructor(shop: () => ShopSound | undefined, settings: () => Settings) {
    this.#shop = shop;
    this.#settings = settings;
  }

  /** Decibels to add to the volume for what begins to sound now. */
  raiseDb(): number {
    const { raiseDb } = this.#speakUp();
    this.#leftDb = SPEECH_DB + decibelsOf(this.#settings().volume) + raiseDb;
    return raiseDb;
  }

  /** The mouth heard itself. */
  heardItself(db: number): void {
    this.#ownVoice.add(db, this.#leftDb);
  }

  /** Another microphone, another scale. */
  forgetVoice(): void {
    this.#ownVoice.forget();
  }

  /** True when what may wait for a lull need not wait. */
  lull(): boolean {
    return !this.#settings().waitForLull || (this.#shop()?.lull ?? true);
  }

  /** For the screen; empty when it can be heard. */
  get remark(): string {
    const { aboveDb } = this.#speakUp();
    return this.#settings().volume > 0 && aboveDb < HARDLY_HEARD_DB ? 'It is so loud here that my voice may not reach you. The words are on the screen.' : '';
  }

  #speakUp(): { readonly raiseDb: number; readonly aboveDb: number } {
    const shop = this.#shop();
    const { speakUp: wanted, volume, standing } = this.#settings();
    if (shop === undefined) return { raiseDb: 0, aboveDb: Infinity };
    const facts = { ambientDb: shop.ambientDb, ownVoiceDb: this.#ownVoice.db, volume, metres: METRES[standing] };
    const up = speakUp(facts);
    return wanted ? up : { raiseDb: 0, aboveDb: up.aboveDb - up.raiseDb };
  }
}
