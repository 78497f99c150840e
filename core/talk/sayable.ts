import { assertNever } from '../result.ts';
import type { Bench } from '../bench/bench.ts';
import type { Screen } from '../bench/screen.ts';
import { describeSize } from '../piece/describe.ts';
import { sayNumber } from '../length/say.ts';
import type { Part } from '../piece/file.ts';
import type { ReadingKind } from '../true/readings.ts';
import { isTruing } from '../work/truing.ts';
import { stepNow } from './context.ts';

/** Worth knowing wherever one is. */
const ANYWHERE = ['where am I', 'say again', 'digit by digit', 'scratch that', 'how long is left', 'start a twenty minute timer', 'louder', 'menu'];

/**
 * What can be said here, the most useful first, as a person would say it: a short list for the help screen and the ear.
 * An answer to the open question comes first; the rest depends on the screen. Every one of them is understood.
 */
export function whatCanBeSaid(bench: Bench): readonly string[] {
  const { screen } = bench.conversation;
  // The help screen tells what can be said about the work, for that is what one goes back to.
  const here = forScreen(screen.name === 'help' || screen.name === 'menu' ? { name: 'step' } : screen, bench);
  return [...new Set([...answers(bench), ...toldInTurn(bench), ...here, ...ANYWHERE])];
}

/** What leads through what is told piece by piece. */
function toldInTurn({ conversation: { inTurn } }: Bench): readonly string[] {
  return inTurn === undefined ? [] : ['next', 'say again', 'back', 'from the beginning', 'enough'];
}

const READING_ANSWERS: Readonly<Record<ReadingKind, readonly string[]>> = {
  'sticks': ['left high one thirty second', 'right high one sixteenth', 'no gap', 'leave it out'],
  'along': ['one sixty fourth', 'five thousandths', 'no gap', 'leave it out'],
  'across': ['hollow one thirty second', 'crowned one sixty fourth', 'no gap', 'leave it out'],
  'square': ['far side five thousandths', 'face side one sixty fourth', 'no gap', 'leave it out'],
  'thickness': ['seven eighths', 'one and one sixteenth', 'leave it out'],
  'first diagonal': ['sixty one and three eighths', 'leave it out'],
  'second diagonal': ['sixty one and three eighths', 'leave it out'],
};

function answers({ conversation: { question } }: Bench): readonly string[] {
  switch (question?.kind) {
    case undefined: return [];
    case 'yes or no': return ['yes', 'no'];
    case 'surface reading': return READING_ANSWERS[question.what];
    case 'length': return ['three and seven sixteenths', 'an inch and a half'];
    case 'which': return question.choices.map(({ say }) => say);
    default: return assertNever(question);
  }
}

