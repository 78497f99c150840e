import { assertNever } from '../result.ts';
import type { Bench, Conversation } from '../bench/bench.ts';
import type { InTurn, InTurnItem, Reply, Response } from '../bench/reply.ts';
import type { Request, TalkRequest } from '../bench/request.ts';
import type { JournalRecord } from '../journal/entry.ts';
import { sayNumber } from '../length/sayNumber.ts';
import { refuse, tell } from './plain.ts';
import { sentence } from './saying.ts';

/** What is said at once is over in 25 s at the usual pace of 150 words a minute; how much an ear keeps is common practice, no source. */
export const MOST_WORDS = 62;
/** What is wrong should not wait for a 'next': half a minute. */
export const MOST_WORDS_OF_A_WARNING = 75;
/** A longer reply that nobody has divided is told in portions of about this many words. */
const PORTION_WORDS = 50;
/** What leads through the work by itself: there 'next' has a meaning of its own, and a caution at the end must not have to be asked for. */
const LEADS: ReadonlySet<Request['kind']> = new Set(['next step', 'step done', 'step back', 'skip step', 'reopen step', 'go to step', 'begin gluing', 'next move', 'chop stage', 'next cut', 'cut made']);
const LEADING_SCREENS: ReadonlySet<string> = new Set(['gluing', 'chopping', 'step', 'truing', 'faces']);
/** What lies on such a screen, asked for once more or at length. */
const ASKED_AT_LENGTH: ReadonlySet<Request['kind']> = new Set(['tell the step', 'where am I']);
/** What is looked up in between, with the place kept. */
const LOOKED_UP: ReadonlySet<string> = new Set(['size', 'why', 'reckoning', 'clocks']);
/** What may be written down meanwhile without a word of what is told becoming untrue. */
const CHANGES_NOTHING = /^(?:timer |clock seen|setting changed|noted|caution said)/;

export function countWords(say: string): number {
  return say.split(/[ -]/).length;
}

/**
 * Several things under one head: all at once when that is short, else the first, and how many there are.
 * @param reply what is shown with it; its `say` is the head, a sentence or several
 * @param of 'marks'; without it the head tells how many there are
 */
export function tellAll(reply: Reply, of: string, items: readonly InTurnItem[], after = ''): Response {
  const whole = [reply.say, ...items.map(({ say }) => say), after].filter(Boolean).join(' ');
  const [first] = items;
  if (first === undefined || items.length === 1 || countWords(whole) <= MOST_WORDS) return tell({ ...reply, say: whole, lengths: reply.lengths ?? items.flatMap(({ lengths = [] }) => lengths) });
  const told = after === '' ? items : [...items.slice(0, -1), { ...first, ...items.at(-1), say: `${items.at(-1)?.say ?? ''} ${after}` }];
  const count = of === '' ? 'The first:' : sentence(`${sayNumber(items.length)} ${of}; the first:`).slice(0, -1);
  return tell({ ...reply, say: [reply.say, count, first.say, 'Say next for the one after.'].filter(Boolean).join(' '), ...shown({ items: told, at: 0, ...screenOf(reply) }, reply.note), ...lengthsOf(first) });
}

/** Through what is told piece by piece; its screen stays. */
export function tellInTurn({ conversation: { inTurn, screen } }: Bench, to: Extract<TalkRequest, { kind: 'tell in turn' }>['to']): Response {
  if (inTurn === undefined) return refuse('Nothing is being told piece by piece.');
  switch (to) {
    case 'next': return inTurn.at + 1 < inTurn.items.length ? tellItem({ ...inTurn, at: inTurn.at + 1 }) : tell({ say: `That was the last of ${sayNumber(inTurn.items.length)}.`, note: '', inTurn: 'over' });
    case 'back': return inTurn.at > 0 ? tellItem({ ...inTurn, at: inTurn.at - 1 }) : refuse('That was the first.');
    case 'first': return tellItem({ ...inTurn, at: 0 });
    case 'enough': return tell({ say: '', screen, hush: true, inTurn: 'over' });
    default: return assertNever(to);
  }
}

