import type { Length } from '../length/length.ts';
import type { Result } from '../result.ts';
import type { Telling } from './telling.ts';

/**
 * A reckoning is one question of the trade with its inputs named, so that the same function answers on the command line, in a test and at
 * the bench. Folders contribute theirs as data; what reads the inputs and writes the answer is here.
 */
export interface Reckoning {
  /** One or more small words joined by hyphens: 'mortise-and-tenon'. */
  readonly name: string;
  /** What it answers, in one line. */
  readonly about: string;
  readonly inputs: Fields;
  readonly reckon: (values: Values) => Result<Outcome, InputFault>;
}

export type Fields = Readonly<Record<string, Field>>;

interface Described {
  /** What the input is, in the words of the trade. */
  readonly say: string;
  /** Taken when nothing is given, as it would be typed. Without it the input must be given, unless `optional`. */
  readonly default?: string;
  readonly optional?: true;
}

export type Field = Described & (
  /** Nothing or more, but for `mayBeNegative`. */
  | { readonly kind: 'length'; readonly mayBeNegative?: true }
  /** Several lengths with commas between; each nothing or more, but for `mayBeNegative`. */
  | { readonly kind: 'lengths'; readonly mayBeNegative?: true }
  | { readonly kind: 'number'; readonly unit: string; readonly least: number; readonly most: number; readonly whole?: true }
  | { readonly kind: 'choice'; readonly options: readonly string[] }
  /** Words of the trade, read by the reckoning itself; `such` is an example. */
  | { readonly kind: 'words'; readonly such: string });

export type Value = Length | readonly Length[] | number | string | undefined;
export type Values = Readonly<Record<string, Value>>;

/** What is wrong with the inputs, and which one to look at; told to the person as it stands. */
export interface InputFault {
  /** Absent when no single input is to blame. */
  readonly key?: string;
  readonly message: Telling;
}

export interface Outcome {
  readonly result: readonly Figure[];
  /** How it was reckoned, one sentence a step. */
  readonly how: readonly Telling[];
  /** Where the figures and formulas come from; 'common practice, no source' where there is none. */
  readonly source: readonly string[];
  /** What the maker should look at before cutting. */
  readonly warnings?: readonly Telling[];
}

/** One figure of the answer. */
export type Figure = { readonly key: string } & FigureValue;

type FigureValue =
  | { readonly length: Length }
  | { readonly lengths: readonly Length[] }
  | { readonly number: number; readonly unit: string }
  | { readonly text: string }
  /** Stages, drawings and the like: lengths in it are in nanometres. */
  | { readonly data: unknown; readonly unit: 'nanometres' };

type ValueOf<One extends Field> =
  | (One extends { readonly kind: 'length' } ? Length : never)
  | (One extends { readonly kind: 'lengths' } ? readonly Length[] : never)
  | (One extends { readonly kind: 'number' } ? number : never)
  | (One extends { readonly kind: 'choice'; readonly options: readonly (infer Option)[] } ? Option : never)
  | (One extends { readonly kind: 'words' } ? string : never)
  | (One extends { readonly optional: true } ? undefined : never);

/** What a reckoning gets of its fields, once they are read. */
export type ValuesOf<Given extends Fields> = { readonly [Key in keyof Given]: ValueOf<Given[Key]> };

/** Puts a reckoning together so that its function is typed by its inputs. */
export function reckoning<const Given extends Fields>(definition: {
  readonly name: string; readonly about: string; readonly inputs: Given;
  readonly reckon: (values: ValuesOf<Given>) => Result<Outcome, InputFault>;
}): Reckoning {
  // The reader gives every field a value of its kind before this is called, which the plain record cannot say.
  return { ...definition, reckon: definition.reckon as unknown as Reckoning['reckon'] };
}
