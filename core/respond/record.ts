import { assertNever } from '../result.ts';
import type { Bench } from '../bench/bench.ts';
import type { Response } from '../bench/reply.ts';
import type { RecordRequest } from '../bench/request.ts';
import type { Moment } from '../clock/moment.ts';
import { absolute, add, subtract } from '../length/arithmetic.ts';
import type { Entry } from '../journal/entry.ts';
import type { State } from '../journal/state.ts';
import { describeSize } from '../piece/describe.ts';
import { sizeOf } from '../piece/evaluate.ts';
import { withMeasurement, type Measurement } from '../piece/measurement.ts';
import { currentStep } from '../work/progress.ts';
import { noPiece, refuse, tell, write } from './plain.ts';
import { consequencesOf, sayDifference } from './consequences.ts';
import { ASK_BEYOND, respondToReading } from './reading.ts';
import { askFor, firstToRecord } from './recordQuestions.ts';
import { saySubject, sentence, spoken, written, type TellLength } from './saying.ts';
import { sizesOf, stepsOf } from './views.ts';
import { wrongHand } from './wrongHand.ts';

const LONGEST_NOTE = 500;
/** No part is made so many times smaller than planned: 'a thirty second wide' is then how much it is over. */
const ABSURD = 4;

/** Writing down what was measured; read back always, so that a wrong number is heard at once. */
export function respondToRecord(bench: Bench, request: RecordRequest, now: Moment): Response {
  const { state } = bench;
  switch (request.kind) {
    case 'record':
      return record(bench, request);
    case 'record off':
      return recordOff(bench, request);
    case 'off somehow':
      return sizesOf(state) ? askOff(state, request) : noPiece();
    case 'withdraw measurement':
      return withdraw(state, request);
    case 'reading':
      return respondToReading(bench, request.text, (size) => record(bench, size), now);
    case 'note': {
      const text = request.text.trim().slice(0, LONGEST_NOTE);
      if (text === '') return refuse('The note is empty.');
      return write([{ kind: 'noted', text }], { say: `Noted: ${text}.`, signal: 'done' });
    }
    default:
      return assertNever(request);
  }
}

function record(bench: Bench, request: Extract<RecordRequest, { kind: 'record' }>): Response {
  const { state } = bench;
  const sizes = sizesOf(state);
  if (!sizes || !state.piece) return noPiece();
  const { size, copy, length } = request;
  const value = sizeOf(sizes, size, copy);
  const subject = saySubject(state, size, copy);
  if (!value) return refuse(`This piece has no size called ${subject}.`);
  if (request.orOver && length * ABSURD < value.planned) return recordOff(bench, { kind: 'record off', size, ...(copy === undefined ? {} : { copy }), off: length });
  if (length <= 0) return refuse('A made part cannot measure nothing. Say the size again.');
  const hand = request.copySure ? '' : wrongHand(state, describeSize(state.piece, size)?.owner.id ?? '', copy);
  if (hand !== '') {
    const asked = (tellLength: TellLength) => `${hand} Is it ${subject}, that measures ${tellLength(state, length)}?`;
    return tell({ say: asked(spoken), note: asked(written), question: { kind: 'yes or no', onYes: { ...request, copySure: true } }, signal: 'wrong' });
  }
  const difference = subtract(length, value.planned);
  if (!request.sure && absolute(difference) > ASK_BEYOND) {
    const asked = (tellLength: TellLength) => `${sentence(`That is ${sayDifference(state, difference, tellLength)} the plan`)} Is ${subject} really ${tellLength(state, length)}?`;
    return tell({ say: asked(spoken), note: asked(written), question: { kind: 'yes or no', onYes: { ...request, sure: true } }, signal: 'wrong' });
  }
  const measurement: Measurement = { size, length, ...(copy === undefined ? {} : { copy }) };
  const after = { ...state, measurements: withMeasurement(state.measurements, measurement) };
  const entries: Entry[] = [{ kind: 'measured', measurement }];
  const noted = sentence(`${subject}, ${spoken(state, length)}, noted`);
  const off = difference === 0 ? 'As planned.' : sentence(`${sayDifference(state, difference)} the plan`);
  const told = consequencesOf(state, after);
  const consequences = told(spoken);
  return write(entries, withNext(after, {
    say: [noted, off, consequences].filter(Boolean).join(' '), ...(consequences === '' ? {} : { note: told(written) }),
    lengths: [length],
    size, ...(copy === undefined ? {} : { copy }),
  }));
}

/** What it measures, of a size that is off by nobody said how much. */
function askOff(state: State, mention: Extract<RecordRequest, { kind: 'off somehow' }>): Response {
  const asked = askFor(state, mention);
  return tell({ ...asked, say: sentence(asked.say) });
}

/** What it should be is the plan, or what follows for it from what was made before; a measurement of its own is not. */
function recordOff(bench: Bench, { size, copy, off }: Extract<RecordRequest, { kind: 'record off' }>): Response {
  const sizes = sizesOf(bench.state);
  const value = sizes && sizeOf(sizes, size, copy);
  if (!value) return bench.state.piece ? refuse(`This piece has no size called ${size}.`) : noPiece();
  const shouldBe = value.basis === 'measured' ? value.planned : value.length;
  return record(bench, { kind: 'record', size, ...(copy === undefined ? {} : { copy }), length: add(shouldBe, off) });
}

/** After the last size of a set is down, the size just written is shown; else the next one is asked for. */
function withNext(after: State, noted: { say: string; note?: string; lengths: Measurement['length'][]; size: string; copy?: number }): Response['reply'] {
  const step = currentStep(stepsOf(after), after);
  const note = noted.note === undefined ? {} : { note: noted.note };
  const last = step && step.record.some(({ size, copy }) => size === noted.size && copy === noted.copy) ? firstToRecord(after, step) : undefined;
  if (last) {
    const asked = askFor(after, last);
    return { ...asked, say: `${noted.say} ${asked.say}`, ...note, lengths: noted.lengths, signal: 'done' };
  }
  const copy = noted.copy === undefined ? {} : { copy: noted.copy };
  return { say: noted.say, ...note, lengths: noted.lengths, signal: 'done', screen: { name: 'size', size: noted.size, ...copy } };
}

function withdraw(state: State, request: Extract<RecordRequest, { kind: 'withdraw measurement' }>): Response {
  const { size, copy } = request;
  const subject = saySubject(state, size, copy);
  const known = state.measurements.some((measured) => measured.size === size && measured.copy === copy);
  if (!known) return refuse(`No measurement of ${subject} is written down.`);
  const only = copy === undefined ? {} : { copy };
  return write([{ kind: 'measurement withdrawn', size, ...only }], {
    say: `The measurement of ${subject} is withdrawn. The plan holds again.`, signal: 'done', screen: { name: 'size', size, ...only },
  });
}
