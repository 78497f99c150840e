import type { Defect } from '../board.ts';

/** A free stretch across a section of a board: from the reference edge, and how wide. */
export interface Clear {
  readonly from: number;
  readonly width: number;
}

/** Sections of one length with the same free stretches are of one kind, whatever board they are in: for any part, and for those that hide a face. */
export interface SectionKind {
  readonly length: number;
  readonly clear: readonly Clear[];
  /** Clear but for what shows on one face alone: one list a face that something shows on. A part hides one of its faces, not both. */
  readonly hiding: readonly (readonly Clear[])[];
}

/** All kinds met so far in a lot. */
export interface SectionKinds {
  /** Lengths of sections, smallest first; and those of one shape alone. */
  readonly lengths: readonly number[];
  readonly singles: readonly number[];
  readonly all: SectionKind[];
  readonly numbers: Map<string, number>;
}

type Across = Pick<Defect, 'fromEdge' | 'toEdge' | 'face'>;

/** The number of the kind of a section that is so long and wide, with these defects in it. */
export function kindFor(kinds: SectionKinds, length: number, width: number, inside: readonly Across[]): number {
  const clear = clearOf(width, inside);
  const hiding = (['marked face', 'other face'] as const).filter((hidden) => inside.some(({ face }) => face === hidden)).map((hidden) => clearOf(width, inside.filter(({ face }) => face !== hidden)));
  const key = [clear, ...hiding].map((stretches) => stretches.flatMap((one) => [one.from, one.width]).join(' ')).join('|');
  const known = kinds.numbers.get(`${length}|${key}`);
  if (known !== undefined) return known;
  kinds.numbers.set(`${length}|${key}`, kinds.all.length);
  return kinds.all.push({ length, clear, hiding }) - 1;
}

function clearOf(width: number, defects: readonly Across[]): Clear[] {
  const clear: Clear[] = [];
  let at = 0;
  for (const { fromEdge, toEdge } of [...defects].sort((a, b) => a.fromEdge - b.fromEdge)) {
    if (fromEdge > at) clear.push({ from: at, width: Math.min(fromEdge, width) - at });
    at = Math.max(at, toEdge);
  }
  if (width > at) clear.push({ from: at, width: width - at });
  return clear.filter((one) => one.width > 0);
}
