import { assertNever } from '../result.ts';
import type { Bench } from '../bench/bench.ts';
import type { Reply, Response } from '../bench/reply.ts';
import type { TalkRequest } from '../bench/request.ts';
import { sayLengthDigits } from '../length/say.ts';
import { whatCanBeSaid } from '../talk/sayable.ts';
import { tellInTurn } from './inTurn.ts';
import { refuse, tell } from './plain.ts';
import { sayList, sentence } from './saying.ts';
import { changeSettings, nextVolume } from './settings.ts';

/** Talk about talk: again, slower, louder, help, and what was not understood. */
export function respondToTalk(bench: Bench, request: TalkRequest): Response {
  switch (request.kind) {
    case 'say again':
      return again(bench, request.how);
    case 'tell in turn':
      return tellInTurn(bench, request.to);
    case 'louder':
    case 'quieter': {
      const volume = nextVolume(bench.state, request.kind === 'louder' ? 1 : -1);
      return volume === undefined ? refuse(`I cannot go ${request.kind}.`) : changeSettings({ volume });
    }
    case 'be quiet':
      return tell({ say: '', hush: true });
    case 'what can I say':
      return tell({ say: sentence(`You can say: ${sayList(whatCanBeSaid(bench).slice(0, 6), 'or')}`), screen: { name: 'help' } });
    case 'show':
      return tell({ say: '', screen: request.screen });
    case 'which': {
      const { choices } = request;
      return tell({ say: sentence(sayList(choices.map(({ say }) => say), 'or')).replace(/\.$/, '?'), question: { kind: 'which', choices }, signal: 'heard' });
    }
    case 'not understood': {
      const nearest = request.nearest === undefined ? '' : ` You can ask: ${request.nearest}.`;
      const say = `${sentence(request.because)}${nearest}`;
      return tell({ say, note: `Heard “${request.heard}”. ${say}`, signal: 'not understood' });
    }
    default:
      return assertNever(request);
  }
}

function again(bench: Bench, how: Extract<TalkRequest, { kind: 'say again' }>['how']): Response {
  const last = bench.conversation.lastReply;
  if (!last?.say) return refuse('I have said nothing yet.');
  const { say, note, question, lengths } = last;
  const repeated: Reply = { say, ...(note === undefined ? {} : { note }), ...(question ? { question } : {}), ...(lengths ? { lengths } : {}) };
  switch (how) {
    case 'as before':
      return tell(repeated);
    case 'slower':
      return tell({ ...repeated, slowly: true });
    case 'digit by digit': {
      const lengths = last.lengths ?? [];
      if (lengths.length === 0) return refuse('There was no size in what I said.');
      return tell({ ...repeated, say: lengths.map((length) => sentence(sayLengthDigits(length, bench.state.settings.rounding))).join(' '), slowly: true });
    }
    default:
      return assertNever(how);
  }
}
