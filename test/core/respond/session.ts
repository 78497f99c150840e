import { readFileSync } from 'node:fs';
import type { Bench } from '../../../core/bench/bench.ts';
import type { Reply } from '../../../core/bench/reply.ts';
import type { Request } from '../../../core/bench/request.ts';
import type { Moment } from '../../../core/clock/moment.ts';
import type { Entry, JournalRecord } from '../../../core/journal/entry.ts';
import { makeRecords } from '../../../core/journal/record.ts';
import { advance, benchFrom } from '../../../core/respond/advance.ts';
import { respond } from '../../../core/respond/respond.ts';
import { parseRequest } from '../../../core/talk/parse.ts';
import { stepsOf } from '../../../core/respond/views.ts';

export const DEMO_TEXT = readFileSync(new URL('../../../core/piece/demo/bakers-work-table.json', import.meta.url), 'utf8');

/** A bench in memory and its clock: what a maker says goes in, what the bench says comes out. */
export class Session {
  bench: Bench = benchFrom([]);
  now: Moment = { wallMs: Date.UTC(2026, 10, 25, 18), wallTrusted: true, bootId: 'first', monotonicMs: 1_000_000 };
  entries: readonly Entry[] = [];
  /** A whole journal that the last reply wants to put in place of the present one. */
  journal: readonly JournalRecord[] | undefined;

  static withDemo(): Session {
    const session = new Session();
    session.request({ kind: 'load piece', text: DEMO_TEXT, from: 'the demo' });
    return session;
  }

  request(request: Request): Reply {
    const response = respond(this.bench, request, this.now);
    this.entries = response.entries;
    this.journal = response.journal;
    const records = response.entries.length > 0 ? makeRecords(response.entries, this.bench.records.at(-1) ?? null, this.now) : [];
    this.bench = advance(this.bench, response.reply, records);
    return response.reply;
  }

  /** What the bench writes down of its own accord. */
  note(entry: Entry): void {
    this.bench = advance(this.bench, { say: '' }, makeRecords([entry], this.bench.records.at(-1) ?? null, this.now));
  }

  say(words: string): string {
    return this.request(parseRequest(words, this.bench)).say;
  }

  /** All that is told, to its end, as if it were said at once. */
  hearOut(words: string): string {
    const said = [this.say(words)];
    for (let { inTurn } = this.bench.conversation; inTurn !== undefined && inTurn.at < inTurn.items.length - 1; { inTurn } = this.bench.conversation) said.push(this.request({ kind: 'tell in turn', to: 'next' }).say);
    return said.join(' ').replaceAll(/ [^.]*; the first:| The (?:first|last):| Say next for (?:the rest|the one after)\./g, '');
  }

  wait(ms: number): void {
    this.now = { ...this.now, wallMs: this.now.wallMs + ms, monotonicMs: this.now.monotonicMs + ms };
  }
}

/** The left end frame of the demo table is to be glued: everything that comes before it is done. */
export function atTheEndFrame(): Session {
  const session = Session.withDemo();
  session.note({ kind: 'went to step', step: 'glue-up/endFrame.1' });
  const steps = stepsOf(session.bench.state);
  for (const { id } of steps.slice(0, steps.findIndex(({ id }) => id === 'glue-up/endFrame.1'))) session.note({ kind: 'step done', step: id });
  return session;
}
