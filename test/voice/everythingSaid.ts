import type { Bench } from '../../core/bench/bench.ts';
import { currentStep } from '../../core/work/progress.ts';
import { stepsOf } from '../../core/respond/views.ts';
import { respond } from '../../core/respond/respond.ts';
import { phrasesFor } from '../../core/talk/grammar.ts';
import { parseRequest } from '../../core/talk/parse.ts';
import { Session } from '../core/respond/session.ts';

/**
 * Everything the kiosk can be made to say with the demo piece on it: each phrase of the grammar is asked at the first step, and what the steps themselves say is read out to
 * the last of them.
 */
export function everythingSaid(): readonly string[] {
  const session = Session.withDemo();
  const said = new Set<string>();
  for (const phrase of phrasesFor(session.bench)) said.add(answer(session, session.bench, phrase));
  for (let before = ''; before !== stepOf(session.bench);) {
    before = stepOf(session.bench);
    for (const words of ['where am i', 'tell me more', 'what tools', 'what is the check']) said.add(answer(session, session.bench, words));
    said.add(session.say('next step'));
  }
  said.delete('');
  return [...said];
}

function answer(session: Session, bench: Bench, words: string): string {
  return respond(bench, parseRequest(words, bench), session.now).reply.say;
}

function stepOf({ state }: Bench): string {
  return currentStep(stepsOf(state), state)?.id ?? '';
}
