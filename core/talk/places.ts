import type { Bench } from '../bench/bench.ts';
import type { Screen } from '../bench/screen.ts';
import type { TimerKind } from '../clock/timer.ts';
import { ADDRESS_WORDS, type AddressWord } from '../journal/settings.ts';
import { readSpokenNumber } from '../length/parseSpoken.ts';
import { sayNumber, sayOrdinal } from '../length/say.ts';
import { stepsFor } from '../work/plan.ts';
import { OPERATIONS, type Step, type StepId } from '../work/step.ts';
import type { Reading, Slot, SlotValues } from './slot.ts';
import { namesOf } from './names.ts';
import { shortChoices } from './shortChoices.ts';
import { partSlot } from './subjects.ts';
import { canonicalWords, nameKey } from './words.ts';

const OPERATION_KEYS: ReadonlyMap<string, string> = new Map(OPERATIONS.map((operation) => [canonicalWords(operation).join(' '), operation]));

/** 'glue-up', 'chop mortises leg three', 'step twelve': the first open step of that operation, on that part. */
export const stepSlot: Slot<StepId> = {
  longest: 8,
  read: (words, bench) => {
    const steps = bench.state.piece ? stepsFor(bench.state.piece) : [];
    if (words[0] === 'step' || words[0] === 'number') return stepByNumber(words.slice(words[0] === 'step' && words[1] === 'number' ? 2 : 1), steps);
    const found = words.flatMap((_, at) => operationAt(words, at + 1, steps, bench));
    const open = found.filter(({ id }) => !bench.state.done.has(id));
    const [first] = open.length > 0 ? open : found;
    return first ? [{ value: first.id }] : [{ fault: `this work has no step called “${words.join(' ')}”` }];
  },
  samples: ({ state }) => [...new Set((state.piece ? stepsFor(state.piece) : []).map(({ operation }) => operation))].flatMap((operation, index) => {
    const part = [...namesOf(state.piece).parts.values()].at(index % Math.max(1, namesOf(state.piece).parts.size));
    const onPart = state.piece && part && stepsFor(state.piece).some((step) => step.operation === operation && step.part === part.id);
    return [operation, ...(onPart ? [`${operation} ${part.name}`] : [])];
  }),
};

function stepByNumber(words: readonly string[], steps: readonly Step[]): Reading<StepId>[] {
  const number = readSpokenNumber(words);
  if (!number.ok) return [];
  const step = steps[number.value - 1];
  return step ? [{ value: step.id }] : [{ fault: `there is no step ${sayNumber(number.value)}; this work has ${sayNumber(steps.length)}` }];
}

/** Steps whose operation is the words up to `split`, or from there on, and whose part is the others. */
function operationAt(words: readonly string[], split: number, steps: readonly Step[], bench: Bench): readonly Step[] {
  const before = words.slice(0, split);
  const after = words.slice(split);
  const orders: readonly (readonly [readonly string[], readonly string[]])[] = [[before, after], ...(after.length > 0 ? [[after, before] as const] : [])];
  return orders.flatMap(([operationWords, partWords]) => {
    const operation = OPERATION_KEYS.get(nameKey(operationWords));
    if (operation === undefined) return [];
    const ofOperation = steps.filter((step) => step.operation === operation);
    if (partWords.length === 0) return ofOperation;
    const parts = partSlot.read(partWords[0] === 'on' || partWords[0] === 'of' ? partWords.slice(1) : partWords, bench);
    return parts.flatMap((reading) => ('value' in reading ? ofOperation.filter((step) => coversPart(step, reading.value)) : []));
  });
}

function coversPart({ covers }: Step, { part, copy }: { readonly part: string; readonly copy?: number }): boolean {
  return covers.some((covered) => covered.part === part && (copy === undefined || covered.copy === copy));
}

/** The step that glues a part up: the first open one, else the first. */
export function glueUpOf({ part, copy }: SlotValues['parts'], { state: { piece, done } }: Bench): StepId | undefined {
  const glued = (piece ? stepsFor(piece) : []).filter((step) => step.operation.endsWith('glue-up') && coversPart(step, copy === undefined ? { part } : { part, copy }));
  return (glued.find(({ id }) => !done.has(id)) ?? glued[0])?.id;
}

/** A place that the piece file names for the copies of a part. */
export const placeSlot: Slot<string> = {
  longest: 4,
  read: (words, bench) => {
    const place = namesOf(bench.state.piece).places.get(nameKey(words));
    return place === undefined ? [] : [{ value: place }];
  },
  samples: ({ state }) => [...namesOf(state.piece).places.values()],
};

const KIND_WORDS: ReadonlyMap<string, TimerKind> = new Map([
  ['clamp', 'clamp'], ['clamping', 'clamp'], ['open time', 'open time'], ['open', 'open time'], ['glue', 'open time'], ['rest', 'rest'], ['resting', 'rest'], ['break', 'break'], ['edge', 'break'], ['strop', 'break'], ['sharpening', 'break'], ['sharpening break', 'break'],
]);

export const kindSlot: Slot<TimerKind> = {
  longest: 2,
  read: (words) => {
    const kind = KIND_WORDS.get(nameKey(words));
    return kind ? [{ value: kind }] : [];
  },
  samples: () => ['clamp', 'open time', 'rest', 'break', 'edge'],
};

