import type { Bench } from '../../bench/bench.ts';
import { ADDRESS_WORDS } from '../../journal/settings.ts';
import { assertNever } from '../../result.ts';
import { examplesFor, rowPhrases } from '../expand.ts';
import type { Pattern, PatternNode, Row } from '../pattern.ts';
import type { SlotName } from '../slot.ts';
import { slots } from '../slots.ts';
import { ANSWERS, FOLLOW_UPS, WHOLE_REQUESTS } from '../table.ts';
import { all, either, NEVER, NOTHING, optional, rarely, words } from './expression.ts';
import type { Expression } from './expression.ts';
import { BOARD_SENTENCES } from './boards.ts';
import { FACE_SENTENCES } from './faces.ts';
import { DURATION, INTERVAL, SPAN } from './durations.ts';
import { FOLLOWS_ON, groundsOf } from './follows.ts';
import type { Ground } from './follows.ts';
import { FRACTION_OF, LENGTHS } from './measures.ts';
import { ordinalChoices, plain, spokenNames } from './names.ts';
import { counted, RARE } from './numbers.ts';
import { degreesIn, GRAMS, HUMIDITY, MOISTURE, POUNDS } from './weather.ts';
import { PRICE } from '../priceSlot.ts';
import { shortChoices } from '../shortChoices.ts';
import { EDGE_ANGLES, LOUDEST, MOST_STAGES, MOST_TIMES, mostBoards, mostPlaced } from '../counts.ts';
import { SIDE_WORDS, SPOT_WORDS } from '../truingSlots.ts';

type SlotSentences = { readonly [Name in SlotName]: Expression };

const CONTRACTED: ReadonlyMap<string, string> = new Map([['what is', "what's"], ['that is', "that's"], ['it is', "it's"], ['i am', "i'm"], ['does not', "doesn't"], ['did not', "didn't"], ['where is', "where's"], ['how is', "how's"], ['i have', "i've"], ['there is', "there's"]]);
/** What stands on the last answer, and an answer that nobody asked for, are said less often than a whole request. */
const FOLLOWS = 100;
/** Most sums begin with a number, and numbers fit nearly any noise. Measured: see test/bench/hearing/README.md. */
const SUMS = 300;

/** Every sentence that the bench understands now, word for word: from the same table as the parser's. */
export function sentencesFor(bench: Bench): Expression {
  const grounds = groundsOf(bench);
  const bySlot = slotSentences(bench, grounds);
  const stands = ({ about }: Row) => { const ground = FOLLOWS_ON.get(about); return ground === undefined || grounds.has(ground); };
  const rows = (table: readonly Row[]) => either(...table.filter(stands).flatMap(({ topic, patterns }) => patterns.map((pattern) => rarely(sequence(pattern, bySlot), topic === 'reckoning' ? SUMS : 0))));
  const asked = bench.conversation.question !== null;
  const answers = ANSWERS.filter((row) => rowPhrases(row, examplesFor(bench)).length > 0);
  const said = either(rarely(rows(WHOLE_REQUESTS), asked ? FOLLOWS : 0), rarely(rows(answers), asked ? 0 : FOLLOWS), rarely(rows(FOLLOW_UPS), FOLLOWS));
  return all(either(NOTHING, rarely('please', 2 * RARE)), said, either(NOTHING, rarely('please', RARE)));
}

function sequence(pattern: Pattern, bySlot: SlotSentences): Expression {
  const parts: Expression[] = [];
  for (let at = 0; at < pattern.length; at += 1) {
    const [node, next] = [pattern[at], pattern[at + 1]];
    if (node === undefined) break;
    const closed = next === undefined ? [] : contracted(node, next, bySlot);
    if (closed.length > 0 && next !== undefined) {
      parts.push(either(all(expressionOf(node, bySlot), expressionOf(next, bySlot)), ...closed));
      at += 1;
    } else parts.push(expressionOf(node, bySlot));
  }
  return all(...parts);
}

/** What two neighbours are drawn together to where they meet: 'that's' and 'it's', of '(that|it) (is|was)'. */
function contracted(node: PatternNode, next: PatternNode, bySlot: SlotSentences): Expression[] {
  return endsOf(node, 'last').flatMap((one) => endsOf(next, 'first').flatMap((other) => {
    const closed = CONTRACTED.get(`${one.spelled} ${other.spelled}`);
    return closed === undefined ? [] : [all(sequence(one.rest, bySlot), closed, sequence(other.rest, bySlot))];
  }));
}