function forScreen(screen: Screen, bench: Bench): readonly string[] {
  const { length, width, copy, part } = examples(bench, screen);
  switch (screen.name) {
    case 'step': case 'menu': case 'help':
      return [...atJoint(bench), ...atGlue(bench), ...atTruing(bench), ...atFinish(bench), 'next', 'done', ...length.map((size) => `how long is the ${size}`), 'what tools', 'what is the check', 'tell me more', 'what do I record', 'skip', 'back'];
    case 'steps':
      return ['go to the glue-up', 'what is left', 'how long will it take', 'next'];
    case 'parts':
      return [...part.map((name) => `show the ${name}`), ...part.map((name) => `how many ${name}`), ...length.map((size) => `how long is the ${size}`)];
    case 'part':
      return [...width.map((size) => `how wide is ${size}`), ...length.map((size) => `why is the ${size} so long`), ...copy.map((one) => `record ${one} width three and one sixteenth`), ...copy.map((one) => `where do the joints go on ${one}`), ...copy.map((one) => `show the layout of ${one}`), 'what wood is it', 'what moved'];
    case 'moved':
      return ['what no longer fits', ...length.map((size) => `why is the ${size} so long`), ...width.map((size) => `how wide is ${size}`), 'scratch that'];
    case 'size': case 'why':
      return ['why', 'in millimeters', 'half of that', 'what moved', 'what no longer fits', ...copy];
    case 'record':
      return [...copy.map((one) => `record ${one} width three and one sixteenth`), 'forget that measurement', 'what moved'];
    case 'reckoning':
      return ['half of thirty one and five eighths', 'divide sixty inches into five equal spaces', 'three times an inch and a half', 'that plus a quarter', 'that less one sixteenth', 'that in millimeters'];
    case 'chopping':
      return ['next', 'back', 'stage three', 'say again', 'how deep', 'which chisel', 'done'];
    case 'layout':
      return ['next face', ...nextOne(screen, bench), ...copy.map((one) => `the layout of ${one}`), 'to face B', 'where do the mortises go', 'print it', 'which gauge is set to what'];
    case 'paper':
      return [...part.map((name) => `print the layout of the ${name}`), 'how many sheets for the rod', 'print the cut list', 'save the part labels', 'print it', 'the bar measures ninety nine point two millimeters', 'use letter paper'];
    case 'air':
      return ['the shop is twelve degrees sixty percent', 'can I glue tonight', 'how long must the clamps stay on', 'how long to warm it', 'the wood is at fifteen degrees', 'the label says open time eight minutes', 'how many clamps', 'my clamps press eight hundred pounds', 'rehearse'];
    case 'wood':
      return ['the driest month is twenty degrees thirty percent', 'the dampest month is twenty two degrees sixty five percent', 'the stock is at nine percent', 'what will the top do', 'is the stock ready', ...copy.map((one) => `the bow of ${one} is one sixteenth`)];
    case 'gluing':
      return ['next', 'rehearse', 'start gluing', 'divide it', 'can I glue tonight', 'leave the rehearsal'];
    case 'truing':
      return ['take the readings', 'what do I plane', 'is it flat', 'how thick will it be', 'take the thickness', 'take the diagonals', 'read the other face', 'the gap in the middle is one sixty fourth', 'I planed it', 'will they close', 'the board is cupped', 'one shaving is four thousandths'];
    case 'faces':
      return [...(screen.shows === undefined ? [] : ['take it']), ...atFaces(screen, bench)];
    case 'boards':
      return ['new board ninety six by eight', 'knot from thirty to thirty four', 'across one to two', 'it tapers to seven and a half', 'sapwood one inch', 'how many boards', 'board two is used up', 'plan the cutting', 'what do I buy'];
    case 'cutting':
      return [...(bench.conversation.offer === undefined ? [] : ['take the plan', 'how good is the plan', 'stop planning']), 'what do I cut next', 'read me the cuts', 'where on board three', 'the cut is made', 'split from thirty to forty', 'plan the cutting', 'save the plan', 'what do I buy'];
    case 'rough':
      return [...part.flatMap((name) => [`the rough size of the ${name}`, `the ${name} may hide a knot`, `cut the ${name} one half longer`]), 'cut layers one quarter wider', 'cut panel boards one inch longer', 'plan the cutting'];
    case 'buying':
      return ['does ninety six by eight help', ...(screen.board === undefined ? [] : ['bought']), 'what do I buy', 'boards at the yard are eight wide', 'a board foot costs nine fifty', 'buy number one common', 'how many boards'];
    case 'clocks':
      return ['how long is left', 'start a twenty minute timer', 'add five minutes', 'take off two minutes', 'start the clamp timer', 'stop the timer', 'got it', 'what time is it'];
    case 'edges':
      return ['chopping', 'stopped', 'stropped', 'I honed the chisel', 'I ground the jack plane', 'how is the chisel', 'how far out for thirty degrees'];
    case 'journal':
      return ['scratch that', 'put it back', 'what did I do today', 'what did I measure', 'is anything out of tolerance', 'note the left board has a knot', 'what moved'];
    case 'settings':
      return ['round to sixteenths', 'use millimeters', 'louder', 'speak slowly', 'dark screen', 'larger text', 'stop listening', 'do not speak up', 'wait for a lull', 'the caliper reads millimeters', 'try the microphone'];
    case 'microphone':
      return ['next', ...length.map((size) => `how long is the ${size}`), ...copy.map((one) => `record ${one} width three and one sixteenth`), 'leave the microphone'];
    case 'files':
      return ['show the parts', 'where am I'];
    default:
      return assertNever(screen);
  }
}

