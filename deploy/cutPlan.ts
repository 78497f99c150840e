import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { parseArgs } from 'node:util';
import { parseLength } from '../core/length/parseWritten.ts';
import { nanometres, NANOMETRES_PER_MILLIMETRE, type Length } from '../core/length/length.ts';
import { writeLength } from '../core/length/write.ts';
import { evaluate } from '../core/piece/evaluate.ts';
import type { Part } from '../core/piece/file.ts';
import { loadPiece } from '../core/piece/load.ts';
import { roughTold, toldFaults } from '../core/respond/filedTold.ts';
import { failure, success, type Result } from '../core/result.ts';
import { blanksOf, cutNoun } from '../core/stock/blanks.ts';
import { readBoards } from '../core/stock/boardTable.ts';
import type { Blank } from '../core/stock/board.ts';
import { NO_EXTRAS } from '../core/stock/rough.ts';
import { readParts } from '../core/stock/partTable.ts';
import { GRADE_YIELDS, toBuy, type Grade } from '../core/stock/buying.ts';
import { faultsOf } from '../core/stock/plan/check.ts';
import { OBJECTIVES, type Objective } from '../core/stock/objectives.ts';
import { writePlanTable } from '../core/stock/planTable.ts';
import { planStock, type StockPlan, type StockProblem } from '../core/stock/plan/planStock.ts';
import { tellCuts, tellPlaced, tellPlan } from '../core/stock/telling.ts';

const USAGE = `npm run cut-plan -- --piece table.json --boards boards.csv
      --parts parts.csv           rough parts from a table (part, count, species, length, width, thickness) instead of a piece's
      --kerf "1/16 in"            width of the saw's cut (1/16 in)
      --trim "1 in"               taken off each end of a board first (1 in)
      --one-crosscut              crosscut and rip only: do not crosscut the strips again
      --first "least sawing"      what matters most: ${OBJECTIVES.join(', ')}; may be given again for what matters next
      --grade "No. 1 Common"      for what must be bought: ${Object.keys(GRADE_YIELDS).join(', ')} (FAS)
      --seconds 10                how long to look for a better plan (10)
      --unit mm                   numbers without a unit are millimetres (or: in)
      --out plan.csv              writes which part comes from where on which board, in the order of the cuts, to a table that is not there yet`;

const OPTIONS = {
  piece: { type: 'string' }, parts: { type: 'string' }, boards: { type: 'string' }, kerf: { type: 'string' }, trim: { type: 'string' }, 'one-crosscut': { type: 'boolean' }, first: { type: 'string', multiple: true },
  grade: { type: 'string' }, seconds: { type: 'string' }, unit: { type: 'string' }, out: { type: 'string' }, help: { type: 'boolean' },
} as const;

/** What is to be cut; the parts of the piece, where it is one. */
interface Wanted {
  readonly blanks: readonly Blank[];
  readonly pieceParts: readonly Part[];
}

interface Command extends Pick<Wanted, 'pieceParts'> {
  readonly problem: StockProblem;
  readonly grade: Grade;
  readonly seconds: number;
  readonly out: string | undefined;
  readonly write: (length: Length) => string;
}

type Faults = readonly string[];

/** Plans the blanks of a piece on the boards of a rack, and tells every cut. */
function main(): number {
  const command = readCommand();
  if (!command.ok) {
    for (const fault of command.fault) console.error(fault);
    return 1;
  }
  const { problem, seconds, out } = command.value;
  const end = performance.now() + 1000 * seconds;
  const plan = planStock(problem, () => performance.now() < end, () => undefined);
  const faults = faultsOf(plan, problem);
  if (faults.length > 0) throw new Error(`the plan cannot be cut: ${faults.join(' ')}`);
  tell(plan, command.value);
  if (out !== undefined) writeFileSync(out, writePlanTable(plan.boards.map((board) => ({ ...board, kerf: problem.saw.kerf, made: 0 })), command.value.write), { flag: 'wx' });
  return 0;
}

