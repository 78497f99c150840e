import { rowsOf } from '../pattern.ts';

const undo = rowsOf('undo');
const row = rowsOf('talk');

/** Taking back, and talk about talk. */
export const TALK_ROWS = [
  undo('take the last thing back', ['scratch (it|that)', 'undo [it|that]', 'take (it|that) back', '[no] (that|it) (is|was) (wrong|not right)', 'not that', 'forget (it|that)'], () => ({ kind: 'scratch that' })),
  undo('put back what was taken', ['(put|bring) (it|that) back', '(put|bring) back [it|that]', 'redo [it|that]'], () => ({ kind: 'put back' })),
  row('say it again', ['[say] [it|that] again', 'repeat [it|that]', 'what did you say', 'once more', 'come again', 'pardon', 'what'], () => ({ kind: 'say again', how: 'as before' })),
  row('say it slower', ['[say] [it|that] (slower|slow|slowly) [please]', '[say] [it|that] more slowly', '[say] [it|that] again slowly', 'too fast', 'not so fast'], () => ({ kind: 'say again', how: 'slower' })),
  row('say it digit by digit', ['[say] [it|that] digit by digit', '[say] [it|that] (number by number|one by one)', '[say] [it|that] one (number|digit) at a time'], () => ({ kind: 'say again', how: 'digit by digit' })),
  row('speak louder', ['louder', 'speak (up|louder)', 'i cannot hear [you]', 'too quiet'], () => ({ kind: 'louder' })),
  row('speak quieter', ['quieter', 'speak quieter', 'not so loud', 'too loud'], () => ({ kind: 'quieter' })),
  row('stop talking', ['[be] quiet', 'stop talking', 'hush', 'that is enough', 'shut up'], () => ({ kind: 'be quiet' })),
  row('what can be said', ['what can i (say|ask)', 'what do you (know|understand)', 'help [me]', 'what can you do'], () => ({ kind: 'what can I say' })),
];
