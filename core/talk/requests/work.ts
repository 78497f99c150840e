import type { Bench } from '../../bench/bench.ts';
import type { Request } from '../../bench/request.ts';
import { glueUpOf } from '../places.ts';
import type { Deed } from '../../work/deeds.ts';
import type { OwnerMention } from '../names.ts';
import { rowsOf } from '../pattern.ts';
import type { Built } from '../slot.ts';

const row = rowsOf('work');

/** A stage of the chopping is on the screen: next and back go through its stages. */
function isChopping({ conversation: { screen } }: Bench): boolean {
  return screen.name === 'chopping';
}

/** A board is being cut by the plan on the screen: what is done is its cut, and what comes next is the next one. */
function isCutting({ conversation: { screen, offer }, state }: Bench): boolean {
  return screen.name === 'cutting' && offer === undefined && state.plans.has(state.pieceName ?? '');
}

/** Something is being told piece by piece: next and back lead through it. In a glue-up they are of its moves. */
function isTold({ conversation: { inTurn }, state: { gluing } }: Bench): boolean {
  return inTurn !== undefined && !gluing;
}

/** What comes next of what lies open. */
function onwards(bench: Bench): Request {
  if (isTold(bench)) return { kind: 'tell in turn', to: 'next' };
  return isChopping(bench) ? { kind: 'chop stage', to: 'next' } : isCutting(bench) ? { kind: 'next cut' } : { kind: 'next step' };
}

/** What came before it. */
function backwards(bench: Bench): Request {
  if (isTold(bench)) return { kind: 'tell in turn', to: 'back' };
  return isChopping(bench) ? { kind: 'chop stage', to: 'back' } : { kind: 'step back' };
}

/** What was done to one part, by its name. */
function doneBy(by: Deed, { owner: { id, kind }, copy }: OwnerMention): Built {
  // What is sawed and no joint may be a board of the plan: that is its cut.
  return kind === 'parameter' || (by === 'sawed' && kind !== 'joint') ? undefined : { kind: 'made', owner: id, ...(copy === undefined ? {} : { copy }), by };
}

