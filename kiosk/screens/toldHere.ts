import type { Conversation } from '../../core/bench/bench.ts';
import type { InTurn, InTurnItem } from '../../core/bench/reply.ts';

/**
 * What is being told of the screen that is shown, one mark after another, and which of them now; undefined on any other screen, also of the same name, that is
 * looked at in between: there it would be a wrong size in the largest letters.
 */
export function toldHere({ inTurn, screen }: Conversation): { readonly inTurn: InTurn; readonly item: InTurnItem } | undefined {
  const item = inTurn?.screen === screen ? inTurn.items[inTurn.at] : undefined;
  return inTurn === undefined || item === undefined ? undefined : { inTurn, item };
}
