import { assertNever } from '../result.ts';
import type { Bench } from '../bench/bench.ts';
import type { Response } from '../bench/reply.ts';
import type { AnswerRequest, Request } from '../bench/request.ts';
import { refuse, tell } from './plain.ts';
import { answeredReading, askHowMuch } from './truingReading.ts';

/** Turns an answer to the open question into the request that it stands for, or into a reply when there is none. */
export function readAnswer(bench: Bench, answer: AnswerRequest): Request | Response {
  const { question } = bench.conversation;
  // What is being told piece by piece is left as a question is.
  if (!question && answer.kind === 'no') return bench.conversation.inTurn === undefined ? refuse('Nothing is open: I have asked nothing, and nothing was changed.') : { kind: 'tell in turn', to: 'enough' };
  if (!question) return refuse('I have asked nothing.');
  switch (answer.kind) {
    case 'yes':
      return question.kind === 'yes or no' ? question.onYes : refuse('That was not a yes or no question.', { question });
    case 'no':
      return tell({ say: 'Left as it was.', signal: 'done' });
    case 'choose': {
      const chosen = question.kind === 'which' ? question.choices[answer.index] : undefined;
      return chosen ? chosen.request : refuse('There is no such choice.', { question });
    }
    case 'answer length': {
      if (question.kind === 'surface reading') return answeredReading(question, answer.length, question.sense);
      if (question.kind !== 'length') return refuse('I did not ask for a size.', { question });
      const copy = question.copy === undefined ? {} : { copy: question.copy };
      return { kind: 'record', size: question.size, ...copy, length: answer.length };
    }
    case 'answer sense':
      return question.kind === 'surface reading' ? askHowMuch(question, answer.sense) : refuse('I did not ask for a reading.', { question });
    case 'answer reading':
      return question.kind === 'surface reading' ? answeredReading(question, answer.length, answer.sense) : refuse('I did not ask for a reading.', { question });
    default:
      return assertNever(answer);
  }
}
