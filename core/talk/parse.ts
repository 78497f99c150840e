import type { Bench } from '../bench/bench.ts';
import type { Request } from '../bench/request.ts';
import { readSpokenNumber } from '../length/parseSpoken.ts';
import { looksUp } from './looksUp.ts';
import { matches, utterance, type Match, type Utterance } from './match.ts';
import { readLength } from './measures.ts';
import { nearestPhrase } from './nearest.ts';
import type { Pattern, Row, Topic } from './pattern.ts';
import { ANSWERS, FOLLOW_UPS, WHOLE_REQUESTS } from './table.ts';
import { soundingAlike } from './soundAlikes.ts';
import { NO_PIECE } from './subjects.ts';
import { splitWords } from './words.ts';

const MOST_WORDS = 60;
const MOST_CHOICES = 6;

/** Nothing is called “how fast”: such a reason tells of a row that the words have nothing to do with. */
const QUOTES_A_QUESTION = /“(?:how|what|which|where|when|why|who|did|do|does|is|are|can)\b/;

/** What a set of rows makes of an utterance: a request, else the best reason why not. */
interface Understood { readonly request?: Request; readonly fault?: { readonly words: number; readonly because: string } }
interface Candidate { readonly request: Request; readonly labels: Match['labels']; readonly loose: boolean }

/**
 * Words, heard or typed, to the request they make. Strict: a pattern must take in all of them. An answer to the open
 * question is looked for first, then a whole request, then a half sentence that stands on what was said last. What can
 * mean several things becomes 'which', what cannot be understood says why and what could be asked instead. Never throws.
 */
export function parseRequest(words: string, bench: Bench): Request {
  const split = splitWords(words.slice(0, MOST_WORDS * 20));
  if (split.length === 0) return notUnderstood('', 'I heard nothing');
  if (split.length > MOST_WORDS) return notUnderstood(split.slice(0, MOST_WORDS).join(' '), 'that was too much at once');
  const { request, faults } = requestIn(split, bench);
  const meant = request ?? meantBySound(split, bench);
  if (meant) return meant;
  const { because, whole } = reason(faults, utterance(split, bench));
  // What was understood and cannot be done needs no other words, nor does what needs a piece.
  return notUnderstood(split.join(' '), because, whole || because === NO_PIECE ? undefined : nearestPhrase(split, bench, (phrase) => understand(WHOLE_REQUESTS, utterance(phrase, bench)).request !== undefined));
}

/** The request that the words make, if they make one, without a reason when they do not. */
export function understood(words: readonly string[], bench: Bench): Request | undefined {
  const split = splitWords(words.join(' '));
  return split.length === 0 || split.length > MOST_WORDS ? undefined : requestIn(split, bench).request ?? meantBySound(split, bench);
}

/** Of words that make a request: what it is about, and whether it only looks something up. */
export function aboutWords(words: string, bench: Bench): { readonly topic: Topic; readonly looksUp: boolean } | undefined {
  const heard = utterance(splitWords(words), bench);
  for (const row of [...ANSWERS, ...WHOLE_REQUESTS, ...FOLLOW_UPS]) {
    const { request } = understand([row], heard);
    if (request) return { topic: row.topic, looksUp: looksUp(request) };
  }
  return undefined;
}

/** What the words mean when spelt as something that sounds the same; nothing unless all such readings that mean anything mean one thing. */
function meantBySound(split: readonly string[], bench: Bench): Request | undefined {
  const meant = soundingAlike(split).flatMap((words) => requestIn(words, bench).request ?? []).filter(({ kind }) => kind !== 'note');
  const [first] = meant;
  return meant.every((request) => JSON.stringify(request) === JSON.stringify(first)) ? first : undefined;
}

/** The request that the words make exactly as they stand; else what kept each kind of row from taking them. */
function requestIn(split: readonly string[], bench: Bench): { readonly request?: Request; readonly faults: readonly NonNullable<Understood['fault']>[] } {
  const heard = utterance(split, bench);
  const tried = [ANSWERS, WHOLE_REQUESTS, FOLLOW_UPS].map((rows) => () => understand(rows, heard));
  const faults: NonNullable<Understood['fault']>[] = [];
  for (const attempt of tried) {
    const { request, fault } = attempt();
    if (request) return { request, faults };
    if (fault) faults.push(fault);
  }
  return { faults };
}

