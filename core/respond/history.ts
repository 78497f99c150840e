import { assertNever } from '../result.ts';
import type { Bench } from '../bench/bench.ts';
import type { Response } from '../bench/reply.ts';
import type { HistoryRequest } from '../bench/request.ts';
import type { Moment } from '../clock/moment.ts';
import type { JournalRecord } from '../journal/entry.ts';
import { describeAct, describeEntry } from './describeAct.ts';
import { dayOf, sayDay } from './days.ts';
import { tellAll } from './inTurn.ts';
import { tellMeasured } from './measuredSoFar.ts';
import { tell } from './plain.ts';
import { sayCount, sayList, sentence } from './saying.ts';

const JOURNAL = { name: 'journal' } as const;
/** More than these the ear would lose; they stand on the screen. */
const MOST_SAID = 3;
const DAY_MS = 24 * 60 * 60 * 1000;

/** What was done and measured so far, out of the journal. */
export function respondToHistory(bench: Bench, request: HistoryRequest, now: Moment): Response {
  if (request.kind === 'what was measured') return tellMeasured(bench.state, request);
  switch (request.when) {
    case 'last': return tellLast(bench);
    case 'today': return now.wallTrusted ? tellToday(bench, now) : unsureOfTheDay(bench);
    case 'before today': return now.wallTrusted ? tellBeforeToday(bench, now) : unsureOfTheDay(bench);
    case 'notes': return tellNotes(bench);
    default: return assertNever(request.when);
  }
}

/** The entries that stand, oldest first, without those that only keep the bench's own books. */
function standing(bench: Bench): readonly JournalRecord[] {
  return bench.records.filter(({ act, entry }) => !bench.acts.gone.has(act) && entry.kind !== 'scratched' && entry.kind !== 'put back' && entry.kind !== 'clock seen' && describeEntry(bench, entry) !== '');
}

function tellLast(bench: Bench): Response {
  const acts = [...new Set(standing(bench).map(({ act }) => act))].slice(-MOST_SAID).reverse();
  const [last, ...before] = acts.map((act) => describeAct(bench, act));
  if (last === undefined) return tell({ say: 'Nothing is written down yet.', screen: JOURNAL });
  return tell({ say: [sentence(`the last: ${last}`), before.length === 0 ? '' : sentence(`before that: ${before.join('; and ')}`)].filter(Boolean).join(' '), screen: JOURNAL });
}

/** The newest first. */
function tellNotes({ state: { notes } }: Bench): Response {
  if (notes.length === 0) return tell({ say: 'Nothing is noted yet.', screen: JOURNAL });
  return tellAll({ say: sentence(notes.length === 1 ? 'one note' : `${sayCount(notes.length, 'note', 'notes')}, the newest first`), screen: JOURNAL }, '', notes.toReversed().map(({ text }) => ({ say: sentence(`noted: ${text}`) })));
}

/** Days are known only by a clock that can be believed; what was done last is known always. */
function unsureOfTheDay(bench: Bench): Response {
  const { reply } = tellLast(bench);
  return tell({ ...reply, say: `Nothing vouches for this machine’s clock, so I cannot tell the days apart. ${reply.say}` });
}

function tellToday(bench: Bench, now: Moment): Response {
  const ofToday = standing(bench).filter(({ at }) => dayOf(at, now) === dayOf(now, now));
  return tell({ say: ofToday.length === 0 ? 'Nothing is written down today.' : sentence(`today: ${summary(bench, ofToday)}`), screen: JOURNAL });
}

/** Yesterday, or the last day before it on which anything was written down. */
function tellBeforeToday(bench: Bench, now: Moment): Response {
  const today = dayOf(now, now);
  const before = standing(bench).filter(({ at }) => { const day = dayOf(at, now); return day !== undefined && day !== today; });
  const last = before.at(-1);
  const day = last && dayOf(last.at, now);
  if (last === undefined || day === undefined) return tell({ say: 'Nothing is written down of the days before today.', screen: JOURNAL });
  const yesterday = dayOf({ ...now, wallMs: now.wallMs - DAY_MS, monotonicMs: now.monotonicMs - DAY_MS }, now);
  const head = day === yesterday ? 'yesterday' : `nothing yesterday. The last time was ${sayDay(last.at, now)}`;
  return tell({ say: sentence(`${head}: ${summary(bench, before.filter(({ at }) => dayOf(at, now) === day))}`), screen: JOURNAL });
}

/** 'Two steps done, face, leg one and face, leg two; three sizes measured; one note': a day for the ear. */
function summary(bench: Bench, records: readonly JournalRecord[]): string {
  const of = (kind: JournalRecord['entry']['kind']) => records.filter(({ entry }) => entry.kind === kind);
  const [steps, sizes, notes] = [of('step done'), of('measured'), of('noted')];
  const titles = steps.slice(-MOST_SAID).map(({ entry }) => describeEntry(bench, entry).replace(/ as done$/, '').replaceAll(',', '').replace(/^./, (letter) => letter.toLowerCase()));
  const counted = new Set([...steps, ...sizes, ...notes].map(({ act }) => act));
  const others = [...new Set(records.map(({ act }) => act))].filter((act) => !counted.has(act));
  return [
    steps.length === 0 ? '' : `${sayCount(steps.length, 'step', 'steps')} done, ${steps.length > MOST_SAID ? 'at last ' : ''}${sayList(titles)}`,
    sizes.length === 0 ? '' : `${sayCount(sizes.length, 'size', 'sizes')} measured`,
    notes.length === 0 ? '' : sayCount(notes.length, 'note', 'notes'),
    ...(others.length > MOST_SAID ? [sayCount(others.length, 'other entry', 'other entries')] : others.map((act) => describeAct(bench, act))),
  ].filter(Boolean).join('; ');
}
