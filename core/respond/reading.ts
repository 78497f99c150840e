import type { Bench } from '../bench/bench.ts';
import type { Response } from '../bench/reply.ts';
import type { RecordRequest } from '../bench/request.ts';
import type { Moment } from '../clock/moment.ts';
import type { State } from '../journal/state.ts';
import { absolute, subtract } from '../length/arithmetic.ts';
import { NANOMETRES_PER_INCH, nanometres, type Length } from '../length/length.ts';
import { parseReading } from '../length/parseReading.ts';
import { sayLength } from '../length/say.ts';
import { sizeOf, type Sizes } from '../piece/evaluate.ts';
import { lastSize, padSize } from '../talk/context.ts';
import { currentStep } from '../work/progress.ts';
import type { SizeMention } from '../work/step.ts';
import { noPiece, refuse, tell } from './plain.ts';
import { sayList, saySubject, sentence, spoken, written, type TellLength } from './saying.ts';
import { answeredReading, takeReading } from './truingReading.ts';
import { sizesOf, stepsOf } from './views.ts';

/** A made part is rarely this far off its plan: then it was misheard, mistyped or measured wrong. Common practice, no source. */
export const ASK_BEYOND = nanometres(NANOMETRES_PER_INCH / 4);
/** More than these are not asked: the ear would lose them, and the screen has no room. */
const MOST_ASKED = 4;
/** What a caliper is put to; a length along a part is taken with a tape, which types as well. */
const MEASURED_KEYS = ['width', 'thickness', 'length', 'shoulders', 'tenonThickness', 'tenonWidth', 'tenonLength', 'mortiseDepth', 'mortiseWidth', 'mortiseLength', 'haunchLength', 'grooveDepth', 'grooveWidth', 'tongueThickness'];

type Record = Extract<RecordRequest, { kind: 'record' }>;

/** One reading in the unit that the instrument is set to; where it sent none, in the other as well. */
interface Read {
  readonly length: Length;
  readonly other?: Length;
}

/**
 * A caliper or tape gauge has typed. Where a size waits on the pad, it is recorded at once; elsewhere the bench asks what it was taken of: the size shown, what the
 * step wants measured, or what is nearest to it in the plan. Nothing is written down before that is known.
 */
export function respondToReading(bench: Bench, text: string, record: (request: Record) => Response, now: Moment): Response {
  const { state } = bench;
  const sizes = sizesOf(state);
  if (!sizes) return noPiece();
  const read = readIn(state, text);
  if (typeof read === 'string') return refuse(read, { note: `The instrument sent “${text.slice(0, 24)}”. ${read}` });
  const { question } = bench.conversation;
  if (question?.kind === 'surface reading') return takeReading(bench, answeredReading(question, read.length, undefined), now);
  const waiting = padSize(bench);
  if (!waiting) return askWhere(bench, sizes, read);
  const plan = sizeOf(sizes, waiting.size, waiting.copy)?.planned;
  if (plan !== undefined && read.other !== undefined && !near(read.length, plan) && near(read.other, plan)) return askUnit(state, waiting, read.length, read.other);
  const { reply, ...rest } = record({ kind: 'record', ...waiting, length: read.length });
  return { ...rest, reply: { ...reply, note: [`The instrument reads ${text.trim()}.`, reply.note ?? ''].join(' ').trim() } };
}

function readIn({ settings: { instrumentUnit } }: State, text: string): Read | string {
  const read = parseReading(text, instrumentUnit);
  if (!read.ok) return `That was no reading: ${read.fault.message}`;
  const { length, unitWritten } = read.value;
  if (length < 0) return 'The instrument reads less than nothing. Close it, set it to zero, and measure again.';
  if (length === 0) return 'The instrument reads nothing. Measure the part, and send it again.';
  const other = unitWritten ? undefined : parseReading(text, instrumentUnit === 'inch' ? 'millimetre' : 'inch');
  return other?.ok ? { length, other: other.value.length } : { length };
}

function near(length: Length, plan: Length): boolean {
  return absolute(subtract(length, plan)) <= ASK_BEYOND;
}