/** 'next leg', while there are several. */
function nextOne({ part: id }: Extract<Screen, { name: 'layout' }>, { state: { piece } }: Bench): readonly string[] {
  const part = piece?.file.parts.find((one) => one.id === id);
  return part === undefined || part.count < 2 ? [] : [`next ${part.name}`];
}

/** What is told of faces: of the leg on the screen without its name. */
function atFaces({ copy, part: id }: Extract<Screen, { name: 'faces' }>, { state: { piece } }: Bench): readonly string[] {
  const part = piece?.file.parts.find((one) => one.id === id) ?? piece?.file.parts.find(({ count, places }) => count > 1 && places !== undefined);
  if (!part) return [];
  const whose = copy === undefined ? `${part.name} two ` : '';
  const place = part.places?.at(-1);
  return [`${whose}show A and B, hide C`, `${whose}face A is the best`, `${whose}arch up`, `${whose}grain up`, 'place them', ...(part.count > 1 ? [`which ${part.name} is which`] : []), 'second best and why', ...(part.count > 1 ? [`change over ${part.name} one and ${part.name} two`] : []), ...(place === undefined ? [] : [`${part.name} two goes ${place}, face A to the front`]), 'what counts first'];
}

/** At a step that chops or lays out a joint, what is asked of it most. */
function atJoint(bench: Bench): readonly string[] {
  const { state } = bench;
  const step = stepNow(bench);
  if (step?.operation === 'orient and mark') return ['place them', ...atFaces({ name: 'faces', ...(step.part === undefined ? {} : { part: step.part }) }, bench).slice(0, 2)];
  const mortise = state.piece?.file.joints.some((joint) => joint.kind === 'mortise and tenon' && joint.id === step?.joint) ?? false;
  if (step?.operation === 'fit') return ['the tenon is too tight', 'the shoulder has a gap', 'how tight should the tenon be'];
  if (step?.operation === 'joint layout') return ['show the layout', 'gauges', 'where do the mortises go'];
  return mortise && step?.operation === 'chop mortises' ? ['show me the stages', 'how do I chop it', 'which chisel', 'chopping', 'stopped', 'stropped'] : [];
}

/** At a coat of finish. */
function atFinish(bench: Bench): readonly string[] {
  const step = stepNow(bench);
  return step?.operation === 'finish' ? ['how many coats are on', 'the coat is on', 'start the recoat clock'] : [];
}

/** At a step that trues a board, or puts two together dry. */
function atTruing(bench: Bench): readonly string[] {
  const step = stepNow(bench);
  if (!step || !isTruing(step)) return [];
  return step.operation === 'dry check' ? ['will they close', 'take the readings'] : ['take the readings', 'what do I plane', 'is it flat'];
}

/** At a step that glues, what comes first. */
function atGlue(bench: Bench): readonly string[] {
  const step = stepNow(bench);
  return step?.operation.endsWith('glue-up') === true ? ['can I glue tonight', 'rehearse', 'start gluing'] : [];
}

/** Names of the piece on the bench to make examples with: each a list of one, or empty when the piece has none. */
interface Examples {
  readonly length: readonly string[];
  readonly width: readonly string[];
  readonly copy: readonly string[];
  readonly part: readonly string[];
}

function examples({ state: { piece } }: Bench, screen: Screen): Examples {
  const parts = piece?.file.parts ?? [];
  const shown = screen.name === 'part' ? screen.part : 'size' in screen && piece ? describeSize(piece, screen.size)?.owner.id : undefined;
  const part = parts.find(({ id }) => id === shown) ?? parts.find(({ name }) => name.includes(' ')) ?? parts[0];
  const copied = part?.id === shown && part && part.count > 1 ? part : parts.find(({ count }) => count > 1);
  return {
    length: having(part, 'length').map(({ name }) => name),
    width: having(part, 'width').map((one) => nameOfCopy(one)),
    copy: having(copied, 'width').map((one) => nameOfCopy(one)),
    part: part ? [part.name] : [],
  };
}

function having(part: Part | undefined, size: string): readonly Part[] {
  return part?.sizes[size] === undefined ? [] : [part];
}

function nameOfCopy({ name, count }: Part): string {
  return count > 1 ? `${name} ${sayNumber(2)}` : name;
}
