import { readFileSync } from 'node:fs';
import { gunzipSync } from 'node:zlib';
import type { Bench } from '../../../core/bench/bench.ts';
import type { Question } from '../../../core/bench/reply.ts';
import type { Screen } from '../../../core/bench/screen.ts';
import { NO_ACTS } from '../../../core/journal/acts.ts';
import { EMPTY_STATE } from '../../../core/journal/fold.ts';
import type { State } from '../../../core/journal/state.ts';
import type { Moment } from '../../../core/clock/moment.ts';
import { nanometres, NANOMETRES_PER_INCH, type Length } from '../../../core/length/length.ts';
import { readDictionary } from '../../../kiosk/ear/words/dictionary.ts';
import { DEMO_TEXT, loadSound } from '../piece/demo.ts';

const NOW: Moment = { wallMs: 0, wallTrusted: true, bootId: 'boot', monotonicMs: 0 };
const DEMO = loadSound(DEMO_TEXT);

/** The baker's work table on the bench, two clocks running, leg three put front left. */
export const STATE: State = {
  ...EMPTY_STATE,
  piece: DEMO,
  pieceText: DEMO_TEXT,
  places: new Map([['leg/3', 'front left']]),
  timers: [
    { id: 7, kind: 'clamp', name: 'leg two clamps', durationMs: 3_600_000, basis: 'common practice', startedAt: NOW },
    { id: 9, kind: 'open time', name: 'open time', durationMs: 480_000, basis: 'common practice', startedAt: NOW },
  ],
};

export function bench(about: { readonly state?: Partial<State>; readonly screen?: Screen; readonly question?: Question } = {}): Bench {
  return {
    state: { ...STATE, ...about.state },
    conversation: { screen: about.screen ?? { name: 'step' }, lastReply: null, question: about.question ?? null },
    records: [],
    acts: NO_ACTS,
  };
}

/** A bench on which everything in the table can be said: a size on the screen, one measured, marks being told, something done and something taken back. */
export const TALKATIVE = beingTold(bench({ screen: { name: 'size', size: 'leg.width', copy: 2 }, state: { measurements: [{ size: 'leg.width', copy: 2, length: inches(3.25) }] } }));

export function inches(count: number): Length {
  return nanometres(Math.round(count * NANOMETRES_PER_INCH));
}

/** The words whose pronunciation ships: the model hears them, and others by guess. */
export function modelWords(): ReadonlySet<string> {
  return new Set(readDictionary(gunzipSync(readFileSync(new URL('../../../sounds/dictionary/dictionary.txt.gz', import.meta.url))).toString()).words.keys());
}

function beingTold(told: Bench): Bench {
  const inTurn = { items: [{ say: 'One inch.' }, { say: 'Two inches.' }], at: 0 };
  return { ...told, conversation: { ...told.conversation, inTurn, lastReply: { say: 'One inch.', lengths: [inches(1)] } }, acts: { standing: [1], scratched: [2], gone: new Set([2]) } };
}
