import type { Bench } from '../bench/bench.ts';
import type { Response } from '../bench/reply.ts';
import type { PaperRequest } from '../bench/request.ts';
import type { Screen } from '../bench/screen.ts';
import type { Moment } from '../clock/moment.ts';
import type { SheetChoice } from '../layout/paper/choice.ts';
import { nameOfSheets, sheetsFor, type SheetOrder } from '../layout/paper/order.ts';
import { PAPERS } from '../layout/paper/paperSize.ts';
import type { SheetSet } from '../layout/paper/sheet.ts';
import type { State } from '../journal/state.ts';
import { sayNumber } from '../length/say.ts';
import { assertNever } from '../result.ts';
import { boardSheets } from '../stock/boardSheets.ts';
import { isFinished } from '../stock/cutting.ts';
import { takenPlan } from './cuttingState.ts';
import { noPiece, refuse, tell } from './plain.ts';
import { tellPrintScale } from './printScale.ts';
import { sayCount, sayList, sentence, written } from './saying.ts';
import { sizesOf } from './views.ts';

/** Sheets of paper: what there is, how many it takes, printing and saving them, and whether the print is true. Nothing is written down. */
export function respondToPaper(bench: Bench, request: PaperRequest, now: Moment): Response {
  const order = sheetOrder(bench.state, now);
  if (!order) return noPiece();
  if (request.kind === 'print scale') return tellPrintScale(bench, order, request);
  const { screen } = bench.conversation;
  const sheet = request.sheet ?? sheetOn(screen);
  if (!sheet) return tell({ say: 'On paper I have the layout of each part, the rod, part labels, the cut list and the gauge card. Which?', screen: { name: 'paper' } });
  const sheets = sheetsFor(order, sheet);
  if (!sheets.ok) return refuse(sheets.fault, { screen: { name: 'paper' } });
  switch (request.kind) {
    case 'sheets': return told(order, sheet, sheets.value, '');
    case 'print sheets': return told(order, sheet, sheets.value, ' Printing. Choose 100 percent, not fitted to the page.', 'printer');
    case 'save sheets': return told(order, sheet, sheets.value, '', 'file');
    default: return assertNever(request);
  }
}

/** What the screen is about, on paper. */
function sheetOn(screen: Screen): SheetChoice | undefined {
  if (screen.name === 'layout') return { what: 'layout', part: screen.part, ...(screen.copy === undefined ? {} : { copy: screen.copy }) };
  return screen.name === 'paper' ? screen.sheet : undefined;
}

function told({ piece, paper }: SheetOrder, sheet: SheetChoice, { pages, groups }: SheetSet, more: string, to?: 'printer' | 'file'): Response {
  const name = nameOfSheets(piece, sheet);
  const joined = groups.filter(({ rows, columns }) => rows * columns > 1).map(({ rows, columns }) => (rows === 1 ? `${sayNumber(columns)} in a row` : `${sayNumber(rows)} rows of ${sayNumber(columns)}`));
  const say = sentence(`the ${name} takes ${sayCount(pages.length, `sheet of ${PAPERS[paper].say} paper`, `sheets of ${PAPERS[paper].say} paper`)}${joined.length === 0 ? '' : `, joined ${sayList(joined)}`}`);
  return tell({ say: `${say}${more}`, screen: { name: 'paper', sheet }, ...(to === undefined ? {} : { paper: { to, sheet } }) });
}

/** What the sheets are drawn from, as the bench stands; undefined without a piece. */
export function sheetOrder(state: State, now: Moment): SheetOrder | undefined {
  const sizes = sizesOf(state);
  if (!state.piece || !sizes) return undefined;
  const { rounding, paper } = state.settings;
  return { piece: state.piece, sizes, places: state.places, turns: state.turns, rounding, paper, date: now.wallTrusted ? dateOf(now) : 'date not known', ...plannedOf(state) };
}

/** The boards that are still to be cut by the plan. */
function plannedOf(state: State): Pick<SheetOrder, 'planned'> {
  const plan = takenPlan(state);
  if (plan === undefined) return {};
  const boards = plan.boards.filter((board) => !isFinished(board));
  return { planned: { of: plan, make: ({ title, drawn }) => boardSheets({ boards, title, drawn, paper: state.settings.paper, write: (length) => written(state, length) }) } };
}

function dateOf({ wallMs }: Moment): string {
  return new Intl.DateTimeFormat('en-GB', { day: 'numeric', month: 'long', year: 'numeric' }).format(wallMs);
}
