import type { Moment } from '../clock/moment.ts';
import type { Timer } from '../clock/timer.ts';
import type { Arch } from '../faces/boards.ts';
import type { Turn } from '../faces/face.ts';
import type { Level } from '../faces/levels.ts';
import type { CopyLikes } from '../faces/likes.ts';
import type { Measurement } from '../piece/measurement.ts';
import type { PieceFault } from '../piece/load.ts';
import type { LoadedPiece } from '../piece/loadedPiece.ts';
import type { StepId } from '../work/step.ts';
import type { EdgeState } from './edges.ts';
import type { CraftState } from './craft.ts';
import type { CuttingState } from './cutting.ts';
import type { Settings } from './settings.ts';

/** How far the work on one piece has come. */
export interface Progress {
  readonly measurements: readonly Measurement[];
  readonly done: ReadonlySet<StepId>;
  readonly skipped: ReadonlySet<StepId>;
  /** Where the maker is; null means the first open step. */
  readonly currentStep: StepId | null;
  /** `${part}/${copy}` → place */
  readonly places: ReadonlyMap<string, string>;
  /** `${part}/${copy}` → how it is turned there, as far as that was said. */
  readonly turns: ReadonlyMap<string, Turn>;
  /** `${part}/${copy}` → what was told of its faces and ends. */
  readonly likes: ReadonlyMap<string, CopyLikes>;
  /** Part → what counts first when its copies are placed, where it is not the usual order. */
  readonly faceOrders: ReadonlyMap<string, readonly Level[]>;
  /** `${part}/${board}` → which way a board of a panel is to arch. */
  readonly arches: ReadonlyMap<string, Arch>;
}

/** What the journal says now: the fold of its entries, less those taken back. */
export interface State extends Progress, EdgeState, CraftState, CuttingState {
  /** Number of the last record folded. */
  readonly lastNumber: number;
  readonly piece: LoadedPiece | null;
  /** The file's own text, for saving and for folding again. */
  readonly pieceText: string | null;
  /** Why `pieceText` is no piece (any more); empty when all is well. The progress is kept for when it is one again. */
  readonly pieceFaults: readonly PieceFault[];
  readonly pieceName: string | null;
  /** Progress on sizes, steps and parts that the present form of the piece does not have; it comes back when they do. */
  readonly hidden: Progress;
  /** Progress on other pieces, by their names; it comes back when they are on the bench again. */
  readonly shelf: ReadonlyMap<string, Progress>;
  readonly timers: readonly Timer[];
  readonly settings: Settings;
  readonly notes: readonly { readonly number: number; readonly at: Moment; readonly text: string }[];
  /** Caution id → when it was last said. */
  readonly cautionsSaid: ReadonlyMap<string, Moment>;
  /** When the last record was written: what is known for certain before a power cut. */
  readonly clock: Moment | null;
}
