import { withOffer } from '../../../core/respond/offer.ts';
import { newsOf } from '../../../core/respond/sayPlan.ts';
import { planStock } from '../../../core/stock/plan/planStock.ts';
import { Session } from './session.ts';

/** What the kiosk's worker does, at once: the first plan is good enough here. */
export function found(session: Session): string | undefined {
  const { offer } = session.bench.conversation;
  if (offer === undefined) throw new Error('nothing is being planned');
  let rounds = 0;
  const plan = planStock(offer.problem, () => rounds++ < 400, () => undefined);
  const done = { ...offer, plan, looking: false };
  const news = newsOf(session.bench.state, done);
  session.bench = withOffer(session.bench, news === undefined ? undefined : done);
  return news;
}

/** The demo piece with what was said, planned and the plan taken. */
export function taken(said: readonly string[]): Session {
  const session = Session.withDemo();
  for (const words of said) session.say(words);
  session.say('plan the cutting');
  found(session);
  session.say('take the plan');
  return session;
}
