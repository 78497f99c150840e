import type { Length } from '../length/length.ts';
import { sayLength } from '../length/say.ts';
import { writeLength } from '../length/write.ts';
import { sayNumber, sayOrdinal } from '../length/sayNumber.ts';
import type { State } from '../journal/state.ts';
import { describeSize } from '../piece/describe.ts';
import { sizeOf } from '../piece/evaluate.ts';
import type { SizeName } from '../piece/measurement.ts';
import type { Blank } from '../stock/board.ts';
import { cutNoun } from '../stock/blanks.ts';
import { renderSentence } from '../piece/fits.ts';
import type { Sentence } from '../piece/sentence.ts';
import type { SizeMention, Wording } from '../work/step.ts';
import { renderWording } from '../work/wording.ts';
import { sizesOf } from './views.ts';

/** A length for the ear at the rounding the maker chose. */
export function spoken(state: State, length: Length): string {
  return sayLength(length, state.settings.rounding);
}

/** A length for the eye at the rounding the maker chose. */
export function written(state: State, length: Length): string {
  return writeLength(length, state.settings.rounding);
}

/** For the ear (`spoken`) or for the eye (`written`). */
export type TellLength = (state: State, length: Length) => string;

/** 'leg two', 'long rail', 'inside': whose size it is, with the copy when one is meant. */
export function sayOwner(state: State, size: SizeName, copy?: number): string {
  const description = state.piece && describeSize(state.piece, size);
  if (!description) return size;
  return copy === undefined ? description.owner.name : `${description.owner.name} ${sayNumber(copy)}`;
}

/** 'leg two, width', 'long rail, shoulder to shoulder': the subject of a sentence about a size. */
export function saySubject(state: State, size: SizeName, copy?: number): string {
  const description = state.piece && describeSize(state.piece, size);
  if (!description) return size;
  const owner = sayOwner(state, size, copy);
  return description.owner.kind === 'parameter' ? description.say : `${owner}, ${description.say}`;
}

/** The wording of a step for the ear, with its sizes filled in. */
export function sayWording(state: State, wording: Wording): string {
  return renderWording(wording, (mention) => sayMention(state, mention));
}

function sayMention(state: State, mention: SizeMention): string {
  const sizes = sizesOf(state);
  const value = sizes && sizeOf(sizes, mention.size, mention.copy);
  return value ? spoken(state, value.length) : mention.size;
}

/** A sentence with sizes and lengths in it, for the ear unless for the eye. */
export function saySentence(state: State, said: Sentence, tellLength: TellLength = spoken): string {
  const sizes = sizesOf(state);
  return renderSentence(said, ({ size, copy }) => sizes ? sizeOf(sizes, size, copy)?.length : undefined, (length) => tellLength(state, length));
}

/** 'one, two and three': a list as it is said. */
export function sayList(items: readonly string[], joining = 'and'): string {
  const last = items.at(-1);
  if (last === undefined) return '';
  return items.length === 1 ? last : `${items.slice(0, -1).join(', ')} ${joining} ${last}`;
}

/** 'one leg', 'four legs' */
export function sayCount(count: number, singular: string, plural: string): string {
  return `${sayNumber(count)} ${count === 1 ? singular : plural}`;
}

/** 'one leg layer', 'six top boards': how many of what is cut of a part. */
export function sayCut(state: State, blank: Pick<Blank, 'id' | 'name'>, count: number): string {
  return `${sayNumber(count)} ${cutNoun(state.piece?.file.parts ?? [], blank, count)}`;
}

/** 'nine', 'nine fifty', 'nine oh five': money has no name here. */
export function sayPrice(cents: number): string {
  const [whole, part] = [Math.floor(cents / 100), cents % 100];
  return [sayNumber(whole), part === 0 ? '' : part < 10 ? `oh ${sayNumber(part)}` : sayNumber(part)].filter(Boolean).join(' ');
}

/** First letter large, full stop at the end: a line for the eye. */
export function sentence(text: string): string {
  const trimmed = text.trim();
  const ended = /[.!?]$/.test(trimmed) ? trimmed : `${trimmed}.`;
  return ended.charAt(0).toUpperCase() + ended.slice(1);
}

/** 'half', 'a third', 'three quarters': a part of something. */
export function sayFraction(numerator: number, denominator: number): string {
  if (numerator === 1 && denominator === 2) return 'half';
  const ordinal = denominator === 4 ? 'quarter' : sayOrdinal(denominator);
  return numerator === 1 ? `a ${ordinal}` : `${sayNumber(numerator)} ${ordinal}s`;
}
