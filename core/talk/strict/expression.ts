import { assertNever } from '../../result.ts';

/**
 * Sentences as data: a word, several things in order, or one of several. What is used in many places is one object in all of them, which keeps a
 * grammar of millions of sentences small wherever it is sent.
 */
export type Expression =
  | { readonly kind: 'word'; readonly word: string }
  | { readonly kind: 'all'; readonly parts: readonly Expression[] }
  | { readonly kind: 'either'; readonly options: readonly Option[] };

export interface Option {
  readonly expression: Expression;
  /** How much rarer it is than its neighbours, in hundredths of a natural logarithm, 0 up. */
  readonly cost: number;
}

export const NOTHING: Expression = { kind: 'all', parts: [] };

/** Words with single spaces between. */
export function words(text: string): Expression {
  return all(...text.split(' ').filter((word) => word !== '').map((word): Expression => ({ kind: 'word', word })));
}

/** One after the other. */
export function all(...parts: readonly (Expression | string)[]): Expression {
  const made = parts.map(expressionOf);
  const [only] = made;
  return only !== undefined && made.length === 1 ? only : { kind: 'all', parts: made };
}

/** One of them, all as likely. */
export function either(...options: readonly (Expression | string)[]): Expression {
  return { kind: 'either', options: options.map((option) => ({ expression: expressionOf(option), cost: 0 })) };
}

/** It may be left out. */
export function optional(expression: Expression | string): Expression {
  return either(expression, NOTHING);
}

/** Something that is said more rarely. */
export function rarely(expression: Expression | string, cost: number): Expression {
  return { kind: 'either', options: [{ expression: expressionOf(expression), cost }] };
}

/** Something that nobody can say: a slot without a single example. */
export const NEVER: Expression = either();

/** Every word of the sentences, each once. */
export function wordsIn(expression: Expression): ReadonlySet<string> {
  const found = new Set<string>();
  const seen = new Set<Expression>();
  const visit = (each: Expression): void => {
    if (seen.has(each)) return;
    seen.add(each);
    switch (each.kind) {
      case 'word': found.add(each.word); break;
      case 'all': each.parts.forEach(visit); break;
      case 'either': for (const option of each.options) visit(option.expression); break;
      default: assertNever(each);
    }
  };
  visit(expression);
  return found;
}

function expressionOf(part: Expression | string): Expression {
  return typeof part === 'string' ? words(part) : part;
}
