import { assertNever } from '../result.ts';
import type { Bench } from '../bench/bench.ts';
import type { Response } from '../bench/reply.ts';
import type { BoardChange, RackRequest } from '../bench/request.ts';
import type { Entry } from '../journal/entry.ts';
import type { State } from '../journal/state.ts';
import { nanometres, NANOMETRES_PER_INCH, ZERO_LENGTH, type Length } from '../length/length.ts';
import { sayNumber } from '../length/sayNumber.ts';
import type { Board, Defect } from '../stock/board.ts';
import { readBoards, writeBoards } from '../stock/boardTable.ts';
import { boardFault } from '../stock/rack.ts';
import { boardFeet } from '../wood/lumber/measure.ts';
import { meanBoard, sayBoard, sayBoardFeet, sayRack, sayRackFeet, sayThickness } from './sayBoards.ts';
import { takenPlan } from './cuttingState.ts';
import { afterDamage } from './boardDamage.ts';
import { refuse, tell, write } from './plain.ts';
import { sayCount, sentence, spoken } from './saying.ts';
import { toSay } from './toSay.ts';

/** Boards put on the rack, corrected, told of and used up. */
export function respondToRack(bench: Bench, request: RackRequest): Response {
  const { state } = bench;
  switch (request.kind) {
    case 'put board': return put(state, request.board, state.rack.has(request.board.number) ? 'put right' : 'on the rack');
    case 'new board': return put(state, newBoard(state, request), 'on the rack');
    case 'board is': return withBoard(bench, request.board, (board) => change(state, board, request.change));
    case 'board defect': return withBoard(bench, request.board, (board) => addDefect(state, board, request));
    case 'defect without ends': return refuse(`${sentence(`${request.what}, from where to where along the board?`)} ${toSay('Tell me both, from the marked end.', `Say, for one: ${request.what} from thirty to thirty four.`)}`);
    case 'narrow defect': return withBoard(bench, request.board, (board) => narrowDefect(state, board, request.narrowed));
    case 'board used up': return withBoard(bench, request.board, (board) => usedUp(state, board));
    case 'tell board': return withBoard(bench, request.board, (board) => tell({ say: sayBoard(state, board), screen: { name: 'boards', board: board.number }, lengths: [board.length, board.width] }));
    case 'save boards': return saveBoards(state);
    case 'how many boards': return tell({ say: sayRack(state), screen: { name: 'boards' } });
    case 'boards came': return tell({ say: BOARDS_CAME, note: BOARDS_CAME, screen: { name: 'boards' } });
    case 'board feet': return request.board === 'all' ? tell({ say: sayRackFeet(state), screen: { name: 'boards' } }) : withBoard(bench, request.board, (board) => tell({ say: sentence(`board ${sayNumber(board.number)}: ${sayBoardFeet(boardFeet(meanBoard(board)))}`), screen: { name: 'boards', board: board.number } }));
    case 'take in boards': return takeIn(state, request.text, request.from);
    default: return assertNever(request);
  }
}

const BOARDS_CAME = `${toSay('Tell me each board by its length and its width, and how thick it is.', 'Say each board, for one: new board, ninety six by eight, eight quarter.')} Then the percent that a moisture meter reads on it. Keep them in the shop on sticks, air on all sides, until the wood is dry enough for the house.`;

function withBoard({ state, conversation: { screen } }: Bench, asked: number | undefined, then: (board: Board) => Response): Response {
  const shown = screen.name === 'boards' || screen.name === 'cutting' ? screen.board : undefined;
  const number = asked ?? shown ?? state.lastBoard;
  const board = state.rack.get(number);
  if (board !== undefined) return then(board);
  if (state.rack.size === 0) return refuse(`There is no board on the rack yet. ${toSay('Tell me a new board by its length and its width.', 'Say, for one: new board, ninety six by eight.')}`, { screen: { name: 'boards' } });
  return refuse(`There is no board ${sayNumber(number)} on the rack.`, { screen: { name: 'boards' } });
}

/** What was not said is taken to be as with the board before: a stack is bought of one kind. */
export function newBoard(state: State, { length, width, farWidth, thickness, species }: Extract<RackRequest, { kind: 'new board' }>): Board {
  const before = [...state.rack.values()].at(-1);
  return {
    number: state.lastBoard + 1, length, width, farWidth: farWidth ?? width, thickness: thickness ?? before?.thickness ?? nanometres(2 * NANOMETRES_PER_INCH),
    species: species ?? before?.species ?? usualSpecies(state), defects: [], sapwood: ZERO_LENGTH,
  };
}

/** The wood that most parts of the piece are of. */
function usualSpecies({ piece }: State): string {
  const counts = new Map<string, number>();
  for (const { species, count } of piece?.file.parts ?? []) counts.set(species, (counts.get(species) ?? 0) + count);
  return [...counts].sort((a, b) => b[1] - a[1])[0]?.[0] ?? 'hard maple';
}

function put(state: State, board: Board, how: 'on the rack' | 'put right'): Response {
  const fault = boardFault(board);
  if (fault !== undefined) return refuse(sentence(`board ${sayNumber(board.number)} is not written down: ${fault}`));
  const damaged = afterDamage(state, board);
  const say = how === 'on the rack' ? sentence(`board ${sayNumber(board.number)}: ${spoken(state, board.length)} by ${sayWidth(state, board)}, ${sayThickness(state, board.thickness)} ${board.species}. Mark its end ${sayNumber(board.number)}`) : sentence(`board ${sayNumber(board.number)}, put right`);
  return written(state, [{ kind: 'board put', board }, ...damaged.entries], [say, damaged.say], board.number);
}

