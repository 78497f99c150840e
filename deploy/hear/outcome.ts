import type { Reply } from '../../core/bench/reply.ts';
import type { Request } from '../../core/bench/request.ts';
import type { Entry } from '../../core/journal/entry.ts';
import type { Levels } from './levels.ts';

/** What the page is told once. */
export interface Asked {
  readonly pieceText: string;
  /** Phrases in the place of those of the piece. */
  readonly grammar?: readonly string[];
}

export interface Opened {
  readonly loadMs: number;
  /** Words of the grammar that the model cannot hear, and those whose sound was guessed. */
  readonly unheard: readonly string[];
  readonly guessed: readonly string[];
}

/** Words that were meant for the bench, and what came of them; moments by the page's clock. */
export interface Heard {
  readonly words: string;
  readonly request: Request;
  readonly reply: Reply;
  readonly writes: readonly Entry[];
  readonly heardAt: number;
  readonly repliedAt: number;
}

/** What came of a recording. Seconds are from its beginning. */
export interface Outcome {
  readonly format: { readonly rateHz: number; readonly channels: number; readonly seconds: number };
  readonly level: Levels;
  readonly warnings: readonly string[];
  readonly speechEnds: number | null;
  /** Everything that the recogniser made of it, whether it was addressed or not. */
  readonly recognised: readonly { readonly said: string; readonly addressed: boolean; readonly at: number }[];
  readonly heard: readonly (Pick<Heard, 'words' | 'request' | 'reply' | 'writes'> & {
    readonly times: { readonly endOfSpeech: number | null; readonly heardAfterMs: number | null; readonly repliedAfterMs: number | null };
  })[];
}
