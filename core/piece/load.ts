import { failure, success } from '../result.ts';
import type { Result } from '../result.ts';
import { checkReferences } from './check.ts';
import { declaredSizes } from './declared.ts';
import type { PieceFile } from './file.ts';
import type { SizeGraph } from './graph.ts';
import { buildGraph } from './graph.ts';
import { readJson } from './json.ts';
import type { JsonNode } from './jsonNode.ts';
import { memberOf, plainValue } from './jsonNode.ts';
import type { JsonFault } from './jsonReader.ts';
import { MOST_FAULTS } from './jsonReader.ts';
import type { SizeLimits } from './limits.ts';
import { SIZE_LIMITS } from './limits.ts';
import type { LoadedPiece } from './loadedPiece.ts';
import { broughtUp, PIECE_VERSION } from './migrate.ts';
import schema from './piece.schema.json' with { type: 'json' };
import { placeFinder } from './place.ts';
import { checkAgainst } from './schema.ts';

/** What is wrong in a piece file, where, what should stand there, and what to do. */
export interface PieceFault {
  /** JSONPath (RFC 9535): `$.parts[0].sizes.length`. */
  readonly path: string;
  readonly line: number;
  readonly column: number;
  readonly expected: string;
  readonly found: string;
  /** What to do, in a sentence. */
  readonly message: string;
}

/** 1 MiB: a piece of two hundred parts takes a tenth of it. */
export const LARGEST_FILE_BYTES = 1_048_576;

/**
 * Reads a piece file, or tells everything that is wrong with it in the order of the file, at most a hundred faults. Never throws and never
 * half-loads. Files of older versions are brought up step by step before the schema sees them.
 */
export function loadPiece(text: string, limits: SizeLimits = SIZE_LIMITS): Result<LoadedPiece, readonly PieceFault[]> {
  const size = bytesIn(text);
  if (size > LARGEST_FILE_BYTES) {
    return failure([{ path: '$', line: 1, column: 1, expected: `at most ${LARGEST_FILE_BYTES} bytes`, found: `${size} bytes`, message: 'A piece file is never so large: choose another file.' }]);
  }
  const { root: read, faults } = readJson(text);
  const root = read && broughtUp(read);
  const all = [...faults];
  const foreign = root && (foreignVersion(root) ?? (faults.length === 0 ? foreignFile(root) : undefined));
  if (foreign !== undefined) return failure(placed(text, [foreign]));
  const graph = root && checkPiece(text, root, limits, all);
  // The schema has just held the tree to being a PieceFile.
  return root !== undefined && graph !== undefined && all.length === 0 ? success({ file: plainValue(root) as PieceFile, graph }) : failure(placed(text, all));
}

/** The file as text: what loadPiece reads back as the same. */
export function writePiece(file: PieceFile): string {
  return `${JSON.stringify(file, null, 2)}\n`;
}

/** A fault as one line: 'Line 12, column 5 ($.parts[0].count): expected a whole number, found the text "four". Write it without quotes.' */
export function writeFault({ path, line, column, expected, found, message }: PieceFault): string {
  return `Line ${line}, column ${column} (${path}): expected ${expected}; found ${found}. ${message}`;
}

function checkPiece(text: string, root: JsonNode, limits: SizeLimits, faults: JsonFault[]): SizeGraph | undefined {
  const report = (fault: JsonFault): void => { faults.push(fault); };
  checkAgainst(schema, root, report);
  checkReferences(root, report);
  const built = buildGraph(text, declaredSizes(root), limits);
  // One by one: a list of many thousands does not fit into one call's arguments.
  built.faults.forEach(report);
  return built.graph;
}

/** No piece file at all: then a list of all that it lacks would be no help. */
function foreignFile(root: JsonNode): JsonFault | undefined {
  if (root.kind === 'object' && (memberOf(root, 'format') ?? memberOf(root, 'parts')) !== undefined) return undefined;
  return {
    at: root.start, path: '$', expected: 'a piece file, with "format": "benchcall piece" and its parts', found: 'some other JSON',
    message: 'This is not a piece file: choose another, or start one with the starter.',
  };
}

function foreignVersion(root: JsonNode): JsonFault | undefined {
  const format = memberOf(root, 'format');
  const version = memberOf(root, 'version');
  if (format?.kind !== 'text' || format.value !== 'benchcall piece') return undefined;
  if (version?.kind !== 'number' || version.value <= PIECE_VERSION) return undefined;
  return {
    at: version.start, path: version.path, expected: `version ${PIECE_VERSION}`, found: `version ${version.value}`,
    message: 'This file was written by a newer Benchcall: bring this one up to date, or save the piece from there in the older form.',
  };
}

function placed(text: string, faults: readonly JsonFault[]): readonly PieceFault[] {
  const find = placeFinder(text);
  const sorted = [...faults].sort((a, b) => a.at - b.at).slice(0, MOST_FAULTS);
  const told = sorted.map(({ at, path, expected, found, message }) => ({ path, ...find(at), expected, found, message }));
  const last = told.at(-1);
  if (faults.length > MOST_FAULTS && last !== undefined) {
    return [...told, { ...last, expected: 'fewer faults', found: `${faults.length - MOST_FAULTS} more`, message: 'Put these right first; the others are told then.' }];
  }
  return told;
}

/** In UTF-8, as the file stands on disk. */
function bytesIn(text: string): number {
  if (text.length > LARGEST_FILE_BYTES) return text.length;
  let bytes = text.length;
  for (let at = 0; at < text.length; at++) {
    const code = text.charCodeAt(at);
    // Two surrogates stand for four bytes: two each.
    if (code >= 0x80) bytes += code >= 0x800 && (code < 0xd800 || code > 0xdfff) ? 2 : 1;
  }
  return bytes;
}
