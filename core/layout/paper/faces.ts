import { handsBeside, standingAt, type Standing } from '../../faces/drawn.ts';
import type { Turn } from '../../faces/face.ts';
import { legMap, railMap } from '../../faces/map.ts';
import { onFaces } from '../../faces/marksOnFaces.ts';
import { standOf } from '../../faces/stand.ts';
import { marksFor, type Mark } from '../../joint/marks.ts';
import { nanometres, type Length } from '../../length/length.ts';
import { pluralOf } from '../../piece/describe.ts';
import { sizeOf, type Sizes } from '../../piece/evaluate.ts';
import type { Part } from '../../piece/file.ts';
import type { LoadedPiece } from '../../piece/loadedPiece.ts';
import { failure, success, type Result } from '../../result.ts';
import type { FaceView, PartSize } from './faceView.ts';
import type { Lying } from './tenonViews.ts';
import { viewsOf } from './views.ts';

/** What the layout of a part is drawn from: the piece, its sizes as they stand, and where the maker has put each copy (`part/copy`), turned which way. */
export interface Laid {
  readonly piece: LoadedPiece;
  readonly sizes: Sizes;
  readonly places: ReadonlyMap<string, string>;
  readonly turns: ReadonlyMap<string, Turn>;
}

/** The faces of a part, or of one copy of it as it stands, that bear marks; or why they cannot be drawn: a sentence for the maker. */
export function facesOf(laid: Laid, partId: string, copy?: number): Result<readonly FaceView[], string> {
  const { piece, sizes, places, turns } = laid;
  const part = piece.file.parts.find(({ id }) => id === partId);
  if (!part) return failure(`This piece has no part called ${partId}. It has ${piece.file.parts.map(({ name }) => name).join(', ')}.`);
  if (copy !== undefined && (copy < 1 || copy > part.count)) return failure(`There is no ${part.name} ${copy}; this piece has ${part.count}.`);
  const key = `${partId}/${copy ?? ''}`;
  const marks = marksFor(piece, sizes, partId, copy, copy === undefined ? null : places.get(key) ?? null);
  if (marks.length === 0) return failure(`Nothing is marked on the ${part.name}: there is no layout to draw.`);
  const turn = turns.get(key);
  const stands = standingOf(laid, part, copy);
  const lies = stands === undefined && turn !== undefined ? lyingOf(turn) : undefined;
  const views = viewsOf({
    piece, part, size: sizeOfPart(sizes, partId, copy), marks: lettered(piece, part, marks, stands),
    ...(stands === undefined ? {} : { stands }), ...(lies === undefined ? {} : { lies }),
  });
  const hands = copy === undefined || stands === undefined ? '' : sayHands(laid, part, copy);
  return success(hands === '' ? views : views.map((view) => (view.name.startsWith('face ') ? { ...view, note: hands } : view)));
}

function sizeOfPart(sizes: Sizes, partId: string, copy: number | undefined): PartSize {
  const own = (key: string): Length => sizeOf(sizes, `${partId}.${key}`, copy)?.length ?? nanometres(0);
  return { length: own('length'), width: own('width'), thickness: own('thickness'), horn: own('horn'), lowerHorn: own('lowerHorn') };
}

/** Where a copy of an upright part stands; undefined of what lies, and while nobody has said where it goes. */
function standingOf({ piece, places, turns }: Laid, part: Part, copy: number | undefined): Standing | undefined {
  const place = places.get(`${part.id}/${copy ?? ''}`);
  // Square or not makes no difference to how it stands, only to how it may be turned.
  const stand = standOf(piece.file, part, true);
  return place === undefined || !stand.ok || stand.value.kind !== 'upright' ? undefined : standingAt(place, turns.get(`${part.id}/${copy ?? ''}`));
}

function lettered({ file }: LoadedPiece, part: Part, marks: readonly Mark[], stands: Standing | undefined): readonly Mark[] {
  return stands?.turn === undefined ? marks : onFaces(marks, legMap(file, part, stands.place.name, stands.turn));
}

function lyingOf(turn: Turn): Lying {
  const map = railMap(turn);
  const letters = new Map([['outside face', map.outside], ['inside face', map.inside], ['top edge', map.top], ['bottom edge', map.bottom]]);
  return { letterOf: (face) => letters.get(face), numberedEnd: map.numberedEnd };
}

/** 'mirrored on legs 1 and 4; leg 3 is of this hand'. Empty while the others stand nowhere. */
function sayHands({ places }: Laid, part: Part, copy: number): string {
  const { alike, mirrored } = handsBeside(copy, part.count, (one) => places.get(`${part.id}/${one}`));
  const called = (copies: readonly number[]): string => `${copies.length === 1 ? part.name : part.plural ?? pluralOf(part.name)} ${copies.join(' and ')}`;
  return [...(mirrored.length > 0 ? [`mirrored on ${called(mirrored)}`] : []), ...(alike.length > 0 ? [`${called(alike)} ${alike.length === 1 ? 'is' : 'are'} of this hand`] : [])].join('; ');
}
