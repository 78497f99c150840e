import { rowsOf } from '../pattern.ts';

const row = rowsOf('recording');

/** What was done, written down and measured so far. */
export const HISTORY_ROWS = [
  row('what was done last', ['what did (i|we) do last', 'what was the last thing [i did]', 'what did (i|you) write down', 'did you write that down'], () => ({ kind: 'what was done', when: 'last' })),
  row('what was done today', ['what did (i|we) (do|finish|get done) [today]', 'what have (i|we) (done|finished) [today|so far]'], () => ({ kind: 'what was done', when: 'today' })),
  row('what was done before today', ['what did (i|we) (do|finish|get done) (yesterday|last time)'], () => ({ kind: 'what was done', when: 'before today' })),
  row('what was noted', ['what did i note', 'what have i noted', 'read [me] my notes', 'what are my notes'], () => ({ kind: 'what was done', when: 'notes' })),
  row('what was measured last', ['what did (i|we) measure last', 'what was the last (measurement|measure)'], () => ({ kind: 'what was measured', which: 'last' })),
  row('what was measured', ['what (did (i|we) measure|have (i|we) measured) [so far]', '(read|tell|give) me [all] the measurements', 'what was measured'], () => ({ kind: 'what was measured', which: 'all' })),
  row('what was measured of a part', ['(did i measure|have i measured|how far off (is|are)) [the] {parts}'], ({ parts }) => ({ kind: 'what was measured', which: 'all', ...parts })),
  row('what is out of tolerance', ['is anything (off|out [of tolerance])', 'what is out of tolerance', 'is everything (in|within) tolerance'], () => ({ kind: 'what was measured', which: 'off' })),
];
