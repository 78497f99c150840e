import type { State } from '../journal/state.ts';
import type { Sizes } from '../piece/evaluate.ts';
import type { LoadedPiece } from '../piece/loadedPiece.ts';

/** What the answers about joints stand on. */
export interface Jointing {
  readonly state: State;
  readonly piece: LoadedPiece;
  readonly sizes: Sizes;
}
