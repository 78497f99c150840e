import type { Bench } from '../bench/bench.ts';
import type { Reply, Response } from '../bench/reply.ts';
import type { GapSense, Guided, TruingRequest } from '../bench/request.ts';
import { negate } from '../length/arithmetic.ts';
import { NANOMETRES_PER_INCH, type Length } from '../length/length.ts';
import type { State } from '../journal/state.ts';
import { applyCraft } from '../journal/craft.ts';
import type { Moment } from '../clock/moment.ts';
import { renderTelling } from '../reckoning/telling.ts';
import { assertNever } from '../result.ts';
import { nextWanted } from '../true/asRead.ts';
import { placeAt, stationsFor } from '../true/guide.ts';
import { isOfBoard, keptWith, type BoardFace, type FaceReading, type ReadingKind } from '../true/readings.ts';
import { refuse, tell, write } from './plain.ts';
import { sentence } from './saying.ts';
import { readingsCome, sideMeant, sideToTrue, takenOf } from './truingSide.ts';
import { aloud, onPaper, questionOf, readingWords, saySide, spotWords, verdictWords } from './truingWords.ts';

type Reading = Extract<TruingRequest, { kind: 'surface reading' }>;

/** A gap is rarely as wide as that: then it was misheard, or a length was meant. Common practice, no source. */
const ASK_BEYOND: Readonly<Record<ReadingKind, number>> = { sticks: NANOMETRES_PER_INCH, along: NANOMETRES_PER_INCH / 4, across: NANOMETRES_PER_INCH / 4, square: NANOMETRES_PER_INCH / 8, 'thickness': Infinity, 'first diagonal': Infinity, 'second diagonal': Infinity };

/** The two ways that such a gap may go, the first one counted as more than nothing; undefined for what goes one way only. */
export function sensesOf(what: ReadingKind): readonly [plus: GapSense, minus: GapSense] | undefined {
  switch (what) {
    case 'sticks': return ['left', 'right'];
    case 'across': return ['hollow', 'crowned'];
    case 'square': return ['far side', 'face side'];
    case 'along': case 'thickness': case 'first diagonal': case 'second diagonal': return undefined;
    default: return assertNever(what);
  }
}

export const SENSE_WORDS: Readonly<Record<GapSense, string>> = { 'left': 'left end high', 'right': 'right end high', 'hollow': 'hollow', 'crowned': 'crowned', 'far side': 'light at the far side', 'face side': 'light at the face' };

/** Writes a reading down, reads it back, and asks for the next one when the guide had asked. */
export function takeReading(bench: Bench, request: Reading, now: Moment): Response {
  const { state } = bench;
  const meant = sideMeant(bench, request.of);
  if (!meant.ok) return refuse(meant.fault);
  const of = meant.value;
  const side = sideToTrue(state, of);
  if (!side) return refuse('The piece on the bench has no such board.');
  const fromEnd = placeAt(request.at, stationsFor(side.size.length, side.unit));
  const asked: Partial<Reply> = request.guided ? { question: { kind: 'surface reading', of, what: request.what, fromEnd, ...request.guided } } : {};
  if (fromEnd > side.size.length || fromEnd < 0) return refuse(`There is no such place: ${saySide(state, of)} is ${aloud(state).size(side.size.length)} long.`);
  if (request.gap < 0 || (isOfBoard(request.what) && request.gap === 0)) return refuse(isOfBoard(request.what) ? 'It measures more than nothing. Tell it anew.' : 'A gap is nothing or more. Tell it anew.', asked);
  if (request.what === 'along' && request.sense === 'crowned') return refuse('Let the straightedge rest on the crown, and read the gaps towards the ends.', asked);
  const senses = sensesOf(request.what);
  if (senses && request.gap > 0 && !(request.sense && senses.includes(request.sense))) return askSense(state, { ...request, of, at: fromEnd }, senses);
  if (request.gap > ASK_BEYOND[request.what] && request.sure !== true) {
    const say = `That is much: ${aloud(state).gap(request.gap)} ${spotWords(side, fromEnd, aloud(state))}. Is it really so?`;
    return tell({ say, note: say, signal: 'wrong', question: { kind: 'yes or no', onYes: { ...request, of, at: fromEnd, sure: true } } });
  }
  return noted(state, of, { what: request.what, fromEnd, gap: senses && request.sense === senses[1] ? negate(request.gap) : request.gap }, request.guided, now);
}

