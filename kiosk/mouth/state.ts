import type { VoiceState } from './voice.ts';

export type MouthStateName = 'starting' | 'ready' | 'no voice' | 'no loudspeaker' | 'waiting for a key';

export interface MouthState {
  readonly name: MouthStateName;
  /** For the screen: what is so, and for a fault what to do about it. */
  readonly sentence: string;
}

/** Whether sound can leave the page. */
export type OutputState =
  /** Not asked yet. */
  | 'starting'
  | 'open'
  /** The browser lets no page sound before its person has pressed a key or touched it. */
  | 'waiting for a key'
  | 'no loudspeaker';

/** Everything the state is made from. */
export interface MouthFacts {
  readonly output: OutputState;
  readonly voice: VoiceState;
  /** What the voice said of its fault, for whoever mends it. */
  readonly voiceFault: string;
}

/** The one state to show: what stands in the way of any sound first, then what stands in the way of words. */
export function mouthState({ output, voice, voiceFault }: MouthFacts): MouthState {
  switch (output) {
    case 'waiting for a key': return { name: output, sentence: 'The browser lets me sound only after a key is pressed. Press any key, or touch the screen. The words are on the screen.' };
    case 'no loudspeaker': return { name: output, sentence: 'I cannot speak: there is no loudspeaker. Plug one in or turn it on; I go on by myself. The words are on the screen.' };
    case 'starting':
    case 'open': break;
  }
  if (voice === 'broken') return { name: 'no voice', sentence: `I cannot speak words: the voice is missing or damaged (${voiceFault}). Build the kiosk again with npm run build. Signals still sound, and the words are on the screen.` };
  if (output === 'starting' || voice === 'starting') return { name: 'starting', sentence: 'Getting ready to speak.' };
  return { name: 'ready', sentence: '' };
}