function readCommand(): Result<Command, Faults> {
  try {
    const { values } = parseArgs({ options: OPTIONS });
    if (values.help === true || (values.piece === undefined) === (values.parts === undefined) || values.boards === undefined) return failure([USAGE]);
    const unit = values.unit === undefined ? undefined : values.unit === 'mm' ? 'millimetre' : 'inch';
    const blanks = values.parts === undefined ? blanksOfPiece(readFileSync(values.piece ?? '', 'utf8')) : readTable(values.parts, unit);
    const boards = readBoards(readFileSync(values.boards, 'utf8'), unit);
    const [kerf, endTrim] = [parseLength(values.kerf ?? '1/16 in', unit), parseLength(values.trim ?? '1 in', unit)];
    const objectives = (values.first ?? ['fewest boards', 'least sawing']).map((word) => OBJECTIVES.find((one) => one === word));
    const grade = (Object.keys(GRADE_YIELDS) as Grade[]).find((one) => one === (values.grade ?? 'FAS'));
    const faults = [
      ...(blanks.ok ? [] : blanks.fault), ...(boards.ok ? [] : boards.fault.map(({ message }) => `${values.boards}: ${message}`)),
      ...[kerf, endTrim].flatMap((read) => (read.ok ? (read.value < 0 ? ['Kerf and trim are nothing or more.'] : []) : [read.fault.message])),
      ...(objectives.includes(undefined) ? [`--first: expected one of ${OBJECTIVES.join(', ')}.`] : []),
      ...(grade === undefined ? [`--grade: expected one of ${Object.keys(GRADE_YIELDS).join(', ')}.`] : []),
      ...(values.out !== undefined && existsSync(values.out) ? [`${values.out} is there already. Give a name that is not taken.`] : []),
    ];
    if (!blanks.ok || !boards.ok || !kerf.ok || !endTrim.ok || grade === undefined || faults.length > 0) return failure(faults);
    const metric = unit === 'millimetre';
    return success({
      grade, out: values.out, seconds: Number(values.seconds ?? 10) || 10,
      write: (length) => writeLength(length, metric ? { unit: 'millimetre', step: nanometres(NANOMETRES_PER_MILLIMETRE / 2) } : { unit: 'inch', denominator: 64 }),
      pieceParts: blanks.value.pieceParts,
      problem: {
        boards: boards.value, blanks: blanks.value.blanks, objectives: objectives.filter((one): one is Objective => one !== undefined),
        saw: { kerf: kerf.value, endTrim: endTrim.value, cutAgain: values['one-crosscut'] !== true },
      },
    });
  } catch (error) {
    // A file that cannot be read or an option that is not known: the message says which.
    return failure([error instanceof Error ? error.message : String(error), USAGE]);
  }
}

function blanksOfPiece(text: string): Result<Wanted, Faults> {
  const piece = loadPiece(text);
  if (!piece.ok) return failure(piece.fault.map(({ message }) => message));
  const faults = toldFaults(piece.value);
  if (faults.length > 0) return failure(faults.map(({ item, message }) => `$.told[${item}]: ${message}`));
  const { file } = piece.value;
  return success({ blanks: blanksOf(file, evaluate(piece.value, []), NO_EXTRAS, roughTold(file)), pieceParts: file.parts });
}

function readTable(file: string, unit: 'inch' | 'millimetre' | undefined): Result<Wanted, Faults> {
  const parts = readParts(readFileSync(file, 'utf8'), unit);
  return parts.ok ? success({ blanks: parts.value, pieceParts: [] }) : failure(parts.fault.map(({ message }) => `${file}: ${message}`));
}

function tell(plan: StockPlan, { problem, pieceParts, grade, write }: Command): void {
  for (const sentence of tellPlan(plan)) console.log(sentence);
  for (const board of plan.boards) {
    console.log(`\nBoard ${board.board}`);
    for (const line of tellPlaced(board, write, problem.boards.find(({ number }) => number === board.board))) console.log(`  ${line}`);
    tellCuts(board, write).forEach((line, index) => { console.log(`  cut ${index + 1}: ${line}`); });
    if (board.rest !== undefined) console.log(`  off-cut from ${write(board.rest.from)} to ${write(board.rest.to)}`);
  }
  for (const { species, quarter, thickness, blanks, longest, widest, netBoardFeet, boardFeet } of toBuy(plan.missing, problem.blanks, grade)) {
    console.log(`\nTo buy: ${species}, ${quarter === undefined ? `${write(thickness)} or more, thicker than is sold` : `${quarter.name} rough`}: ${boardFeet.toFixed(1)} board feet of ${grade}`
      + ` (${netBoardFeet.toFixed(1)} in the parts; the grade promises ${Math.round(100 * GRADE_YIELDS[grade])} % clear), boards of ${write(longest)} by ${write(widest)} or more among them`);
    for (const { id, name, count, length, width } of blanks) console.log(`  ${count} ${cutNoun(pieceParts, { id, name }, count)}: ${write(length)} by ${write(width)}`);
  }
}

process.exitCode = main();
