import { parseLength } from '../length/parseWritten.ts';
import { ZERO_LENGTH, type Length } from '../length/length.ts';
import { failure, success, type Result } from '../result.ts';
import type { Blank } from './board.ts';
import { parseCsv, type CsvRow, type TableFault } from './csv.ts';

const NEEDED = ['part', 'count', 'species', 'length', 'width', 'thickness'] as const;
const COLUMNS = [...NEEDED, 'together'] as const;
type Column = (typeof COLUMNS)[number];

/** So many parts of one kind, and of all kinds, a plan is reckoned for. */
const MOST_PARTS = 10_000;

/**
 * Rough parts from a table: a heading row, then a kind of part a line, with its count and its rough size. `together`: how many of them come from one
 * stretch of one board. Numbers without a unit take `unitWhenNone`. All faults at once, by line.
 */
export function readParts(text: string, unitWhenNone?: 'inch' | 'millimetre'): Result<Blank[], readonly TableFault[]> {
  const parsed = parseCsv(text);
  if (!parsed.ok) return failure([parsed.fault]);
  const [head, ...rows] = parsed.value;
  const names = head?.cells.map((cell) => cell.trim().toLowerCase()) ?? [];
  const wrong = [...NEEDED.filter((column) => !names.includes(column)).map((name) => `the column “${name}” is missing`), ...names.filter((name) => !COLUMNS.some((column) => column === name)).map((name) => `“${name}” is no column known here`)];
  const line = head?.line ?? 1;
  if (wrong.length > 0) return failure([{ line, message: `Line ${line}: ${wrong.join(', ')}. Expected a first line with the columns ${COLUMNS.join(', ')}; all but the last are needed.` }]);
  const faults: TableFault[] = [];
  const blanks = rows.flatMap((row) => readRow(row, names, unitWhenNone, faults) ?? []);
  const total = blanks.reduce((sum, { count }) => sum + count, 0);
  if (total > MOST_PARTS) faults.push({ line, message: `These are ${total} parts. Expected ${MOST_PARTS} at most: divide the table.` });
  return faults.length > 0 ? failure(faults) : success(blanks);
}

function readRow({ line, cells }: CsvRow, names: readonly string[], unit: 'inch' | 'millimetre' | undefined, faults: TableFault[]): Blank | undefined {
  const before = faults.length;
  const wrong = (message: string): void => { faults.push({ line, message: `Line ${line}: ${message}` }); };
  const cell = (column: Column): string => cells[names.indexOf(column)]?.trim() ?? '';
  const whole = (column: 'count' | 'together', usual: string): number => {
    const count = Number(cell(column) || usual);
    if (!Number.isInteger(count) || count < 1 || count > MOST_PARTS) wrong(`${column}: “${cell(column)}” is no count. Expected a whole number from 1 to ${MOST_PARTS}.`);
    return count;
  };
  const size = (column: 'length' | 'width' | 'thickness'): Length => {
    const read = parseLength(cell(column), unit);
    if (!read.ok) wrong(`${column}: ${read.fault.message}`);
    else if (read.value <= 0) wrong(`${column}: “${cell(column)}” is too small. Expected more than nothing.`);
    else return read.value;
    return ZERO_LENGTH;
  };
  for (const column of ['part', 'species'] as const) if (cell(column) === '') wrong(`${column}: nothing is written.`);
  const blank: Blank = {
    id: `${line} ${cell('part')}`, name: cell('part'), species: cell('species'), count: whole('count', ''), together: whole('together', '1'),
    length: size('length'), width: size('width'), thickness: size('thickness'), mayHideDefect: false,
  };
  return faults.length > before ? undefined : blank;
}
