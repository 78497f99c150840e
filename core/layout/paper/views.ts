import type { Mark } from '../../joint/marks.ts';
import { mateOf } from '../../joint/mates.ts';
import { subtract } from '../../length/arithmetic.ts';
import { nanometres, ZERO_LENGTH, type Length } from '../../length/length.ts';
import type { MortiseAndTenon, Part } from '../../piece/file.ts';
import type { LoadedPiece } from '../../piece/loadedPiece.ts';

/** One face of a part seen square on, its length from left to right, with all that is marked on it. */
export interface FaceView {
  /** 'face towards the long rail', 'outside face' */
  readonly name: string;
  readonly along: Length;
  readonly across: Length;
  /** What its left end and its upper edge are: distances are from these. */
  readonly leftIs: string;
  readonly topIs: string;
  readonly lines: readonly ViewLine[];
  /** What is cut away, hatched: from the left, and from the top. */
  readonly waste: readonly { readonly from: Length; readonly to: Length; readonly top: Length; readonly bottom: Length }[];
  /** Depths, which no line on this face shows. */
  readonly depths: readonly Mark[];
}

/** A line across the face stands `at` a distance from the left; one along it, from the top. `from` and `to` are its ends, in the other direction. */
export interface ViewLine {
  readonly mark: Mark;
  readonly lies: 'across' | 'along';
  readonly at: Length;
  readonly from: Length;
  readonly to: Length;
}

export interface PartSize {
  readonly length: Length;
  readonly width: Length;
  readonly thickness: Length;
}

interface Viewed {
  readonly piece: LoadedPiece;
  readonly part: Part;
  readonly size: PartSize;
  readonly marks: readonly Mark[];
}

/** The faces that bear the marks; without any, the reference face alone. Mortises that go into the same size of the part share a face. */
export function viewsOf(piece: LoadedPiece, part: Part, size: PartSize, marks: readonly Mark[]): readonly FaceView[] {
  const viewed: Viewed = { piece, part, size, marks };
  const views = [...mortisedFaces(viewed), ...tenonFaces(viewed), ...markedFaces(viewed)];
  return views.length > 0 ? views : [plainFace(viewed)];
}

/** Marks that run round the whole part stand on every face of it. */
function isAround({ on }: Mark): boolean {
  return on === 'all four sides';
}

function isDepth({ tool }: Mark): boolean {
  return tool === 'depth flag';
}

function jointOf({ piece }: Viewed, { joint }: Mark): MortiseAndTenon | undefined {
  const found = piece.file.joints.find(({ id }) => id === joint);
  return found?.kind === 'mortise and tenon' ? found : undefined;
}

function mortisedFaces(viewed: Viewed): readonly FaceView[] {
  const { part, size, marks } = viewed;
  const mortised = marks.filter((mark) => jointOf(viewed, mark)?.mortiseIn === part.id);
  const faces = [...new Set(mortised.map((mark) => jointOf(viewed, mark)?.mortiseInto ?? 'width'))];
  return faces.map((into) => {
    const own = mortised.filter((mark) => (jointOf(viewed, mark)?.mortiseInto ?? 'width') === into);
    const mates = [...new Set(own.flatMap((mark) => { const joint = jointOf(viewed, mark); return joint ? [mateOf(viewed.piece.file, joint)] : []; }))];
    const across = into === 'width' ? size.thickness : size.width;
    return {
      name: `face towards the ${mates.join(' and the ')}`, along: size.length, across, leftIs: 'top end', topIs: 'outer face',
      lines: [...alongLines(own, across, size.length), ...around(viewed, across)],
      waste: jointsIn(own).flatMap((of) => mortiseWaste(of, size.length)), depths: own.filter(isDepth),
    };
  });
}

function jointsIn(marks: readonly Mark[]): readonly (readonly Mark[])[] {
  return [...new Set(marks.map(({ joint }) => joint))].map((joint) => marks.filter((mark) => mark.joint === joint));
}

/** From an end the lines go across the face; from a face or an edge they go along it, as far as their joint does. */
function alongLines(marks: readonly Mark[], across: Length, length: Length): readonly ViewLine[] {
  return marks.filter((mark) => !isDepth(mark)).flatMap((mark): readonly ViewLine[] => {
    if (mark.from.kind === 'end') return [acrossLine(mark, across, length)];
    return spansOf(marks.filter(({ joint }) => joint === mark.joint), length).map(({ from, to }) => ({ mark, lies: 'along', at: mark.at, from, to }));
  });
}

function acrossLine(mark: Mark, across: Length, length: Length): ViewLine {
  return { mark, lies: 'across', at: fromLeft(mark, length), from: ZERO_LENGTH, to: across };
}

/** Most marks are from the left end; those from the bottom end count from the right. */
function fromLeft({ at, from }: Mark, length: Length): Length {
  return /bottom|other/.test(from.say) ? subtract(length, at) : at;
}

/** Where along the part the lines of one joint run: between its first and its last mark from the end, or over the whole length. */
function spansOf(joint: readonly Mark[], length: Length): readonly { readonly from: Length; readonly to: Length }[] {
  const ends = joint.filter(({ from }) => from.kind === 'end').map((mark) => fromLeft(mark, length));
  if (ends.length < 2) return [{ from: ZERO_LENGTH, to: length }];
  return [{ from: nanometres(Math.min(...ends)), to: nanometres(Math.max(...ends)) }];
}