function tellItem(inTurn: InTurn): Response {
  const item = inTurn.items[inTurn.at];
  if (item === undefined) return refuse('That was the last.');
  const last = inTurn.at === inTurn.items.length - 1;
  return tell({ say: last ? `The last: ${item.say}` : item.say, ...shown(inTurn), ...screenOf(inTurn), ...lengthsOf(item) });
}

function shown(inTurn: InTurn, before = ''): Pick<Reply, 'note' | 'inTurn'> {
  const { items, at } = inTurn;
  const note = items[at]?.note;
  return { note: [before, `${at + 1} of ${items.length}${note === undefined ? ' told' : `: ${note}`}`].filter(Boolean).join(' '), inTurn };
}

function screenOf({ screen }: Pick<Reply, 'screen'>): Pick<Reply, 'screen'> {
  return screen === undefined ? {} : { screen };
}

function lengthsOf({ lengths }: InTurnItem): Pick<Reply, 'lengths'> {
  return lengths === undefined ? {} : { lengths };
}

/** A reply that is too long for the ear is told in portions at its pauses; where it ends with a question, that is not put off, and what lies between is left to the eye. */
export function withPortions({ kind }: Request, response: Response): Response {
  const { reply } = response;
  const leads = LEADS.has(kind) || (LEADING_SCREENS.has(reply.screen?.name ?? '') && !ASKED_AT_LENGTH.has(kind));
  const most = reply.signal === 'wrong' ? MOST_WORDS_OF_A_WARNING : MOST_WORDS;
  if (countWords(reply.say) <= most || reply.inTurn !== undefined || leads) return response;
  const [first = '', ...rest] = portionsOf(reply.say);
  if (rest.length === 0) return response;
  if (reply.question !== undefined) return { ...response, reply: { ...reply, say: `${first} The rest is on the screen. ${sentencesIn(rest.at(-1) ?? '').at(-1) ?? ''}`, note: reply.note ?? reply.say } };
  const inTurn = { items: [first, ...rest].map((say) => ({ say, ...lengthsOf(reply) })), at: 0, ...screenOf(reply) };
  return { ...response, reply: { ...reply, say: `${first} Say next for the rest.`, inTurn } };
}

function sentencesIn(say: string): readonly string[] {
  return (say.match(/.+?[.!?](?= |$)|.+$/g) ?? []).map((one) => one.trim());
}

/** Whole sentences, and of a long sentence the stretches between its semicolons, as many together as make a portion. */
export function portionsOf(say: string): readonly string[] {
  const stretches = (say.match(/.+?[.!?;](?= |$)|.+$/g) ?? []).map((stretch) => stretch.trim());
  const portions: string[] = [];
  for (const stretch of stretches) {
    const last = portions.at(-1);
    if (last !== undefined && countWords(last) + countWords(stretch) <= PORTION_WORDS) portions[portions.length - 1] = `${last} ${stretch}`;
    else portions.push(stretch);
  }
  return portions.map((portion) => portion.replace(/;$/, '.').replace(/^./, (letter) => letter.toUpperCase()));
}

/** It stays while something is only looked up in between, until another screen is gone to or something is written down that it stands on. What has no screen of its own is told on the one where it began. */
export function inTurnAfter({ inTurn: before, screen: shown }: Pick<Conversation, 'inTurn' | 'screen'>, { inTurn, screen }: Reply, added: readonly JournalRecord[]): InTurn | undefined {
  if (inTurn !== undefined) return inTurn === 'over' ? undefined : { screen: screen ?? shown, ...inTurn };
  return (screen === undefined || LOOKED_UP.has(screen.name)) && added.every(({ entry: { kind } }) => CHANGES_NOTHING.test(kind)) ? before : undefined;
}
