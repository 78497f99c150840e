import type { Rounding } from '../../length/rounding.ts';
import type { Sizes } from '../../piece/evaluate.ts';
import type { LoadedPiece } from '../../piece/loadedPiece.ts';
import type { PaperName } from './paperSize.ts';

/** What the sheets are drawn from. */
export interface Drawing {
  readonly piece: LoadedPiece;
  readonly sizes: Sizes;
  /** `part/copy` → where the maker has put it. */
  readonly places: ReadonlyMap<string, string>;
  readonly rounding: Rounding;
  readonly paper: PaperName;
  /** Of a sheet, with the piece's name. */
  readonly titled: (sheet: string) => string;
  /** When it is drawn, and how its sizes are rounded. */
  readonly drawn: string;
}
