import type { Reply, Response } from '../bench/reply.ts';
import type { Entry } from '../journal/entry.ts';

/** A reply that writes nothing. */
export function tell(reply: Reply): Response {
  return { entries: [], reply };
}

/** A reply that says why something is not done: nothing is written. */
export function refuse(say: string, more: Partial<Reply> = {}): Response {
  return { entries: [], reply: { say, note: say, signal: 'wrong', ...more } };
}

/** Entries to be written, with what is said once they are durable. */
export function write(entries: readonly Entry[], reply: Reply): Response {
  return { entries, reply };
}

export function noPiece(): Response {
  return refuse('No piece is on the bench. Load one first.', { screen: { name: 'files' } });
}