/** A person, or what was spoken of: nothing that a clock is called. */
const NEVER_A_CLOCK = /^(?:me|you|i|we|it|us)\b/;

/** A running clock by its name, by the end of it, or by its kind. */
export const timerSlot: Slot<number> = {
  longest: 8,
  read: (words, { state }) => {
    const said = nameKey(words).replace(/ ?(?:timer|clock)$/, '');
    if (said === '') return [];
    const keyed = state.timers.map((timer) => ({ timer, name: canonicalWords(timer.name).join(' ') }));
    const exact = keyed.filter(({ name }) => name === said);
    const found = exact.length > 0 ? exact : keyed.filter(({ name, timer }) => name.endsWith(` ${said}`) || name.startsWith(`${said} `) || KIND_WORDS.get(said) === timer.kind);
    if (found.length === 0) return NEVER_A_CLOCK.test(said) ? [] : KIND_WORDS.has(said) ? [{ fault: `no ${said} clock is running`, partly: true }] : [{ fault: `no clock called “${words.join(' ')}” is running` }];
    return found.map(({ timer }) => ({ value: timer.id, labels: [timer.name, timer.name] as const }));
  },
  samples: ({ state }) => state.timers.map(({ name }) => name),
};

const SCREENS: ReadonlyMap<string, Screen> = new Map<string, Screen>([
  ['menu', { name: 'menu' }], ['everything', { name: 'menu' }],
  ['step', { name: 'step' }], ['this step', { name: 'step' }], ['work', { name: 'step' }],
  ['list', { name: 'steps' }], ['all step', { name: 'steps' }], ['list of step', { name: 'steps' }], ['step list', { name: 'steps' }], ['plan', { name: 'steps' }],
  ['part', { name: 'parts' }], ['all part', { name: 'parts' }],
  ['clock', { name: 'clocks' }], ['timer', { name: 'clocks' }], ['time', { name: 'clocks' }],
  ['sharpening', { name: 'edges' }], ['tool edge', { name: 'edges' }],
  ['journal', { name: 'journal' }], ['record', { name: 'journal' }], ['note', { name: 'journal' }], ['history', { name: 'journal' }],
  ['setting', { name: 'settings' }], ['option', { name: 'settings' }],
  ['file', { name: 'files' }], ['piece file', { name: 'files' }],
  ['pad', { name: 'record' }], ['number pad', { name: 'record' }], ['fraction pad', { name: 'record' }],
  ['corner', { name: 'faces' }], ['four corner', { name: 'faces' }],
  ['math', { name: 'reckoning' }], ['reckoning', { name: 'reckoning' }],
  ['help', { name: 'help' }], ['microphone', { name: 'microphone' }],
  ['paper', { name: 'paper' }], ['rack', { name: 'boards' }], ['board', { name: 'boards' }], ['cutting', { name: 'cutting' }], ['buying', { name: 'buying' }],
  ['reading', { name: 'truing' }],
  ['air', { name: 'air' }], ['shop', { name: 'air' }], ['glue', { name: 'air' }], ['wood', { name: 'wood' }], ['gluing', { name: 'gluing' }],
]);

export const screenSlot: Slot<Screen> = {
  longest: 3,
  read: (words) => {
    const screen = SCREENS.get(nameKey(words));
    return screen ? [{ value: screen }] : [];
  },
  samples: () => ['menu', 'step', 'all steps', 'parts', 'everything', 'plan', 'clocks', 'timers', 'timer', 'time', 'journal', 'record', 'notes', 'settings', 'options', 'files', 'file', 'number pad', 'corners', 'four corners', 'math', 'sharpening', 'tool edges', 'help', 'microphone', 'paper', 'readings', 'rack', 'boards', 'cutting', 'buying', 'air', 'wood', 'gluing'],
};

export const addressSlot: Slot<AddressWord> = {
  longest: 1,
  read: ([word]) => ADDRESS_WORDS.filter((known) => known === word).map((value) => ({ value })),
  samples: () => ADDRESS_WORDS,
};

/** 'two', 'the second one', or the words of the choice itself. */
export const choiceSlot: Slot<number> = {
  longest: 10,
  read: (words, { conversation: { question } }) => {
    if (question?.kind !== 'which') return [];
    const said = nameKey(words);
    const place = said.replace(/^number /, '').replace(/ one$/, '');
    const named = question.choices.findIndex(({ say }) => canonicalWords(say).join(' ') === said);
    const short = shortChoices(question.choices).findIndex((say) => canonicalWords(say).join(' ') === said);
    const last = [named, short].find((index) => index >= 0) ?? question.choices.findIndex(({ say }) => canonicalWords(say)[0] === place);
    const counted = question.choices.findIndex((_, index) => place === sayOrdinal(index + 1) || place === sayNumber(index + 1) || place === String(index + 1));
    const index = last >= 0 ? last : counted;
    return index >= 0 ? [{ value: index }] : [];
  },
  samples: ({ conversation: { question } }) => (question?.kind === 'which'
    ? question.choices.flatMap(({ say }, index) => [say.replaceAll(',', ''), sayNumber(index + 1), `${sayOrdinal(index + 1)} one`]).concat(shortChoices(question.choices)) : []),
};
