import { add } from '../length/arithmetic.ts';
import { sizeOf, type Sizes } from '../piece/evaluate.ts';
import type { Part, PieceFile } from '../piece/file.ts';
import { ZERO_LENGTH, type Length } from '../length/length.ts';
import type { Blank } from './board.ts';

/** Over the rough length, by how a part is made: layers slide when they are glued, a panel's boards are trimmed together. */
export interface ExtraLengths {
  readonly layer: Length;
  readonly panel: Length;
}

/**
 * The rough pieces that a piece of furniture is cut from: finished sizes with the file's allowances over them (`roughLength`, `roughThickness`,
 * and `ripWidth` where something is left for after the rest, else `roughWidth`). Layers of one lamination stay together; a panel is its boards.
 */
export function blanksOf(file: PieceFile, sizes: Sizes, extra: ExtraLengths = { layer: ZERO_LENGTH, panel: ZERO_LENGTH }): Blank[] {
  const size = (name: string): Length | undefined => sizeOf(sizes, name)?.length;
  return file.parts.map((part) => ({
    id: part.id, species: part.species, mayHideDefect: false,
    ...madeFrom(part),
    length: add(size(`${part.id}.roughLength`) ?? ZERO_LENGTH, extraFor(part, extra)),
    width: size(`${part.id}.ripWidth`) ?? size(`${part.id}.roughWidth`) ?? ZERO_LENGTH,
    thickness: size(`${part.id}.roughThickness`) ?? ZERO_LENGTH,
  }));
}

function extraFor({ made }: Part, { layer, panel }: ExtraLengths): Length {
  return made.kind === 'laminated' ? layer : made.kind === 'panel' ? panel : ZERO_LENGTH;
}

function madeFrom({ name, count, made }: Part): Pick<Blank, 'name' | 'count' | 'together'> {
  switch (made.kind) {
    case 'solid': return { name, count, together: 1 };
    case 'laminated': return { name: `${name} layer`, count: count * made.layers, together: made.layers };
    case 'panel': return { name: `${name} board`, count: count * made.boards, together: 1 };
  }
}
