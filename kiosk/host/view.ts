import type { Bench } from '../../core/bench/bench.ts';
import type { Moment } from '../../core/clock/moment.ts';
import type { Settings } from '../../core/journal/settings.ts';
import type { EarState, EarStateName } from '../ear/state.ts';
import type { EarView, HearingView, KeepingView, KioskView, MouthView, ShelfPiece } from '../hostPort.ts';
import type { MouthState } from '../mouth/state.ts';
import type { StoreStatus } from '../store/store.ts';

/** What ear, mouth and files last reported. */
export interface Seen {
  readonly heard: string;
  readonly levelDb: number | null;
  readonly ambientDb: number | null;
  /** Being said now. */
  readonly words: string;
  readonly notices: readonly string[];
  /** Sentences that the maker has read and does not want to see again. */
  readonly putAway: readonly string[];
  readonly shelf: readonly ShelfPiece[];
  readonly microphones: KioskView['microphones'];
  /** Words of the grammar that the speech model cannot hear. */
  readonly unknownWords: readonly string[];
  /** Words of the grammar that no dictionary has: they are listened for as they are probably said. */
  readonly guessedWords: readonly string[];
}

export interface ToDraw {
  readonly bench: Bench;
  readonly now: Moment;
  readonly ear: EarState;
  readonly mouth: MouthState;
  readonly status: StoreStatus;
  readonly seen: Seen;
  /** Why the voice may not reach the maker; empty when it does. */
  readonly drowned: string;
  readonly hearing: HearingView;
}

const EAR_STATES: Readonly<Record<EarStateName, EarView['state']>> = {
  starting: 'starting', asleep: 'waiting', attending: 'listening', deaf: 'deaf', off: 'off',
  'no microphone': 'fault', 'not allowed': 'fault', 'no model': 'fault', 'broken model': 'fault', 'engine failed': 'fault',
};

/** Everything the elements draw, in one plain object. */
export function kioskView({ bench, now, ear, mouth, status, seen, drowned, hearing }: ToDraw): KioskView {
  return {
    bench, now,
    theme: themeNow(bench.state.settings, now),
    ear: { state: EAR_STATES[ear.name], sentence: ear.sentence, levelDb: seen.levelDb, ambientDb: seen.ambientDb, heard: seen.heard },
    mouth: mouthView(mouth, bench.state.settings, seen.words, drowned),
    keeping: keepingView(status),
    notices: noticesOf(seen),
    shelf: seen.shelf,
    microphones: seen.microphones,
    hearing,
  };
}

/** Everything that the maker is told until it is put away, in the order in which it is shown. */
export function noticesOf({ notices, unknownWords, guessedWords, putAway }: Seen): readonly string[] {
  return [...notices, ...deafTo(unknownWords), ...unsureOf(guessedWords)].filter((sentence) => !putAway.includes(sentence));
}

/** Light from seven to seven, dark at night; light when nobody knows what time it is. */
function themeNow({ theme }: Settings, now: Moment): 'light' | 'dark' {
  if (theme !== 'by daylight') return theme;
  if (!now.wallTrusted) return 'light';
  const hour = new Date(now.wallMs).getHours();
  return hour >= 7 && hour < 19 ? 'light' : 'dark';
}

function mouthView(mouth: MouthState, { volume }: Settings, words: string, drowned: string): MouthView {
  if (mouth.name === 'no voice' || mouth.name === 'no loudspeaker' || mouth.name === 'waiting for a key') return { state: 'fault', sentence: mouth.sentence, words };
  if (volume === 0) return { state: 'muted', sentence: 'Mute. The words are on the screen.', words };
  // What nobody can hear stays on the screen, as when it is mute.
  if (drowned !== '' && words === '') return { state: 'muted', sentence: drowned, words };
  return { state: words === '' ? 'silent' : 'speaking', sentence: mouth.sentence, words };
}

function keepingView({ mode, kept, warnings }: StoreStatus): KeepingView {
  const sentence = warnings.join(' ');
  if (kept === 'memory') return { state: 'fault', sentence };
  if (mode === 'read only') return { state: 'read only', sentence };
  return { state: kept === 'twice' ? 'kept' : 'one copy', sentence };
}

/** A name may never be silently deaf: what cannot be heard is told, with what to do. */
function deafTo(unknownWords: readonly string[]): readonly string[] {
  if (unknownWords.length === 0) return [];
  return [`I cannot hear ${listed(unknownWords)}: the speech model does not know ${unknownWords.length === 1 ? 'it' : 'them'}. Use the keys for ${unknownWords.length === 1 ? 'it' : 'them'}, or give the part another name in “alsoCalled”.`];
}

function unsureOf(guessedWords: readonly string[]): readonly string[] {
  if (guessedWords.length === 0) return [];
  const [them, they] = guessedWords.length === 1 ? ['it', 'it is'] : ['them', 'they are'];
  return [`No dictionary of mine has ${listed(guessedWords)}: I listen for ${them} as I think ${they} said. If I do not hear ${them}, use the keys, or give the part another name in “alsoCalled”.`];
}

/** The first of some words, and how many more there are. */
function listed(words: readonly string[]): string {
  const most = 8;
  const list = words.slice(0, most).map((word) => `“${word}”`).join(', ');
  return words.length > most ? `${list} and ${words.length - most} more` : list;
}
