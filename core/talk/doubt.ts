import type { Bench } from '../bench/bench.ts';
import type { Request } from '../bench/request.ts';
import { rivalsOf } from './confusions.ts';
import { parseRequest } from './parse.ts';
import { splitWords } from './words.ts';

/** So many can be told apart by ear. */
const MOST_CHOICES = 3;

/**
 * Words that were heard, some of them not clearly, to the request they make. Where a doubtful word is one that is mistaken for another which would make sense
 * too, it becomes the question which of them was said: "fifteen, or fifty?". A size that is only looked up or reckoned ends up in wood as well.
 */
export function parseHeard(words: string, doubtful: readonly string[], bench: Bench): Request {
  const request = parseRequest(words, bench);
  if (doubtful.length === 0) return request;
  const heard = splitWords(words);
  const others = heard.flatMap((word, at) => (doubtful.includes(word) ? rivalsOf(word) : []).flatMap((rival) => {
    const other = parseRequest([...heard.slice(0, at), rival, ...heard.slice(at + 1)].join(' '), bench);
    return other.kind === request.kind ? [{ heard: word, said: rival, request: other }] : [];
  }));
  const [first] = others;
  if (first === undefined) return request;
  const ofFirst = others.filter(({ heard: word }) => word === first.heard);
  const distinct = [...new Map(ofFirst.map((other) => [JSON.stringify(other.request), other])).values()].slice(0, MOST_CHOICES - 1);
  return { kind: 'which', choices: [{ say: asAsked(first.heard), request }, ...distinct.map(({ said, request: other }) => ({ say: asAsked(said), request: other }))] };
}

/** A letter is a face's. */
function asAsked(word: string): string {
  return word.length === 1 ? `face ${word.toUpperCase()}` : word;
}