function mortiseWaste(joint: readonly Mark[], length: Length): FaceView['waste'] {
  const sides = pairs(joint.filter(({ from, tool }) => from.kind !== 'end' && tool !== 'depth flag').map(({ at }) => at));
  return spansOf(joint, length).flatMap(({ from, to }) => sides.map(([top, bottom]) => ({ from, to, top, bottom })));
}

/** Two and two in their order from the reference. */
function pairs(places: readonly Length[]): readonly (readonly [Length, Length])[] {
  const sorted = [...places].sort((one, other) => one - other);
  return sorted.flatMap((place, index) => { const next = sorted[index + 1]; return index % 2 === 0 && next !== undefined ? [[place, next] as const] : []; });
}

/** The tenons: edges and shoulders on the reference face, cheeks and shoulders on the reference edge. */
function tenonFaces(viewed: Viewed): readonly FaceView[] {
  const { part, size, marks } = viewed;
  const tenoned = marks.filter((mark) => jointOf(viewed, mark)?.tenonOn === part.id && jointOf(viewed, mark)?.mortiseIn !== part.id);
  if (tenoned.length === 0) return [];
  const face = (kind: 'edge' | 'face', name: string, topIs: string, across: Length): FaceView => {
    const own = tenoned.filter(({ from }) => from.kind === 'end' || from.kind === kind);
    return {
      name, along: size.length, across, leftIs: 'one end', topIs, depths: [],
      lines: own.flatMap((mark) => (mark.from.kind === 'end' ? [acrossLine(mark, across, size.length)] : tenonLines(mark, own, size.length))),
      waste: jointsIn(own).flatMap((of) => tenonWaste(of, across, size.length)),
    };
  };
  const [referenceFace, referenceEdge] = [part.referenceFace ?? 'face side', part.referenceEdge ?? 'face edge'];
  return [face('edge', referenceFace, referenceEdge, size.width), face('face', referenceEdge, referenceFace, size.thickness)];
}

/** From each end of the part to the shoulder beside it. */
function tenonEnds(joint: readonly Mark[], length: Length): readonly { readonly from: Length; readonly to: Length }[] {
  const shoulders = joint.filter(({ from }) => from.kind === 'end').map((mark) => fromLeft(mark, length)).sort((one, other) => one - other);
  const [first, last] = [shoulders[0], shoulders.at(-1)];
  return first === undefined || last === undefined ? [] : [{ from: ZERO_LENGTH, to: first }, ...(last > first ? [{ from: last, to: length }] : [])];
}

function tenonLines(mark: Mark, marks: readonly Mark[], length: Length): readonly ViewLine[] {
  return tenonEnds(marks.filter(({ joint }) => joint === mark.joint), length).map(({ from, to }) => ({ mark, lies: 'along', at: mark.at, from, to }));
}

/** What is sawn off: all that lies beside the tenons. */
function tenonWaste(joint: readonly Mark[], across: Length, length: Length): FaceView['waste'] {
  const kept = pairs(joint.filter(({ from }) => from.kind !== 'end').map(({ at }) => at));
  if (kept.length === 0) return [];
  const sawn = [...kept.map(([top], index) => [kept[index - 1]?.[1] ?? ZERO_LENGTH, top] as const), [kept.at(-1)?.[1] ?? across, across] as const].filter(([top, bottom]) => bottom > top);
  return tenonEnds(joint, length).flatMap(({ from, to }) => sawn.map(([top, bottom]) => ({ from, to, top, bottom })));
}

/** Faces that bear a groove or the like: named by where the marks say that they are. */
function markedFaces(viewed: Viewed): readonly FaceView[] {
  const { part, size, marks } = viewed;
  const own = marks.filter((mark) => !isAround(mark) && jointOf(viewed, mark) === undefined);
  return [...new Set(own.map(({ on }) => on))].map((on) => {
    const here = own.filter((mark) => mark.on === on);
    const across = here.find((mark) => mark.from.kind !== 'end' && !isDepth(mark))?.within ?? size.width;
    return {
      name: on.replace(/^the /, ''), along: size.length, across, leftIs: 'one end', topIs: part.referenceEdge ?? 'face edge',
      lines: [...alongLines(here, across, size.length), ...around(viewed, across)],
      waste: jointsIn(here).flatMap((of) => mortiseWaste(of, size.length)), depths: here.filter(isDepth),
    };
  });
}

function around(viewed: Viewed, across: Length): readonly ViewLine[] {
  return viewed.marks.filter((mark) => isAround(mark) && mark.from.kind === 'end').map((mark) => acrossLine(mark, across, viewed.size.length));
}

function plainFace({ part, size, marks }: Viewed): FaceView {
  return {
    name: part.referenceFace ?? 'face side', along: size.length, across: size.width, leftIs: 'one end', topIs: part.referenceEdge ?? 'face edge', waste: [], depths: [],
    lines: marks.filter((mark) => mark.from.kind === 'end').map((mark) => acrossLine(mark, size.width, size.length)),
  };
}
