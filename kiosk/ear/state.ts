import type { MicrophoneFault } from './microphone.ts';
import type { SoundFault } from './soundFault.ts';

export type EarStateName =
  | 'starting'
  /** Listening for its word. */
  | 'asleep'
  | 'attending'
  /** The mouth speaks. */
  | 'deaf'
  | 'off' | 'no microphone' | 'not allowed' | 'no model' | 'broken model' | 'engine failed';

export interface EarState {
  readonly name: EarStateName;
  /** For the screen: what is so, and for a fault what to do about it. */
  readonly sentence: string;
}

/** What can be wrong with the recogniser. */
export type EngineFault = 'no model' | 'broken model' | 'engine failed';

/** Everything the state is made from. */
export interface EarFacts {
  readonly on: boolean;
  readonly engine: 'starting' | 'ready' | EngineFault;
  /** What the engine said, for whoever mends it. */
  readonly engineReason: string;
  readonly microphone: 'starting' | 'hearing' | MicrophoneFault;
  /** What is wrong with the sound that comes. */
  readonly sound?: SoundFault | undefined;
  readonly deaf: boolean;
  readonly attending: boolean;
  readonly addressWord: string;
}

/** The one state to show: what stands in the way first, nearest to the maker's hand last. */
export function earState(facts: EarFacts): EarState {
  if (!facts.on) return { name: 'off', sentence: 'Not listening. Turn listening on in the settings; the keys do everything.' };
  switch (facts.engine) {
    case 'no model': return { name: 'no model', sentence: 'I cannot hear: the speech model is not there. Install it again, then press Listen. The keys do everything.' };
    case 'broken model': return { name: 'broken model', sentence: `I cannot hear: the speech model is damaged (${facts.engineReason}). Install it again, then press Listen. The keys do everything.` };
    case 'engine failed': return { name: 'engine failed', sentence: `I cannot hear: the recogniser failed (${facts.engineReason}). Press Listen to try again. The keys do everything.` };
    case 'starting':
    case 'ready': return hearingState(facts);
  }
}

function hearingState(facts: EarFacts): EarState {
  switch (facts.microphone) {
    case 'not allowed': return { name: 'not allowed', sentence: 'I cannot hear: the browser does not let this page use the microphone. Allow it for this page. The keys do everything.' };
    case 'busy': return { name: 'no microphone', sentence: 'I cannot hear: another program holds the microphone. Close that program, or plug the microphone out and in. The keys do everything.' };
    case 'no microphone': return { name: 'no microphone', sentence: 'I cannot hear: there is no microphone. Plug it in; I go on by myself. The keys do everything.' };
    case 'untouched': return { name: 'not allowed', sentence: 'I cannot hear yet: the browser waits for a first touch. Touch the screen or press any key.' };
    case 'wrong rate': return { name: 'no microphone', sentence: 'I cannot hear: the browser does not give me sound at 16000 samples a second. Choose another microphone in the settings, or use Chromium. The keys do everything.' };
    case 'starting': return { name: 'starting', sentence: 'Getting ready to listen.' };
    case 'hearing': break;
  }
  if (facts.sound === 'no sound in it') return { name: 'no microphone', sentence: 'I cannot hear: the microphone is there, but no sound comes from it. Is it switched off or muted? The keys do everything.' };
  if (facts.engine === 'starting') return { name: 'starting', sentence: 'Getting ready to listen.' };
  if (facts.deaf) return { name: 'deaf', sentence: 'I am speaking and do not listen.' };
  if (facts.attending) return { name: 'attending', sentence: 'I am listening.' };
  return { name: 'asleep', sentence: `Say "${facts.addressWord}" first.` };
}
