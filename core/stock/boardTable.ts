import { parseLength } from '../length/parseWritten.ts';
import { ZERO_LENGTH, type Length } from '../length/length.ts';
import type { FiledBoard } from '../piece/file.ts';
import { failure, success, type Result } from '../result.ts';
import type { Board, Defect } from './board.ts';
import { writeLength } from '../length/write.ts';
import { parseCsv, writeCsv, type CsvRow, type TableFault } from './csv.ts';
import { GRAINS, quarterName } from './rack.ts';

const NEEDED = ['board', 'species', 'length', 'width', 'thickness'] as const;
const COLUMNS = [...NEEDED, 'far width', 'sapwood', 'colour', 'price', 'grain', 'defects', 'pith side', 'sawn', 'cut from'] as const;
type Column = (typeof COLUMNS)[number];
type Unit = 'inch' | 'millimetre';
const FACES = ['through', 'marked face', 'other face'] as const;
const SAWN = ['both ends', 'marked end', 'far end'] as const;
const PITH_SIDES = ['marked face', 'other face'] as const;

/**
 * The boards of a rack from a table: a heading row, then a board a line. Lengths as they are written anywhere ('96 in', `8'`, 2440 mm), thickness also in quarters
 * ('8/4'); numbers without a unit take `unitWhenNone`. Defects in one cell, with semicolons between: `knot 30 in to 34 in, 1 in to 2 in, through`:
 * along from the marked end, across from the reference edge, and the face where it is not both. All faults at once, by line.
 */
export function readBoards(text: string, unitWhenNone?: Unit): Result<Board[], readonly TableFault[]> {
  const parsed = parseCsv(text);
  if (!parsed.ok) return failure([parsed.fault]);
  const [head, ...rows] = parsed.value;
  const names = head?.cells.map((cell) => cell.trim().toLowerCase()) ?? [];
  const lacking = NEEDED.filter((column) => !names.includes(column));
  const strange = names.filter((name) => !COLUMNS.some((column) => column === name));
  if (lacking.length > 0 || strange.length > 0) {
    const wrong = [...lacking.map((name) => `the column “${name}” is missing`), ...strange.map((name) => `“${name}” is no column known here`)].join(', ');
    return failure([{ line: head?.line ?? 1, message: `Line ${head?.line ?? 1}: ${wrong}. Expected a first line with the columns ${COLUMNS.join(', ')}; the first ${NEEDED.length} are needed.` }]);
  }
  const faults: TableFault[] = [];
  const boards = rows.flatMap((row) => readRow(row, names, unitWhenNone, faults) ?? []);
  const twice = boards.find(({ number }, index) => boards.findIndex((other) => other.number === number) !== index);
  if (twice !== undefined) faults.push({ line: rows.at(-1)?.line ?? 1, message: `Board ${twice.number} is there twice. Expected a number of its own on every board.` });
  return faults.length > 0 ? failure(faults) : success(boards);
}

function readRow({ line, cells }: CsvRow, names: readonly string[], unit: Unit | undefined, faults: TableFault[]): Board | undefined {
  const before = faults.length;
  const wrong = (message: string): void => { faults.push({ line, message: `Line ${line}: ${message}` }); };
  const cell = (column: Column): string => cells[names.indexOf(column)]?.trim() ?? '';
  const size = (column: Column, text: string, least: number): Length => {
    const read = parseLength(text, unit);
    if (!read.ok) wrong(`${column}: ${read.fault.message}`);
    else if (read.value < least) wrong(`${column}: “${text}” is too small. Expected ${least > 0 ? 'more than nothing' : 'nothing or more'}.`);
    else return read.value;
    return ZERO_LENGTH;
  };
  const optional = (column: Column): Length => (cell(column) === '' ? ZERO_LENGTH : size(column, cell(column), 0));
  const number = Number(cell('board'));
  if (!isBoardNumber(number)) wrong(`board: “${cell('board')}” is no number for a board. Expected a whole number from 1 to 9999, as marked on its end.`);
  if (cell('species') === '') wrong('species: nothing is written. Expected a species such as hard maple.');
  const [length, width, thickness] = [size('length', cell('length'), 1), size('width', cell('width'), 1), size('thickness', cell('thickness'), 1)];
  const defects = cell('defects').split(';').filter((text) => text.trim() !== '').flatMap((text) => readDefect(text.trim(), unit, { length, width }, wrong) ?? []);
  const price = Number(cell('price') || 0);
  if (!Number.isFinite(price) || price < 0) wrong(`price: “${cell('price')}” is no price. Expected a number such as 18.50.`);
  const grain = GRAINS.find((one) => one === cell('grain'));
  if (cell('grain') !== '' && grain === undefined) wrong(`grain: “${cell('grain')}” is no grain. Expected ${GRAINS.join(', ')} or nothing.`);
  const pithSide = PITH_SIDES.find((one) => one === cell('pith side'));
  if (cell('pith side') !== '' && pithSide === undefined) wrong(`pith side: “${cell('pith side')}” is no face of a board. Expected marked face, other face or nothing.`);
  const sawn = SAWN.find((one) => one === cell('sawn'));
  if (cell('sawn') !== '' && sawn === undefined) wrong(`sawn: “${cell('sawn')}” is no end of a board. Expected ${SAWN.join(', ')} or nothing.`);
  const cutFrom = cell('cut from') === '' ? undefined : Number(cell('cut from'));
  if (cutFrom !== undefined && !isBoardNumber(cutFrom)) wrong(`cut from: “${cell('cut from')}” is no number for a board. Expected a whole number from 1 to 9999, or nothing.`);
  const farWidth = cell('far width') === '' ? width : size('far width', cell('far width'), 1);
  if (faults.length > before) return undefined;
  return {
    number, species: cell('species'), length, width, farWidth, thickness, defects, sapwood: optional('sapwood'),
    ...(grain === undefined ? {} : { grain }), ...(cell('colour') === '' ? {} : { colour: cell('colour') }), ...(pithSide === undefined ? {} : { pithSide }), ...(sawn === undefined ? {} : { sawn }), ...(cutFrom === undefined ? {} : { cutFrom }), ...(cell('price') === '' ? {} : { cents: Math.round(price * 100) }),
  };
}

