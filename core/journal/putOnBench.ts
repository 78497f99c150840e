import type { Result } from '../result.ts';
import type { PieceFault } from '../piece/load.ts';
import type { LoadedPiece } from '../piece/loadedPiece.ts';
import type { Entry } from './entry.ts';
import type { Draft } from './draft.ts';
import { divideProgress, isEmpty, joinProgress, NO_PROGRESS, type Places } from './progress.ts';
import type { Progress } from './state.ts';

/** A piece made from the text of its file, and what it has a place for. */
export interface PieceRead {
  readonly piece: LoadedPiece;
  readonly has: Places;
}
export type ReadPiece = (text: string) => Result<PieceRead, readonly PieceFault[]>;

/**
 * Puts a piece on the bench. An edited file of the same piece (the same name) keeps its progress, as far as it still has
 * those sizes and steps; the rest is hidden and comes back with them. Another piece begins with its own progress, or
 * none; that of the piece before goes onto the shelf. A text that is no piece any more keeps everything for later.
 */
export function putOnBench(draft: Draft, entry: Extract<Entry, { kind: 'piece loaded' }>, readPiece: ReadPiece): void {
  const { state } = draft;
  const read = readPiece(entry.text);
  const name = read.ok ? read.value.piece.file.name : nameIn(entry.text);
  const shelf = new Map(state.shelf);
  if (state.pieceName !== null) shelf.set(state.pieceName, joinProgress(state, state.hidden));
  const full = (name !== null && entry.afresh !== true ? shelf.get(name) : undefined) ?? NO_PROGRESS;
  if (name !== null) shelf.delete(name);
  if (entry.afresh === true) state.plans = new Map([...state.plans].filter(([piece]) => piece !== name));

  const { shown, hidden } = read.ok && !isEmpty(full) ? divideProgress(full, read.value.has) : { shown: full, hidden: NO_PROGRESS };
  Object.assign(state, pick(shown));
  state.hidden = hidden;
  state.shelf = shelf;
  state.pieceText = entry.text;
  state.pieceName = name;
  state.piece = read.ok ? read.value.piece : null;
  state.pieceFaults = read.ok ? [] : read.fault;
}

function pick({ measurements, done, skipped, currentStep, places, turns, likes, faceOrders, arches }: Progress): Progress {
  return { measurements, done, skipped, currentStep, places, turns, likes, faceOrders, arches };
}

/** The name in a text that is no sound piece file, when it can be found; it is only used to find the progress again. */
function nameIn(text: string): string | null {
  try {
    const value: unknown = JSON.parse(text);
    const name: unknown = typeof value === 'object' && value !== null ? (value as { name?: unknown }).name : null;
    return typeof name === 'string' ? name : null;
  } catch {
    return null;
  }
}
