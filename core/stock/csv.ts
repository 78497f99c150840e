import { failure, success, type Result } from '../result.ts';

export interface CsvRow {
  /** Line of the file on which the row begins, from 1. */
  readonly line: number;
  readonly cells: readonly string[];
}

export interface TableFault {
  readonly line: number;
  readonly message: string;
}

/**
 * Comma-separated values as in RFC 4180 (2005): quoted cells may hold commas, line breaks and doubled quotes. Line feeds alone end a row too,
 * a byte order mark is passed over, and empty lines are left out.
 */
export function parseCsv(text: string): Result<CsvRow[], TableFault> {
  const rows: CsvRow[] = [];
  let [at, line] = [text.startsWith('\ufeff') ? 1 : 0, 1];
  while (at < text.length) {
    const cells: string[] = [];
    const begun = line;
    for (;;) {
      const cell = text[at] === '"' ? quoted(text, at) : plain(text, at);
      if (cell === undefined) return failure({ line, message: `Line ${line}: a quote is opened here and not closed, or something follows a closing quote. Expected a comma or the end of the line after it.` });
      line += cell.breaks;
      cells.push(cell.value);
      at = cell.end;
      if (text[at] !== ',') break;
      at++;
    }
    at += text.startsWith('\r\n', at) ? 2 : 1;
    line++;
    if (cells.some((cell) => cell.trim() !== '')) rows.push({ line: begun, cells });
  }
  return success(rows);
}

interface Cell {
  readonly value: string;
  readonly end: number;
  readonly breaks: number;
}

function plain(text: string, from: number): Cell {
  let end = from;
  while (end < text.length && !',\r\n'.includes(text.charAt(end))) end++;
  return { value: text.slice(from, end), end, breaks: 0 };
}

function quoted(text: string, from: number): Cell | undefined {
  const match = /"((?:[^"]|"")*)"(?=,|\r|\n|$)/y;
  match.lastIndex = from;
  const found = match.exec(text);
  if (found === null) return undefined;
  const value = (found[1] ?? '').replaceAll('""', '"');
  return { value, end: match.lastIndex, breaks: (value.match(/\n/g) ?? []).length };
}

/** Rows as RFC 4180 has them: carriage return and line feed, quotes only where they are needed. */
export function writeCsv(rows: readonly (readonly string[])[]): string {
  return rows.map((row) => `${row.map((cell) => (/[",\r\n]/.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell)).join(',')}\r\n`).join('');
}
