import { assertNever } from '../result.ts';
import type { Bench } from '../bench/bench.ts';
import type { Reply, Response } from '../bench/reply.ts';
import type { Operand, ReckonRequest } from '../bench/request.ts';
import { add, fractionOf, shareOut, subtract, timesWhole } from '../length/arithmetic.ts';
import { nanometres, NANOMETRES_PER_INCH, type Length } from '../length/length.ts';
import type { Rounding } from '../length/rounding.ts';
import { sayLength } from '../length/say.ts';
import { sayNumber, sayOrdinal } from '../length/sayNumber.ts';
import { writeLength } from '../length/write.ts';
import type { State } from '../journal/state.ts';
import { sizeOf } from '../piece/evaluate.ts';
import { failure, success, type Result } from '../result.ts';
import { countWords, MOST_WORDS, tellAll } from './inTurn.ts';
import { refuse, tell } from './plain.ts';
import { sayFraction, sentence, spoken, written } from './saying.ts';
import { sizesOf } from './views.ts';

const HALF_MILLIMETRE_STEP: Rounding = { unit: 'millimetre', step: nanometres(500_000) };
const THIRTY_SECONDS: Rounding = { unit: 'inch', denominator: 32 };
const SIXTY_FOURTHS: Rounding = { unit: 'inch', denominator: 64 };
/** Beyond this many spaces or times, it was misheard or mistyped. */
const MOST_TIMES = 1000;

/** Arithmetic by voice and key, exact until it is said. */
export function respondToReckon(bench: Bench, request: ReckonRequest): Response {
  switch (request.kind) {
    case 'fraction of': {
      const { numerator, denominator } = request;
      return withOperand(bench, request.of, (of) => one(bench, {
        question: `${numerator}/${denominator} of ${written(bench.state, of)}`,
        asked: `${sayFraction(numerator, denominator)} of ${spoken(bench.state, of)}`,
        length: fractionOf(of, numerator, denominator),
      }));
    }
    case 'times':
      if (!wholeWithin(request.factor)) return refuse(`I multiply by whole numbers from one to ${sayNumber(MOST_TIMES)}.`);
      return withOperand(bench, request.of, (of) => one(bench, {
        question: `${request.factor} × ${written(bench.state, of)}`,
        asked: `${sayNumber(request.factor)} times ${spoken(bench.state, of)}`,
        length: timesWhole(of, request.factor),
      }));
    case 'plus':
      return withTwo(bench, request.left, request.right, (left, right) => one(bench, {
        question: `${written(bench.state, left)} + ${written(bench.state, right)}`,
        asked: `${spoken(bench.state, left)} plus ${spoken(bench.state, right)}`,
        length: add(left, right),
      }));
    case 'less':
      return withTwo(bench, request.left, request.right, (left, right) => one(bench, {
        question: `${written(bench.state, left)} − ${written(bench.state, right)}`,
        asked: `${spoken(bench.state, left)} less ${spoken(bench.state, right)}`,
        length: subtract(left, right),
      }));
    case 'equal spaces':
      if (!wholeWithin(request.spaces)) return refuse(`I divide into one to ${sayNumber(MOST_TIMES)} spaces.`);
      return withOperand(bench, request.of, (of) => equalSpaces(bench, of, request.spaces));
    case 'equal gaps':
      return withTwo(bench, request.of, request.each, (of, each) => equalGaps(bench, of, request.parts, each));
    case 'in other unit':
      return withOperand(bench, request.of, (of) => inUnit(bench, of, request.unit));
    case 'in fractions':
      return withOperand(bench, request.of, (of) => inFractions(bench, of, request.denominator));
    default:
      return assertNever(request);
  }
}

function wholeWithin(count: number): boolean {
  return Number.isInteger(count) && count >= 1 && count <= MOST_TIMES;
}

function operandLength(bench: Bench, operand: Operand): Result<Length, string> {
  if ('length' in operand) return success(operand.length);
  if ('lastAnswer' in operand) {
    const last = bench.conversation.lastReply?.lengths?.[0];
    return last === undefined ? failure('There is no last size to reckon with. Say the size.') : success(last);
  }
  const sizes = sizesOf(bench.state);
  const value = sizes && sizeOf(sizes, operand.size, operand.copy);
  return value ? success(value.length) : failure(`This piece has no size called ${operand.size}.`);
}

function withOperand(bench: Bench, operand: Operand, reckon: (length: Length) => Response): Response {
  const length = operandLength(bench, operand);
  return length.ok ? reckon(length.value) : refuse(length.fault);
}

function withTwo(bench: Bench, left: Operand, right: Operand, reckon: (left: Length, right: Length) => Response): Response {
  return withOperand(bench, left, (leftLength) => withOperand(bench, right, (rightLength) => reckon(leftLength, rightLength)));
}

interface OneAnswer {
  readonly question: string;
  readonly asked: string;
  readonly length: Length;
}