function isBoardNumber(number: number): boolean {
  return Number.isInteger(number) && number >= 1 && number <= 9999;
}

/** `knot 30 in to 34 in, 1 in to 2 in, through` */
function readDefect(text: string, unit: Unit | undefined, board: Pick<Board, 'length' | 'width'>, wrong: (message: string) => void): Defect | undefined {
  const match = /^([\p{L} ]+?)\s+(\S.*?)\s+to\s+([^,]+),\s*(\S.*?)\s+to\s+([^,]+?)(?:,\s*(\S.*))?$/u.exec(text);
  const face = FACES.find((one) => one === (match?.[6] ?? 'through'));
  if (match === null || face === undefined) {
    wrong(`defects: “${text}” is not told as a defect. Expected such as: knot 30 in to 34 in, 1 in to 2 in, through (or marked face, or other face).`);
    return undefined;
  }
  const lengths = match.slice(2, 6).map((one) => parseLength(one, unit));
  const [from, to, fromEdge, toEdge] = lengths.map((one) => (one.ok ? one.value : undefined));
  for (const one of lengths) if (!one.ok) wrong(`defects: ${one.fault.message}`);
  if (from === undefined || to === undefined || fromEdge === undefined || toEdge === undefined) return undefined;
  if (from < 0 || from >= to || fromEdge < 0 || fromEdge >= toEdge || from >= board.length || fromEdge >= board.width) {
    wrong(`defects: “${text}” lies outside the board or ends before it begins. Expected places on the board, the nearer first.`);
    return undefined;
  }
  return { what: match[1] ?? 'defect', from, to, fromEdge, toEdge, face };
}

/** Boards as a table that `readBoards` reads as the same boards: lengths in inches to the sixty-fourth where that is exact, else in millimetres. */
export function writeBoards(boards: readonly Board[]): string {
  return writeCsv([[...COLUMNS], ...boards.map((board) => [
    String(board.number), board.species, writeCell(board.length), writeCell(board.width), quarterName(board.thickness) ?? writeCell(board.thickness), board.farWidth === board.width ? '' : writeCell(board.farWidth),
    board.sapwood === 0 ? '' : writeCell(board.sapwood), board.colour ?? '', board.cents === undefined ? '' : (board.cents / 100).toFixed(2), board.grain ?? '',
    board.defects.map(({ what, from, to, fromEdge, toEdge, face }) => `${what} ${writeCell(from)} to ${writeCell(to)}, ${writeCell(fromEdge)} to ${writeCell(toEdge)}, ${face}`).join('; '), board.pithSide ?? '', board.sawn ?? '', String(board.cutFrom ?? ''),
  ])]);
}

const SIXTY_FOURTH = 396_875;

/** As it can be read back exactly: in inches to the sixty-fourth, else in millimetres. */
export function writeCell(length: Length): string {
  return length % SIXTY_FOURTH === 0 ? writeLength(length, { unit: 'inch', denominator: 64 }) : `${length / 1_000_000} mm`;
}

/** Boards as they stand in a piece file: the cells of the table, by their column. */
export function fileBoards(boards: readonly Board[]): FiledBoard[] {
  const rows = parseCsv(writeBoards(boards));
  return (rows.ok ? rows.value.slice(1) : []).map(({ cells }) => Object.fromEntries(COLUMNS.flatMap((column, at) => {
    const cell = cells[at] ?? '';
    return cell === '' ? [] : [[column, column === 'board' || column === 'cut from' ? Number(cell) : cell]];
  })));
}

/** The boards of a piece file; a fault's `line` says which of them it is about, from 0. */
export function boardsOfFile(filed: readonly FiledBoard[]): Result<Board[], readonly TableFault[]> {
  const read = readBoards(writeCsv([[...COLUMNS], ...filed.map((cells) => COLUMNS.map((column) => String(cells[column] ?? '')))]));
  return read.ok ? read : failure(read.fault.map(({ line, message }) => ({ line: line - 2, message: message.replace(/^Line \d+: /, '') })));
}
