import type { Bench } from '../bench/bench.ts';
import type { Response } from '../bench/reply.ts';
import type { WorkRequest } from '../bench/request.ts';
import type { Turn } from '../faces/face.ts';
import { sayEnd } from '../faces/explain.ts';
import { legMap } from '../faces/map.ts';
import { sayMap } from '../faces/sayLikes.ts';
import type { AssignedLeg } from '../journal/entry.ts';
import { placeKey } from '../journal/progress.ts';
import type { Part } from '../piece/file.ts';
import { failure, success, type Result } from '../result.ts';
import { facedPart, likesOf } from './facesState.ts';
import { sayUndone, undoneBy } from './facesUndo.ts';
import { noPiece, refuse, tell, write } from './plain.ts';
import { sayNumber } from '../length/sayNumber.ts';
import { sayList, sentence } from './saying.ts';

type Asked = Extract<WorkRequest, { kind: 'place' }>;

/** Says where a copy goes, and how it is turned there: 'leg three goes back left, face A to the front'. One place holds one copy. */
export function placeCopy(bench: Bench, request: Asked): Response {
  const { state } = bench;
  if (!state.piece) return noPiece();
  const { part: partId, copy, place } = request;
  const part = state.piece.file.parts.find(({ id }) => id === partId);
  if (!part) return refuse('This piece has no such part.');
  if (copy < 1 || copy > part.count) return refuse(`There is no ${part.name} ${sayNumber(copy)}: this piece has ${sayNumber(part.count)}.`);
  const places = part.places ?? [];
  if (!places.includes(place)) {
    return refuse(places.length > 0 ? `A ${part.name} goes ${sayList(places, 'or')}.` : `The piece file names no places for the ${part.name}.`);
  }
  const holder = [...state.places].find(([key, held]) => held === place && key.startsWith(`${partId}/`) && key !== `${partId}/${copy}`);
  if (holder) {
    const holding = Number(holder[0].slice(partId.length + 1));
    return refuse(sentence(`${place} is taken by ${part.name} ${sayNumber(holding)}. Give that one another place first`));
  }
  const turn = turnOf(bench, part, request);
  return turn.ok ? assign(bench, part, request, turn.value) : refuse(sentence(turn.fault));
}

/** As it was told, or as it is turned already when it stays where it is; undefined when nobody said. */
function turnOf({ state }: Bench, part: Part, { copy, place, front, up }: Asked): Result<Turn | undefined, string> {
  const key = placeKey(part.id, copy);
  const before = state.places.get(key) === place ? state.turns.get(key) : undefined;
  if (front === undefined && up === undefined) return success(before);
  const faced = facedPart(state, part);
  if (!faced.ok) return faced;
  const likes = likesOf(state, part.id, copy);
  const turn: Turn = { front: front ?? before?.front ?? 'A', up: up ?? likes.up ?? before?.up ?? 'numbered' };
  const able = faced.value.problem.stand.turns.some((one) => one.front === turn.front && one.up === turn.up);
  return able ? success(turn) : failure(`A ${part.name} is wider one way than the other: only its faces A and C can look there, not ${turn.front}`);
}

function assign(bench: Bench, part: Part, request: Asked, turn: Turn | undefined): Response {
  const { state } = bench;
  const { copy, place } = request;
  const names = { one: part.name, many: part.name };
  const undone = turn === undefined ? [] : undoneBy(state, { part }, [{ copy, place: { name: place }, turn }]);
  if (undone.length > 0 && request.sure !== true) {
    const say = `${sayUndone({ names }, undone)} Put it there all the same?`;
    return tell({ say, note: say, signal: 'wrong', question: { kind: 'yes or no', onYes: { ...request, sure: true } } });
  }
  const leg: AssignedLeg = { copy, place, ...(turn === undefined ? {} : { turn }) };
  return write([{ kind: 'legs assigned', part: part.id, legs: [leg] }], {
    say: sentence(`${part.name} ${sayNumber(copy)} is ${place}${turn === undefined ? '' : turned(bench, part, place, turn)}`), signal: 'done',
    screen: turn === undefined ? { name: 'part', part: part.id, copy } : { name: 'faces', part: part.id },
  });
}

function turned({ state }: Bench, part: Part, place: string, turn: Turn): string {
  const faced = facedPart(state, part);
  const kind = faced.ok ? faced.value.problem.stand.kind : 'upright';
  const map = state.piece && kind === 'upright' ? `; ${sayMap(legMap(state.piece.file, part, place, turn))}` : '';
  return `, face ${turn.front} ${kind === 'upright' ? 'to the front' : 'outside'}${sayEnd(turn, kind)}${map}`;
}
