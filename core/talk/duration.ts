import { readSpokenNumber } from '../length/parseSpoken.ts';
import { canonical } from './words.ts';

const UNIT_MS: ReadonlyMap<string, number> = new Map([
  ['second', 1_000], ['sec', 1_000], ['s', 1_000], ['minute', 60_000], ['min', 60_000], ['hour', 3_600_000], ['hr', 3_600_000], ['h', 3_600_000], ['day', 86_400_000], ['week', 604_800_000],
]);
/** 'and a half', 'and a quarter' of the unit just said. */
const PARTS: ReadonlyMap<string, number> = new Map([['half', 1 / 2], ['a half', 1 / 2], ['quarter', 1 / 4], ['a quarter', 1 / 4], ['three quarters', 3 / 4]]);

/**
 * Milliseconds of a spoken or typed duration, all of the words: 'thirty minutes', 'an hour and a half', 'half an hour',
 * 'two hours and ten minutes', '90 seconds'; undefined when they are none. Units come from large to small, each once.
 */
export function readDuration(words: readonly string[]): number | undefined {
  const units = words.flatMap((word, at) => (UNIT_MS.has(canonical(word)) ? [at] : []));
  const [first, second] = units;
  if (first === undefined) return undefined;
  const unit = unitMs(words, first);
  if (isMisheardArticle(words, first)) return undefined;
  const count = readCount(words.slice(0, first));
  const after = words.slice(first + 1);
  if (count === undefined) return undefined;
  if (after.length === 0) return count * unit;
  const rest = after[0] === 'and' ? after.slice(1) : after;
  const part = PARTS.get(rest.join(' '));
  if (part !== undefined && after[0] === 'and' && Number.isInteger(count)) return (count + part) * unit;
  const smaller = second === undefined || unitMs(words, second) >= unit ? undefined : readDuration(rest);
  return smaller === undefined || !Number.isInteger(count) ? undefined : count * unit + smaller;
}

/** 'an second' was 'ten seconds', and 'a second timer' is another one: only an hour has 'an', and nobody times a second. */
function isMisheardArticle(words: readonly string[], unitAt: number): boolean {
  const unit = canonical(words[unitAt] ?? '');
  const [article] = unitAt === 1 ? words : [];
  return article === 'an' ? unit !== 'hour' : article === 'a' && unit === 'second';
}

function unitMs(words: readonly string[], at: number): number {
  return UNIT_MS.get(canonical(words[at] ?? '')) ?? 0;
}

/** 'thirty', 'an', 'half an', 'a quarter of an', 'two and a half'. */
function readCount(words: readonly string[]): number | undefined {
  const text = words.join(' ');
  if (text === 'a' || text === 'an') return 1;
  const part = PARTS.get(text.replace(/(?: of)? an?$/, ''));
  if (part !== undefined && text !== 'quarter') return part;
  const joined = / and (a half|a quarter|three quarters|half)$/.exec(text);
  const whole = readSpokenNumber(joined ? text.slice(0, joined.index).split(' ') : words);
  if (!whole.ok || whole.value === 0) return undefined;
  return whole.value + (joined ? PARTS.get(joined[1] ?? '') ?? 0 : 0);
}
