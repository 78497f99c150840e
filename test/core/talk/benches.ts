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

/** A bench on which everything in the table can be said: a size on the screen, one measured. */
export const TALKATIVE = bench({ screen: { name: 'size', size: 'leg.width', copy: 2 }, state: { measurements: [{ size: 'leg.width', copy: 2, length: inches(3.25) }] } });

export function inches(count: number): Length {
  return nanometres(Math.round(count * NANOMETRES_PER_INCH));
}

/** The dictionary of the speech model that ships. */
export function modelWords(): ReadonlySet<string> {
  const archive = gunzipSync(readFileSync(new URL('../../../sounds/speech-model/model.tar.gz', import.meta.url)));
  // A tar entry: 512 bytes of header (name at 0, size in octal at 124), then the file, padded to 512.
  for (let at = 0; at + 512 <= archive.length;) {
    const name = archive.toString('latin1', at, at + 100).replace(/\0.*$/s, '');
    const size = Number.parseInt(archive.toString('latin1', at + 124, at + 136), 8) || 0;
    if (name.endsWith('graph/words.txt')) return new Set(archive.toString('utf8', at + 512, at + 512 + size).split('\n').map((line) => line.split(' ')[0] ?? ''));
    at += 512 + Math.ceil(size / 512) * 512;
  }
  throw new Error('the speech model has no words.txt');
}
