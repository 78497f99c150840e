import type { Bench } from '../../bench/bench.ts';
import { lastPart, lastSize } from '../context.ts';

/** What a half sentence can stand on. */
const STANDS_ON = {
  /** A reply that can be said again. */
  reply: ({ conversation: { lastReply } }: Bench) => (lastReply?.say ?? '') !== '',
  /** An answer that can be reckoned on with. */
  answer: ({ conversation: { lastReply } }: Bench) => (lastReply?.lengths?.length ?? 0) > 0,
  size: (bench: Bench) => lastSize(bench) !== undefined,
  part: (bench: Bench) => lastPart(bench) !== undefined,
  copy: (bench: Bench) => lastPart(bench)?.copy !== undefined,
  measurement: ({ state: { measurements } }: Bench) => measurements.length > 0,
  telling: ({ conversation: { inTurn } }: Bench) => inTurn !== undefined,
  deed: ({ acts: { standing } }: Bench) => standing.length > 0,
  'deed taken back': ({ acts: { scratched } }: Bench) => scratched.length > 0,
} as const satisfies Readonly<Record<string, (bench: Bench) => boolean>>;

export type Ground = keyof typeof STANDS_ON;

/**
 * The rows of talk, by what they are about, that say nothing where there is nothing for them to stand on: then they are not listened for, so that noise is not taken for
 * one of them. Typed or on a key they are answered all the same.
 */
export const FOLLOWS_ON: ReadonlyMap<string, Ground> = new Map<string, Ground>([
  ['another size of the same', 'part'], ['the same size of another', 'size'],
  ['say it again', 'reply'], ['say it slower', 'reply'], ['say it digit by digit', 'answer'],
  ['take the last thing back', 'deed'], ['put back what was taken', 'deed taken back'],
  ['the next of what is told', 'telling'], ['what is told, from its beginning', 'telling'], ['enough of what is told', 'telling'],
  ['why the last size is what it is', 'size'], ['record the size shown', 'size'], ['record the last size', 'size'], ['forget the last measurement', 'measurement'],
  ['how far off the last part is', 'part'],
  ['something more than the last answer', 'answer'], ['something less than the last answer', 'answer'], ['so many times the last answer', 'answer'], ['the last answer divided', 'answer'], ['the last answer in the other unit', 'answer'],
  ['faces to show and to hide, of the one on the screen', 'copy'], ['what a face is, of the one on the screen', 'copy'], ['grain up, of the one on the screen', 'copy'], ['grain down, of the one on the screen', 'copy'],
  ['arches up, of the one on the screen', 'copy'], ['arches down, of the one on the screen', 'copy'],
]);

/** What there is to stand on now. */
export function groundsOf(bench: Bench): ReadonlySet<Ground> {
  return new Set((Object.keys(STANDS_ON) as Ground[]).filter((ground) => STANDS_ON[ground](bench)));
}
