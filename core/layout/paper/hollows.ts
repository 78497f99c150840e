import type { Mark } from '../../joint/marks.ts';
import { subtract } from '../../length/arithmetic.ts';
import type { Length } from '../../length/length.ts';
import { acrossLines, isDepth, placesAlong, spanOf, together, wholeLength, type PartSize, type ViewLine, type Waste } from './faceView.ts';

/** From an end the lines go across the face; from a face or an edge they go along it, as far as their mortise does. */
export function linesOf(marks: readonly Mark[], across: Length, size: PartSize): readonly ViewLine[] {
  return together(marks).flatMap((of) => of.filter((mark) => !isDepth(mark)).flatMap((mark): readonly ViewLine[] => {
    if (mark.from.kind === 'end') return acrossLines(mark, across, size);
    const { from, to } = reach(of, size);
    return [{ mark, lies: 'along', at: mark.at, from, to }];
  }));
}

/** Where along the part a mortise or a groove runs: from its start to its end, and where it has none to the end of the part. */
function reach(marks: readonly Mark[], size: PartSize): { readonly from: Length; readonly to: Length } {
  const at = (kind: RegExp): readonly Length[] => marks.filter((mark) => mark.from.kind === 'end' && kind.test(mark.kind)).flatMap((mark) => placesAlong(mark, size));
  // A socket for the haunch that is level with the end has no line of its own.
  const open = marks.some(({ kind }) => kind === 'haunch depth') && !marks.some(({ kind }) => kind === 'haunch start');
  return { from: (open ? undefined : spanOf(at(/start/))?.[0]) ?? size.horn, to: spanOf(at(/end/))?.[1] ?? subtract(wholeLength(size), size.lowerHorn) };
}

/** What is cut out between the sides of one mortise, slot or groove. */
export function hollow(marks: readonly Mark[], size: PartSize): readonly Waste[] {
  const sides = spanOf(marks.filter((mark) => mark.from.kind !== 'end' && !isDepth(mark)).map(({ at }) => at));
  return sides && sides[1] > sides[0] ? [{ ...reach(marks, size), top: sides[0], bottom: sides[1] }] : [];
}