/** It would be far off in the unit set, and is near in the other: asked, never taken for granted. */
function askUnit(state: State, waiting: SizeMention, length: Length, other: Length): Response {
  const unit = state.settings.instrumentUnit === 'inch' ? 'millimetres' : 'inches';
  const say = `As ${state.settings.instrumentUnit === 'inch' ? 'inches' : 'millimetres'} that would be ${spoken(state, length)}. Does the instrument read ${unit}, and is ${saySubject(state, waiting.size, waiting.copy)} ${spoken(state, other)}?`;
  return tell({ say, note: `Does the instrument read ${unit}, and is ${saySubject(state, waiting.size, waiting.copy)} ${written(state, other)}? (The settings keep its unit.)`, question: { kind: 'yes or no', onYes: { kind: 'record', ...waiting, length: other } }, signal: 'wrong', lengths: [other] });
}

function askWhere(bench: Bench, sizes: Sizes, read: Read): Response {
  const { state } = bench;
  const found = candidates(bench, sizes, read);
  const [first, ...more] = found;
  const reads = sentence(`the instrument reads ${sayLength(read.length, state.settings.rounding)}`);
  if (first === undefined) return tell({ say: `${reads} No size of this piece is near to it. Say what it was taken of: record, part, dimension and size.`, signal: 'wrong', lengths: [read.length] });
  const reading = (tellLength: TellLength) => sentence(`the instrument reads ${tellLength(state, first.length)}`);
  const asked = `Record it as ${sayList(found.map(({ mention }) => saySubject(state, mention.size, mention.copy)), 'or')}?`;
  const [say, note] = [`${reading(spoken)} ${asked}`, reading(written)];
  if (more.length === 0) return tell({ say, note: `${note} ${asked}`, question: { kind: 'yes or no', onYes: requestOf(first) }, lengths: [first.length] });
  const choices = found.map((each) => ({ say: saySubject(state, each.mention.size, each.mention.copy).replaceAll(',', ''), request: requestOf(each) }));
  return tell({ say, note, question: { kind: 'which', choices }, lengths: [first.length] });
}

interface Candidate { readonly mention: SizeMention; readonly length: Length }

function requestOf({ mention, length }: Candidate): Record {
  return { kind: 'record', ...mention, length };
}

/** The size shown, then what the step wants measured, then what is near in the plan, the nearest first; each once, and only what the reading could be. */
function candidates(bench: Bench, sizes: Sizes, { length, other }: Read): readonly Candidate[] {
  const shown = lastSize(bench);
  const step = currentStep(stepsOf(bench.state), bench.state);
  const wanted = [...(shown ? [shown] : []), ...(step?.record ?? []), ...(step?.sizes ?? []), ...inThePlan(bench.state, sizes, length)];
  const fitting = wanted.flatMap((mention): readonly Candidate[] => {
    const plan = sizeOf(sizes, mention.size, mention.copy)?.planned;
    const taken = plan === undefined ? undefined : [length, other].find((each) => each !== undefined && near(each, plan));
    return taken === undefined ? [] : [{ mention, length: taken }];
  });
  return [...new Map(fitting.map((each) => [`${each.mention.size} ${each.mention.copy ?? ''}`, each])).values()].slice(0, MOST_ASKED);
}

/** Of each set, the first copy that nobody has measured yet. */
function inThePlan(state: State, sizes: Sizes, length: Length): readonly SizeMention[] {
  const off = (name: string): number => Math.abs((sizeOf(sizes, name)?.planned ?? 0) - length);
  return sizes.graph.nodes.filter(({ key, owner }) => (owner.kind === 'part' || owner.kind === 'joint') && MEASURED_KEYS.includes(key))
    .flatMap(({ name, owner }): readonly SizeMention[] => {
      if (owner.count === 1) return [{ size: name }];
      const open = Array.from({ length: owner.count }, (_, index) => index + 1).find((copy) => !state.measurements.some((one) => one.size === name && (one.copy === copy || one.copy === undefined)));
      return open === undefined ? [] : [{ size: name, copy: open }];
    })
    .sort((one, other) => off(one.size) - off(other.size));
}
