import type { Bench } from '../../bench/bench.ts';
import type { TalkRequest } from '../../bench/request.ts';
import { rowsOf } from '../pattern.ts';
import type { Built } from '../slot.ts';

const undo = rowsOf('undo');
const row = rowsOf('talk');

function told({ conversation: { inTurn } }: Bench, to: Extract<TalkRequest, { kind: 'tell in turn' }>['to']): Built {
  return inTurn === undefined ? { fault: 'nothing is being told piece by piece', notNow: true } : { kind: 'tell in turn', to };
}

/** Taking back, and talk about talk. */
export const TALK_ROWS = [
  undo('take the last thing back', ['scratch (it|that)', 'undo [it|that]', '[i] take (it|that) back', '(scratch|undo|delete) [that|the] last (one|thing|entry)', '[no] (that|it) (is|was) (wrong|not right)', 'not that', '(forget|delete) (it|that)'], () => ({ kind: 'scratch that' })),
  undo('put back what was taken', ['(put|bring) (it|that) back', '(put|bring) back [it|that]', 'redo [it|that]'], () => ({ kind: 'put back' })),
  row('the next of what is told', ['[the] next mark', 'read on'], (_, bench) => told(bench, 'next')),
  row('what is told, from its beginning', ['from the (beginning|start)'], (_, bench) => told(bench, 'first')),
  row('enough of what is told', ['enough', 'leave the rest'], (_, bench) => told(bench, 'enough')),
  row('say it again', ['[say|tell|read] [me] [it|that] again', '[can you] repeat [it|that]', '[can you] say (it|that) (again|once more)', 'what did you say', 'i did not (hear|get) (it|that|you)', 'once more', 'come again', 'pardon', 'what'], () => ({ kind: 'say again', how: 'as before' })),
  row('say it slower', ['[say] [it|that] (slower|slow|slowly) [please]', '[say] [it|that] more slowly', '[say] [it|that] again slowly', 'too fast', 'not so fast'], () => ({ kind: 'say again', how: 'slower' })),
  row('say it digit by digit', ['[say] [it|that] digit by digit', '[say] [it|that] (number by number|one by one)', '[say] [it|that] one (number|digit) at a time'], () => ({ kind: 'say again', how: 'digit by digit' })),
  row('speak louder', ['[a (bit|little)] louder', 'speak (up|louder)', 'turn (it|the (volume|sound)) up', 'turn up the (volume|sound)', 'i cannot hear [you]', 'too quiet'], () => ({ kind: 'louder' })),
  row('speak quieter', ['[a (bit|little)] quieter', 'speak quieter', 'turn (it|the (volume|sound)) down', 'turn down the (volume|sound)', 'not so loud', 'too loud'], () => ({ kind: 'quieter' })),
  row('stop talking', ['[be] quiet', 'stop talking', 'hush', 'that is enough', 'shut up'], () => ({ kind: 'be quiet' })),
  row('what can be said', ['what can i (say|ask) [you|here|now]', 'what do i say [here|now]', 'what else can i (say|ask)', 'what do you (know|understand)', '[i need] help [me]', 'what can you (do|tell me)'], () => ({ kind: 'what can I say' })),
  row('what can be said of taking back', ['how do i (undo|take back) something', 'how do i undo [it|that]'], () => ({ kind: 'what can I say', about: { name: 'journal' } })),
  row('what can be said of measurements', ['how do i (write down|record) (a|the) (measurement|size)'], () => ({ kind: 'what can I say', about: { name: 'record' } })),
  row('what can be said of clocks', ['(how do i|what do i say to) (start|set|stop) (a|the) (clock|timer)', 'what can i (say|ask) about [the] (clocks|timers)'], () => ({ kind: 'what can I say', about: { name: 'clocks' } })),
];
