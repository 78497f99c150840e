import type { Bench } from '../bench/bench.ts';
import { mostBoards } from './counts.ts';
import { examplesFor, rowPhrases, type Examples } from './expand.ts';
import type { Pattern, Row } from './pattern.ts';
import type { SlotName } from './slot.ts';
import { ANSWERS, WHOLE_REQUESTS } from './table.ts';

/** Slots whose examples change while one works. Answers change with the question too. */
const PASSING: ReadonlySet<SlotName> = new Set(['timer', 'choice']);
const LASTING_ROWS = [...WHOLE_REQUESTS, ...ANSWERS].filter((row) => !isPassing(row));
const PASSING_ROWS = [...WHOLE_REQUESTS, ...ANSWERS].filter(isPassing);
const NO_PIECE = {};
/** What stays the same with a piece, its boards and the units, for the phrases are asked for at every question. */
const lasting = new WeakMap<object, Map<string, readonly string[]>>();

/**
 * The phrases that the recogniser listens for: whole sentences made from the same table that the parser reads, with the
 * names of the piece on the bench and every number word. The recogniser makes of them a table of which word follows
 * which, so they need to show every word in its place, not every sentence. In small letters, without punctuation.
 */
export function phrasesFor(bench: Bench): readonly string[] {
  const examples = examplesFor(bench);
  return [...new Set([...lastingPhrases(bench), ...PASSING_ROWS.flatMap((row) => phrasesOf(row, examples))])];
}

/** The different words of some phrases: what the model's dictionary should know. */
export function grammarWords(phrases: readonly string[]): readonly string[] {
  return [...new Set(phrases.flatMap((phrase) => phrase.split(' ')))].sort();
}

/** The phrases of one row, as a recogniser hears them. */
export function phrasesOf(row: Row, examples: Examples): readonly string[] {
  const phrases = rowPhrases(row, examples).map((phrase) => phrase.toLowerCase().replace(/[^a-z0-9']+/g, ' ').trim());
  const contracted = CONTRACTED.map(([open, closed]) => phrases.find((phrase) => open.test(phrase))?.replace(open, closed));
  return [...phrases, ...contracted.filter((phrase) => phrase !== undefined)];
}

/** One of each is enough to hear them. */
const CONTRACTED: readonly (readonly [RegExp, string])[] = [[/^what is\b/, "what's"], [/^that is\b/, "that's"], [/^it is\b/, "it's"], [/^i am\b/, "i'm"], [/\bdoes not\b/, "doesn't"]];

function lastingPhrases(bench: Bench): readonly string[] {
  const { piece, settings: { rounding: { unit }, temperature } } = bench.state;
  const key = `${unit} ${temperature} ${mostBoards(bench)}`;
  const ofPiece = lasting.get(piece ?? NO_PIECE) ?? new Map<string, readonly string[]>();
  lasting.set(piece ?? NO_PIECE, ofPiece);
  const kept = ofPiece.get(key);
  if (kept) return kept;
  const examples = examplesFor(bench);
  const phrases = LASTING_ROWS.flatMap((row) => phrasesOf(row, examples));
  ofPiece.set(key, phrases);
  return phrases;
}

function isPassing(row: Row): boolean {
  return row.topic === 'answers' || row.patterns.some(holdsPassingSlot);
}

function holdsPassingSlot(pattern: Pattern): boolean {
  return pattern.some((node) => (node.kind === 'slot' ? PASSING.has(node.slot) : node.kind === 'choice' && node.options.some(holdsPassingSlot)));
}
