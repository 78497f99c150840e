import type { JsonNode } from './jsonNode.ts';
import type { Reader } from './jsonReader.ts';
import { fault, faultAt, found, quote } from './jsonReader.ts';

const SIMPLE_ESCAPES: ReadonlyMap<string, string> = new Map([
  ['"', '"'], ['\\', '\\'], ['/', '/'], ['b', '\b'], ['f', '\f'], ['n', '\n'], ['r', '\r'], ['t', '\t'],
]);

/** Reads a string whose opening quote stands at the reader's place. A line end closes it, with a fault. */
export function readString(reader: Reader, path: string): string {
  const opened = reader.at++;
  const pieces: string[] = [];
  for (;;) {
    const plain = plainRun(reader);
    if (plain !== '') pieces.push(plain);
    const next = reader.text.charAt(reader.at);
    if (next === '"') { reader.at++; break; }
    if (next === '' || next === '\n') {
      faultAt(reader, opened, path, 'a closing double quote on the same line', next === '' ? 'the end of the file' : 'the end of the line', 'Close the text with a double quote.');
      break;
    }
    if (next === '\\') pieces.push(readEscape(reader, path));
    else pieces.push(readControl(reader, path));
  }
  return pieces.join('');
}

const PLAIN = /[^"\\\u0000-\u001F]*/uy; // eslint-disable-line no-control-regex -- RFC 8259 section 7 names these characters

function plainRun(reader: Reader): string {
  PLAIN.lastIndex = reader.at;
  const run = PLAIN.exec(reader.text)?.[0] ?? '';
  reader.at += run.length;
  return run;
}

function readEscape(reader: Reader, path: string): string {
  const letter = reader.text.charAt(reader.at + 1);
  const simple = SIMPLE_ESCAPES.get(letter);
  if (simple !== undefined) { reader.at += 2; return simple; }
  const digits = reader.text.slice(reader.at + 2, reader.at + 6);
  if (letter === 'u' && /^[0-9A-Fa-f]{4}$/u.test(digits)) { reader.at += 6; return String.fromCharCode(parseInt(digits, 16)); }
  fault(reader, path, 'an escape such as \\" or \\\\', quote(`\\${letter}`), 'Write a backslash as two backslashes.');
  reader.at += letter === '' || letter === '\n' ? 1 : 2;
  return '';
}

function readControl(reader: Reader, path: string): string {
  const code = reader.text.charCodeAt(reader.at);
  fault(reader, path, 'text without control characters', `character ${code}`, code === 9 ? 'Write a tab as \\t, or a blank.' : 'Take the character away.');
  return reader.text.charAt(reader.at++);
}

const NUMBER = /^-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?$/u;
const WORDS: ReadonlyMap<string, boolean | null> = new Map([['true', true], ['false', false], ['null', null]]);

/** Reads a number, true, false or null; anything else is a fault and is passed over. */
export function readWord(reader: Reader, path: string): JsonNode {
  const start = reader.at;
  const what = found(reader);
  const word = skipUnreadable(reader);
  const value = WORDS.get(word);
  if (value === null) return { kind: 'null', start, path };
  if (value !== undefined) return { kind: 'true or false', value, start, path };
  if (NUMBER.test(word)) return { kind: 'number', value: Number(word), start, path };
  faultAt(reader, start, path, 'a value: text in double quotes, a number, true, false, { or [', what, advice(word));
  return { kind: 'unreadable', start, path };
}

function advice(word: string): string {
  if (word.startsWith('/') || word.startsWith('#')) return 'JSON has no comments: put notes into "about".';
  if (word.startsWith("'") || word.startsWith('“')) return 'Use straight double quotes.';
  if (/^[+.\d-]/u.test(word)) return 'Write numbers as 3 or 3.25; a size with a unit is text in double quotes.';
  return 'Put text in double quotes.';
}

/** Passes over what cannot be followed, up to the next thing that could go on from there; always at least one character. */
export function skipUnreadable(reader: Reader): string {
  const start = reader.at;
  const { text } = reader;
  if (text.startsWith('//', start) || text.charAt(start) === '#') return skipTo(reader, '\n');
  if (text.startsWith('/*', start)) return skipTo(reader, '*/');
  if (text.charAt(start) === "'") return skipTo(reader, "'");
  while (reader.at < text.length && !/[\s,:{}[\]"]/u.test(text.charAt(reader.at))) reader.at++;
  if (reader.at === start) reader.at++;
  return text.slice(start, reader.at);
}

/** Up to and with the ending, if it comes on this line (a block may go over lines); else the rest of the line. */
function skipTo(reader: Reader, ending: string): string {
  const start = reader.at;
  const lineEnd = indexOrEnd(reader.text, '\n', start);
  const end = indexOrEnd(reader.text, ending, start + 1);
  reader.at = ending === '*/' || end < lineEnd ? Math.min(end + ending.length, reader.text.length) : lineEnd;
  if (reader.at === start) reader.at++;
  return reader.text.slice(start, reader.at);
}

function indexOrEnd(text: string, what: string, from: number): number {
  const index = text.indexOf(what, from);
  return index === -1 ? text.length : index;
}
