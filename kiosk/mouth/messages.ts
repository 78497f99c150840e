import type { Phrase } from './flite.ts';
import type { Sound } from '../../sounds/wav.ts';

/** What the page asks of the voice's worker. It answers each in turn. */
export type VoiceRequest =
  | { readonly kind: 'load'; readonly wasmUrl: string }
  | { readonly kind: 'speak'; readonly number: number; readonly phrase: Phrase };

/** What the worker answers. Faults are told in words for whoever mends it. */
export type VoiceAnswer =
  | { readonly kind: 'loaded' }
  | { readonly kind: 'not loaded'; readonly fault: string }
  | { readonly kind: 'spoken'; readonly number: number; readonly sound: Sound }
  | { readonly kind: 'not spoken'; readonly number: number; readonly fault: string };
