import type { State } from '../journal/state.ts';
import { nanometres, type Length } from '../length/length.ts';
import { sayNumber } from '../length/sayNumber.ts';
import type { Board } from '../stock/board.ts';
import { quarterName } from '../stock/rack.ts';
import { tellHeart } from '../stock/telling.ts';
import { tally, type BoughtBoard } from '../wood/lumber/measure.ts';
import { takenPlan } from './cuttingState.ts';
import { sayCount, sayList, sentence, spoken } from './saying.ts';
import { toSay } from './toSay.ts';

/** 'eight quarter', or the thickness itself where it is not sold by quarters. */
export function sayThickness(state: State, thickness: Length): string {
  const name = quarterName(thickness);
  const quarters = name?.endsWith('/4') === true ? Number(name.slice(0, -2)) : undefined;
  return quarters === undefined ? `${spoken(state, thickness)} thick` : `${sayNumber(quarters)} quarter`;
}

/** Which face is the heart side, as a sentence; nothing where nobody told. */
export function sayHeart(board: Pick<Board, 'pithSide'>): string {
  const heart = tellHeart(board);
  return heart === undefined ? '' : sentence(heart);
}

/** Everything that is known of a board, for the ear. */
export function sayBoard(state: State, board: Board): string {
  const { number, length, width, farWidth, thickness, species, defects, sapwood, grain, colour, cutFrom } = board;
  const told = [
    `${spoken(state, length)} by ${spoken(state, width)}${farWidth === width ? '' : `, tapering to ${spoken(state, farWidth)}`}, ${sayThickness(state, thickness)} ${species}`,
    ...(cutFrom === undefined ? [] : [`an off-cut of board ${sayNumber(cutFrom)}`]),
    ...(grain === undefined ? [] : [grain === 'quarter' ? 'quarter sawn' : `${grain} grain`]),
    ...(sapwood === 0 ? [] : [`${spoken(state, sapwood)} of sapwood along the far edge`]),
    ...(colour === undefined ? [] : [`colour group ${colour}`]),
  ];
  const wrong = defects.map(({ what, from, to }) => `${what} ${spoken(state, from)} to ${spoken(state, to)}`);
  return [sentence(`board ${sayNumber(number)}: ${told.join(', ')}`), sayHeart(board), wrong.length === 0 ? 'No defects told.' : sentence(`from the marked end: ${sayList(wrong)}`)].filter(Boolean).join(' ');
}

/** How many boards there are, by wood and thickness, and how many of them the plan uses. */
export function sayRack(state: State): string {
  const boards = [...state.rack.values()];
  if (boards.length === 0) return `The rack is empty. ${toSay('Tell me a new board by its length and its width.', 'Say, for one: new board, ninety six by eight.')}`;
  const kinds = new Map<string, number>();
  for (const { thickness, species } of boards) {
    const kind = `${sayThickness(state, thickness)} ${species}`;
    kinds.set(kind, (kinds.get(kind) ?? 0) + 1);
  }
  const plan = takenPlan(state);
  const used = plan?.boards.filter(({ board }) => state.rack.has(board)).length ?? 0;
  const of = [...kinds].map(([kind, count]) => `${sayNumber(count)} of ${kind}`);
  return [sentence(`${sayCount(boards.length, 'board', 'boards')} on the rack: ${sayList(of)}`), plan === undefined ? '' : sentence(`the plan still needs ${sayNumber(used)} of them`)].filter(Boolean).join(' ');
}

/** A surface measure is whole feet, times a thickness in quarters of an inch: to the nearest quarter foot. */
export function sayBoardFeet(boardFeet: number): string {
  const quarters = Math.round(boardFeet * 4);
  const [whole, part] = [Math.floor(quarters / 4), ['', 'a quarter', 'a half', 'three quarters'][quarters % 4] ?? ''];
  if (part === '') return sayCount(whole, 'board foot', 'board feet');
  return whole === 0 ? `${part} of a board foot` : `${sayNumber(whole)} and ${part} board feet`;
}

/** As it is measured for board feet: a tapered board by its middle. */
export function meanBoard({ length, width, farWidth, thickness }: Board): BoughtBoard {
  return { length, width: nanometres(Math.round((width + farWidth) / 2)), thickness };
}

/** What all boards on the rack come to. */
export function sayRackFeet(state: State): string {
  const boards = [...state.rack.values()];
  if (boards.length === 0) return sayRack(state);
  return sentence(`${sayCount(boards.length, 'board', 'boards')} on the rack, ${sayBoardFeet(tally(boards.map(meanBoard)).boardFeet)} in all`);
}
