import type { JsonArray, JsonMember, JsonNode, JsonObject } from './jsonNode.ts';
import { childPath } from './jsonNode.ts';
import type { JsonFault, Reader } from './jsonReader.ts';
import { DEEPEST_JSON, fault, faultAt, found, peek, quote, stop } from './jsonReader.ts';
import { readString, readWord, skipUnreadable } from './jsonToken.ts';
import { placeAt } from './place.ts';

/**
 * A strict reader of JSON (RFC 8259) that keeps the place of everything and goes on after a mistake, so that all mistakes are told at once.
 * JSON.parse cannot do this: it stops at the first, names no line, and lets the last of two equal keys win in silence.
 * `root` is undefined only for a text with nothing in it. Never throws; takes time in proportion to the text.
 */
export function readJson(text: string): { readonly root: JsonNode | undefined; readonly faults: readonly JsonFault[] } {
  const reader: Reader = { text, at: text.startsWith('\uFEFF') ? 1 : 0, stopped: false, faults: [] };
  if (peek(reader) === '') {
    fault(reader, '$', 'a JSON object', 'nothing', 'The file is empty. Choose another file, or start a piece from the starter.');
    return { root: undefined, faults: reader.faults };
  }
  const root = readValue(reader, '$', 1);
  if (!reader.stopped && peek(reader) !== '') fault(reader, '$', 'the end of the file', found(reader), 'Take away what stands after the last closing brace.');
  return { root, faults: reader.faults };
}

function readValue(reader: Reader, path: string, depth: number): JsonNode {
  const next = peek(reader);
  const start = reader.at;
  if ((next === '{' || next === '[') && depth > DEEPEST_JSON) {
    stop(reader, path, `at most ${DEEPEST_JSON} levels of brackets`, 'more', 'A piece file is never so deep: this is some other file, or a damaged one.');
    return { kind: 'unreadable', start, path };
  }
  if (next === '{') return readObject(reader, path, depth);
  if (next === '[') return readList(reader, path, depth);
  if (next === '"') return { kind: 'text', value: readString(reader, path), start, path };
  return readWord(reader, path);
}

function readObject(reader: Reader, path: string, depth: number): JsonObject {
  const start = reader.at++;
  const members: JsonMember[] = [];
  const places = new Map<string, number>();
  let before: Before = 'open';
  while (!reader.stopped) {
    const next = peek(reader);
    if (next === '') { stopCut(reader, path, start); break; }
    if (next === '}' || next === ']') { close(reader, path, next, '}', before); return { kind: 'object', members, cut: false, start, path }; }
    if (next === ',') { comma(reader, path, before); before = 'comma'; continue; }
    if (isComment(next)) { skipComment(reader, path); continue; }
    if (before === 'value') fault(reader, path, "',' or '}'", found(reader), 'Put a comma between two entries.');
    const member = readMember(reader, path, depth);
    if (member !== undefined) keep(reader, path, member, members, places);
    before = 'value';
  }
  return { kind: 'object', members, cut: true, start, path };
}

function keep(reader: Reader, path: string, member: JsonMember, members: JsonMember[], places: Map<string, number>): void {
  if (places.has(member.key)) {
    faultAt(reader, member.keyStart, childPath(path, member.key), 'each name once', `${quote(member.key)} a second time`,
      'Only one of the two can hold: take the other away, or rename it.');
    return;
  }
  places.set(member.key, member.keyStart);
  members.push(member);
}

function readMember(reader: Reader, path: string, depth: number): JsonMember | undefined {
  const keyStart = reader.at;
  const key = readKey(reader, path);
  if (key === undefined) return undefined;
  if (peek(reader) === ':') reader.at++;
  else if (peek(reader) !== '') fault(reader, childPath(path, key), "':' after the name", found(reader), 'Write "name": value.');
  if (peek(reader) === ',' || peek(reader) === '}') {
    fault(reader, childPath(path, key), 'a value', found(reader), 'Write a value after the colon, or take the name away.');
    return { key, keyStart, value: { kind: 'unreadable', start: reader.at, path: childPath(path, key) } };
  }
  if (peek(reader) === '') return undefined;
  return { key, keyStart, value: readValue(reader, childPath(path, key), depth + 1) };
}

function readKey(reader: Reader, path: string): string | undefined {
  if (reader.text[reader.at] === '"') return readString(reader, path);
  const bare = /[A-Za-z_$][\w$.-]*/uy;
  bare.lastIndex = reader.at;
  const word = bare.exec(reader.text)?.[0];
  fault(reader, path, 'a name in double quotes', found(reader), 'Names stand in double quotes: "name": value.');
  if (word !== undefined) { reader.at += word.length; return word; }
  skipUnreadable(reader);
  return undefined;
}

function readList(reader: Reader, path: string, depth: number): JsonArray {
  const start = reader.at++;
  const items: JsonNode[] = [];
  let before: Before = 'open';
  while (!reader.stopped) {
    const next = peek(reader);
    if (next === '') { stopCut(reader, path, start); break; }
    if (next === ']' || next === '}') { close(reader, path, next, ']', before); return { kind: 'list', items, cut: false, start, path }; }
    if (next === ',') { comma(reader, path, before); before = 'comma'; continue; }
    if (isComment(next)) { skipComment(reader, path); continue; }
    if (before === 'value') fault(reader, path, "',' or ']'", found(reader), 'Put a comma between two entries.');
    items.push(readValue(reader, `${path}[${items.length}]`, depth + 1));
    before = 'value';
  }
  return { kind: 'list', items, cut: true, start, path };
}

/** What went before, inside a bracket: decides whether a comma may stand here. */
type Before = 'open' | 'comma' | 'value';

function isComment(next: string): boolean {
  return next === '/' || next === '#';
}

function skipComment(reader: Reader, path: string): void {
  fault(reader, path, 'JSON without comments', found(reader), 'JSON has no comments: put notes into "about".');
  skipUnreadable(reader);
}

function comma(reader: Reader, path: string, before: Before): void {
  if (before !== 'value') fault(reader, path, 'a value before the comma', "','", 'Take the extra comma away.');
  reader.at++;
}

/** A bracket of the wrong kind closes this one and is left for the one around it. */
function close(reader: Reader, path: string, next: string, wanted: string, before: Before): void {
  if (before === 'comma') fault(reader, path, 'another entry after the comma', `'${next}'`, 'Take away the comma before the closing bracket.');
  if (next === wanted) reader.at++;
  else fault(reader, path, `'${wanted}'`, `'${next}'`, 'Close with the bracket that matches the opening one.');
}

function stopCut(reader: Reader, path: string, opened: number): void {
  const { line, column } = placeAt(reader.text, opened);
  stop(reader, path, 'a closing bracket', 'the end of the file',
    `What was opened at line ${line}, column ${column} is never closed: the file was cut short. Take a whole copy of it.`);
}
