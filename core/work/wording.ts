import { nanometres, NANOMETRES_PER_INCH, NANOMETRES_PER_MILLIMETRE, type Length } from '../length/length.ts';
import { roundLength } from '../length/round.ts';
import type { Rounding } from '../length/rounding.ts';
import { sayLength, sayNumber } from '../length/say.ts';
import { writeLength } from '../length/write.ts';
import type { Check, SizeMention, Step, Wording } from './step.ts';

/** The text, with each size put into words by `sayMention`, at the rounding the maker chose. */
export function renderWording(wording: Wording, sayMention: (mention: SizeMention) => string): string {
  return wording.map((item) => (typeof item === 'string' ? item : sayMention(item))).join('');
}

/** Puts pieces of text and sizes together; what is undefined (a size that the piece does not have) falls out. */
export function words(...pieces: readonly (string | SizeMention | Wording | undefined)[]): Wording {
  const items: (string | SizeMention)[] = [];
  for (const item of pieces.flat() as readonly (string | SizeMention | undefined)[]) {
    const last = items.at(-1);
    if (item === undefined || item === '') continue;
    if (typeof item === 'string' && typeof last === 'string') items[items.length - 1] = last + item;
    else items.push(item);
  }
  return items;
}

/** `before`, the size and `after`; or nothing when the piece does not have the size. */
export function around(before: string, mention: SizeMention | undefined, after = ''): Wording {
  return mention === undefined ? [] : [before, mention, after];
}

/** The sizes that a text mentions, each once, in order. */
export function mentionsIn(...wordings: readonly Wording[]): readonly SizeMention[] {
  const mentions = new Map<string, SizeMention>();
  for (const item of wordings.flat()) if (typeof item !== 'string') mentions.set(`${item.size} ${item.copy ?? ''}`, item);
  return [...mentions.values()];
}

/** What the check asks, with its tolerance: 'No light under the straightedge. Within one sixty-fourth of an inch.' */
export function sayCheck({ say, tolerance }: Check, sayMention: (mention: SizeMention) => string, unit: Rounding['unit']): string {
  const asked = renderWording(say, sayMention);
  return tolerance === undefined ? asked : `${asked} Within ${sayTolerance(tolerance, unit)}.`;
}

const SIXTY_FOURTH = NANOMETRES_PER_INCH / 64;
const THOUSANDTH = NANOMETRES_PER_INCH / 1000;
const METRIC_STEP = nanometres(NANOMETRES_PER_MILLIMETRE / 20);
const SIXTY_FOURTHS: Rounding = { unit: 'inch', denominator: 64 };
const TWENTIETHS: Rounding = { unit: 'millimetre', step: METRIC_STEP };

/** A tolerance for the ear, never rounded away: 'one sixty-fourth of an inch', 'six thousandths of an inch', 'zero point four millimetres'. */
export function sayTolerance(tolerance: Length, unit: Rounding['unit']): string {
  if (unit === 'millimetre') return sayLength(roundLength(tolerance, TWENTIETHS).rounded, TWENTIETHS);
  if (tolerance % SIXTY_FOURTH === 0) return sayLength(tolerance, SIXTY_FOURTHS);
  const thousandths = Math.round(tolerance / THOUSANDTH);
  return `${sayNumber(thousandths)} ${thousandths === 1 ? 'thousandth' : 'thousandths'} of an inch`;
}

/** A tolerance for the eye: '1/64 in', '0.006 in', '0.40 mm'. */
export function writeTolerance(tolerance: Length, unit: Rounding['unit']): string {
  if (unit === 'millimetre') return writeLength(roundLength(tolerance, TWENTIETHS).rounded, TWENTIETHS);
  if (tolerance % SIXTY_FOURTH === 0) return writeLength(tolerance, SIXTY_FOURTHS);
  return `${(Math.round(tolerance / THOUSANDTH) / 1000).toFixed(3)} in`;
}

/** 'leg/3' → 'front left', once the copies have been told where they go. */
export type Places = ReadonlyMap<string, string>;

/** Where the one copy of this step goes; undefined for several copies, and before it was oriented. */
export function placeOf(step: Step, places: Places): string | undefined {
  return step.part === undefined || step.copy === undefined ? undefined : places.get(`${step.part}/${step.copy}`);
}

/** The title, with the place once it is known: 'Chop mortises, leg 3 of 4, back left: long rail joint'. */
export function titleOf(step: Step, places: Places): string {
  const place = placeOf(step, places);
  if (place === undefined) return step.title;
  const [subject = '', ...rest] = step.title.split(': ');
  return [`${subject}, ${place}`, ...rest].join(': ');
}

/** The sentence for the ear, with the place once it is known: 'Square the ends of leg three. Its place is back left.' */
export function sayingOf(step: Step, places: Places): Wording {
  const place = placeOf(step, places);
  return place === undefined ? step.say : words(step.say, ` Its place is ${place}.`);
}