function sayWidth(state: State, { width, farWidth }: Board): string {
  return farWidth === width ? spoken(state, width) : `${spoken(state, width)}, tapering to ${spoken(state, farWidth)}`;
}

function change(state: State, board: Board, told: BoardChange): Response {
  // A board that did not taper is told a new width along its whole length.
  const straight = told.width !== undefined && told.farWidth === undefined && board.farWidth === board.width ? { farWidth: told.width } : {};
  const next = { ...board, ...told, ...straight };
  const fault = boardFault(next);
  if (fault !== undefined) return refuse(sentence(`board ${sayNumber(board.number)} stays as it was: ${fault}`));
  const damaged = afterDamage(state, next);
  return written(state, [{ kind: 'board put', board: next }, ...damaged.entries], [sayBoard(state, next), damaged.say], board.number);
}

function addDefect(state: State, board: Board, told: Extract<RackRequest, { kind: 'board defect' }>): Response {
  const wide = Math.max(board.width, board.farWidth);
  const to: Length = told.from < board.length && told.to > board.length ? board.length : told.to;
  const defect: Defect = { what: told.what, from: told.from, to, fromEdge: told.fromEdge ?? ZERO_LENGTH, toEdge: told.toEdge ?? nanometres(wide), face: told.face ?? 'through' };
  return withDefect(state, board, [...board.defects, defect], defect);
}

/** The one told last: where across, or on which face. */
function narrowDefect(state: State, board: Board, narrowed: Partial<Pick<Defect, 'fromEdge' | 'toEdge' | 'face'>>): Response {
  const last = board.defects.at(-1);
  if (last === undefined) return refuse(`Nothing was told of board ${sayNumber(board.number)} yet. ${toSay('Tell me what is in it, and from where to where.', 'Say, for one: knot from thirty to thirty four.')}`);
  const defect: Defect = { ...last, ...narrowed };
  return withDefect(state, board, [...board.defects.slice(0, -1), defect], defect);
}

function withDefect(state: State, board: Board, defects: readonly Defect[], told: Defect): Response {
  const next = { ...board, defects };
  const fault = boardFault(next);
  if (fault !== undefined) return refuse(sentence(`that cannot be on board ${sayNumber(board.number)}, ${spoken(state, board.length)} long: ${fault}. Nothing was written down`));
  const damaged = afterDamage(state, next);
  const across = told.fromEdge === 0 && told.toEdge >= Math.max(board.width, board.farWidth) ? 'right across' : `${spoken(state, told.fromEdge)} to ${spoken(state, told.toEdge)} from the reference edge`;
  const face = told.face === 'through' ? '' : `, on the ${told.face}`;
  const say = sentence(`board ${sayNumber(board.number)}: ${told.what}, ${spoken(state, told.from)} to ${spoken(state, told.to)} from the marked end, ${across}${face}`);
  return written(state, [{ kind: 'board put', board: next }, ...damaged.entries], [say, damaged.say], board.number);
}

function usedUp(state: State, board: Board): Response {
  return written(state, [{ kind: 'board gone', board: board.number }], [sentence(`board ${sayNumber(board.number)} is off the rack`)]);
}

/** Where a plan was taken, it is looked over again by itself: what it stands on has changed. */
function written(state: State, entries: readonly Entry[], say: readonly string[], board?: number): Response {
  const planned = takenPlan(state) !== undefined;
  const told = [...say, planned ? 'I plan again with what is left.' : ''].filter(Boolean).join(' ');
  return write(entries, { say: told, signal: 'done', screen: { name: 'boards', ...(board === undefined ? {} : { board }) }, ...(planned ? { planning: 'begin' as const } : {}) });
}

/** A whole rack from a table. Numbers that are on the rack are told anew; a table with a fault changes nothing. */
function takeIn(state: State, text: string, from: string): Response {
  const unit = state.settings.rounding.unit;
  const read = readBoards(text, unit);
  if (!read.ok) {
    const say = `The table was not taken in: ${sayCount(read.fault.length, 'fault', 'faults')}. The screen tells them line by line.`;
    return refuse(say, { note: [`“${from}” was not taken in.`, ...read.fault.map(({ message }) => message.replace(/^Line/, 'line'))].join('\n'), screen: { name: 'files' } });
  }
  if (read.value.length === 0) return refuse(`“${from}” has no boards in it.`);
  const wrong = read.value.flatMap((board) => boardFault(board) ?? []);
  if (wrong[0] !== undefined) return refuse(`“${from}” was not taken in: of one board, ${wrong[0]}.`);
  return written(state, read.value.map((board): Entry => ({ kind: 'board put', board })), [`${sentence(sayCount(read.value.length, 'board', 'boards'))} Now on the rack from “${from}”.`]);
}

/** The rack as a table, which can be taken in again as it stands. */
function saveBoards(state: State): Response {
  if (state.rack.size === 0) return refuse('The rack is empty: there is nothing to save.', { screen: { name: 'boards' } });
  return tell({ say: '', file: { name: 'boards.csv', text: writeBoards([...state.rack.values()].sort((a, b) => a.number - b.number)), say: sentence(sayCount(state.rack.size, 'board is', 'boards are')).replace(/\.$/, '') } });
}
