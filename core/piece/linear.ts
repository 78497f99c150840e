import { assertNever } from '../result.ts';
import type { Expression } from './expression.ts';
import type { Rational } from './rational.ts';
import { product, quotient, rational, sum, ZERO } from './rational.ts';

/** An expression as so many of each name and something over. Almost every size of a piece is one, and quick to work out. */
export interface Linear {
  readonly constant: Rational;
  readonly terms: ReadonlyMap<string, Rational>;
}

/** `undefined` when names are multiplied or divided by each other. */
export function toLinear(expression: Expression): Linear | undefined {
  switch (expression.kind) {
    case 'number':
    case 'length': return { constant: expression.value, terms: new Map() };
    case 'name': return { constant: ZERO, terms: new Map([[expression.name, rational(1n)]]) };
    case 'negate': return scaled(toLinear(expression.of), rational(-1n));
    case '+': return added(toLinear(expression.left), toLinear(expression.right));
    case '-': return added(toLinear(expression.left), scaled(toLinear(expression.right), rational(-1n)));
    case '*': return multiplied(toLinear(expression.left), toLinear(expression.right));
    case '/': return divided(toLinear(expression.left), toLinear(expression.right));
    default: return assertNever(expression);
  }
}

function scaled(linear: Linear | undefined, factor: Rational): Linear | undefined {
  if (linear === undefined) return undefined;
  const terms = [...linear.terms].map(([name, count]) => [name, product(count, factor)] as const);
  return { constant: product(linear.constant, factor), terms: new Map(terms) };
}

function added(left: Linear | undefined, right: Linear | undefined): Linear | undefined {
  if (left === undefined || right === undefined) return undefined;
  const terms = new Map(left.terms);
  for (const [name, count] of right.terms) terms.set(name, sum(terms.get(name) ?? ZERO, count));
  return { constant: sum(left.constant, right.constant), terms };
}

function multiplied(left: Linear | undefined, right: Linear | undefined): Linear | undefined {
  if (left === undefined || right === undefined) return undefined;
  if (left.terms.size === 0) return scaled(right, left.constant);
  return right.terms.size === 0 ? scaled(left, right.constant) : undefined;
}

function divided(left: Linear | undefined, right: Linear | undefined): Linear | undefined {
  if (right === undefined || right.terms.size > 0) return undefined;
  const factor = quotient(rational(1n), right.constant);
  return factor === undefined ? undefined : scaled(left, factor);
}

/** The names in an expression, each once. */
export function namesIn(expression: Expression, names = new Map<string, number>()): ReadonlyMap<string, number> {
  switch (expression.kind) {
    case 'number':
    case 'length': break;
    case 'name': if (!names.has(expression.name)) names.set(expression.name, expression.at); break;
    case 'negate': namesIn(expression.of, names); break;
    case '+':
    case '-':
    case '*':
    case '/': namesIn(expression.left, names); namesIn(expression.right, names); break;
    default: assertNever(expression);
  }
  return names;
}

