import type { Bench } from '../core/bench/bench.ts';
import type { Request } from '../core/bench/request.ts';
import type { Moment } from '../core/clock/moment.ts';

/**
 * The port between the host (which joins core, store, ear and mouth) and the elements (which only draw and dispatch).
 * Views go down as properties; what the maker does comes up as two bubbling, composed events.
 */
export interface KioskView {
  readonly bench: Bench;
  readonly now: Moment;
  /** The theme to draw now; 'by daylight' is settled by the host. */
  readonly theme: 'light' | 'dark';
  readonly ear: EarView;
  readonly mouth: MouthView;
  readonly keeping: KeepingView;
  /** Faults and news that the maker should see; each a sentence that says what to do. */
  readonly notices: readonly string[];
  /** Piece files found in the pieces folder or on a stick. */
  readonly shelf: readonly ShelfPiece[];
  readonly hearing: HearingView;
  readonly microphones: readonly { readonly id: string; readonly label: string; readonly chosen: boolean }[];
}

/** What the ear hears with, and how a trial of the microphone goes. */
export interface HearingView {
  /** The model in use and how long it took to load; null while there is none. */
  readonly model: { readonly name: string; readonly loadMs: number } | null;
  readonly models: readonly { readonly name: string; readonly chosen: boolean; readonly usable: boolean }[];
  /** Words of the grammar that the model cannot hear, and those whose sound was guessed. */
  readonly cannotHear: readonly string[];
  readonly guessed: readonly string[];
  /** Null unless the microphone is being tried. */
  readonly trial: TrialView | null;
}

export interface TrialView {
  /** Loudest of the last seconds, in decibels below full scale. */
  readonly peakDb: number;
  /** How often the address word was heard alone or before something. */
  readonly calls: number;
  /** What was heard last, newest first, and what it would do. */
  readonly heard: readonly { readonly words: string; readonly would: string; readonly addressed: boolean }[];
  /** What is wrong with the sound and what to do, the worst first. */
  readonly faults: readonly string[];
  /** Seconds of the last words that can be played back; 0 when there are none. */
  readonly playableSeconds: number;
  readonly playing: boolean;
}

export interface EarView {
  /** `waiting` hears but acts only when addressed; `listening` was addressed; `deaf` while the mouth speaks. */
  readonly state: 'off' | 'starting' | 'waiting' | 'listening' | 'deaf' | 'fault';
  /** For a fault: what is wrong and what to do. Else empty or a short remark. */
  readonly sentence: string;
  /** Loudness now in decibels below full scale (-90 … 0); null when nothing is measured. */
  readonly levelDb: number | null;
  /** How loud the shop is without words, blows and the kiosk's own voice (A-weighted, decibels below full scale); null while not known. */
  readonly ambientDb: number | null;
  /** The last words heard, as understood. */
  readonly heard: string;
}

export interface MouthView {
  readonly state: 'silent' | 'speaking' | 'muted' | 'fault';
  readonly sentence: string;
  /** The words being said, so that they can be read as well. */
  readonly words: string;
}

export interface KeepingView {
  /** `kept` in both places; `one copy` when only one of them answered; `fault` when nothing can be kept. */
  readonly state: 'kept' | 'writing' | 'one copy' | 'read only' | 'fault';
  readonly sentence: string;
}

export interface ShelfPiece {
  readonly name: string;
  /** Where it lies, for the maker to tell two of the same name apart: 'pieces folder', 'stick'. */
  readonly from: string;
  /** Given back to the host to open it. */
  readonly address: string;
}

/** What the maker does that is not a Request to the bench: it concerns the ear, the mouth, or files. */
export type HostAct =
  | { readonly kind: 'listen' }
  | { readonly kind: 'hush' }
  | { readonly kind: 'load demo' }
  | { readonly kind: 'open from shelf'; readonly address: string }
  | { readonly kind: 'look for pieces' }
  | { readonly kind: 'open piece file'; readonly file: File }
  | { readonly kind: 'save everything' }
  | { readonly kind: 'take in everything'; readonly file: File }
  | { readonly kind: 'choose model'; readonly name: string }
  /** What was said last while the microphone is tried. */
  | { readonly kind: 'play back' }
  | { readonly kind: 'put away notice'; readonly index: number }
  /** A key that has been down for many seconds: dust, a fallen board, or worn out. */
  | { readonly kind: 'key stuck'; readonly label: string };

declare global {
  interface HTMLElementEventMap {
    'bench-request': CustomEvent<Request>;
    'bench-act': CustomEvent<HostAct>;
  }
}

/** Sends a request up to the host. */
export function ask(from: EventTarget, request: Request): void {
  from.dispatchEvent(new CustomEvent<Request>('bench-request', { detail: request, bubbles: true, composed: true }));
}

/** Tells the host of an act on the ear, the mouth or files. */
export function tellHost(from: EventTarget, act: HostAct): void {
  from.dispatchEvent(new CustomEvent<HostAct>('bench-act', { detail: act, bubbles: true, composed: true }));
}
