import { pluralOf } from '../piece/describe.ts';
import type { Sizes } from '../piece/evaluate.ts';
import type { Part, PieceFile } from '../piece/file.ts';
import type { Blank } from './board.ts';
import { NO_EXTRAS, roughSize, roughTerms, type PartRough, type RoughExtras, type Side } from './rough.ts';

/**
 * The rough pieces that a piece of furniture is cut from: finished sizes with all that is left on them (`roughTerms`).
 * Layers of one lamination stay together; a panel is its boards. `rough`: what is wanted of single parts, by their ids; it goes before the file.
 */
export function blanksOf(file: PieceFile, sizes: Sizes, extras: RoughExtras = NO_EXTRAS, rough: ReadonlyMap<string, PartRough> = new Map()): Blank[] {
  return file.parts.map((part) => {
    const own = rough.get(part.id) ?? {};
    const size = (side: Side) => roughSize(roughTerms(part, sizes, side, extras, own));
    return {
      id: part.id, species: part.species, mayHideDefect: mayHide(part, own), ...madeFrom(part),
      length: size('length'), width: size('width'), thickness: size('thickness'),
    };
  });
}

/** As told at the bench, else as the file has it. */
export function mayHide({ mayHideDefect }: Part, own: PartRough): boolean {
  return own.mayHideDefect ?? mayHideDefect ?? false;
}

function madeFrom({ name, count, made }: Part): Pick<Blank, 'name' | 'count' | 'together'> {
  switch (made.kind) {
    case 'solid': return { name, count, together: 1 };
    case 'laminated': return { name: `${name} layer`, count: count * made.layers, together: made.layers };
    case 'panel': return { name: `${name} board`, count: count * made.boards, together: 1 };
  }
}

/** What is cut of a part, after its count: 'leg layer' of one, 'leg layers', 'boot shelves'; in the piece's own words where it has its own plural. `parts` are those of the piece; none for parts of a table. */
export function cutNoun(parts: readonly Part[], { id, name }: Pick<Blank, 'id' | 'name'>, count: number): string {
  if (count === 1) return name;
  const part = parts.find((one) => one.id === id);
  return part?.made.kind === 'solid' ? part.plural ?? pluralOf(name) : pluralOf(name);
}
