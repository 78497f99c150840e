import { rowsOf } from '../pattern.ts';

const row = rowsOf('joints');

/** Through the chopping of a mortise, stage by stage; while a stage is on the screen, 'next' and 'back' are of stages too (work.ts). */
export const CHOPPING_ROWS = [
  row('the next stage of chopping', ['[the] next stage'], () => ({ kind: 'chop stage', to: 'next' })),
  row('the stage of chopping before', ['[go] back (a|one) stage', '[the] (previous|last) stage', 'stage back'], () => ({ kind: 'chop stage', to: 'back' })),
  row('one stage of chopping', ['[go to] stage {stage}'], ({ stage }) => ({ kind: 'chop stage', to: stage })),
  row('back to the chopping', ['[go] back to [the] chopping', '(which|what) stage [is (this|it)]'], () => ({ kind: 'chop stage', to: 'here' })),
  row('chopping from the first stage', ['(lead|walk|take) me through [it|the chopping|the stages]', '[show [me]] [the] stages', 'start chopping', 'first stage'], () => ({ kind: 'chop stage', to: 'first' })),
  row('the chopping of one mortise', ['(lead|walk|take) me through [the] {joint}'], ({ joint: { owner, say } }) => (owner.kind === 'joint' ? { kind: 'chop stage', to: 'first', joint: owner.id } : { fault: `${say} is no joint` })),
];
