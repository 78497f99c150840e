import type { Face } from '../faces/face.ts';
import { checkLikings, facesLiked, NO_LIKES, withLiking, type CopyLikes, type Liking, type Quality } from '../faces/likes.ts';
import { LEVELS, type Level } from '../faces/levels.ts';
import { EMPTY_STATE } from '../journal/fold.ts';
import type { State } from '../journal/state.ts';
import { parseLength } from '../length/parseWritten.ts';
import { ZERO_LENGTH } from '../length/length.ts';
import type { FiledTold, Part, PieceFile } from '../piece/file.ts';
import type { LoadedPiece } from '../piece/loadedPiece.ts';
import { placeKey } from '../journal/progress.ts';
import { writeCell } from '../stock/boardTable.ts';
import type { PartRough } from '../stock/rough.ts';
import { partsRough } from './cuttingState.ts';
import { facedPart } from './facesState.ts';
import { MOST_MORE } from './rough.ts';

/** Under which name a piece file lists the faces that were told so. */
const FACE_LISTS = [['show', 'show'], ['hide', 'hide'], ['best', 'best'], ['glueLines', 'glue lines'], ['straight', 'straight'], ['flat', 'flat'], ['figured', 'figured']] as const satisfies readonly (readonly [keyof FiledTold, Quality])[];
const SIDES = ['longer', 'wider', 'thicker'] as const;
const OF_A_COPY = [...FACE_LISTS.map(([name]) => name), 'faceSide', 'faceEdge', 'up', 'arch'] as const;
const OF_A_PART = [...SIDES, 'mayHideDefect', 'order'] as const;

/** What was told of the parts of the piece on the bench, part by part, as its file has it. */
export function toldOnBench(state: State): readonly FiledTold[] {
  return (state.piece?.file.parts ?? []).flatMap((part) => {
    const whole: FiledTold = { part: part.id, ...filedRough(partsRough(state).get(part.id) ?? {}), ...orderOf(state, part) };
    const copies = counted(part.count).map((copy): FiledTold => ({ part: part.id, copy, ...filedLikes(state.likes.get(placeKey(part.id, copy)) ?? NO_LIKES) }));
    const boards = counted(part.made.kind === 'panel' ? part.made.boards : 0).flatMap((board): FiledTold[] => {
      const arches = state.arches.get(placeKey(part.id, board));
      return arches === undefined ? [] : [{ part: part.id, board, arches }];
    });
    return [...(Object.keys(whole).length > 1 ? [whole] : []), ...copies.filter((copy) => Object.keys(copy).length > 2), ...boards];
  });
}

const counted = (count: number): readonly number[] => Array.from({ length: count }, (_, index) => index + 1);

function filedRough({ mayHideDefect, ...sides }: PartRough): Omit<FiledTold, 'part'> {
  const lengths = SIDES.flatMap((side): [string, string][] => { const length = sides[side] ?? ZERO_LENGTH; return length === 0 ? [] : [[side, writeCell(length)]]; });
  return { ...Object.fromEntries(lengths), ...(mayHideDefect === undefined ? {} : { mayHideDefect }) };
}

function orderOf({ faceOrders }: State, { id }: Part): Omit<FiledTold, 'part'> {
  const order = faceOrders.get(id);
  return order === undefined ? {} : { order };
}

function filedLikes(likes: CopyLikes): Omit<FiledTold, 'part'> {
  const lists = FACE_LISTS.map(([name, as]) => [name, facesLiked(likes, as)] as const).filter(([, faces]) => faces.length > 0);
  const marks = ([['faceSide', 'face side'], ['faceEdge', 'face edge']] as const).flatMap(([name, as]) => facesLiked(likes, as).map((face): [string, Face] => [name, face]));
  const { up, arch } = likes;
  return { ...Object.fromEntries<readonly Face[] | Face>([...lists, ...marks]), ...(up === undefined ? {} : { up }), ...(arch === undefined ? {} : { arch }) };
}

/** What a piece file tells of one copy's faces, to be told of it. */
export function likingsOf(told: FiledTold): readonly Liking[] {
  const lists = FACE_LISTS.flatMap(([name, as]): Liking[] => (told[name] === undefined || told[name].length === 0 ? [] : [{ faces: told[name], as }]));
  const marks = ([['face side', told.faceSide], ['face edge', told.faceEdge]] as const).flatMap(([as, face]): Liking[] => (face === undefined ? [] : [{ faces: [face], as }]));
  return [...lists, ...marks];
}

/** The same as likes: what the copy of the bench would have if nothing else was told of it. */
export function likesFiled(told: FiledTold): CopyLikes {
  const { up, arch } = told;
  return { ...likingsOf(told).reduce(withLiking, NO_LIKES), ...(up === undefined ? {} : { up }), ...(arch === undefined ? {} : { arch }) };
}

