import { rowsOf } from '../pattern.ts';

const row = rowsOf('layout');

/** Every face with its marks, trueness of what was made, and the gauges. */
export const LAYOUT_ROWS = [
  row('the layout of a part, face by face', ['[show [me]] [the] layout of [the] {part}', 'draw [me] [the] {part}'], ({ part }) => ({ kind: 'layout face', ...part })),
  row('the layout of what is at hand', ['[show [me]] [the] layout', 'draw [me] [the] marks', 'show [me] the drawing'], () => ({ kind: 'layout face' })),
  row('one face of a layout', ['[show [me]] [the] layout of face {face} [of [the] {copy}]', '[turn it] to face {face}', '[show [me]] [the] layout of [the] {copy} face {face}'], ({ face, copy }) => ({ kind: 'layout face', ...copy, to: face })),
  row('the next face of a layout', ['[the] next face', '[the] other face'], () => ({ kind: 'layout face', to: 'next' })),
  row('the face of a layout before', ['[the] face before', '[the] previous face'], () => ({ kind: 'layout face', to: 'back' })),
  row('the layout of the next copy', ['[the] next copy'], () => ({ kind: 'layout face', to: 'next copy' })),
  row('the layout of the next copy, by its name', ['[the] next {parts}'], ({ parts: { part } }) => ({ kind: 'layout face', part, to: 'next copy' })),
  row('the diagonals of a frame', ['[the] diagonals [of [the] frame] are {first} and {second}', '[the] first diagonal is {first} and [the] second is {second}'], ({ first, second }) => ({ kind: 'diagonals', of: { unsaid: true }, first, second })),
  row('the diagonals of an end frame', ['[the] diagonals of [the] end frame are {first} and {second}'], ({ first, second }) => ({ kind: 'diagonals', of: { frame: 'end frame' }, first, second })),
  row('the diagonals of the front', ['[the] diagonals of [the] front are {first} and {second}'], ({ first, second }) => ({ kind: 'diagonals', of: { frame: 'front frame' }, first, second })),
  row('the diagonals of a part', ['[the] diagonals of [the] {parts} are {first} and {second}'], ({ parts: { part }, first, second }) => ({ kind: 'diagonals', of: { part }, first, second })),
  row('what the diagonals should be', ['(what|how long) (are|should) [the] diagonals [be]', 'what (should|must) the diagonals (be|read|measure)', '(what are|how long are) [the] diagonals of [the] frame'], () => ({ kind: 'what diagonals', of: { unsaid: true } })),
  row('what the diagonals of an end frame should be', ['(what are|how long are) [the] diagonals of [the] end frame'], () => ({ kind: 'what diagonals', of: { frame: 'end frame' } })),
  row('what the diagonals of the front should be', ['(what are|how long are) [the] diagonals of [the] front'], () => ({ kind: 'what diagonals', of: { frame: 'front frame' } })),
  row('what the diagonals of a part should be', ['(what are|how long are) [the] diagonals of [the] {parts}'], ({ parts: { part } }) => ({ kind: 'what diagonals', of: { part } })),
  row('how far off a size may come out', ['[what is] [the] tolerance (of|on) [the] {size}', 'how far off (can|may|could) [the] {size} be', 'how true will [the] {size} be'], ({ size }) => ({ kind: 'tolerance', ...size })),
  row('how true the parts must be', ['how true must (they|it|[the] parts) be (for|to hold) [the] {size} (within|to) {gap}', 'hold [the] {size} (within|to) {gap}'],
    ({ size, gap }) => ({ kind: 'tolerance', ...size, target: gap })),
  row('how the gauges stand', ['which gauge is set to what', '(how|what) are [the] gauges set [to]', 'how do [the] gauges stand'], () => ({ kind: 'gauges', what: 'how they stand' })),
  row('what to set the gauges to', ['gauges [for (this|the) step]', 'what do I set [the] [marking|mortise] (gauge|gauges) to', 'how do I set [the] [marking|mortise] (gauge|gauges)', 'which gauge do I (use|need)', 'set [the] gauges', 'where do I (set|put) the gauge', '[(which|what)] [is the] [mortise|marking] gauge setting', '(which|what) (face|side|edge) do I (gauge|mark) (from|off)', 'where do I gauge from'], () => ({ kind: 'gauges', what: 'for this step' })),
  row('what to set the gauges to for a joint', ['([what is the] gauge setting|set the gauge|what do I set the gauge to) for [the] {joint}', 'how far (in|[in] from the (edge|face)) is [the] {joint}'],
    ({ joint: { owner, say } }) => (owner.kind === 'joint' ? { kind: 'gauges', what: 'for a joint', joint: owner.id, side: say.endsWith('tenon') ? 'tenon' : 'mortise' } : { fault: `${say} is no joint` })),
  row('the order of marking', ['[in] (what|which) order do I (mark|lay out|gauge)', '[what is] [the] order of (marking|layout)', 'what do I (mark|lay out|gauge) first'], () => ({ kind: 'gauges', what: 'order' })),
];
