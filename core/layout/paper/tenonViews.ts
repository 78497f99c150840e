import type { Face } from '../../faces/face.ts';
import type { Mark } from '../../joint/marks.ts';
import { ZERO_LENGTH, type Length } from '../../length/length.ts';
import type { Part } from '../../piece/file.ts';
import { acrossLines, placesAlong, spanOf, together, type FaceView, type PartSize, type ViewLine, type Waste } from './faceView.ts';

const BOUNDS: readonly Mark['kind'][] = ['outer cheek', 'inner cheek', 'tenon top', 'tenon bottom'];

/** How a copy of a rail lies: its letters, and which end bears the number, for who looks at its outside face with the top edge up. */
export interface Lying {
  readonly letterOf: (face: string) => Face | undefined;
  readonly numberedEnd: 'left' | 'right';
}

/** The tenons of a part: what is marked from its edge on the reference face, what is marked from its face on the reference edge, the shoulders on both. */
export function tenonViews(part: Part, size: PartSize, tenoned: readonly Mark[], lies?: Lying): readonly FaceView[] {
  if (tenoned.length === 0) return [];
  const [face, edge] = [part.referenceFace ?? 'face side', part.referenceEdge ?? 'face edge'];
  return [view('edge', face, edge, size.width), view('face', edge, face, size.thickness)];

  function view(kind: 'edge' | 'face', name: string, topIs: string, across: Length): FaceView {
    const own = tenoned.filter(({ from }) => from.kind === 'end' || from.kind === kind);
    const ends = tenonEnds(own, size);
    const letter = lies?.letterOf(name);
    return {
      name: lettered(name, lies), ...(letter === undefined ? {} : { face: letter }),
      along: size.length, across, leftIs: leftEnd(kind, face, edge, lies), topIs: lettered(topIs, lies), gaugeFrom: 'top', depths: [], ...(kind === 'edge' ? { isReference: true } : {}),
      lines: own.flatMap((mark) => (mark.from.kind === 'end' ? shoulderLines(mark, kind, own, across, size) : ends.map(({ from, to }) => ({ mark, lies: 'along' as const, at: mark.at, from, to })))),
      waste: waste(own, ends, across, size),
    };
  }
}

/** Right across; where the tenon is as wide as its rail, on the edge only beside it. */
function shoulderLines(mark: Mark, kind: 'edge' | 'face', own: readonly Mark[], across: Length, size: PartSize): readonly ViewLine[] {
  const lines = acrossLines(mark, across, size);
  if (kind === 'edge' || mark.on !== 'both faces') return lines;
  const cheeks = own.filter(({ from, kind: each }) => from.kind === 'face' && BOUNDS.includes(each)).map(({ at }) => at).sort((one, other) => one - other);
  const bounds = [ZERO_LENGTH, ...cheeks, across];
  return lines.flatMap((line) => bounds.flatMap((from, index) => { const to = bounds[index + 1]; return index % 2 === 0 && to !== undefined ? [{ ...line, from, to }] : []; }));
}

/** 'outside face, A' */
function lettered(face: string, lies: Lying | undefined): string {
  const letter = lies?.letterOf(face);
  return letter === undefined ? face : `${face}, ${letter}`;
}

/** The top edge is drawn with the outside face above it: seen from within, its ends change over. */
function leftEnd(kind: 'edge' | 'face', face: string, edge: string, lies: Lying | undefined): string {
  if (lies === undefined || face !== 'outside face' || edge !== 'top edge') return 'one end';
  return (lies.numberedEnd === 'left') === (kind === 'edge') ? 'numbered end' : 'end without number';
}

interface End { readonly from: Length; readonly to: Length; readonly left: boolean }

/** From each end of the part to the shoulder beside it. */
function tenonEnds(marks: readonly Mark[], size: PartSize): readonly End[] {
  const shoulders = spanOf(marks.filter(({ kind }) => kind === 'first shoulder' || kind === 'second shoulder').flatMap((mark) => placesAlong(mark, size)));
  if (!shoulders) return [];
  const [first, last] = shoulders;
  return [{ from: ZERO_LENGTH, to: first, left: true }, ...(last > first ? [{ from: last, to: size.length, left: false }] : [])];
}

/** What is sawn off: all that lies beside the tenons, but for the haunch. */
function waste(marks: readonly Mark[], ends: readonly End[], across: Length, size: PartSize): readonly Waste[] {
  const kept = together(marks.filter(({ kind, from }) => from.kind !== 'end' && BOUNDS.includes(kind))).flatMap((one) => spanOf(one.map(({ at }) => at)) ?? []);
  if (kept.length < 2) return [];
  const tenons = pairsOf(kept).sort((one, other) => one[0] - other[0]);
  const bounds = [ZERO_LENGTH, ...tenons.flat(), across];
  const sawn = bounds.flatMap((top, index) => { const bottom = bounds[index + 1]; return index % 2 === 0 && bottom !== undefined && bottom > top ? [{ top, bottom }] : []; });
  const haunch = marks.find(({ kind }) => kind === 'haunch end');
  const haunchTop = marks.find(({ kind }) => kind === 'haunch top')?.at ?? ZERO_LENGTH;
  return ends.flatMap((end) => sawn.flatMap(({ top, bottom }): readonly Waste[] => {
    if (!haunch || bottom !== tenons[0]?.[0] || marks.every(({ from }) => from.kind !== 'edge')) return [{ from: end.from, to: end.to, top, bottom }];
    const [left, right] = placesAlong(haunch, size);
    const beyond = end.left ? { from: end.from, to: left ?? end.to } : { from: right ?? end.from, to: end.to };
    return [...(haunchTop > top ? [{ from: end.from, to: end.to, top, bottom: haunchTop }] : []), { ...beyond, top: haunchTop, bottom }];
  }));
}

function pairsOf(places: readonly Length[]): (readonly [Length, Length])[] {
  return places.flatMap((place, index) => { const next = places[index + 1]; return index % 2 === 0 && next !== undefined ? [[place, next] as const] : []; });
}
