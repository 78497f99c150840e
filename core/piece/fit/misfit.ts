import type { Length } from '../../length/length.ts';
import { nanometres, NANOMETRES_PER_INCH } from '../../length/length.ts';
import type { Sizes, SizeValue } from '../evaluate.ts';
import { sizeOf } from '../evaluate.ts';
import type { MortiseAndTenon, Part } from '../file.ts';
import type { LoadedPiece } from '../loadedPiece.ts';
import type { SizeName } from '../measurement.ts';
import type { Sentence, SizeMention } from '../sentence.ts';

/** Something that does not go together, or not well, at the sizes as they stand. */
export interface Misfit {
  readonly kind: MisfitKind;
  /** 'will not go': it cannot be put together so. 'weak': it can, and should not. 'look at it': a maker would want to know. */
  readonly severity: 'will not go' | 'weak' | 'look at it';
  /** What is wrong and what to do, in one or two sentences for ear and eye. */
  readonly say: Sentence;
  /** The sizes that disagree, the first being the one to look at. */
  readonly sizes: readonly SizeMention[];
}

type MisfitKind =
  | 'tenon too thick' | 'tenon too loose' | 'tenon too long' | 'tenon too wide' | 'tenon thicker than its part' | 'tenon wider than its part' | 'part too short'
  | 'mortise too deep' | 'mortise too shallow' | 'bridle not open' | 'tenons hit' | 'haunch too long' | 'haunch too wide' | 'wall too thin' | 'rail proud' | 'mortise too near the end' | 'mortises meet' | 'web too thin'
  | 'copies differ' | 'shoulders differ' | 'layers too thin' | 'stock too thin'
  | 'no chisel' | 'tongue too thick' | 'tongue too long' | 'button does not draw' | 'too few buttons' | 'groove cuts the tenon' | 'groove cuts the haunch' | 'groove meets a mortise' | 'groove off its part' | 'grooves meet'
  | 'nothing left' | 'cannot be worked out';

/** What is left to wood where it is cut away, and how far a set may differ. All settable; common practice, no source, but where one is named. */
export const FIT_LIMITS = {
  /** Cheek of a mortise to the face of the part. */
  wall: inches(1, 4),
  /** Between two mortises. */
  web: inches(1, 8),
  /** A mortise nearer to the end than this splits out; an inch is usual. */
  end: inches(1, 2),
  /** Fairham, Woodwork Joints: a stub mortise goes about seven eighths into the stile. */
  deepest: { numerator: 7, denominator: 8 },
  /** Beyond 0.006 in on each face a PVA glue line is weak (0.002 to 0.006 in is published as its range). */
  loose: inches(1, 64),
  shoulders: inches(1, 64),
  copies: inches(1, 32),
  chisel: inches(1, 64),
  /** A groove that goes no deeper into a cheek than this only scratches it. */
  graze: inches(1, 32),
} as const;

function inches(numerator: number, denominator: number): Length {
  return nanometres((NANOMETRES_PER_INCH * numerator) / denominator);
}

/** What every check looks at. */
export interface Fitting {
  readonly piece: LoadedPiece;
  readonly sizes: Sizes;
  readonly part: (id: string) => Part | undefined;
  readonly tenons: readonly MortiseAndTenon[];
  /** Where a copy stands: null while that is open. */
  readonly placeOf: (part: Part, copy: number) => string | null | undefined;
}

export function valueOf(fitting: Fitting, size: SizeName, copy?: number): SizeValue | undefined {
  return sizeOf(fitting.sizes, size, copy);
}

export function lengthOf(fitting: Fitting, size: SizeName, copy?: number): Length | undefined {
  return valueOf(fitting, size, copy)?.length;
}

export function at(size: SizeName, copy?: number): SizeMention {
  return copy === undefined ? { size } : { size, copy };
}

/** The copies to look at one by one: all of them once any was measured singly, else the set as one (undefined). */
export function copiesOf({ piece, sizes }: Fitting, owner: string): readonly (number | undefined)[] {
  for (const index of sizes.copies.keys()) {
    const node = piece.graph.nodes[index];
    if (node?.owner.id === owner) return Array.from({ length: node.owner.count }, (_, copy) => copy + 1);
  }
  return [undefined];
}

/** 'leg 2', 'the long rail'. */
export function called(name: string, copy: number | undefined): string {
  return copy === undefined ? `the ${name}` : `${name} ${copy}`;
}

export function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
