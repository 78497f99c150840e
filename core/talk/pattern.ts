import type { Bench } from '../bench/bench.ts';
import type { Built, SlotName, SlotValues } from './slot.ts';
import { canonicalWords, FILLERS } from './words.ts';

/**
 * A little language for what can be said, read both ways: to understand an utterance and to make the phrases that the
 * recogniser listens for. Words stand for themselves, `[…]` may be left out, `(… | …)` is one of several, `{size}` is a
 * slot; a slot that may be missing is written `{size?}`. Articles and plurals make no difference to what is understood; they stand in
 * the patterns as they are most often said.
 */
export type PatternNode =
  | { readonly kind: 'word'; readonly word: string; readonly spelled: string }
  /** An article: for the ear to listen for, and nothing when read. */
  | { readonly kind: 'filler'; readonly spelled: string }
  | { readonly kind: 'slot'; readonly slot: SlotName }
  | { readonly kind: 'choice'; readonly options: readonly Pattern[] };

export type Pattern = readonly PatternNode[];

export type Topic = 'work' | 'sizes' | 'joints' | 'faces' | 'handwork' | 'layout' | 'paper' | 'air' | 'glue' | 'truing' | 'reckoning' | 'recording' | 'clocks' | 'undo' | 'talk' | 'screens' | 'edges' | 'boards' | 'settings' | 'answers' | 'follow-ups';

/** One thing that can be asked or told, with all the ways to say it. */
export interface Row {
  readonly topic: Topic;
  /** What it does, in the fewest words. */
  readonly about: string;
  readonly patterns: readonly Pattern[];
  readonly build: (bound: Partial<SlotValues>, bench: Bench) => Built;
}

type SlotsIn<P extends string> = P extends `${string}{${infer Name}}${infer Rest}` ? (Name extends `${infer Plain}?` ? Plain : Name) | SlotsIn<Rest> : never;
type Missing<P extends string, Name extends string> = Exclude<P, `${string}{${Name}}${string}`>;
type Always<P extends string, Name extends SlotName> = Name extends unknown ? ([Missing<P, Name>] extends [never] ? Name : never) : never;

/** What the builder of a row gets: slots of all its patterns surely, slots of some of them perhaps. */
export type BoundBy<P extends string> =
  { readonly [Name in Always<P, SlotsIn<P> & SlotName>]: SlotValues[Name] } & { readonly [Name in SlotsIn<P> & SlotName]?: SlotValues[Name] };

/** Makes the rows of one topic. Throws on a malformed pattern: that is a bug, found when the module loads. */
export function rowsOf(topic: Topic) {
  return function row<const P extends string>(about: string, patterns: readonly P[], build: (bound: BoundBy<P>, bench: Bench) => Built): Row {
    // The matcher binds exactly the slots that the pattern names, so what the type promises is there.
    return { topic, about, patterns: patterns.map(compile), build: build as Row['build'] };
  };
}

export function compile(text: string): Pattern {
  const tokens = text.match(/[[\]()|]|\{[^}]*\}|[^\s[\]()|{}]+/g) ?? [];
  const { pattern, next } = readSequence(tokens, 0, text);
  if (next < tokens.length || pattern.length === 0) throw new Error(`malformed pattern: ${text}`);
  return pattern;
}

interface Read { readonly pattern: Pattern; readonly next: number }

function readSequence(tokens: readonly string[], start: number, text: string): Read {
  const pattern: PatternNode[] = [];
  let next = start;
  for (let token = tokens[next]; token !== undefined && !/^[\])|]$/.test(token); token = tokens[next]) {
    if (token === '[' || token === '(') {
      const choice = readChoice(tokens, next + 1, token === '[' ? ']' : ')', text);
      pattern.push({ kind: 'choice', options: token === '[' ? [...choice.options, []] : choice.options });
      ({ next } = choice);
    } else {
      pattern.push(...(token.startsWith('{') ? [slotNode(token)] : wordNodes(token)));
      next += 1;
    }
  }
  return { pattern, next };
}

function readChoice(tokens: readonly string[], start: number, close: string, text: string): { readonly options: readonly Pattern[]; readonly next: number } {
  const options: Pattern[] = [];
  let next = start;
  do {
    if (options.length > 0) next += 1;
    const read = readSequence(tokens, next, text);
    options.push(read.pattern);
    ({ next } = read);
  } while (tokens[next] === '|');
  if (tokens[next] !== close) throw new Error(`malformed pattern: ${text}`);
  return { options, next: next + 1 };
}

function slotNode(token: string): PatternNode {
  return { kind: 'slot', slot: token.slice(1, -1).replace('?', '') as SlotName };
}

function wordNodes(spelled: string): PatternNode[] {
  if (FILLERS.has(spelled)) return [{ kind: 'filler', spelled }];
  return canonicalWords(spelled).map((word) => ({ kind: 'word', word, spelled }));
}
