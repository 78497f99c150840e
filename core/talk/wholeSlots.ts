import type { PieceFile, Part } from '../piece/file.ts';
import type { LoadedPiece } from '../piece/loadedPiece.ts';
import type { Reading, Slot } from './slot.ts';
import { canonicalWords, nameKey } from './words.ts';

const WHOLE = ['piece', 'whole piece', 'thing', 'whole thing'] as const;

/** What the whole piece goes by: 'table', 'work table' and all of 'baker's work table'. */
export function wholeNames({ name }: PieceFile): readonly string[] {
  const words = canonicalWords(name);
  return words.map((_, at) => words.slice(at).join(' ')).filter((end) => end !== '');
}

/** The whole piece, by its name or the end of it. */
export const wholeSlot: Slot<true> = {
  longest: 6,
  read: (words, { state: { piece } }) => {
    const said = nameKey(words);
    return said !== '' && [...WHOLE, ...(piece ? wholeNames(piece.file) : [])].includes(said) ? [{ value: true }] : [];
  },
  samples: ({ state: { piece } }) => [...WHOLE, ...(piece ? wholeNames(piece.file).slice(-1) : [])],
};

/** Parts that are glued up, each with the names of what it is glued up from: 'layer' and 'leg layer', 'top board'. */
export function piecesNamed(piece: LoadedPiece | null): readonly { readonly part: Part; readonly names: readonly string[] }[] {
  return (piece?.file.parts ?? []).flatMap((part) => {
    const names = [part.name, ...(part.alsoCalled ?? [])];
    switch (part.made.kind) {
      case 'solid': return [];
      case 'laminated': return [{ part, names: ['layers', 'layer', ...names.flatMap((name) => [`${name} layers`, `${name} layer`])] }];
      // 'Boards' alone are those on the rack.
      case 'panel': return [{ part, names: names.flatMap((name) => [`${name} boards`, `${name} board`]) }];
    }
  });
}

/** The layers of a lamination, the boards of a panel. */
export const piecesSlot: Slot<{ readonly part: string }> = {
  longest: 5,
  read: (words, { state: { piece } }) => {
    const said = nameKey(words);
    return piecesNamed(piece).flatMap(({ part, names }): Reading<{ readonly part: string }>[] => (names.some((name) => nameKey(name.split(' ')) === said) ? [{ value: { part: part.id }, labels: [part.name, part.name] }] : []));
  },
  samples: ({ state: { piece } }) => [...new Set(piecesNamed(piece).flatMap(({ part, names }) => names.slice(0, part.made.kind === 'panel' ? 2 : 4)))],
};
