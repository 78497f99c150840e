import type { Owner } from '../piece/declared.ts';
import type { LoadedPiece } from '../piece/loadedPiece.ts';
import type { Moved } from '../piece/moved.ts';
import type { Operation, Step, StepId } from './step.ts';

/** Sizes that moved because something else was measured, by what that means at the bench. */
export interface AsMade {
  /** Not cut yet: to be cut to the new size. */
  readonly toCut: readonly Moved[];
  /** Cut already, to the old size: the piece has it, and it no longer is what it should be. */
  readonly cut: readonly Moved[];
  /** Sizes that are only named: nothing is cut to them by themselves. */
  readonly named: readonly Moved[];
}

/** Which operations bring a size into the wood. */
const BY_KEY: Readonly<Record<string, readonly Operation[]>> = {
  length: ['ends'], width: ['width', 'true again'], thickness: ['thickness', 'true again'], shoulders: ['saw tenons'], footBevel: ['foot bevel'], footBevelInwards: ['foot bevel'], easing: ['ease edges'],
};
const OF_MORTISE = /^(?:mortise|setback$|fromTop$)/u;
const OF_TENON = /^(?:tenon|outerShoulder$|topShoulder$|bottomShoulder$)/u;
const OF_FIXING = /^(?:groove|tongue|step$)/u;

/** Sorts what moved by what has been done: a step that is done has cut its sizes. */
export function asMade(piece: LoadedPiece, steps: readonly Step[], done: ReadonlySet<StepId>, moved: readonly Moved[]): AsMade {
  const sorted: Record<keyof AsMade, Moved[]> = { toCut: [], cut: [], named: [] };
  for (const move of moved) {
    const node = piece.graph.nodes[piece.graph.indexOf.get(move.size) ?? -1];
    if (node === undefined) continue;
    const cutting = stepsThatCut(steps, node.owner, node.key, move.copy);
    const where = node.owner.kind !== 'part' && node.owner.kind !== 'joint' ? 'named' : cutting.some(({ id }) => done.has(id)) ? 'cut' : 'toCut';
    sorted[where].push(move);
  }
  return sorted;
}

function stepsThatCut(steps: readonly Step[], owner: Owner, key: string, copy: number | undefined): readonly Step[] {
  const operations = owner.kind === 'joint' ? jointOperations(key) : BY_KEY[key] ?? [];
  return steps.filter((step) => operations.includes(step.operation) && (owner.kind === 'joint' ? step.joint === owner.id
    : step.covers.some((covered) => covered.part === owner.id && (copy === undefined || covered.copy === copy))));
}

function jointOperations(key: string): readonly Operation[] {
  if (OF_MORTISE.test(key)) return ['chop mortises'];
  if (OF_TENON.test(key)) return ['saw tenons'];
  return OF_FIXING.test(key) ? ['cut fixings'] : ['chop mortises', 'saw tenons'];
}
