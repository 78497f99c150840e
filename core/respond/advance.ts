import type { Bench } from '../bench/bench.ts';
import type { Reply } from '../bench/reply.ts';
import { inTurnAfter } from './inTurn.ts';
import { offerAfter } from './offer.ts';
import type { JournalRecord } from '../journal/entry.ts';
import { foldJournal, type Snapshot } from '../journal/fold.ts';

/** The bench as a journal leaves it, with nothing said yet: at the step, or where a piece can be loaded. */
export function benchFrom(records: readonly JournalRecord[], snapshot?: Snapshot): Bench {
  const { state, acts } = foldJournal(records, snapshot);
  return { state, acts, records, conversation: { screen: { name: state.piece ? 'step' : 'files' }, lastReply: null, question: null } };
}

/** The bench after a reply was given: what was written down is folded in, and the talk goes on from there. */
export function advance(bench: Bench, reply: Reply, added: readonly JournalRecord[]): Bench {
  const records = added.length > 0 ? [...bench.records, ...added] : bench.records;
  const { state, acts } = added.length > 0 ? foldJournal(records, { state: bench.state, acts: bench.acts }) : bench;
  const { screen, lastReply, chopping } = bench.conversation;
  const offer = offerAfter(bench.conversation.offer, reply, state);
  const inTurn = inTurnAfter(bench.conversation, reply, added);
  const left = reply.screen?.name === 'chopping' ? reply.screen : chopping;
  return {
    state, acts, records,
    conversation: { screen: reply.screen ?? screen, lastReply: reply.say === '' ? lastWords(lastReply, reply) : reply, question: reply.question ?? null, ...(left === undefined ? {} : { chopping: left }), ...(inTurn === undefined ? {} : { inTurn }), ...(offer === undefined ? {} : { offer }) },
  };
}

/** What can be said again. What it added for the eye stays behind on the screen that it was about. */
function lastWords(lastReply: Reply | null, { screen }: Reply): Reply | null {
  return lastReply && screen ? { ...lastReply, note: '' } : lastReply;
}