/** The words that a node may begin or end with, each with what it has besides. */
function endsOf(node: PatternNode, end: 'first' | 'last'): readonly { readonly spelled: string; readonly rest: Pattern }[] {
  switch (node.kind) {
    case 'word':
    case 'filler': return [{ spelled: node.spelled, rest: [] }];
    case 'slot': return [];
    case 'choice': return node.options.flatMap((option) => {
      const outer = option.at(end === 'first' ? 0 : -1);
      if (outer === undefined) return [];
      return endsOf(outer, end).map(({ spelled, rest }) => ({ spelled, rest: end === 'first' ? [...rest, ...option.slice(1)] : [...option.slice(0, -1), ...rest] }));
    });
    default: return assertNever(node);
  }
}

function expressionOf(node: PatternNode, bySlot: SlotSentences): Expression {
  switch (node.kind) {
    case 'word':
    case 'filler': return words(plain(node.spelled));
    case 'slot': return bySlot[node.slot];
    case 'choice': return either(...node.options.map((option) => sequence(option, bySlot)));
    default: return assertNever(node);
  }
}

/** The words of every slot. */
function slotSentences(bench: Bench, grounds: ReadonlySet<Ground>): SlotSentences {
  const { settings: { rounding: { unit }, temperature } } = bench.state;
  const names = spokenNames(bench);
  const { length, small, gap, along } = LENGTHS[unit];
  const [times, degrees, board] = [counted(2, MOST_TIMES), degreesIn(temperature), counted(1, mostBoards(bench))];
  const operand = either(length, names.size, ...(grounds.has('answer') ? [rarely(either('that', 'it', 'the answer', 'the last answer'), RARE)] : []));
  const examples = (name: SlotName) => oneOf([...new Set(slots[name].samples(bench).map(plain))]);
  return {
    ...names, ...FACE_SENTENCES, ...BOARD_SENTENCES, other: names.copy, species: examples('species'),
    length, first: length, second: length, each: either(length, rarely(names.size, RARE)), small, setback: small, otherSetback: small, gap, from: along, to: along,
    count: times, spaces: times, board, nth: counted(1, Math.max(1, mostPlaced(bench))), stage: counted(1, MOST_STAGES), loudness: either(counted(1, LOUDEST), rarely(counted(LOUDEST + 1, 2 * LOUDEST), RARE)), angle: counted(EDGE_ANGLES.from, EDGE_ANGLES.to), price: PRICE,
    fraction: FRACTION_OF, of: operand, left: operand, right: operand,
    adjective: either('long', 'wide', 'broad', 'thick', 'deep', 'high', 'tall'), unit: either('millimeters', 'inches', 'metric', 'imperial'), rounding: examples('rounding'),
    duration: DURATION, span: SPAN, interval: INTERVAL, degrees, percent: HUMIDITY, moisture: MOISTURE, grams: GRAMS, pounds: POUNDS,
    kind: either('clamp', 'clamping', 'open time', 'glue', 'rest', 'break', 'edge', 'sharpening'), timer: timersOf(bench),
    whole: examples('whole'), pieces: examples('pieces'), side: sideOf(names.part, board), spot: either(along, ...SPOT_WORDS), sense: examples('sense'), lean: examples('lean'), across: examples('across'), light: examples('light'),
    screen: examples('screen'), edge: examples('edge'), care: examples('care'), off: examples('off'), warp: examples('warp'), half: examples('half'), misfit: examples('misfit'), fault: examples('fault'), deed: examples('deed'), address: either(...ADDRESS_WORDS), choice: choices(bench), text: NEVER,
  };
}

/** The clocks that run; of a kind that does not, more rarely, to be told so: 'stop the rest timer' must not start one. */
function timersOf({ state: { timers } }: Bench): Expression {
  const running = new Set<string>(timers.map(({ kind }) => kind));
  const kinds = ['clamp', 'open time', 'rest', 'break'].map((kind) => rarely(kind, running.has(kind) ? 0 : RARE));
  return all(either(...timers.map(({ name }) => plain(name)), ...kinds), optional(either('timer', 'clock')));
}

/** As truingSlots reads it: the part may be left out, the face may stand before or behind, and so may the layer. */
function sideOf(part: Expression, number: Expression): Expression {
  const board = all(either('layer', 'board'), number);
  const face = either(...SIDE_WORDS);
  const owner = either(part, all(board, 'of', optional('the'), part), all(part, board), board);
  return either('it', 'this', 'this board', face, all('this', face), owner, all(owner, face), all(face, 'of', optional('the'), owner));
}

function choices({ conversation: { question } }: Bench): Expression {
  if (question?.kind !== 'which') return NEVER;
  return either(...question.choices.map(({ say }) => plain(say)), ...shortChoices(question.choices).map(plain), ...ordinalChoices(question.choices.length));
}

function oneOf(options: readonly string[]): Expression {
  return options.length === 0 ? NEVER : either(...options);
}
