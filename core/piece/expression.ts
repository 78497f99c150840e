import { failure, success } from '../result.ts';
import type { Result } from '../result.ts';
import { isUnit, readLiteral } from './literal.ts';
import type { Rational } from './rational.ts';

/** A size as it is worked out: plain arithmetic over named sizes and lengths with units. `at` is the place in its text, from 0. */
export type Expression =
  | { readonly kind: 'number'; readonly value: Rational; readonly at: number }
  /** In nanometres, not yet rounded: `1/3 in` is exact here. */
  | { readonly kind: 'length'; readonly value: Rational; readonly at: number }
  | { readonly kind: 'name'; readonly name: string; readonly at: number }
  | { readonly kind: 'negate'; readonly of: Expression; readonly at: number }
  | { readonly kind: Operator; readonly left: Expression; readonly right: Expression; readonly at: number };

type Operator = '+' | '-' | '*' | '/';

/** What is wrong in an expression, and where in its text (from 0). */
export interface ExpressionFault {
  readonly at: number;
  readonly expected: string;
  readonly found: string;
  readonly message: string;
}

/** Longer sizes than this are not written by hand. */
export const LONGEST_EXPRESSION = 500;
const DEEPEST_PARENTHESES = 40;

interface Reading {
  readonly text: string;
  at: number;
  depth: number;
}

/** Thrown inside this file only, and caught at its door. */
class Unreadable extends Error {
  readonly fault: ExpressionFault;
  constructor(fault: ExpressionFault) {
    super(fault.message);
    this.fault = fault;
  }
}

/**
 * Reads + - * / parentheses, dotted names and numbers with units. It does not look at whether names exist (the graph does)
 * nor at whether the whole is a length (`checkIsLength` in dimension.ts does). The fault is the first one met.
 */
export function parseExpression(text: string): Result<Expression, ExpressionFault> {
  const reading: Reading = { text, at: 0, depth: 0 };
  try {
    if (text.length > LONGEST_EXPRESSION) stop(LONGEST_EXPRESSION, `at most ${LONGEST_EXPRESSION} characters`, `${text.length} characters`, 'Split it over parameters of its own.');
    const whole = readSum(reading);
    if (reading.at < text.length) stopAtRest(reading);
    return success(whole);
  } catch (error) {
    if (error instanceof Unreadable) return failure(error.fault);
    throw error;
  }
}

function readSum(reading: Reading): Expression {
  let left = readProduct(reading);
  for (let operator = peek(reading); operator === '+' || operator === '-'; operator = peek(reading)) {
    const at = reading.at++;
    left = { kind: operator, left, right: readProduct(reading), at };
  }
  return left;
}

function readProduct(reading: Reading): Expression {
  let left = readFactor(reading);
  for (let operator = peek(reading); operator === '*' || operator === '/'; operator = peek(reading)) {
    const at = reading.at++;
    left = { kind: operator, left, right: readFactor(reading), at };
  }
  return left;
}

function readFactor(reading: Reading): Expression {
  const next = peek(reading);
  const at = reading.at;
  if (next === '(' || next === '-') {
    if (++reading.depth > DEEPEST_PARENTHESES) stop(at, `at most ${DEEPEST_PARENTHESES} brackets inside each other`, 'more', 'Split it over parameters of its own.');
    reading.at++;
    const inside = next === '(' ? readSum(reading) : readFactor(reading);
    if (next === '(') closeBracket(reading, at);
    reading.depth--;
    return next === '(' ? inside : { kind: 'negate', of: inside, at };
  }
  return readName(reading) ?? readNumber(reading);
}

function closeBracket(reading: Reading, opened: number): void {
  if (peek(reading) !== ')') stop(reading.at, 'a closing bracket', foundAt(reading), `Close the bracket opened at character ${opened + 1} of the size.`);
  reading.at++;
}

const NAME = /[a-z][A-Za-z0-9]*(?:\.[A-Za-z0-9]+)*/uy;

function readName(reading: Reading): Expression | undefined {
  NAME.lastIndex = reading.at;
  const name = NAME.exec(reading.text)?.[0];
  if (name === undefined) return undefined;
  if (isUnit(name)) stop(reading.at, 'a number before the unit', name, `Write how many ${name} there are, as in 3 ${name}.`);
  const at = reading.at;
  reading.at += name.length;
  return { kind: 'name', name, at };
}

function readNumber(reading: Reading): Expression {
  const at = reading.at;
  const literal = readLiteral(reading.text.slice(at));
  if (literal === undefined) {
    return stop(at, 'a size: a number with its unit, the name of a size, or a bracket', foundAt(reading), whyNoNumber(reading));
  }
  reading.at += literal.length;
  return { kind: literal.hasUnit ? 'length' : 'number', value: literal.value, at };
}

function whyNoNumber(reading: Reading): string {
  const rest = reading.text.slice(reading.at);
  if (rest === '') return reading.text.trim() === '' ? 'Write the size, such as 3 1/4 in.' : 'The size ends too soon: write what comes next, or take away the last sign.';
  if (/^[A-Z]/u.test(rest)) return 'Names of sizes begin with a small letter.';
  if (/^\d+\/0/u.test(rest)) return 'A fraction cannot be over zero.';
  if (/^\d/u.test(rest)) return 'Write numbers with at most twelve digits on each side of one point.';
  if (/^[.,]/u.test(rest)) return 'Write decimals with a digit before the point, as in 0.5 in.';
  return 'Sizes are made of numbers with units, names, + - * / and round brackets.';
}

function stopAtRest(reading: Reading): never {
  const rest = reading.text.slice(reading.at);
  const advice = rest.startsWith(')') ? 'There is one closing bracket too many.'
    : rest.startsWith(',') ? 'Write decimals with a point, and one size at a time.'
      : 'Put + - * or / between two sizes; write a mixed fraction with a space and its unit, as in 3 1/4 in.';
  stop(reading.at, 'the end, or one of + - * /', foundAt(reading), advice);
}

/** Skips blanks and looks at the next character ('' at the end). */
function peek(reading: Reading): string {
  while (/\s/u.test(reading.text.charAt(reading.at))) reading.at++;
  return reading.text.charAt(reading.at);
}

function foundAt(reading: Reading): string {
  const rest = reading.text.slice(reading.at);
  const word = /^(?:[A-Za-z0-9.]{1,30}|[^]?)/u.exec(rest)?.[0] ?? '';
  return word === '' ? 'the end' : `'${word}'`;
}

function stop(at: number, expected: string, found: string, message: string): never {
  throw new Unreadable({ at, expected, found, message });
}
