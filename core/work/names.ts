import { sayNumber } from '../length/say.ts';
import { pluralOf as plural } from '../piece/describe.ts';
import type { Part } from '../piece/file.ts';

export { plural };

/** More than one of it: the file's own word, else by the usual rules. */
export function pluralOf(part: Part): string {
  return part.plural ?? plural(part.name);
}

/** For the ear: 'leg two', or 'the top' when there is only one; all of them when no copy is meant. */
export function oneOf(part: Part, copy: number | undefined): string {
  if (copy === undefined) return allOf(part);
  return part.count === 1 ? `the ${part.name}` : `${part.name} ${sayNumber(copy)}`;
}

/** 'its' of one, 'their' of all together. */
export function its(part: Part, copy: number | undefined): string {
  return copy === undefined && part.count > 1 ? 'their' : 'its';
}

/** For the ear: 'the four legs', 'the top'. */
export function allOf(part: Part): string {
  return part.count === 1 ? `the ${part.name}` : `the ${sayNumber(part.count)} ${pluralOf(part)}`;
}

/** For the eye: 'leg 2 of 4', 'legs', 'top'. */
export function titleSubject(part: Part, copy?: number): string {
  if (part.count === 1) return part.name;
  return copy === undefined ? pluralOf(part) : `${part.name} ${copy} of ${part.count}`;
}

/** What is sawn from rough boards for a part: its layers, its boards, or the blanks of the copies themselves. */
export interface Stock {
  /** How many pieces of wood. */
  readonly count: number;
  /** For the ear: 'the twelve leg layers', 'the five top boards', 'the two long rails'. */
  readonly all: string;
  /** For the ear, of one copy: 'the three layers of leg two', 'the five boards of the top', 'long rail two'. */
  readonly ofCopy: (copy: number | undefined) => string;
  /** For the eye: 'leg layers', 'top boards', 'long rails'. */
  readonly title: string;
  /** For the eye, added to a copy's title: '3 layers', '6 boards'; undefined for a solid part. */
  readonly pieces?: string;
}

export function stockOf(part: Part): Stock {
  if (part.made.kind === 'solid') {
    return { count: part.count, all: allOf(part), ofCopy: (copy) => oneOf(part, copy), title: titleSubject(part) };
  }
  const [each, one] = part.made.kind === 'laminated' ? [part.made.layers, 'layer'] : [part.made.boards, 'board'];
  const pieces = each === 1 ? one : `${one}s`;
  const count = each * part.count;
  const all = `the ${sayNumber(count)} ${part.name} ${count === 1 ? one : `${one}s`}`;
  return {
    count,
    all,
    ofCopy: (copy) => copy === undefined ? all : `the ${sayNumber(each)} ${pieces} of ${oneOf(part, copy)}`,
    title: `${part.name} ${count === 1 ? one : `${one}s`}`,
    pieces: `${each} ${pieces}`,
  };
}

/** 'legs', 'legs and long rails', 'legs, long rails and short rails'. */
export function listed(names: readonly string[]): string {
  return names.length < 2 ? names.join('') : `${names.slice(0, -1).join(', ')} and ${names.at(-1) ?? ''}`;
}

/** 'tenon' of 1, 'tenons' of more, with the number in words. */
export function counted(count: number, one: string): string {
  return `${sayNumber(count)} ${count === 1 ? one : plural(one)}`;
}

/** 'one short rail', 'two legs'. */
export function numbered(part: Part, count: number): string {
  return `${sayNumber(count)} ${count === 1 ? part.name : pluralOf(part)}`;
}

export function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
