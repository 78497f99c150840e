import { assertNever } from '../result.ts';
import type { Bench } from '../bench/bench.ts';
import type { Response } from '../bench/reply.ts';
import type { FaceRequest } from '../bench/request.ts';
import type { Screen } from '../bench/screen.ts';
import { nameCopies } from '../faces/explain.ts';
import { checkLikings, warnOf, type CopyLikes } from '../faces/likes.ts';
import { railMap } from '../faces/map.ts';
import { sayArch, sayLikes, sayMap, sayRail, sayUp } from '../faces/sayLikes.ts';
import type { Entry } from '../journal/entry.ts';
import { placeKey } from '../journal/progress.ts';
import type { State } from '../journal/state.ts';
import { sayNumber } from '../length/sayNumber.ts';
import { changeOver } from './changeOver.ts';
import { facedPart, likesOf, type FacedPart } from './facesState.ts';
import { respondToBoards } from './facesBoards.ts';
import { placeThem, secondBest, takePlacing, whatCounts } from './facesPlacing.ts';
import { whichIsWhich } from './whichIsWhich.ts';
import { mapOf } from './legMaps.ts';
import { noPiece, refuse, tell, write } from './plain.ts';
import { sentence } from './saying.ts';

/** Which faces the maker likes, where the copies go by them, and why. */
export function respondToFaces(bench: Bench, request: FaceRequest): Response {
  if (!bench.state.piece) return noPiece();
  switch (request.kind) {
    case 'like faces': return withCopy(bench, request, (faced) => likeFaces(bench.state, faced, request));
    case 'like end': return withCopy(bench, request, (faced) => likeEnd(bench.state, faced, request));
    case 'faces of': return withCopy(bench, request, (faced) => tellFaces(bench.state, faced, request.copy));
    case 'like board': case 'board arches': return respondToBoards(bench, request);
    case 'place them': return placeThem(bench, request.part);
    case 'which is which': return whichIsWhich(bench, request.part);
    case 'second best': return secondBest(bench, request.part);
    case 'change over': return changeOver(bench, request);
    case 'take placing': return takePlacing(bench, request);
    case 'what counts': return whatCounts(bench, request);
    default: return assertNever(request);
  }
}

/** One copy of a part that can be placed by its faces; else why it cannot. */
function withCopy({ state }: Bench, { part: id, copy }: { readonly part: string; readonly copy: number }, then: (faced: FacedPart) => Response): Response {
  const part = state.piece?.file.parts.find((one) => one.id === id);
  if (!part) return refuse('This piece has no such part.');
  if (copy < 1 || copy > part.count) return refuse(`There is no ${part.name} ${sayNumber(copy)}: this piece has ${sayNumber(part.count)}.`);
  const faced = facedPart(state, part);
  return faced.ok ? then(faced.value) : refuse(sentence(faced.fault));
}

function screenOf(part: string, copy: number): Screen {
  return { name: 'faces', part, copy };
}

function likeFaces(state: State, { part, names, problem: { stand } }: FacedPart, { copy, likings }: Extract<FaceRequest, { kind: 'like faces' }>): Response {
  const before = likesOf(state, part.id, copy);
  const name = nameCopies(names, [copy]);
  const checked = checkLikings(before, likings, stand.kind === 'upright' ? 2 : 1);
  if (!checked.ok) return refuse(`${sentence(`${name}: ${checked.fault}`)} Nothing was written down.`);
  if (JSON.stringify(checked.value.faces) === JSON.stringify(before.faces)) return tell({ say: sentence(`${name} is so already: ${toldOf(checked.value)}`), screen: screenOf(part.id, copy) });
  const entries = likings.map(({ faces, as }): Entry => ({ kind: 'faces liked', part: part.id, copy, faces, as }));
  const warning = warnOf(checked.value);
  return write(entries, { say: [sentence(`${name}: ${toldOf(checked.value)}`), warning === '' ? '' : sentence(warning)].filter(Boolean).join(' '), signal: 'done', screen: screenOf(part.id, copy), ...(warning === '' ? {} : { note: sentence(warning) }) });
}

function likeEnd(state: State, { part, names, problem: { stand } }: FacedPart, { copy, what, end }: Extract<FaceRequest, { kind: 'like end' }>): Response {
  if (stand.kind === 'lying') return refuse(`A ${part.name} lies: it has no end up. Say which face shows, and which is its face edge.`);
  const name = nameCopies(names, [copy]);
  const before = likesOf(state, part.id, copy)[what] ?? 'either';
  const say = sentence(`${name}: ${what === 'up' ? sayUp(end) : sayArch(end)}`);
  if (before === end) return tell({ say, screen: screenOf(part.id, copy) });
  return write([{ kind: 'end liked', part: part.id, copy, what, end }], { say, signal: 'done', screen: screenOf(part.id, copy) });
}

function toldOf(likes: CopyLikes): string {
  const said = sayLikes(likes);
  return said.length === 0 ? 'nothing told' : said.join('; ');
}

/** What was told of one copy, and where its faces look once it stands. */
function tellFaces(state: State, { part, names, problem: { stand } }: FacedPart, copy: number): Response {
  const key = placeKey(part.id, copy);
  const [place, turn, map] = [state.places.get(key), state.turns.get(key), mapOf(state, part.id, copy)];
  const lies = stand.kind === 'lying' && turn ? [sentence(sayRail(railMap(turn)))] : [];
  const stands = map ? [sentence(`face ${map.turn.front} to the front${map.turn.up === 'other' ? ', numbered end down' : ''}; ${sayMap(map)}`)] : lies;
  const where = place === undefined ? 'Its place is not settled.' : stands.length === 0 ? `Its place is ${place}; which way it faces is not settled.` : '';
  return tell({ say: [sentence(`${nameCopies(names, [copy])}${place === undefined || stands.length === 0 ? '' : `, ${place}`}: ${toldOf(likesOf(state, part.id, copy))}`), ...stands, where].filter(Boolean).join(' '), screen: screenOf(part.id, copy) });
}
