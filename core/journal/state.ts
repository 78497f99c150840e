import type { Moment } from '../clock/moment.ts';
import type { Timer } from '../clock/timer.ts';
import type { Measurement } from '../piece/measurement.ts';
import type { LoadedPiece } from '../piece/loadedPiece.ts';
import type { StepId } from '../work/step.ts';
import type { Settings } from './settings.ts';

/** What the journal says now: the fold of its entries, less those taken back. */
export interface State {
  /** Number of the last record folded. */
  readonly lastNumber: number;
  readonly piece: LoadedPiece | null;
  /** The file's own text, for saving and for folding again. */
  readonly pieceText: string | null;
  readonly measurements: readonly Measurement[];
  readonly done: ReadonlySet<StepId>;
  readonly skipped: ReadonlySet<StepId>;
  /** Where the maker is; null means the first open step. */
  readonly currentStep: StepId | null;
  /** `${part}/${copy}` → place */
  readonly places: ReadonlyMap<string, string>;
  readonly timers: readonly Timer[];
  readonly settings: Settings;
  readonly notes: readonly { readonly number: number; readonly at: Moment; readonly text: string }[];
  /** Caution id → when it was last said. */
  readonly cautionsSaid: ReadonlyMap<string, Moment>;
}
