/** What the parts of the JSON reader share: where it is, and what it has found wrong. */
export interface JsonFault {
  readonly at: number;
  readonly path: string;
  readonly expected: string;
  readonly found: string;
  readonly message: string;
}

export const DEEPEST_JSON = 32;
/** After so many mistakes the rest is not worth telling. */
export const MOST_FAULTS = 100;

export interface Reader {
  readonly text: string;
  at: number;
  /** No use in going on: the text is cut, too deep, or too wrong. */
  stopped: boolean;
  readonly faults: JsonFault[];
}

/** Skips white space and looks at the next character; '' at the end. */
export function peek(reader: Reader): string {
  const { text } = reader;
  let next = text.charAt(reader.at);
  while (next === ' ' || next === '\n' || next === '\r' || next === '\t') next = text.charAt(++reader.at);
  return next;
}

export function faultAt(reader: Reader, at: number, path: string, expected: string, found: string, message: string): void {
  if (reader.stopped) return;
  reader.faults.push({ at, path, expected, found, message });
  if (reader.faults.length >= MOST_FAULTS) reader.stopped = true;
}

export function fault(reader: Reader, path: string, expected: string, found: string, message: string): void {
  faultAt(reader, reader.at, path, expected, found, message);
}

export function stop(reader: Reader, path: string, expected: string, found: string, message: string): void {
  fault(reader, path, expected, found, message);
  reader.stopped = true;
}

/** What stands at the reader's place, short, for a message. */
export function found(reader: Reader): string {
  const rest = reader.text.slice(reader.at, reader.at + 24);
  const word = /^(?:[\w.+-]+|[^]?)/u.exec(rest)?.[0] ?? '';
  return word === '' ? 'the end of the file' : quote(word);
}

/** Text in quotes, short enough for a message. */
export function quote(text: string): string {
  return JSON.stringify(text.length > 40 ? `${text.slice(0, 40)}…` : text);
}
