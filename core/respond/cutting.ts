import { assertNever } from '../result.ts';
import type { Bench } from '../bench/bench.ts';
import type { Response } from '../bench/reply.ts';
import type { CutRequest } from '../bench/request.ts';
import type { SawingSettings } from '../journal/cutting.ts';
import type { State } from '../journal/state.ts';
import { sayNumber } from '../length/sayNumber.ts';
import { isFinished, type TakenBoard } from '../stock/cutting.ts';
import { faultsOf } from '../stock/plan/check.ts';
import { writePlanTable } from '../stock/planTable.ts';
import { tellCut, tellPlaced } from '../stock/telling.ts';
import { whatBoardGives } from './buying.ts';
import { boardAtSaw, problemOf, takenPlan } from './cuttingState.ts';
import { cutMade } from './cutMade.ts';
import { tellAll } from './inTurn.ts';
import { cutOf, sayNextCut } from './nextCut.ts';
import { notAsPlanned } from './notAsPlanned.ts';
import { sayOutOfDate } from './outOfDate.ts';
import { noPiece, refuse, tell, write } from './plain.ts';
import { partRough, roughSizeOf, tellAllowances } from './rough.ts';
import { sayHeart } from './sayBoards.ts';
import { sayOffer, sayStanding } from './sayPlan.ts';
import { sayCount, sayCut, sayList, sayPrice, sentence, spoken, written } from './saying.ts';
import { planFrom } from './takePlan.ts';
import { toSay } from './toSay.ts';

const NEW_BOARD = toSay('Tell me a new board by its length and its width.', 'Say, for one: new board, ninety six by eight.');

/** Looking for a plan, taking it, and cutting by it. */
export function respondToCutting(bench: Bench, request: CutRequest): Response {
  if (!bench.state.piece) return noPiece();
  switch (request.kind) {
    case 'plan cutting': return beginPlanning(bench.state);
    case 'stop planning': return stopPlanning(bench);
    case 'take plan': return takePlan(bench);
    case 'how good is the plan': return howGood(bench);
    case 'save plan': return savePlan(bench.state);
    case 'next cut': return withBoard(bench, request.board, (board) => nextCut(bench.state, board));
    case 'where on board': return withoutPlan(bench, request.board) ?? withBoard(bench, request.board, (board) => whereOn(bench.state, board));
    case 'read cuts': return withBoard(bench, request.board, (board) => readCuts(bench.state, board));
    case 'which boards': return whichBoards(bench.state, request.part);
    case 'cut made': return withBoard(bench, request.board, (board) => cutMade(bench.state, board));
    case 'set sawing': return setSawing(bench.state, request.setting);
    case 'rough size': return roughSizeOf(bench.state, request.part, request.side);
    case 'allowances': return tellAllowances(bench.state);
    case 'part rough': return partRough(bench.state, request.part, request.rough);
    default: return assertNever(request);
  }
}

function beginPlanning(state: State): Response {
  if (state.rack.size === 0) return refuse(`There is no board on the rack to plan with. ${NEW_BOARD} Or ask what to buy.`, { screen: { name: 'boards' } });
  const problem = problemOf(state);
  if (problem === undefined || problem.blanks.length === 0) return tell({ say: 'Nothing is left to plan: every part is cut, or comes from a board that is begun.', screen: { name: 'cutting' } });
  const parts = problem.blanks.reduce((sum, { count }) => sum + count, 0);
  return tell({ say: sentence(`planning ${sayCount(parts, 'rough part', 'rough parts')} on ${sayCount(problem.boards.length, 'board', 'boards')}`), screen: { name: 'cutting' }, planning: 'begin' });
}

function stopPlanning({ conversation: { offer } }: Bench): Response {
  if (offer?.looking !== true) return tell({ say: 'I am not planning.' });
  return tell({ say: offer.plan === null ? 'Stopped, without a plan.' : 'Stopped, with the best plan so far.', screen: { name: 'cutting' }, planning: 'stop' });
}

