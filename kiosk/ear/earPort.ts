import type { Expression } from '../../core/talk/strict/expression.ts';
import type { Release } from './deafness.ts';
import type { Health } from './messages.ts';
import type { MicrophoneChoice, MicrophoneEvents, SoundSource } from './microphone.ts';
import type { CareAddresses, CareTimes, ModelInUse } from './recogniserCare.ts';
import type { ShopSound } from './shopSound.ts';
import type { EarState } from './state.ts';
import type { DependsOn } from './trust.ts';

/** What the rest of the kiosk knows of the ear: what it tells, what it can be told, and how it is set up. */

export interface EarEvents {
  /** Words that were meant for the bench, the address word taken off, and which of them were not heard clearly. Nothing else the ear hears leaves it. */
  heard(words: string, doubtful: readonly string[]): void;
  /** The address word: `settled` false as soon as it is guessed, true when the maker said it alone and waits. */
  address(settled: boolean): void;
  /** Ten times a second while there is a microphone: decibels below full scale, -90 to 0; null when it is gone. */
  level(db: number | null): void;
  state(state: EarState): void;
  /** The grammar is in force; the model cannot hear these of its words. Also after a restart with another model. */
  unknownWords(words: readonly string[]): void;
  /** At the same time: how these of its words are said is a guess, for the dictionary does not have them. */
  guessedWords?(words: readonly string[]): void;
  /** It hears with this model from now on. */
  modelLoaded?(model: ModelInUse): void;
  /** This model cannot be used, and why; the one that ships is tried in its place. */
  modelRefused?(url: string, reason: string): void;
  /** The microphone cuts what it hears, for it is too loud; again only after it was better. */
  distorted?(): void;
  /** Its own voice was heard so loud while it was deaf: A-weighted decibels below full scale. */
  ownVoice?(db: number): void;
}

/** Listens in while somebody tries the microphone; at no other time does anything but commands leave the ear. */
export interface EarTap {
  /** Each block as the microphone gave it; keep a copy, not the block. */
  sound(block: Float32Array): void;
  /** What the gate let through, as the recogniser gets it; `ended` with the last of an utterance. Keep copies. */
  passed(blocks: readonly Float32Array[], ended: boolean): void;
  /** All that was recognised, and what of it is meant for the bench: nothing but a call when empty, undefined when it was not addressed. */
  recognised(said: string, meant: string | undefined): void;
}

export interface EarOptions {
  readonly events: EarEvents;
  readonly addresses?: CareAddresses;
  /** Where sound comes from; the microphone unless told otherwise. */
  readonly source?: (events: MicrophoneEvents) => SoundSource;
  readonly careTimes?: CareTimes;
  readonly heapGrowthBytes?: number;
  /** Whether a request depends on one of its words; on each of them unless told otherwise. */
  readonly dependsOn?: DependsOn;
}

export interface Ear {
  readonly state: EarState;
  /** How loud the shop is, without the kiosk's own voice; undefined while that is not known. */
  readonly shop: ShopSound | undefined;
  /** Begins to listen. Settles when it hears, or when a fault was told; also tries again what it had given up. */
  start(): Promise<void>;
  /** Lets go of the microphone and of the engine's memory. */
  stop(): void;
  /** What may be said, as phrases and strictly as sentences, and the word that addresses the bench. `applied` is false while there is no engine: it is set as soon as there is one. */
  setGrammar(phrases: readonly string[], addressWord: string, sentences?: Expression): Promise<{ readonly applied: boolean; readonly unknownWords: readonly string[] }>;
  /** The listen key: what is said next is meant for the bench. Tries again what was given up. */
  listenNow(): void;
  /** The bench asked something: for `ms` of hearing, what is said is taken as meant for it. */
  openAnswerWindow(ms: number): void;
  /** The question was answered by another way. */
  closeWindow(): void;
  /** Hears nothing until every release was called, and a moment more. */
  deafen(): Release;
  /** Lets somebody listen in who tries the microphone; undefined ends it. */
  tap(tap: EarTap | undefined): void;
  /** Hears with another model: asks which one is chosen, and loads it. */
  changeModel(): Promise<void>;
  microphones(): Promise<readonly MicrophoneChoice[]>;
  /** By its name; '' for the one that the system prefers. Another one stands in while it is not there. */
  chooseMicrophone(label: string): Promise<void>;
  diagnosis(): Promise<EarDiagnosis>;
}

/** For whoever looks for a fault. */
export interface EarDiagnosis {
  /** What the browser says it does to the sound; undefined without a microphone. */
  readonly processing: MediaTrackSettings | undefined;
  /** How often a fresh engine had to be started. */
  readonly restarts: number;
  /** The loudness of the shop without speech, in decibels below full scale. */
  readonly floorDb: number;
  /** Undefined without an engine. */
  readonly engine: Health | undefined;
}
