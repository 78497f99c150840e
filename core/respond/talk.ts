import { assertNever } from '../result.ts';
import type { Bench } from '../bench/bench.ts';
import type { Reply, Response } from '../bench/reply.ts';
import type { TalkRequest } from '../bench/request.ts';
import { sayLengthDigits } from '../length/say.ts';
import { aboutWords } from '../talk/parse.ts';
import type { Topic } from '../talk/pattern.ts';
import { whatCanBeSaid } from '../talk/sayable.ts';
import { askedOnceMore, stillAsked, whichWords } from './askedAgain.ts';
import { tellInTurn } from './inTurn.ts';
import { refuse, tell } from './plain.ts';
import { sayList, sentence } from './saying.ts';
import { changeSettings, nextVolume } from './settings.ts';
import { toSay } from './toSay.ts';

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
      return stillAsked(bench, volume === undefined ? refuse(`I cannot go ${request.kind}.`) : changeSettings({ volume }));
    }
    case 'be quiet':
      return stillAsked(bench, tell({ say: '', hush: true }));
    case 'what can I say':
      return tell({ say: sentence(`You can say ${sayList(whatCanBeSaid(request.about === undefined ? bench : { ...bench, conversation: { ...bench.conversation, screen: request.about } }).slice(0, 6).map((words) => sayWords(words, bench)), 'or')}`), screen: request.about ?? { name: 'help' } });
    case 'show':
      return tell({ say: '', screen: request.screen });
    case 'which': {
      const { choices } = request;
      return tell({ say: whichWords(choices), question: { kind: 'which', choices }, signal: 'heard' });
    }
    case 'not understood': {
      const { question } = bench.conversation;
      if (question) return tell(askedOnceMore(bench, question, request));
      const say = `${sentence(request.because)}${request.nearest === undefined ? '' : ` ${nearestTold(request.nearest, bench)}`}`;
      // What was heard may stand in what is said about it already.
      const quoted = request.because.includes(`“${request.heard}”`);
      return tell({ say, note: quoted ? say : `Heard “${request.heard}”. ${say}`, signal: 'not understood' });
    }
    default:
      return assertNever(request);
  }
}

/** What could be meant: a question as it is asked, for nothing comes of it; of anything else only what it is about, with the words for the eye. */
function nearestTold(words: string, bench: Bench): string {
  const nearest = words.replaceAll(/\bi\b/g, 'I');
  const about = aboutWords(nearest, bench);
  return about === undefined || about.looksUp ? `You can ${/^(?:how|what|which|where|when|why|is|are|can|does|will)\b/.test(nearest) ? 'ask' : 'say'} ${nearest}.` : toSay(`It may be about ${TOPICS[about.topic]}; the words for it are on the screen.`, `You can say: ${nearest}.`);
}

/** What would do something is named as words, so that it is not said as a sentence of its own. */
function sayWords(words: string, bench: Bench): string {
  return aboutWords(words, bench)?.looksUp === true ? words : `the ${words.includes(' ') ? 'words' : 'word'} ${words}`;
}

const TOPICS: Readonly<Record<Topic, string>> = {
  'work': 'the steps', 'sizes': 'sizes', 'joints': 'joints', 'faces': 'faces', 'handwork': 'handwork', 'layout': 'the layout', 'paper': 'sheets of paper', 'air': 'air and wood', 'glue': 'gluing', 'truing': 'truing', 'reckoning': 'arithmetic',
  'recording': 'what was measured', 'clocks': 'clocks', 'undo': 'taking something back', 'talk': 'how I speak', 'screens': 'what is shown', 'edges': 'edges', 'boards': 'boards and cutting', 'settings': 'settings',
  'answers': 'an answer', 'follow-ups': 'what was asked last',
};

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