/** What it tells of a part in the rough; its lengths were read before (`toldFaults`). */
export function roughOf(told: FiledTold): PartRough {
  const lengths = SIDES.flatMap((side) => {
    const read = told[side] === undefined ? undefined : parseLength(told[side]);
    return read?.ok === true ? [[side, read.value] as const] : [];
  });
  return { ...Object.fromEntries(lengths), ...(told.mayHideDefect === undefined ? {} : { mayHideDefect: told.mayHideDefect }) };
}

/** By the ids of the parts, what a file tells of them in the rough. */
export function roughTold({ told = [] }: Pick<PieceFile, 'told'>): ReadonlyMap<string, PartRough> {
  return new Map(told.filter(({ copy, board }) => copy === undefined && board === undefined).map((one) => [one.part, roughOf(one)]));
}

/** The levels of its order, which the schema has held to being levels. */
export function levelsOf({ order = [] }: FiledTold): readonly Level[] {
  return LEVELS.filter((level) => order.includes(level)).sort((a, b) => order.indexOf(a) - order.indexOf(b));
}

/** Everything that a file tells and cannot mean so, by the number of the item from 0, each with what to do. */
export function toldFaults({ file, ...piece }: LoadedPiece): readonly { readonly item: number; readonly message: string }[] {
  const told = file.told ?? [];
  return told.flatMap((one, item) => {
    const twice = told.findIndex(({ part, copy, board }) => part === one.part && copy === one.copy && board === one.board) < item;
    const message = twice ? 'this part, copy or board is told of before. Expected each once: put both together.' : toldFault(one, { file, ...piece });
    return message === undefined ? [] : [{ item, message }];
  });
}

/** Why an item cannot be meant so; undefined when it can. */
function toldFault(told: FiledTold, piece: LoadedPiece): string | undefined {
  const part = piece.file.parts.find(({ id }) => id === told.part);
  if (part === undefined) return `no part has the id “${told.part}”. Expected one of: ${piece.file.parts.map(({ id }) => id).join(', ')}.`;
  if (told.copy !== undefined && told.board !== undefined) return 'this is of a copy and of a board at once. Expected one of them: write two items.';
  const misplaced = Object.keys(told).find((key) => key !== 'part' && key !== keyOf(told) && !allowedIn(told).includes(key));
  if (misplaced !== undefined) return `“${misplaced}” does not belong here. Expected, ${told.copy !== undefined ? 'of one copy' : told.board !== undefined ? 'of one board of a panel' : 'of a whole part'}: ${allowedIn(told).join(', ')}.`;
  if (told.copy !== undefined) return copyFault(told, told.copy, part, piece);
  if (told.board !== undefined) return boardFault(told, told.board, part);
  return partFault(told);
}

function keyOf({ copy, board }: FiledTold): string {
  return copy !== undefined ? 'copy' : board !== undefined ? 'board' : '';
}

function allowedIn({ copy, board }: FiledTold): readonly string[] {
  return copy !== undefined ? OF_A_COPY : board !== undefined ? ['arches'] : OF_A_PART;
}

function copyFault(told: FiledTold, copy: number, part: Part, piece: LoadedPiece): string | undefined {
  if (copy > part.count) return `there is no ${part.name} ${copy}. Expected a copy from 1 to ${part.count}.`;
  const faced = facedPart({ ...EMPTY_STATE, piece }, part);
  if (!faced.ok) return `${faced.fault}. Take this out of the file.`;
  const lying = faced.value.problem.stand.kind === 'lying';
  if (lying && (told.up ?? told.arch) !== undefined) return `a ${part.name} lies: it has no end up. Take “up” and “arch” out.`;
  const checked = checkLikings(NO_LIKES, likingsOf(told), lying ? 1 : 2);
  return checked.ok ? undefined : `${checked.fault}. Put it right, or take it out of the file.`;
}

function boardFault({ arches }: FiledTold, board: number, { made, name }: Part): string | undefined {
  if (made.kind !== 'panel') return `the ${name} is no panel of boards. Take “board” out.`;
  if (board > made.boards) return `the ${name} has no board ${board}. Expected a board from 1 to ${made.boards}.`;
  return arches === undefined ? 'nothing is told of this board. Expected “arches”: up or down.' : undefined;
}

function partFault(told: FiledTold): string | undefined {
  for (const side of SIDES) {
    const text = told[side];
    const read = text === undefined ? undefined : parseLength(text);
    if (read?.ok === false) return `${side}: ${read.fault.message}`;
    if (read?.ok === true && (read.value < 0 || read.value > MOST_MORE)) return `${side}: “${text ?? ''}” is not reckoned with. Expected a length from nothing to a foot.`;
  }
  return told.order !== undefined && levelsOf(told).length !== LEVELS.length ? `order: each of ${LEVELS.join(', ')} is wanted once.` : undefined;
}
