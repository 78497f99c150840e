import type { Mark } from '../../joint/marks.ts';
import { mateOf } from '../../joint/mates.ts';
import { subtract } from '../../length/arithmetic.ts';
import { ZERO_LENGTH, type Length } from '../../length/length.ts';
import type { MortiseAndTenon, Part } from '../../piece/file.ts';
import type { LoadedPiece } from '../../piece/loadedPiece.ts';
import { acrossLines, isDepth, placesAlong, spanOf, together, wholeLength, type FaceView, type PartSize, type ViewLine, type Waste } from './faceView.ts';
import { tenonViews } from './tenonViews.ts';

interface Viewed {
  readonly piece: LoadedPiece;
  readonly part: Part;
  readonly size: PartSize;
  readonly marks: readonly Mark[];
}

const ALL_SIDES = 'all four sides';
const FOOT = 'the bottom end';

/** The faces that bear the marks; without any on a face of its own, the reference face. Mortises that go into the same size of the part share a face. */
export function viewsOf(piece: LoadedPiece, part: Part, size: PartSize, marks: readonly Mark[]): readonly FaceView[] {
  const viewed: Viewed = { piece, part, size, marks };
  const tenoned = marks.filter((mark) => { const joint = jointOf(viewed, mark); return joint?.tenonOn === part.id && joint.mortiseIn !== part.id; });
  const views = [...mortisedFaces(viewed), ...tenonViews(part, size, tenoned), ...markedFaces(viewed)];
  return [...(views.length > 0 ? views : [plainFace(viewed)]), ...footFace(viewed)];
}

function jointOf({ piece }: Viewed, { joint }: Mark): MortiseAndTenon | undefined {
  const found = piece.file.joints.find(({ id }) => id === joint);
  return found?.kind === 'mortise and tenon' ? found : undefined;
}

function mortisedFaces(viewed: Viewed): readonly FaceView[] {
  const { part, size, marks } = viewed;
  const mortised = marks.filter((mark) => jointOf(viewed, mark)?.mortiseIn === part.id);
  const intoOf = (mark: Mark): 'width' | 'thickness' => jointOf(viewed, mark)?.mortiseInto ?? 'width';
  return [...new Set(mortised.map(intoOf))].map((into) => {
    const own = mortised.filter((mark) => intoOf(mark) === into);
    const mates = [...new Set(own.flatMap((mark) => { const joint = jointOf(viewed, mark); return joint ? [mateOf(viewed.piece.file, joint)] : []; }))];
    const across = into === 'width' ? size.thickness : size.width;
    return {
      name: `face towards the ${mates.join(' and the ')}${own.some(({ on }) => /far one/.test(on)) ? ', and the far one' : ''}`,
      along: wholeLength(size), across, leftIs: size.horn > 0 ? 'rough top end' : 'top end', topIs: 'outer face',
      lines: [...linesOf(own, across, size), ...around(viewed, across)], waste: together(own).flatMap((of) => hollow(of, size)), depths: own.filter(isDepth),
    };
  });
}

/** From an end the lines go across the face; from a face or an edge they go along it, as far as their mortise does. */
function linesOf(marks: readonly Mark[], across: Length, size: PartSize): readonly ViewLine[] {
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

function hollow(marks: readonly Mark[], size: PartSize): readonly Waste[] {
  const sides = spanOf(marks.filter((mark) => mark.from.kind !== 'end' && !isDepth(mark)).map(({ at }) => at));
  return sides && sides[1] > sides[0] ? [{ ...reach(marks, size), top: sides[0], bottom: sides[1] }] : [];
}

/** Faces that bear a groove or the like: named by where the marks say that they are. */
function markedFaces(viewed: Viewed): readonly FaceView[] {
  const { part, size, marks } = viewed;
  const own = marks.filter((mark) => mark.on !== ALL_SIDES && mark.on !== FOOT && jointOf(viewed, mark) === undefined);
  return [...new Set(own.map(({ on }) => on))].map((on) => {
    const here = own.filter((mark) => mark.on === on);
    const across = here.find((mark) => mark.from.kind !== 'end' && !isDepth(mark))?.within ?? size.width;
    return {
      name: on.replace(/^the /, ''), along: wholeLength(size), across, leftIs: 'one end', topIs: part.referenceEdge ?? 'face edge',
      lines: [...linesOf(here, across, size), ...around(viewed, across)], waste: together(here).flatMap((of) => hollow(of, size)), depths: here.filter(isDepth),
    };
  });
}

/** Marks that run round the whole part stand on every face of it; those of the tenons are on theirs. */
function around(viewed: Viewed, across: Length): readonly ViewLine[] {
  return viewed.marks.filter((mark) => mark.on === ALL_SIDES && mark.from.kind === 'end').flatMap((mark) => acrossLines(mark, across, viewed.size));
}

function plainFace(viewed: Viewed): FaceView {
  const { part, size } = viewed;
  return { name: part.referenceFace ?? 'face side', along: wholeLength(size), across: size.width, leftIs: 'one end', topIs: part.referenceEdge ?? 'face edge', waste: [], depths: [], lines: around(viewed, size.width) };
}

/** The end of a foot: how far in its bevel comes from each side. */
function footFace({ size, marks }: Viewed): readonly FaceView[] {
  const own = marks.filter(({ on }) => on === FOOT);
  if (own.length === 0) return [];
  const bothSides = (mark: Mark, lies: ViewLine['lies'], whole: Length, to: Length): readonly ViewLine[] => [mark.at, subtract(whole, mark.at)].map((at) => ({ mark, lies, at, from: ZERO_LENGTH, to }));
  return [{
    name: 'bottom end', along: size.width, across: size.thickness, leftIs: 'one side', topIs: 'one side', waste: [], depths: [],
    lines: own.flatMap((mark) => [...bothSides(mark, 'across', size.width, size.thickness), ...bothSides(mark, 'along', size.thickness, size.width)]),
  }];
}
