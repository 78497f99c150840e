import * as v from 'valibot';
import type { Bench } from '../bench/bench.ts';
import { canonicalJson } from '../journal/canonical.ts';
import type { TakenPlan } from '../journal/cutting.ts';
import { PlanSchema } from '../journal/cuttingSchema.ts';
import type { Entry } from '../journal/entry.ts';
import type { State } from '../journal/state.ts';
import { sayNumber } from '../length/sayNumber.ts';
import type { PieceFile } from '../piece/file.ts';
import { readJson } from '../piece/json.ts';
import { memberOf } from '../piece/jsonNode.ts';
import { writePiece } from '../piece/load.ts';
import type { LoadedPiece } from '../piece/loadedPiece.ts';
import { placeAt } from '../piece/place.ts';
import { failure, success, type Result } from '../result.ts';
import type { Board } from '../stock/board.ts';
import { boardsOfFile, fileBoards } from '../stock/boardTable.ts';
import { canBeCut } from '../stock/plan/check.ts';
import { boardFault } from '../stock/rack.ts';
import { bringTold } from './bringTold.ts';
import { toldFaults, toldOnBench } from './filedTold.ts';
import { sayCount, sentence } from './saying.ts';
import { takenPlan } from './cuttingState.ts';

/** The piece on the bench as a file, with what was told of its parts, the rack and the plan that was taken. */
export function pieceWithBoards(state: State, file: PieceFile): string {
  const plan = takenPlan(state);
  const bare = Object.fromEntries(Object.entries(file).filter(([key]) => key !== 'boards' && key !== 'plan' && key !== 'told')) as unknown as PieceFile;
  const boards = fileBoards([...state.rack.values()].sort((a, b) => a.number - b.number));
  const told = toldOnBench(state);
  return writePiece({ ...bare, ...(told.length === 0 ? {} : { told }), ...(boards.length === 0 ? {} : { boards }), ...(plan === undefined ? {} : { plan }) });
}

interface Brought {
  readonly entries: readonly Entry[];
  readonly say: string;
}

/**
 * What a piece file brings besides the piece: what is told of its parts, boards that the rack has not, and its plan where the bench has none of that piece. A board that was on
 * the rack just so is not brought again, whatever became of it since; another one whose number is taken gets the next. Faults as lines, with their places.
 */
export function broughtBy(bench: Bench, text: string, piece: LoadedPiece): Result<Brought, readonly string[]> {
  const { file } = piece;
  const read = boardsOfFile(file.boards ?? []);
  const wrong = read.ok ? read.value.flatMap((board, line) => { const message = boardFault(board); return message === undefined ? [] : [{ line, message: `Of this board, ${message}. Put it right, or take the board out of the file.` }]; }) : read.fault;
  const plan = file.plan === undefined ? undefined : v.safeParse(PlanSchema, file.plan);
  const uncuttable = plan?.success === true ? plan.output.boards.map((board) => faultOf(board, file)).find((fault) => fault !== undefined) : undefined;
  const faults = [
    ...toldFaults(piece).map(({ item, message }) => placed(text, ['told', item], message)),
    ...wrong.map(({ line, message }) => placed(text, ['boards', line], message)),
    ...(plan?.success === false ? [placed(text, ['plan'], `${v.getDotPath(plan.issues[0]) ?? 'the plan'}: ${plan.issues[0].message}. Expected the plan as it was saved: take “plan” out of the file and plan again.`)] : []),
    ...(uncuttable === undefined ? [] : [placed(text, ['plan'], `${uncuttable} Take “plan” out of the file and plan again.`)]),
  ];
  if (!read.ok || faults.length > 0) return failure(faults);
  const [told, brought] = [bringTold(bench.state, file), bring(bench, file.name, read.value, plan?.success === true ? plan.output : undefined)];
  return success({ entries: [...told.entries, ...brought.entries], say: [told.say, brought.say].filter(Boolean).join(' ') });
}

/** Why a board of a plan cannot be cut as it is written down; undefined when it can. */
function faultOf({ board, stood, placed }: TakenPlan['boards'][number], { parts }: PieceFile): string | undefined {
  const strange = placed.find(({ blank }) => !parts.some(({ id }) => id === blank));
  if (strange !== undefined) return `it cuts “${strange.blank}”, and no part has that id.`;
  const outside = placed.find(({ from, fromEdge, length, width }) => from < 0 || fromEdge < 0 || from + length > stood.length || fromEdge + width > Math.max(stood.width, stood.farWidth));
  if (outside !== undefined) return `“${outside.name}” reaches beyond board ${board}.`;
  return canBeCut(placed, 0) ? undefined : `no order of cuts from edge to edge frees all parts of board ${board}.`;
}

function placed(text: string, [name, index]: readonly [string, number?], message: string): string {
  const { root } = readJson(text);
  const list = root === undefined ? undefined : memberOf(root, name);
  const node = list?.kind === 'list' && index !== undefined ? (list.items[index] ?? list) : list;
  const { line, column } = placeAt(text, node?.start ?? 0);
  return `line ${line}, column ${column}, ${node?.path ?? '$'}: ${message}`;
}

function bring({ state, records, acts }: Bench, name: string, filed: readonly Board[], plan: TakenPlan | undefined): Brought {
  const scratched = new Set(acts.scratched);
  const put = records.flatMap(({ act, entry }) => (entry.kind === 'board put' && !scratched.has(act) ? [entry.board] : []));
  const known = new Set(put.map(canonicalJson));
  const taken = new Set(put.map(({ number }) => number));
  const fresh = filed.filter((board) => !known.has(canonicalJson(board)));
  let last = Math.max(state.lastBoard, ...filed.map(({ number }) => number));
  const renumbered = new Map(fresh.filter(({ number }) => taken.has(number)).map(({ number }) => [number, (last += 1)]));
  const numbered = (board: Board): Board => ({ ...board, number: renumbered.get(board.number) ?? board.number });
  const takes = plan !== undefined && !state.plans.has(name);
  return {
    entries: [
      ...fresh.map((board): Entry => ({ kind: 'board put', board: numbered(board) })),
      ...(takes ? [{ kind: 'plan taken', plan: { ...plan, boards: plan.boards.map((one) => ({ ...one, board: renumbered.get(one.board) ?? one.board, stood: numbered(one.stood) })) } } as const] : []),
    ],
    say: [
      fresh.length === 0 ? '' : sentence(`${sayCount(fresh.length, 'board', 'boards')} of the file ${fresh.length === 1 ? 'is' : 'are'} on the rack`),
      ...[...renumbered].map(([was, is]) => sentence(`there was a board ${sayNumber(was)} here already: that of the file is board ${sayNumber(is)}, mark it`)),
      takes ? 'Its cutting plan is taken.' : '',
    ].filter(Boolean).join(' '),
  };
}
