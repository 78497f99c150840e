import { drawnFace, type DrawnEdge, type DrawnFace, type Standing } from '../../faces/drawn.ts';
import { oppositeSide, type Side } from '../../faces/face.ts';
import { mortisedSides } from '../../faces/stand.ts';
import type { Mark } from '../../joint/marks.ts';
import { hollowOf, mateOf } from '../../joint/mates.ts';
import { subtract } from '../../length/arithmetic.ts';
import type { Length } from '../../length/length.ts';
import type { MortiseAndTenon } from '../../piece/file.ts';
import type { LoadedPiece } from '../../piece/loadedPiece.ts';
import { isDepth, together, wholeLength, type FaceView, type PartSize, type ViewLine, type Waste } from './faceView.ts';
import { hollow, linesOf } from './hollows.ts';

/** A joint's mortise on one side of a copy; `far` where it only comes out there. */
interface OnSide {
  readonly joint: MortiseAndTenon;
  readonly side: Side;
  readonly far: boolean;
  readonly marks: readonly Mark[];
}

/** The mortised faces of a copy where it stands: each as it is seen from outside, so that those of a mirror-image copy are mirrored. */
export function standingViews(piece: LoadedPiece, size: PartSize, marks: readonly Mark[], standing: Standing): readonly FaceView[] {
  const all = piece.file.joints.flatMap((joint) => (joint.kind === 'mortise and tenon' ? sidesOf(joint, marks.filter((mark) => mark.joint === joint.id), standing) : []));
  return [...new Set(all.map(({ side }) => side))].map((side) => viewOf(piece, size, drawnFace(standing, side), all.filter((one) => one.side === side)));
}

function sidesOf(joint: MortiseAndTenon, marks: readonly Mark[], { place }: Standing): readonly OnSide[] {
  if (marks.length === 0) return [];
  const through = (joint.shape ?? 'blind') !== 'blind';
  return mortisedSides(joint, place).flatMap((side): readonly OnSide[] => [
    { joint, side, far: false, marks }, ...(through ? [{ joint, side: oppositeSide(side), far: true, marks: marks.filter((mark) => !isDepth(mark)) }] : []),
  ]);
}

function viewOf(piece: LoadedPiece, size: PartSize, drawn: DrawnFace, here: readonly OnSide[]): FaceView {
  const across = drawn.side === 'left' || drawn.side === 'right' ? size.thickness : size.width;
  const own = here.flatMap(({ marks }) => marks);
  const flip = drawn.gaugeFrom === 'lower';
  return {
    name: `${calledFace(drawn)}, ${wherefore(piece, here)}`, ...(drawn.face === undefined ? {} : { face: drawn.face }),
    along: wholeLength(size), across, leftIs: size.horn > 0 ? 'rough top end' : 'top end',
    topIs: calledEdge(drawn.upper), bottomIs: calledEdge(drawn.lower), gaugeFrom: flip ? 'bottom' : 'top',
    lines: linesOf(own, across, size).map((line) => (flip ? flipped(line, across) : line)),
    waste: together(own).flatMap((of) => hollow(of, size)).map((waste) => (flip ? flippedWaste(waste, across) : waste)),
    depths: own.filter(isDepth), ...openAt(here),
  };
}

/** 'face B'; while nobody has said which way the copy is turned, by the side of the piece that it looks to. */
function calledFace({ face, side }: DrawnFace): string {
  return face === undefined ? `face to the ${side}` : `face ${face}`;
}

function calledEdge({ face, outer }: DrawnEdge): string {
  return face === undefined ? `${outer ? 'outer' : 'inner'} face` : `face ${face}, ${outer ? 'outer' : 'inner'}`;
}

/** 'towards the long rail and the back stretcher' */
function wherefore({ file }: LoadedPiece, here: readonly OnSide[]): string {
  const towards = here.filter(({ far }) => !far).map(({ joint }) => `the ${mateOf(file, joint)}`);
  const out = here.filter(({ far }) => far).map(({ joint }) => `the ${mateOf(file, joint)} ${hollowOf(joint)}`);
  return [...(towards.length > 0 ? [`towards ${[...new Set(towards)].join(' and ')}`] : []), ...(out.length > 0 ? [`far side of ${[...new Set(out)].join(' and ')}`] : [])].join(', ');
}

function openAt(here: readonly OnSide[]): { readonly open?: 'left' | 'right' } {
  const slot = here.find(({ joint }) => joint.shape === 'bridle');
  if (slot === undefined) return {};
  return { open: slot.marks.some(({ kind }) => kind === 'mortise start') ? 'right' : 'left' };
}

function flipped(line: ViewLine, across: Length): ViewLine {
  return line.lies === 'along' ? { ...line, at: subtract(across, line.at) } : line;
}

function flippedWaste({ from, to, top, bottom }: Waste, across: Length): Waste {
  return { from, to, top: subtract(across, bottom), bottom: subtract(across, top) };
}