function one(bench: Bench, answer: OneAnswer): Response {
  return tell({
    say: sentence(`${answer.asked} is ${spoken(bench.state, answer.length)}`),
    screen: { name: 'reckoning', result: { question: answer.question, answers: [{ label: '=', length: answer.length }] } },
    lengths: [answer.length],
  });
}

/** Marks are said cumulative from one end, so that errors do not add. */
function equalSpaces(bench: Bench, of: Length, spaces: number): Response {
  const { state } = bench;
  const shares = shareOut(of, spaces);
  const space = shares[0] ?? of;
  const marks = cumulative(shares).slice(0, -1);
  const answers = [{ label: 'each', length: space }, ...marks.map((length, index) => ({ label: `mark ${index + 1}`, length }))];
  const each = sentence(`${spoken(state, of)} in ${sayNumber(spaces)} equal spaces is ${spoken(state, space)} each`);
  const screen = { name: 'reckoning', result: { question: `${written(state, of)} ÷ ${spaces} spaces`, answers } } as const;
  return tellMarks(state, { say: `${each}${marks.length === 0 ? '' : ' Marks from one end.'}`, screen, lengths: [space, ...marks] }, 'mark', marks);
}

/** One mark after the other, for each is drawn before the next is wanted. */
function tellMarks(state: State, reply: Reply, what: 'mark' | 'start', marks: readonly Length[]): Response {
  const whole = marks.length === 0 ? reply.say : `${reply.say.replace(/\.$/, '')}: ${marks.map((mark) => spoken(state, mark)).join('; ')}.`;
  if (countWords(whole) <= MOST_WORDS) return tell({ ...reply, say: whole });
  return tellAll(reply, `${what}s`, marks.map((mark, index) => ({ say: sentence(spoken(state, mark)), note: `${what} ${index + 1}: ${written(state, mark)}`, lengths: [mark] })));
}

function cumulative(shares: readonly Length[]): Length[] {
  const marks: Length[] = [];
  for (const share of shares) marks.push(add(marks.at(-1) ?? nanometres(0), share));
  return marks;
}

/** n parts with n-1 equal gaps between them, as slats or drawer fronts are set out. */
function equalGaps(bench: Bench, of: Length, parts: number, each: Length): Response {
  const { state } = bench;
  if (!wholeWithin(parts) || parts < 2) return refuse(`Gaps lie between two parts or more, up to ${sayNumber(MOST_TIMES)}.`);
  const room = subtract(of, timesWhole(each, parts));
  if (room < 0) {
    return refuse(`${sentence(`${sayNumber(parts)} parts of ${spoken(state, each)} are ${spoken(state, timesWhole(each, parts))}`)} That is more than ${spoken(state, of)}.`);
  }
  const gaps = shareOut(room, parts - 1);
  const gap = gaps[0] ?? room;
  const starts = [nanometres(0), ...cumulative(gaps.map((share) => add(share, each)))];
  const answers = [{ label: 'gap', length: gap }, ...starts.map((length, index) => ({ label: `part ${index + 1} starts`, length }))];
  const screen = { name: 'reckoning', result: { question: `${written(state, of)}, ${parts} parts of ${written(state, each)}`, answers } } as const;
  return tellMarks(state, { say: `${sentence(`${sayNumber(parts - 1)} gaps of ${spoken(state, gap)}`)} Parts start, from one end.`, screen, lengths: [gap, ...starts] }, 'start', starts);
}

function inUnit(bench: Bench, of: Length, unit: Rounding['unit']): Response {
  const chosen = bench.state.settings.rounding;
  const rounding = chosen.unit === unit ? chosen : unit === 'inch' ? THIRTY_SECONDS : HALF_MILLIMETRE_STEP;
  const from = unit === 'inch' ? HALF_MILLIMETRE_STEP : THIRTY_SECONDS;
  return tell({
    say: sentence(`${sayLength(of, from)} is ${sayLength(of, rounding)}`),
    screen: { name: 'reckoning', result: { question: `${writeLength(of, from)} in ${unit === 'inch' ? 'inches' : 'millimetres'}`, answers: [{ label: '=', length: of }], unit } },
    lengths: [of],
  });
}

/** So many whole fractions of an inch, and what is left over. */
function inFractions({ state }: Bench, of: Length, denominator: number): Response {
  const each = NANOMETRES_PER_INCH / denominator;
  const count = Math.trunc(of / each);
  const over = nanometres(Math.abs(of % each));
  const counted = count === 0 ? `less than one ${sayOrdinal(denominator)}` : sayFraction(Math.abs(count), denominator);
  const more = count === 0 || over === 0 ? '' : ` and ${sayLength(over, SIXTY_FOURTHS)}`;
  return tell({
    say: sentence(`${spoken(state, of)} is ${counted}${more}`),
    screen: { name: 'reckoning', result: { question: `${written(state, of)} in ${denominator}${denominator % 10 === 2 ? 'nds' : 'ths'}`, answers: [{ label: '=', length: of }], note: `${count}/${denominator}${over === 0 ? '' : ` + ${writeLength(over, SIXTY_FOURTHS)}`}` } },
    lengths: [of],
  });
}
