import type { Rounding } from '../../length/rounding.ts';
import type { Laid } from './faces.ts';
import type { PaperName } from './paperSize.ts';

/** What the sheets are drawn from. */
export interface Drawing extends Laid {
  readonly rounding: Rounding;
  readonly paper: PaperName;
  /** Of a sheet, with the piece's name. */
  readonly titled: (sheet: string) => string;
  /** When it is drawn, and how its sizes are rounded. */
  readonly drawn: string;
}
