import type { Bench } from '../../../../core/bench/bench.ts';
import type { Reply } from '../../../../core/bench/reply.ts';
import type { Request } from '../../../../core/bench/request.ts';
import { makeRecords } from '../../../../core/journal/record.ts';
import { advance } from '../../../../core/respond/advance.ts';
import { respond } from '../../../../core/respond/respond.ts';
import { stepsOf } from '../../../../core/respond/views.ts';
import { parseHeard } from '../../../../core/talk/doubt.ts';
import { examplesFor } from '../../../../core/talk/expand.ts';
import { phrasesFor, phrasesOf } from '../../../../core/talk/grammar.ts';
import { parseRequest } from '../../../../core/talk/parse.ts';
import { whatCanBeSaid } from '../../../../core/talk/sayable.ts';
import { ANSWERS, WHOLE_REQUESTS } from '../../../../core/talk/table.ts';
import { currentStep } from '../../../../core/work/progress.ts';
import type { Session } from '../session.ts';

/** One thing that the bench said, and the bench that listens meanwhile. */
export interface Said { readonly text: string; readonly bench: Bench }

/** What a walk over the benches came by. */
export interface Walked {
  /** By their words. */
  readonly said: Map<string, Said>;
  readonly kinds: Set<Request['kind']>;
  /** Benches that were reached, one of each kind, with the moment. */
  readonly benches: Map<string, Session['bench']>;
}

/** Numbers and fractions as they are spoken, for the words that a recogniser doubts. */
const NUMBER = /^(?:one|two|three|four|five|six|seven|eight|nine|ten|\w+teen|twenty|thirty|forty|fifty|sixty|\w+(?:teenths|seconds|fourths|eighths))$/;
/** Of the whole grammar, every so manieth phrase is also said with its end cut off, and with each number doubted. */
const SPREAD = 9;

export const nothingYet = (): Walked => ({ said: new Map(), kinds: new Set(), benches: new Map() });

/**
 * From this bench, everything in the grammar is said; from every other kind of bench that comes of it (another screen, another question, another kind of step), everything
 * that the bench itself tells can be said there, and again from what comes of that.
 */
export function walkFrom(session: Session, walked: Walked): void {
  const { bench } = session;
  const waiting = askAll(session, bench, [...phrasesFor(bench).entries()].flatMap(([at, phrase]) => [...requestsOf(phrase, bench, at)]), walked);
  waiting.push(...askAll(session, bench, sayable(bench), walked));
  for (let from = waiting.shift(); from !== undefined; from = waiting.shift()) waiting.push(...askAll(session, from, sayable(from), walked));
}

/** The first and the last phrase of each row of the table of talk; and what can be said to each kind of question that comes of them. */
export function glanceFrom(session: Session, walked: Walked): void {
  const { bench } = session;
  const examples = examplesFor(bench);
  const phrases = [...WHOLE_REQUESTS, ...ANSWERS].flatMap((row) => { const all = phrasesOf(row, examples); return [all[0], all.at(-1)].filter((phrase) => phrase !== undefined); });
  const questions = new Set<string>();
  for (const next of askAll(session, bench, [...phrases.map((phrase) => parseRequest(phrase, bench)), ...sayable(bench)], walked)) {
    const asked = questionOf(next) || (next.conversation.inTurn === undefined ? '' : 'in turn');
    if (asked === '' || questions.has(asked)) continue;
    questions.add(asked);
    askAll(session, next, sayable(next), walked);
  }
}

/** @returns the benches that came of it, those of a kind that was not come by before */
function askAll({ now }: Session, from: Bench, requests: readonly Request[], walked: Walked): Bench[] {
  walked.benches.set(kindOf(from), from);
  return requests.flatMap((request) => {
    walked.kinds.add(request.kind);
    const { entries, reply } = respond(from, request, now);
    const next = advance(from, reply, entries.length > 0 ? makeRecords(entries, from.records.at(-1) ?? null, now) : []);
    note(walked, reply, next);
    const kind = kindOf(next);
    if (walked.benches.has(kind)) return [];
    walked.benches.set(kind, next);
    return [next];
  });
}

const sayable = (bench: Bench) => whatCanBeSaid(bench).map((words) => parseRequest(words, bench));

/** A request that no words ask for. */
export function askByKey({ bench, now }: Session, request: Request, walked: Walked): void {
  walked.kinds.add(request.kind);
  note(walked, respond(bench, request, now).reply, bench);
}

export function note({ said }: Walked, { say }: Pick<Reply, 'say'>, bench: Bench): void {
  if (say !== '' && !said.has(say)) said.set(say, { text: say, bench });
}

function* requestsOf(phrase: string, bench: Bench, at: number): Generator<Request> {
  yield parseRequest(phrase, bench);
  if (at % SPREAD !== 0) return;
  const words = phrase.split(' ');
  if (words.length > 1) yield parseRequest(words.slice(0, -1).join(' '), bench);
  for (const word of words) if (NUMBER.test(word)) yield parseHeard(phrase, [word], bench);
}

function questionOf({ conversation: { question } }: Bench): string {
  return question?.kind === 'surface reading' ? `${question.kind} ${question.what}` : question?.kind ?? '';
}

function kindOf(bench: Bench): string {
  const { state, conversation: { screen, inTurn } } = bench;
  const step = state.piece === null ? 'none' : currentStep(stepsOf(state), state)?.operation ?? 'all done';
  return [state.pieceName ?? 'no piece', step, screen.name, questionOf(bench) || (inTurn === undefined ? '' : 'in turn')].join('/');
}