/** Looked over by an account of its own before it is written down, for a board that is cut wrong stays so. */
function takePlan({ state, conversation: { offer } }: Bench): Response {
  const plan = offer?.plan;
  if (offer === undefined || !plan) return refuse(offer?.looking === true ? 'No plan is found yet. A moment.' : 'There is no plan to take. Have me plan the cutting first.', { screen: { name: 'cutting' } });
  const problem = problemOf(state);
  if (JSON.stringify(problem) !== JSON.stringify(offer.problem)) return refuse('The rack or the piece has changed since that plan. I plan again.', { screen: { name: 'cutting' }, planning: 'begin' });
  const faults = faultsOf(plan, offer.problem);
  if (faults.length > 0) throw new Error(`the plan cannot be cut: ${faults.join(' ')}`);
  const taken = planFrom(state, plan);
  const [first] = taken.boards.filter((board) => !isFinished(board));
  const start = first === undefined ? '' : sentence(`begin with board ${sayNumber(first.board)}`);
  return write([{ kind: 'plan taken', plan: taken }], { say: ['The plan is taken.', sayStanding(taken), start].filter(Boolean).join(' '), signal: 'done', screen: { name: 'cutting', ...(first === undefined ? {} : { board: first.board }) }, planning: 'over' });
}

function howGood({ state, conversation: { offer } }: Bench): Response {
  const plan = takenPlan(state);
  if (offer?.plan) return tell({ say: sayOffer(state, offer), screen: { name: 'cutting' } });
  if (plan === undefined) return refuse('There is no plan yet. Have me plan the cutting first.', { screen: { name: 'cutting' } });
  return tell({ say: [sayStanding(plan) || 'Some parts find no board: ask what to buy.', sayOutOfDate(state)].filter(Boolean).join(' '), screen: { name: 'cutting' } });
}

function savePlan(state: State): Response {
  const plan = takenPlan(state);
  if (plan === undefined) return refuse('There is no plan to save yet. Have me plan the cutting, and take what I find.', { screen: { name: 'cutting' } });
  return tell({ say: '', file: { name: 'cutting plan.csv', text: writePlanTable(plan.boards), say: 'The cutting plan is' } });
}

function withBoard({ state, conversation: { screen } }: Bench, asked: number | undefined, then: (board: TakenBoard) => Response): Response {
  if (takenPlan(state) === undefined) return noPlan(state);
  const board = boardAtSaw(state, asked, screen.name === 'cutting' || screen.name === 'boards' ? screen.board : undefined);
  if (board !== undefined) return then(board);
  return asked === undefined ? tell({ say: 'Every cut of the plan is made.', screen: { name: 'cutting' } }) : refuse(`The plan needs nothing from board ${sayNumber(asked)}.`, { screen: { name: 'cutting' } });
}

function noPlan({ rack }: State): Response {
  if (rack.size === 0) return refuse(`No plan is taken yet, and there is no board on the rack to plan with. ${NEW_BOARD}`, { screen: { name: 'boards' } });
  return refuse('No plan is taken yet. Have me plan the cutting, and take what I find.', { screen: { name: 'cutting' } });
}

/** Before any plan a board is asked about by itself. */
function withoutPlan({ state, conversation: { screen } }: Bench, asked: number | undefined): Response | undefined {
  const shown = screen.name === 'cutting' || screen.name === 'boards' ? screen.board : undefined;
  const board = takenPlan(state) === undefined ? state.rack.get(asked ?? shown ?? state.lastBoard) : undefined;
  return board && whatBoardGives(state, board);
}

function nextCut(state: State, board: TakenBoard): Response {
  const changed = notAsPlanned(state, board);
  if (changed) return changed;
  const cut = board.cuts[board.made];
  const screen = { name: 'cutting', board: board.board } as const;
  if (cut === undefined) return tell({ say: `Board ${sayNumber(board.board)} is all cut.`, screen });
  return tell({ say: withDoubt(state, board, sayNextCut(state, board, cutOf(board))), screen, lengths: [cut.at] });
}

/** A board that is not begun may be planned otherwise by now; one that is begun is cut as it is. */
function withDoubt(state: State, { made }: TakenBoard, told: string): string {
  return [made === 0 ? sayOutOfDate(state) : '', told].filter(Boolean).join(' ');
}

function whereOn(state: State, board: TakenBoard): Response {
  const now = state.rack.get(board.board) ?? board.stood;
  const lines = tellPlaced(board, (length) => spoken(state, length), now);
  const notes = tellPlaced(board, (length) => written(state, length), now);
  const items = lines.map((line, index) => ({ say: sentence(line), note: notes[index] ?? '' }));
  return tellAll({ say: [sentence(`board ${sayNumber(board.board)}`), sayHeart(now)].filter(Boolean).join(' '), screen: { name: 'cutting', board: board.board } }, 'parts', items);
}

