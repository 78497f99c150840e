import type { Bench } from '../../bench/bench.ts';
import { ZERO_LENGTH } from '../../length/length.ts';
import { isTruing } from '../../work/truing.ts';
import { padSize, stepNow } from '../context.ts';
import { rowsOf } from '../pattern.ts';
import type { Built, SlotValues } from '../slot.ts';

const row = rowsOf('answers');

/** A size was asked for, be it a thickness at one place. */
function asksLength({ conversation: { question } }: Bench): boolean {
  return question?.kind === 'length' || (question?.kind === 'surface reading' && question.what === 'thickness');
}

/** A gap was asked for, which is less than any size. */
function asksGap(bench: Bench): boolean {
  return asksReading(bench) && !asksLength(bench);
}

function asksReading({ conversation: { question } }: Bench): boolean {
  return question?.kind === 'surface reading';
}

/** A side of a board is on the screen, or the step is one of truing. */
function isTrued(bench: Bench): boolean {
  const step = stepNow(bench);
  return bench.conversation.screen.name === 'truing' || (step !== undefined && isTruing(step));
}

/** A gap and its way, in the order in which they were said. While none is asked for and a side is being trued, the guide asks for it again: where it was read is not known. */
function reading({ sense, gap }: Pick<SlotValues, 'sense' | 'gap'>, bench: Bench): Built {
  return asksReading(bench) ? { kind: 'answer reading', sense, length: gap } : askedForNone(bench);
}

function askedForNone(bench: Bench): Built {
  return isTrued(bench) ? { kind: 'read side', of: {} } : { fault: 'I have asked for no reading; have the readings of that side taken first' };
}

/** Answers to a question that the bench has asked; yes and no mean themselves also when it has not. */
export const ANSWER_ROWS = [
  row('one of the choices', ['{choice}', '[number] {choice}', 'i mean {choice}', 'it is {choice}'], ({ choice }) => ({ kind: 'choose', index: choice })),
  row('the size that was asked for', ['{length}'], ({ length }, bench) => (asksLength(bench) ? { kind: 'answer length', length } : undefined)),
  row('the size that was asked for', ['(it|that) (is|measures|was) {length}', 'i (measure|measured|get|have) {length}'],
    ({ length }, bench) => (asksLength(bench) ? { kind: 'answer length', length } : { fault: 'I have asked for no size; say part, dimension and size' })),
  // By the pad on the screen. Not 'that is': the bench says so itself of what was measured.
  row('the size that was asked for', ['it (is|measures|was) {length}', 'i (measure|measured|get|have) {length}'], ({ length }, bench) => {
    const size = asksLength(bench) ? undefined : padSize(bench);
    return size && { kind: 'record', ...size, length };
  }),
  row('a gap that was asked for', ['{gap}', '(it|that) (is|measures|was) {gap}', 'i (measure|measured|get|have) {gap}'], ({ gap }, bench) => (asksGap(bench) ? { kind: 'answer length', length: gap } : undefined)),
  row('a gap that was asked for, and which way it goes', ['[it is] {sense} [by] {gap}', '{gap} {sense}'], reading),
  row('a gap that was asked for, as the sticks show it', ['[the] [winding] sticks (show|are) {lean} [by] {gap}'], ({ lean, gap }, bench) => reading({ sense: lean, gap }, bench)),
  row('a gap that was asked for, and which end is high by it', ['[the] {lean} [is] {gap} high'], ({ lean, gap }, bench) => reading({ sense: lean, gap }, bench)),
  row('which way a gap goes', ['{sense}'], ({ sense }, bench) => (asksReading(bench) ? { kind: 'answer sense', sense } : undefined)),
  row('no gap', ['no (gap|light)', 'nothing', 'none', 'level', 'flat', 'it touches', 'no daylight'], (_, bench) => (asksReading(bench) ? { kind: 'answer reading', length: ZERO_LENGTH } : undefined)),
  row('no gap, as the sticks show it', ['(they|the sticks) (agree|line up|are level)'], (_, bench) => (asksReading(bench) ? { kind: 'answer reading', length: ZERO_LENGTH } : askedForNone(bench))),
  row('a reading that cannot be taken', ['leave [it|this|that] out', 'skip (it|this|that)', 'skip', 'next'], (_, bench) => (asksReading(bench) ? { kind: 'leave out reading' } : undefined)),
  row('enough readings', ['[that is] enough', 'stop'], (_, bench) => (asksReading(bench) ? { kind: 'no' } : undefined)),
  row('yes', ['yes [it is]', 'yeah', 'yep', 'sure', 'correct', '[yes] (that|it) is (right|correct|so)'], () => ({ kind: 'yes' })),
  row('no', ['no [it is not]', 'nope', 'no thanks', 'never mind', 'leave it', 'cancel'], () => ({ kind: 'no' })),
];
