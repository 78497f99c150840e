import type { Mark } from '../../joint/marks.ts';
import { drawnFace, standingAt, type Standing } from '../../faces/drawn.ts';
import { mortisedSides } from '../../faces/stand.ts';
import { mateOf } from '../../joint/mates.ts';
import { subtract } from '../../length/arithmetic.ts';
import { ZERO_LENGTH, type Length } from '../../length/length.ts';
import type { MortiseAndTenon, Part } from '../../piece/file.ts';
import type { LoadedPiece } from '../../piece/loadedPiece.ts';
import { acrossLines, isDepth, together, wholeLength, type FaceView, type PartSize, type ViewLine } from './faceView.ts';
import { hollow, linesOf } from './hollows.ts';
import { slotEnd } from './slotEnd.ts';
import { standingViews } from './standingViews.ts';
import { tenonViews, type Lying } from './tenonViews.ts';

export interface Viewed {
  readonly piece: LoadedPiece;
  readonly part: Part;
  readonly size: PartSize;
  readonly marks: readonly Mark[];
  /** How the copy stands or lies, once the maker has said so. */
  readonly stands?: Standing;
  readonly lies?: Lying;
}

const ALL_SIDES = 'all four sides';
const FOOT = 'the bottom end';
const BOTH_FACES = 'both faces';

/**
 * The faces that bear the marks; without any on a face of its own, the reference face. Of a copy that stands somewhere, each face as it is there; else
 * mortises that go into the same size of the part share a face.
 */
export function viewsOf(viewed: Viewed): readonly FaceView[] {
  const { piece, part, size, marks, stands, lies } = viewed;
  const tenoned = marks.filter((mark) => { const joint = jointOf(viewed, mark); return joint?.tenonOn === part.id && joint.mortiseIn !== part.id; });
  const mortised = stands === undefined ? mortisedFaces(viewed) : standingViews(piece, size, marks, stands).map((view) => ({ ...view, lines: [...view.lines, ...around(viewed, view.across)] }));
  const views = [...mortised, ...tenonViews(part, size, tenoned, lies), ...markedFaces(viewed)];
  return [...(views.length > 0 ? views : [plainFace(viewed)]), ...slotEnd(piece, size, marks), ...footFace(viewed)];
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
      along: wholeLength(size), across, leftIs: size.horn > 0 ? 'rough top end' : 'top end', topIs: 'outer face', gaugeFrom: 'top' as const, ...mirroredAt(part, own.flatMap((mark) => jointOf(viewed, mark) ?? [])),
      lines: [...linesOf(own, across, size), ...around(viewed, across)], waste: together(own).flatMap((of) => hollow(of, size)), depths: own.filter(isDepth),
    };
  });
}

/** A drawing of no copy in particular is right for one hand, and mirrored for the other. */
function mirroredAt(part: Part, joints: readonly MortiseAndTenon[]): { readonly note?: string } {
  const seen = (part.places ?? []).flatMap((name) => {
    const standing = standingAt(name);
    const sides = new Set(joints.flatMap((joint) => mortisedSides(joint, standing.place)));
    return [...sides].map((side) => ({ name, gaugeFrom: drawnFace(standing, side).gaugeFrom }));
  });
  const at = (gaugeFrom: 'upper' | 'lower'): string => [...new Set(seen.filter((one) => one.gaugeFrom === gaugeFrom).map(({ name }) => name))].join(', ');
  return at('lower') === '' ? {} : { note: `${at('upper') === '' ? '' : `as at ${at('upper')}; `}mirrored at ${at('lower')}` };
}

/** Faces that bear a groove or the like: named by where the marks say that they are. */
function markedFaces(viewed: Viewed): readonly FaceView[] {
  const { part, size, marks } = viewed;
  const own = marks.filter((mark) => ![ALL_SIDES, BOTH_FACES, FOOT].includes(mark.on) && jointOf(viewed, mark) === undefined);
  return [...new Set(own.map(({ on }) => on))].map((on) => {
    const here = own.filter((mark) => mark.on === on);
    const across = here.find((mark) => mark.from.kind !== 'end' && !isDepth(mark))?.within ?? size.width;
    const name = on.replace(/^the /, '');
    const letter = viewed.lies?.letterOf(name);
    return {
      name: letter === undefined ? name : `${name}, ${letter}`, ...(letter === undefined ? {} : { face: letter }), along: wholeLength(size), across, leftIs: 'one end', topIs: part.referenceEdge ?? 'face edge', gaugeFrom: 'top' as const,
      lines: [...linesOf(here, across, size), ...around(viewed, across)], waste: together(here).flatMap((of) => hollow(of, size)), depths: here.filter(isDepth),
    };
  });
}

/** Marks that run round the whole part stand on every face of it; those of the tenons are on theirs. */
function around(viewed: Viewed, across: Length): readonly ViewLine[] {
  return viewed.marks.filter((mark) => mark.from.kind === 'end' && (mark.on === ALL_SIDES || (mark.on === BOTH_FACES && across === viewed.size.width))).flatMap((mark) => acrossLines(mark, across, viewed.size));
}

function plainFace(viewed: Viewed): FaceView {
  const { part, size } = viewed;
  return { name: part.referenceFace ?? 'face side', along: wholeLength(size), across: size.width, leftIs: 'one end', topIs: part.referenceEdge ?? 'face edge', gaugeFrom: 'top', isReference: true, waste: [], depths: [], lines: around(viewed, size.width) };
}

/** The end of a foot: how far in its bevel comes from each side. */
function footFace({ size, marks }: Viewed): readonly FaceView[] {
  const own = marks.filter(({ on }) => on === FOOT);
  if (own.length === 0) return [];
  const bothSides = (mark: Mark, lies: ViewLine['lies'], whole: Length, to: Length): readonly ViewLine[] => [mark.at, subtract(whole, mark.at)].map((at) => ({ mark, lies, at, from: ZERO_LENGTH, to }));
  return [{
    name: 'bottom end', along: size.width, across: size.thickness, leftIs: 'one side', topIs: 'one side', gaugeFrom: 'top', waste: [], depths: [],
    lines: own.flatMap((mark) => [...bothSides(mark, 'across', size.width, size.thickness), ...bothSides(mark, 'along', size.thickness, size.width)]),
  }];
}
