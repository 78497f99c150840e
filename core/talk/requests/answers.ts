import { rowsOf } from '../pattern.ts';

const row = rowsOf('answers');

/** Answers to a question that the bench has asked; yes and no mean themselves also when it has not. */
export const ANSWER_ROWS = [
  row('one of the choices', ['{choice}', '[number] {choice}', 'i mean {choice}', 'it is {choice}'], ({ choice }) => ({ kind: 'choose', index: choice })),
  row('the size that was asked for', ['{length}'], ({ length }, { conversation: { question } }) => (question?.kind === 'length' ? { kind: 'answer length', length } : undefined)),
  row('the size that was asked for', ['(it|that) (is|measures|was) {length}', 'i (measure|measured|get|have) {length}'],
    ({ length }, { conversation: { question } }) => (question?.kind === 'length' ? { kind: 'answer length', length } : { fault: 'I have asked for no size; say part, dimension and size' })),
  row('yes', ['yes [it is]', 'yeah', 'yep', 'sure', 'correct', '[yes] (that|it) is (right|correct|so)'], () => ({ kind: 'yes' })),
  row('no', ['no [it is not]', 'nope', 'no thanks', 'never mind', 'leave it'], () => ({ kind: 'no' })),
];
