import { assertNever } from '../result.ts';
import type { Bench } from '../bench/bench.ts';
import type { Question, Reply, Response } from '../bench/reply.ts';
import type { TalkRequest } from '../bench/request.ts';
import type { State } from '../journal/state.ts';
import { askFor } from './recordQuestions.ts';
import { sayList, sentence } from './saying.ts';
import { howMuchWords } from './truingReading.ts';
import { sideToTrue } from './truingSide.ts';
import { aloud, questionOf } from './truingWords.ts';

/** The reply with the question left open: nobody has to begin anew for a word that was misheard, or because it was too loud. */
export function stillAsked({ conversation: { question } }: Bench, response: Response): Response {
  return question === null ? response : { ...response, reply: { ...response.reply, question } };
}

/** What was not understood, and the question once more; twice in a row may be talk in the room or a radio, and the bench would go on and on with it. The eye has the question each time. */
export function askedOnceMore({ state, conversation: { lastReply } }: Bench, question: Question, { because, heard }: Extract<TalkRequest, { kind: 'not understood' }>): Reply {
  const { say = '', note: shown = '' } = lastReply ?? {};
  const [again, note] = [`${sentence(because)} ${askedAgain(state, question, say || shown)}`.trim(), `Heard “${heard}”. ${askedAgain(state, question, shown || say)}`.trim()];
  if (lastReply?.signal !== 'not understood') return { say: again, note, question, signal: 'not understood' };
  return { say: `${sentence(because)} I leave the question open: say ${state.settings.addressWord} first, then the answer.`, note, question, unasked: true, signal: 'not understood' };
}

/** An open question in words, as it was asked. @param last what was said last, the question at its end */
function askedAgain(state: State, question: Question, last: string): string {
  switch (question.kind) {
    case 'which': return whichWords(question.choices);
    case 'yes or no': return /[^.?!”]+\?$/.exec(last)?.[0].trim() ?? 'Yes, or no?';
    case 'length': return askFor(state, question).say;
    case 'surface reading': {
      if (question.sense !== undefined) return howMuchWords(question.sense);
      const side = sideToTrue(state, question.of);
      return side === undefined ? '' : questionOf(side, question, aloud(state));
    }
    default: return assertNever(question);
  }
}

/** 'Fifteen or fifty?' */
export function whichWords(choices: Extract<Question, { kind: 'which' }>['choices']): string {
  return sentence(`${sayList(choices.map(({ say }) => say), 'or')}?`);
}