/** Walking through the work. */
export const WORK_ROWS = [
  row('where you are', ['where (am|was) i', 'where did (i|we) (stop|leave off|get to)', '[go] back to where i was', 'what (am|was) i (doing|up to)', '(what|which) step [is (this|it)|am i (on|at)]', 'what is (this|the) step', 'what (do|should|must) i do [now]', 'what do we do [now]', 'what are we doing', 'where do i (start|begin)', 'what now'], () => ({ kind: 'where am I' })),
  row('the next step', ['[the] next [step|one]', 'go on', 'carry on', 'continue', 'show [me] [the] next step', 'move on'], (_, bench) => onwards(bench)),
  // While a reading is asked for, that is what comes next.
  row('what comes next', ['what [is] [the] next [step]', 'what (comes|is|do i do) (next|[next] after (this|that))'], (_, bench) => (bench.conversation.question?.kind === 'surface reading' ? { kind: 'say again', how: 'as before' } : onwards(bench))),
  row('the step before', ['[go|step] back [one] [step]', '[go to] [the] (previous|last) step', 'the step before', 'previous'], (_, bench) => backwards(bench)),
  row('a step is done', ['[step|this is|that is|it is|i am] (done|finished)', 'this step is (done|finished)', 'i have (done|finished) [it|this|that]', 'done with (it|this|that)'], (_, bench) => (isCutting(bench) ? { kind: 'cut made' } : { kind: 'step done' })),
  row('a step is done, told by its part', ['[the|this] {owner} is (done|finished)', 'i [have] (done|finished) [the|this] {owner}'], ({ owner: { owner: { id }, copy } }) => ({ kind: 'made', owner: id, ...(copy === undefined ? {} : { copy }) })),
  row('a step is done, told by what was done', ['i [have] {deed} [the|this] {owner}'], ({ deed, owner }) => doneBy(deed, owner)),
  row('a part is square', ['[the|this] {owner} is square'], ({ owner }) => doneBy('squared', owner)),
  row('a part is flat', ['[the|this] {owner} is flat'], ({ owner }) => doneBy('flattened', owner)),
  row('a part is true', ['[the|this] {owner} is true'], ({ owner }) => doneBy('trued', owner)),
  row('a step is done, told by all of its parts', ['[all] [the|these] {parts} are (done|finished)'], ({ parts: { part } }) => ({ kind: 'made', owner: part, all: true })),
  row('leave a step out', ['skip [it|this|that] [step]', 'leave (it|this|that) [step] out'], () => ({ kind: 'skip step' })),
  row('open a step again', ['not (done|finished) [yet]', '(it|this|that|step) is not (done|finished) [yet]', '(open|reopen) (it|this|that) [step] [again]', '(open|reopen) the step again', 'reopen'], () => ({ kind: 'reopen step' })),
  row('go to a step', ['(go|jump|take me) to [the] {step}', 'show [me] [the] {step}'], ({ step }) => ({ kind: 'go to step', step })),
  row('go to the glue-up of a part', ['[let us|i want to] glue up [the] {parts}'], ({ parts }, bench) => {
    const step = glueUpOf(parts, bench);
    return step === undefined ? { fault: 'this work has no glue-up of that' } : { kind: 'go to step', step };
  }),
  row('what is left to do', ['what is left [to do]', 'what remains [to do]', 'what (have i got|do i have) left [to do]', 'how much (is|have i) done', 'am i (nearly|almost) (done|finished)', 'how much [work] is left [to do]', 'how far am i [along]', 'how far along (am i|are we)', 'how far have (i|we) got', 'how many steps [are] left', 'how many steps are there', 'what else [is there to do]'], () => ({ kind: 'what is left' })),
  row('how long the rest takes', ['how long will (it|this|that|the rest) take', 'how long does the rest take', 'how much longer will it take', 'when will (i|it) be (done|finished) [today]'], () => ({ kind: 'what is left', time: true })),
  row('the step in full', ['[tell me] more [about (it|(this|that) [step]|the step)]', '[read|say|tell] [it|this|step|[me] (this|the) step] in full', 'read [me] the [whole] step', 'read it all', 'explain [it|this|that] [step]', 'how do i do (it|this|that)'],
    () => ({ kind: 'tell the step', what: 'in full' })),
  row('the tools of the step', ['[what|which] tools [do i need]', 'what do i need [for (it|this|that)]'], () => ({ kind: 'tell the step', what: 'tools' })),
  row('the planes of the step', ['(which|what) plane [do i (use|need|take)]'], () => ({ kind: 'tell the step', what: 'tools', only: 'plane' })),
  row('the saws of the step', ['(which|what) saw [do i (use|need|take)]'], () => ({ kind: 'tell the step', what: 'tools', only: 'saw' })),
  row('how flat it must be', ['how (flat|true) (must|should) (it|this|[the] (face|board)) be', 'how (flat|true) does (it|this|[the] (face|board)) (have|need) to be'], () => ({ kind: 'tell the step', what: 'check', about: 'flat' })),
  row('how square it must be', ['how (square|straight) (must|should) (it|this|[the] edge) be', 'how (square|straight) does (it|this|[the] edge) (have|need) to be'], () => ({ kind: 'tell the step', what: 'check', about: 'square' })),
  row('how tight it must be', ['how tight (must|should) (it|[the] (tenon|joint)) (be|fit)', 'how tight does (it|[the] (tenon|joint)) (have|need) to be'], () => ({ kind: 'tell the step', what: 'check', about: 'fit' })),
  row('how to check the step', ['[what is] [the] check', 'how do i check [it|this|that]', 'how (accurate|close) (must|should) (it|this) be', 'how close do i have to be', 'what is the tolerance', 'did i get (it|that) right', 'how far off may it be', 'how do i know [it is right]', '(is|was) (it|this|that) right'], () => ({ kind: 'tell the step', what: 'check' })),
  row('the cautions of the step', ['[any|what are the|tell me the] cautions', 'what should i be careful (of|with)', 'is there anything to watch [out for]', '[what about] safety', 'is (it|this|that) safe', 'what is dangerous', 'what can go wrong', 'what should i watch [for]'],
    () => ({ kind: 'tell the step', what: 'cautions' })),
  row('the sizes of the step', ['[what|which] (sizes|size) [do i need]', 'what are the sizes', 'how (long|wide|thick) do i (make|cut|saw|plane|rip) (it|this|them)', 'what (length|width|thickness|size) do i (cut|saw|plane|rip) [it|this|them] to', 'sizes (for|of) (this|the) step'], () => ({ kind: 'tell the step', what: 'sizes' })),
  row('what to measure', ['what (do|should|must) i (record|measure) [here|now]', 'what [is there] to (record|measure)'], () => ({ kind: 'tell the step', what: 'what to record' })),
  row('where a copy goes', ['[the] {copy} (is|goes|stands) [at|in] [the] {place}', 'put [the] {copy} [at|in] [the] {place}', '[the] {place} is {copy}'], ({ copy, place }) => ({ kind: 'place', ...copy, place })),
  row('which copy stands where', ['which {parts} (is|goes) {place}', 'what goes {place}'], ({ parts }) => ({ kind: 'which is which', ...(parts === undefined ? {} : { part: parts.part }) })),
];