function askSense(state: State, request: Reading, senses: readonly [GapSense, GapSense]): Response {
  const say = `${sentence(aloud(state).gap(request.gap))} ${sentence(`${SENSE_WORDS[senses[0]]}, or ${SENSE_WORDS[senses[1]]}?`)}`;
  return tell({ say, note: say, question: { kind: 'which', choices: senses.map((sense) => ({ say: SENSE_WORDS[sense], request: { ...request, sense } })) }, lengths: [request.gap] });
}

function noted(state: State, of: BoardFace, reading: FaceReading, guided: Guided | undefined, now: Moment): Response {
  const entry = { kind: 'surface read', of: keptWith(of, reading.what), reading } as const;
  const after: State = { ...state, ...applyCraft(state, entry, now, state.pieceName ?? '') };
  const side = sideToTrue(after, of);
  const said = side ? readingWords(side, reading, aloud(state)) : '';
  const next = guided ? askNext(after, of, guided) : undefined;
  const screen = { name: 'truing', of } as const;
  if (next) return write([entry], { ...next, say: `${sentence(said)} ${next.say}`, signal: 'done', lengths: [reading.gap] });
  return write([entry], { say: `${sentence(said)} ${guided ? readThrough(after, of, guided) : 'Noted.'}`, signal: 'done', screen, lengths: [reading.gap] });
}

/** The guide has all that it asks for: what it comes to. */
function readThrough(state: State, of: BoardFace, { leftOut }: Guided): string {
  const side = sideToTrue(state, of);
  const found = readingsCome(state, of);
  if (!side || !found) return '';
  if (!found.ok) return renderTelling(found.fault.message, aloud(state).size);
  return [leftOut.length === 0 ? 'That is all.' : 'That is all but what was left out.', ...verdictWords(side, found.value, aloud(state)).slice(0, 1)].join(' ');
}

/** Asks for the next reading of a side, or of the thickness; undefined when there is none left to take. */
export function askNext(state: State, of: BoardFace, guided: Guided): Reply | undefined {
  const side = sideToTrue(state, of);
  const next = side && nextWanted(side, guided.about, guided.about === 'thickness' || guided.about === 'diagonals' ? takenOf(state, keptWith(of, 'thickness')) : side.taken, guided.leftOut);
  if (!side || !next) return undefined;
  return {
    say: questionOf(side, next, aloud(state)), note: questionOf(side, next, onPaper(state)),
    question: { kind: 'surface reading', of, ...next, ...guided }, screen: { name: 'truing', of },
  };
}

/** The way is told: how much it is. A way that such a gap cannot go is asked for again. */
export function askHowMuch(question: Extract<NonNullable<Bench['conversation']['question']>, { kind: 'surface reading' }>, sense: GapSense): Response {
  const senses = sensesOf(question.what);
  if (!senses?.includes(sense)) return refuse(senses ? sentence(`${SENSE_WORDS[senses[0]]}, or ${SENSE_WORDS[senses[1]]}?`) : 'Say how much it is.', { question });
  return tell({ say: howMuchWords(sense), question: { ...question, sense } });
}

/** 'Hollow; by how much?' */
export function howMuchWords(sense: GapSense): string {
  return sentence(`${SENSE_WORDS[sense]}; by how much?`);
}

/** What answers the open question: a bare length, or one with its way. */
export function answeredReading(question: Extract<NonNullable<Bench['conversation']['question']>, { kind: 'surface reading' }>, length: Length, sense: GapSense | undefined): Reading {
  const { of, what, fromEnd, about, leftOut } = question;
  return { kind: 'surface reading', of, what, at: fromEnd, gap: length, ...(sense === undefined ? {} : { sense }), guided: { about, leftOut } };
}
