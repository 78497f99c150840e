import type { PieceFile } from './file.ts';
import type { SizeGraph } from './graph.ts';

/** A piece file that was found sound, with its dimension graph ready to be evaluated. */
export interface LoadedPiece {
  readonly file: PieceFile;
  readonly graph: SizeGraph;
}
