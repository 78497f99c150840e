import { assertNever } from '../result.ts';
import type { Expression } from './expression.ts';
import { toLinear } from './linear.ts';
import type { Rational } from './rational.ts';
import { negative, product, quotient, rational, roundHalfAway, sum } from './rational.ts';

/** A size that a formula stands on: a node of the graph, and the copy when one is named (`leg.2.width`). */
export interface Reference {
  readonly name: string;
  readonly node: number;
  readonly copy: number | undefined;
}

/** An expression made ready to be worked out again and again. */
export interface Formula {
  readonly expression: Expression;
  readonly references: readonly Reference[];
  /** (sum of coefficient × reference + constant) / divisor, all safe whole numbers; absent when the expression is not of that form. */
  readonly linear?: { readonly coefficients: readonly number[]; readonly constant: number; readonly divisor: number };
}

export function makeFormula(expression: Expression, references: readonly Reference[]): Formula {
  const linear = toLinear(expression);
  if (linear === undefined) return { expression, references };
  const counts = references.map(({ name }) => linear.terms.get(name) ?? rational(0n));
  const divisor = [linear.constant, ...counts].reduce((common, { denominator }) => leastCommonMultiple(common, denominator), 1n);
  const whole = ({ numerator, denominator }: Rational): number => Number(numerator * (divisor / denominator));
  const form = { coefficients: counts.map(whole), constant: whole(linear.constant), divisor: Number(divisor) };
  const safe = [...form.coefficients, form.constant, form.divisor].every(Number.isSafeInteger);
  return safe ? { expression, references, linear: form } : { expression, references };
}

/**
 * The formula's value in nanometres, exact and rounded once to the nearest (half away from zero). Undefined when it divides by nothing
 * or leaves the range of safe whole numbers. `valueOf` gives whole nanometres.
 */
export function formulaValue(formula: Formula, valueOf: (reference: Reference) => number): number | undefined {
  return quickValue(formula, valueOf) ?? slowValue(formula, valueOf);
}

/** In plain numbers while every step stays a safe whole number; undefined when one does not. */
function quickValue({ linear, references }: Formula, valueOf: (reference: Reference) => number): number | undefined {
  if (linear === undefined) return undefined;
  let total = linear.constant;
  for (let index = 0; index < references.length; index++) {
    const reference = references[index];
    if (reference === undefined) break;
    const term = (linear.coefficients[index] ?? 0) * valueOf(reference);
    total += term;
    if (!Number.isSafeInteger(term) || !Number.isSafeInteger(total)) return undefined;
  }
  return linear.divisor === 1 ? total : divideHalfAway(total, linear.divisor);
}

/** Exact: the remainder of two safe whole numbers is exact, and so is the division that is left. */
function divideHalfAway(total: number, divisor: number): number {
  const remainder = total % divisor;
  const whole = (total - remainder) / divisor;
  return Math.abs(remainder) >= divisor - Math.abs(remainder) ? whole + Math.sign(remainder) : whole;
}

function slowValue({ expression, references }: Formula, valueOf: (reference: Reference) => number): number | undefined {
  const values = new Map(references.map((reference) => [reference.name, rational(BigInt(valueOf(reference)))]));
  const exact = workOut(expression, values);
  if (exact === undefined) return undefined;
  const rounded = Number(roundHalfAway(exact));
  return Number.isSafeInteger(rounded) ? rounded : undefined;
}

function workOut(expression: Expression, values: ReadonlyMap<string, Rational>): Rational | undefined {
  switch (expression.kind) {
    case 'number':
    case 'length': return expression.value;
    case 'name': return values.get(expression.name);
    case 'negate': {
      const value = workOut(expression.of, values);
      return value && negative(value);
    }
    case '+':
    case '-':
    case '*':
    case '/': {
      const left = workOut(expression.left, values);
      const right = left && workOut(expression.right, values);
      return left && right && combine(expression.kind, left, right);
    }
    default: return assertNever(expression);
  }
}

function combine(operator: '+' | '-' | '*' | '/', left: Rational, right: Rational): Rational | undefined {
  switch (operator) {
    case '+': return sum(left, right);
    case '-': return sum(left, negative(right));
    case '*': return product(left, right);
    case '/': return quotient(left, right);
    default: return assertNever(operator);
  }
}

function leastCommonMultiple(a: bigint, b: bigint): bigint {
  let [large, small] = [a, b];
  while (small !== 0n) [large, small] = [small, large % small];
  return (a / large) * b;
}
