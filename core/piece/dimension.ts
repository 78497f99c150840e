import { assertNever, failure, success } from '../result.ts';
import type { Result } from '../result.ts';
import type { Expression, ExpressionFault } from './expression.ts';

/**
 * What an expression measures, as a power of length: 0 a plain number, 1 a length, 2 an area. Every named size is a length.
 * Fails where a number and a length are added.
 */
function powerOf(expression: Expression): Result<number, ExpressionFault> {
  switch (expression.kind) {
    case 'number': return success(0);
    case 'length':
    case 'name': return success(1);
    case 'negate': return powerOf(expression.of);
    case '+':
    case '-':
    case '*':
    case '/': {
      const left = powerOf(expression.left);
      if (!left.ok) return left;
      const right = powerOf(expression.right);
      return right.ok ? combine(expression, left.value, right.value) : right;
    }
    default: return assertNever(expression);
  }
}

function combine(expression: Extract<Expression, { left: unknown }>, left: number, right: number): Result<number, ExpressionFault> {
  if (expression.kind === '*') return success(left + right);
  if (expression.kind === '/') return success(left - right);
  if (left === right) return success(left);
  const mixedFraction = expression.kind === '-' && left === 0 && right === 1;
  return failure({
    at: expression.at,
    expected: `two of a kind around '${expression.kind}'`,
    found: `${nameOf(left)} and ${nameOf(right)}`,
    message: mixedFraction ? 'Give the first number its unit; a mixed fraction is written with a space, as in 3 7/16 in.'
      : 'Only like can be added to like: give the plain number a unit, such as 3 in.',
  });
}

/** Holds an expression to being a length; says what it is instead. */
export function checkIsLength(expression: Expression): Result<Expression, ExpressionFault> {
  const power = powerOf(expression);
  if (!power.ok) return power;
  if (power.value === 1) return success(expression);
  return failure({ at: 0, expected: 'a length', found: nameOf(power.value), message: adviceFor(power.value) });
}

function nameOf(power: number): string {
  switch (power) {
    case 0: return 'a number without a unit';
    case 1: return 'a length';
    case 2: return 'an area (a length times a length)';
    default: return `a length to the power ${power}`;
  }
}

function adviceFor(power: number): string {
  if (power === 0) return 'No unit: write in, mm, ft … after the number, or multiply the ratio by a length.';
  if (power > 1) return 'A length times a length is an area: multiply by a plain number, or divide by a length.';
  return 'A number over a length is not a length: turn the division round.';
}