/** From which boards of the plan a part comes, and how much of it from each; without a part, what each board gives. */
function whichBoards(state: State, part: string | undefined): Response {
  const plan = takenPlan(state);
  if (plan === undefined) return noPlan(state);
  if (part === undefined) return tellAll({ say: '', screen: { name: 'cutting' } }, 'boards', plan.boards.map((board) => ({ say: sayContents(state, board) })));
  const from = plan.boards.flatMap(({ board, placed }) => {
    const blanks = placed.filter(({ blank }) => blank === part);
    const [first] = blanks;
    return first === undefined ? [] : [{ board, say: `${sayCut(state, { id: part, name: first.name }, blanks.length)} from board ${sayNumber(board)}` }];
  });
  const [first] = from;
  return first === undefined ? refuse('The plan has no board for that. Ask what to buy.', { screen: { name: 'cutting' } }) : tell({ say: sentence(sayList(from.map(({ say }) => say))), screen: { name: 'cutting', board: first.board } });
}

function sayContents(state: State, { board, placed }: TakenBoard): string {
  const blanks = [...new Set(placed.map(({ blank }) => blank))];
  return sentence(`board ${sayNumber(board)}: ${sayList(blanks.map((id) => { const of = placed.filter(({ blank }) => blank === id); return sayCut(state, { id, name: of[0]?.name ?? id }, of.length); }))}`);
}

/** What is not made yet, in order; every line from the marked end or the reference edge, so that no error adds up. */
function readCuts(state: State, board: TakenBoard): Response {
  const open = board.cuts.slice(board.made);
  if (open.length === 0) return tell({ say: `Board ${sayNumber(board.board)} is all cut.`, screen: { name: 'cutting', board: board.board } });
  const items = open.map((cut, index) => ({
    say: sentence(`${sayNumber(board.made + index + 1)}, ${tellCut(cut, (length) => spoken(state, length), 'in a row')}`), note: tellCut(cut, (length) => written(state, length)), lengths: [cut.at],
  }));
  const from = 'Lengths are from the marked end, rips from the reference edge. Saw beyond the line unless I say before.';
  const kerf = sentence(`the saw takes ${spoken(state, board.kerf)}, which is reckoned in`);
  return tellAll({ say: withDoubt(state, board, [sentence(`board ${sayNumber(board.board)}, ${sayCount(open.length, 'cut', 'cuts')}`), from].join(' ')), screen: { name: 'cutting', board: board.board } }, '', items, kerf);
}

function setSawing(state: State, setting: Partial<SawingSettings>): Response {
  if ((setting.kerf ?? 0) > 12_700_000) return refuse('A saw that takes more than half an inch is not reckoned with.');
  const say = Object.entries(setting).map(([key, value]) => sayOf(state, key as keyof SawingSettings, value)).join(', ');
  return write([{ kind: 'sawing set', setting }], { say: sentence(say), signal: 'done' });
}

function sayOf(state: State, key: keyof SawingSettings, value: SawingSettings[keyof SawingSettings]): string {
  const length = (): string => spoken(state, value as SawingSettings['kerf']);
  switch (key) {
    case 'kerf': return `the saw takes ${length()}`;
    case 'endTrim': return `${length()} is trimmed off each end`;
    case 'resaw': return value === 0 ? 'boards are not resawn' : `thick boards are resawn where thin ones do not give enough; a resaw takes ${length()}, planed flat`;
    case 'layerExtra': return `layers are cut ${length()} longer still`;
    case 'layerWider': return `layers are cut ${length()} wider still`;
    case 'layerThicker': return `layers are cut ${length()} thicker still`;
    case 'panelExtra': return `boards of a panel are cut ${length()} longer still`;
    case 'panelWider': return `boards of a panel are cut ${length()} wider still`;
    case 'panelThicker': return `boards of a panel are cut ${length()} thicker still`;
    case 'yardWidth': return `boards at the yard are about ${length()} wide`;
    case 'cutAgain': return value === true ? 'strips are crosscut again where it helps' : 'crosscut and rip only';
    case 'first': return `what counts first: ${String(value)}`;
    case 'grade': return `${String(value)} is bought`;
    case 'centsPerBoardFoot': return `a board foot costs ${sayPrice(Number(value))}`;
    default: return assertNever(key);
  }
}
