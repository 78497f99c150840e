import type { Bench } from '../bench/bench.ts';
import type { Request } from '../bench/request.ts';
import type { Moment } from '../clock/moment.ts';
import { describeEntry } from './describeAct.ts';
import { respond } from './respond.ts';
import { sayList } from './saying.ts';

/**
 * What a request would come to, in a line for the eye, without doing it: 'would write down leg two, width, …; would say …'. What it was taken for can be seen by it before
 * anything depends on it.
 */
export function wouldDo(bench: Bench, request: Request, now: Moment): string {
  if (request.kind === 'not understood') return `not understood: ${request.because}`;
  const { entries, journal, reply } = respond(bench, request, now);
  if (reply.signal === 'wrong' && !reply.question) return `would be refused: ${reply.say}`;
  const written = entries.map((entry) => describeEntry(bench, entry)).filter((text) => text !== '');
  const does = [
    ...(written.length > 0 ? [`would write down ${sayList(written)}`] : []),
    ...(journal ? ['would put another journal in the place of this one'] : []),
    ...(reply.question ? [`would ask “${reply.say}”`] : reply.say !== '' ? [`would say “${reply.say}”`] : []),
    ...(reply.say === '' && reply.screen ? [`would show: ${reply.screen.name}`] : []),
    ...(reply.hush ? ['would fall silent'] : []),
  ];
  return does.join('; ') || 'would do nothing';
}
