import { failure, success } from '../result.ts';
import { loadPiece } from '../piece/load.ts';
import type { LoadedPiece } from '../piece/loadedPiece.ts';
import { stepsFor } from '../work/plan.ts';
import type { Places } from './progress.ts';
import type { PieceRead, ReadPiece } from './putOnBench.ts';

/** A maker goes back and forth between a few forms of a few pieces; undo goes over the same texts again. */
const KEPT = 8;
const kept = new Map<string, ReturnType<ReadPiece>>();

/** Loads a piece from its text; the same text gives the same piece, without the work being done again. */
export const readPieceOnce: ReadPiece = (text) => {
  const known = kept.get(text);
  const read = known ?? readPiece(text);
  kept.delete(text);
  kept.set(text, read);
  const [oldest] = kept.keys();
  if (kept.size > KEPT && oldest !== undefined) kept.delete(oldest);
  return read;
};

const readPiece: ReadPiece = (text) => {
  const loaded = loadPiece(text);
  return loaded.ok ? success<PieceRead>({ piece: loaded.value, has: placesOf(loaded.value) }) : failure(loaded.fault);
};

function placesOf(piece: LoadedPiece): Places {
  const { file, graph } = piece;
  let steps: ReadonlySet<string> | undefined;
  const counts = new Map(file.parts.map(({ id, count }) => [id, count]));
  const boards = new Map(file.parts.map(({ id, made }) => [id, made.kind === 'panel' ? made.boards : 0]));
  return {
    size(name, copy) {
      const node = graph.nodes[graph.indexOf.get(name) ?? -1];
      return node !== undefined && (copy === undefined || copy <= node.owner.count);
    },
    step(id) {
      // Planned only when there is progress to be kept: most pieces come to an empty bench.
      steps ??= new Set(stepsFor(piece).map((step) => step.id));
      return steps.has(id);
    },
    copy: (part, copy) => copy <= (counts.get(part) ?? 0),
    board: (part, board) => board <= (boards.get(part) ?? 0),
  };
}
