import { isDeepStrictEqual } from 'node:util';
import type { Bench } from '../../../core/bench/bench.ts';
import type { Request } from '../../../core/bench/request.ts';
import { rivalsOf } from '../../../core/talk/confusions.ts';
import { dependsOn } from '../../../core/talk/dependence.ts';
import { parseHeard } from '../../../core/talk/doubt.ts';
import { parseRequest } from '../../../core/talk/parse.ts';
import { Attention } from '../../../kiosk/ear/attention.ts';
import { trustSettingsAt, trustedWords } from '../../../kiosk/ear/trust.ts';
import { ADDRESS } from './listener.ts';
import type { Heard } from './listener.ts';
import type { HearingSet } from './sets.ts';

/** 'asked': which of two was said, and one of them was it; where none of them was, nothing is done: 'refused'. */
export type Outcome = 'right' | 'asked' | 'wrong' | 'refused';

export const OUTCOMES: readonly Outcome[] = ['right', 'asked', 'wrong', 'refused'];

/** @param said undefined when nothing should be done */
export function outcomeIn({ bench, phrases }: HearingSet, said: string | undefined, heard: readonly Heard[]): Outcome {
  return bench === undefined ? outcomeOfWords(said, heard, phrases) : outcomeOf(said, requestOf(heard, bench), bench);
}

/** Where nothing is to be understood but the words: a doubtful one that has a rival is asked about. */
function outcomeOfWords(said: string | undefined, heard: readonly Heard[], phrases: readonly string[]): Outcome {
  const trusted = heard.map(({ words, sureness, standsOutDb }) => trustedWords(words, sureness, ADDRESS, (spoken, at) => (rivalsOf(spoken[at] ?? '').length > 0 ? 'asked' : 'wholly'), trustSettingsAt(standsOutDb)));
  const words = trusted.map((each) => each.words).join(' / ');
  if (!trusted.some((each) => phrases.includes(each.words))) return 'refused';
  const rivals = trusted.flatMap(({ doubtful }) => doubtful.flatMap(rivalsOf));
  if (rivals.length > 0) return [words, ...rivals].includes(said ?? '') ? 'asked' : 'refused';
  return words === said ? 'right' : 'wrong';
}

/** What the bench makes of something said to it while it attends, as the ear does: the request, or undefined when it does nothing. */
function requestOf(heard: readonly Heard[], bench: Bench): Request | undefined {
  const attention = new Attention(ADDRESS);
  for (const { words, sureness, standsOutDb } of heard) {
    attention.listen(0);
    const trusted = trustedWords(words, sureness, ADDRESS, (spoken, at) => dependsOn(spoken, at, bench), trustSettingsAt(standsOutDb));
    const noticed = attention.words(trusted.words, 1);
    const request = noticed?.kind === 'heard' ? parseHeard(noticed.words, trusted.doubtful, bench) : undefined;
    if (request !== undefined && request.kind !== 'not understood') return request;
  }
  return undefined;
}

function outcomeOf(said: string | undefined, request: Request | undefined, bench: Bench): Outcome {
  if (request === undefined) return said === undefined ? 'right' : 'refused';
  if (said === undefined) return 'wrong';
  const meant = parseRequest(said, bench);
  if (isDeepStrictEqual(request, meant)) return 'right';
  if (request.kind !== 'which') return 'wrong';
  return request.choices.some((choice) => isDeepStrictEqual(choice.request, meant)) ? 'asked' : 'refused';
}