function understand(rows: readonly Row[], heard: Utterance): Understood {
  let best: Understood['fault'];
  for (const row of rows) {
    for (const pattern of row.patterns) {
      const { request, fault } = understandPattern(row, pattern, heard);
      if (request) return { request };
      if (fault && (!best || fault.words < best.words)) best = fault;
    }
  }
  return best ? { fault: best } : {};
}

function understandPattern(row: Row, pattern: Pattern, heard: Utterance): Understood {
  const found = matches(pattern, heard);
  const candidates: Candidate[] = [];
  const faults: NonNullable<Understood['fault']>[] = [];
  for (const match of found) {
    const [fault] = match.faults;
    const built = fault ? { fault: fault.fault } : row.build(match.bound, heard.bench);
    if (built === undefined) continue;
    if ('kind' in built) candidates.push({ request: built, labels: match.labels, loose: match.loose });
    else faults.push({ words: match.faults.reduce((sum, { words }) => sum + words, 0), because: built.fault });
  }
  const whole = candidates.filter(({ loose }) => !loose);
  if (candidates.length > 0) return meant(whole.length > 0 ? whole : candidates);
  const [fault] = faults.sort((a, b) => a.words - b.words);
  return fault ? { fault } : {};
}

/** The one thing meant, or the question which of several; of more than can be told apart by ear, the reason to say more. */
function meant(candidates: readonly Candidate[]): Understood {
  const distinct = [...new Map(candidates.map((candidate) => [JSON.stringify(candidate.request), candidate])).values()];
  const [first] = distinct;
  if (first !== undefined && distinct.length === 1) return { request: first.request };
  const told = tellingApart(distinct.map(({ labels }) => labels));
  const short = told.map((labels) => labels.map(([label]) => label).join(', '));
  const full = told.map((labels) => labels.map(([, label]) => label).join(', '));
  const says = new Set(short).size === short.length ? short : full;
  if (distinct.length > MOST_CHOICES) {
    return { fault: { words: 0, because: `that may be ${distinct.length} things, ${says.slice(0, 3).join(', ')} and more; say more of the name` } };
  }
  return { request: { kind: 'which', choices: distinct.map(({ request }, index) => ({ say: says[index] ?? '', request })) } };
}

/** Without the labels that are the same for all: they tell nothing apart. */
function tellingApart(labels: readonly Match['labels'][]): readonly Match['labels'][] {
  const [first = []] = labels;
  const telling = first.map((label, at) => labels.some((other) => JSON.stringify(other[at]) !== JSON.stringify(label)));
  return labels.some(({ length }) => length !== first.length) ? labels : labels.map((own) => own.filter((_, at) => telling[at]));
}

/** The reason that is told: of the part of the utterance that was not understood, if any other part was; `whole` when every word was. */
function reason(faults: readonly { readonly words: number; readonly because: string }[], heard: Utterance): { readonly because: string; readonly whole: boolean } {
  const { words, bench } = heard;
  const [partly] = faults.filter((fault) => fault.words < words.length && !QUOTES_A_QUESTION.test(fault.because)).sort((a, b) => a.words - b.words);
  if (partly) return { because: partly.because, whole: partly.words === 0 };
  const length = words.some((word) => /\d/.test(word) || readSpokenNumber([word]).ok) ? readLength(words, bench) : undefined;
  if (length && 'fault' in length && (bench.conversation.question?.kind === 'length' || bench.conversation.question?.kind === 'surface reading')) return { because: length.fault, whole: false };
  if (length && 'value' in length) return { because: 'that is a size, and I do not know what to do with it', whole: true };
  return { because: `I do not know what “${words.join(' ')}” means`, whole: false };
}

function notUnderstood(heard: string, because: string, nearest?: string): Request {
  return { kind: 'not understood', heard, because, ...(nearest === undefined ? {} : { nearest }) };
}
