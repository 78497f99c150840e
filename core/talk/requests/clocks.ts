import { stepNow } from '../context.ts';
import { rowsOf } from '../pattern.ts';

const row = rowsOf('clocks');

/** More coats than these are not told by their number. */
const COUNTED_COATS = ['first', 'second', 'third', 'fourth', 'fifth', 'sixth'] as const;

/** Starting, asking and changing the clocks. */
export const CLOCK_ROWS = [
  row('start a timer', ['[start|set] [a] {span} (timer|clock)', '[start|set] (a|the) (timer|clock|alarm) (for|to) {duration}', '(timer|clock) {duration}', '(start|set|time) {duration}', '(remind|call|wake) me in {duration}'], ({ span, duration = span }) => (duration === undefined ? undefined : { kind: 'start timer', timer: 'plain', durationMs: duration })),
  row('a reminder to sharpen', ['remind me to (hone|sharpen) in {duration}', 'remind me in {duration} to (hone|sharpen)', '[start] a sharpening break in {duration}'], ({ duration }) => ({ kind: 'start timer', timer: 'plain', name: 'sharpening', durationMs: duration })),
  // A break comes again when it was answered.
  row('a reminder to sharpen, again and again', ['remind me to (hone|sharpen) every {interval}'], ({ interval }) => ({ kind: 'start timer', timer: 'break', name: 'sharpening', durationMs: interval })),
  row('start a timer of a kind', ['(start|set) [the] {kind} [timer|clock|break]', '(start|set) [the] {kind} [timer|clock] for {duration?}', '(start|set) [a] {span?} {kind} (timer|clock)'],
    ({ kind, span, duration = span }) => ({ kind: 'start timer', timer: kind, ...(duration === undefined ? {} : { durationMs: duration }) })),
  row('the clamps are on', ['[the] clamps are on [now]', 'clamps on', 'i have [put] the clamps on'], () => ({ kind: 'start timer', timer: 'clamp', unlessNew: true })),
  row('the glue is on', ['the glue is on [now]', 'i [have] spread the glue'], (_, { state: { gluing, timers } }) => {
    // In a glue-up it is a move that is done, and the clock starts by itself.
    if (gluing) return { kind: 'next step' };
    const open = timers.find(({ kind }) => kind === 'open time');
    return open ? { kind: 'time left', timer: open.id } : { kind: 'start timer', timer: 'open time' };
  }),
  row('the clamps are off', ['[the] clamps are off [now]', 'clamps off', 'i [have] (took|taken) [off] the clamps [off]'], (_, { state: { timers } }) => {
    const [clamp, ...more] = timers.filter(({ kind }) => kind === 'clamp');
    return clamp ? { kind: 'stop timer', ...(more.length > 0 ? {} : { timer: clamp.id }) } : { fault: 'no clock of clamps is running', notNow: true };
  }),
  row('until the next coat', ['(start|set) [the] (recoat|drying) [timer|clock]', '(start|set) [the] (recoat|drying) [timer|clock] for {duration?}'], ({ duration }) => ({ kind: 'finish clock', which: 'recoat', ...(duration === undefined ? {} : { durationMs: duration }) })),
  row('until the finish has cured', ['(start|set) [the] (cure|curing) [timer|clock]', '(start|set) [the] (cure|curing) [timer|clock] for {duration?}'], ({ duration }) => ({ kind: 'finish clock', which: 'cure', ...(duration === undefined ? {} : { durationMs: duration }) })),
  ...COUNTED_COATS.map((counted, index) => row('a coat is on', [`the ${counted} coat is on [now]`, `i [have] put [on] the ${counted} coat [on]`], () => ({ kind: 'coat on', coat: index + 1 }))),
  row('the coat is on', ['(the [next]|this|another) coat is on [now]'], () => ({ kind: 'coat on' })),
  row('how many coats are on', ['how many [more] coats [are on|are left|more|do i need]', 'what is the finish', '[when] can i put [on] the next coat [on] [yet]', 'when (do|may) i put on the next coat', '(what|which) finish [is (it|this)|do i use|am i using]', 'when (can|does) the next coat go on', 'how long (until the next coat|between coats)', 'how long does (the finish|a coat) take [to dry]', 'how long until the finish (is dry|is cured|has cured)'], () => ({ kind: 'coats' })),
  row('start the clock of the step', ['start [[the] (timer|clock)]', '(start|set) the (timer|clock) [for] this step', 'start (it|timing)'], () => ({ kind: 'start step timer' })),
  row('how long is left', ['how (long|much time) [is] left', 'time left', 'what is left on the (timer|clock)', 'how (are|is) the (timers|clocks|timer|clock)', 'how (long|much time) (have i got|do i have) [left]', '(what|which) (timers|clocks) are running', 'what is running', 'is [the|a] (clock|timer) running', 'how much longer', 'how long [to go]', 'how much time', 'is the time up [yet]'], () => ({ kind: 'time left' })),
  row('how long a clock has left', ['how (long|much time) [is] left (on|for|of) [the] {timer}', 'how (long|much time) (has|have) [the] {timer} [got] [left]', 'how is [the] {timer}', 'how much {timer} is left'], ({ timer }) => ({ kind: 'time left', timer })),
  row('how long a clock has run', ['how long has [the] {timer} been (on|running|going)'], ({ timer }) => ({ kind: 'time left', timer, run: true })),
  row('how long the clocks have run', ['how long has it been [running|going|in [the] clamps]', 'how long have the clamps been on'], (_, { state: { timers } }) => {
    const [clamp, ...more] = timers.filter(({ kind }) => kind === 'clamp');
    return { kind: 'time left', ...(clamp === undefined || more.length > 0 ? {} : { timer: clamp.id }), run: true };
  }),
  // Under the clamps it is the clamps that tell.
  row('how long the glue has been on', ['how long has the glue been on'], (_, { state: { timers } }) => {
    const on = timers.find(({ kind }) => kind === 'open time') ?? timers.find(({ kind }) => kind === 'clamp');
    return { kind: 'time left', ...(on === undefined ? {} : { timer: on.id }), run: true };
  }),
  row('when the clamps come off', ['when (do|can|may) the clamps come off', '(when can|can) i take [off] the clamps [off] [yet]', 'how long (until|before) (i can take [off] the clamps [off]|the clamps come off)', 'can the clamps come off [now|yet]', 'how long (must|do|should|will) the clamps (stay|be) on', 'how long (must|do|should) i leave the clamps on', 'how (long|much longer) in [the] clamps', 'how long must it stay clamped', 'can i take it out of the clamps [yet]', '(is it ready to|can it) come out of the clamps', 'when does it come out of the clamps'],
    (_, { state: { timers } }) => (timers.some(({ kind }) => kind === 'clamp') ? { kind: 'time left' } : { kind: 'glue time', which: 'clamp' })),
  row('whether it is dry', ['is it dry [yet]', 'has the glue (dried|set|gone off)', 'when (is it|will it be) dry', 'how long until it is dry'], (_, bench) => {
    if (bench.state.timers.some(({ kind }) => kind === 'clamp' || kind === 'rest')) return { kind: 'time left' };
    return stepNow(bench)?.operation === 'finish' ? { kind: 'coats' } : { kind: 'glue time', which: 'clamp' };
  }),
  row('a call when the glue is dry', ['(call|tell|wake) me when (the glue is dry|it is dry|the clamps [can] come off)'], (_, { state: { timers } }) =>
    (timers.some(({ kind }) => kind === 'clamp') ? { kind: 'time left' } : { kind: 'start timer', timer: 'clamp' })),
  row('whether the glue is open still', ['is the glue still (open|good|wet)'], (_, { state: { timers } }) => {
    const open = timers.find(({ kind }) => kind === 'open time');
    return open ? { kind: 'time left', timer: open.id } : { kind: 'glue time', which: 'open time' };
  }),
  row('the time of day', ['what time is it', '(what is|tell me) the time', 'how late is it'], () => ({ kind: 'what time' })),
  row('more minutes', ['{count} more minutes'], ({ count }) => ({ kind: 'change timer', addMs: count * 60_000 })),
  row('add time', ['add {duration} [to (it|the timer|the clock)]', '[give (me|it)] {duration} more', '[give it] another {duration}', '{duration} longer'], ({ duration }) => ({ kind: 'change timer', addMs: duration })),
  row('add time to a clock', ['add {duration} to [the] {timer}', 'give [the] {timer} {duration} [more]'], ({ duration, timer }) => ({ kind: 'change timer', timer, addMs: duration })),
  row('take time off', ['take [off] {duration} [off] [from|of] [it|the timer|the clock]', 'take {duration} off', '{duration} less'], ({ duration }) => ({ kind: 'change timer', addMs: -duration })),
  row('take time off a clock', ['take [off] {duration} [off] (from|of|off) [the] {timer}'], ({ duration, timer }) => ({ kind: 'change timer', timer, addMs: -duration })),
  row('hold a clock', ['(hold|pause) [it|the timer|the clock]', '(hold|pause) [the] {timer?}'], ({ timer }) => ({ kind: 'hold timer', ...(timer === undefined ? {} : { timer }) })),
  row('let a clock run on', ['resume [it|the timer|the clock]', 'resume [the] {timer?}', 'let (it|the timer|the clock) run [on]'], ({ timer }) => ({ kind: 'resume timer', ...(timer === undefined ? {} : { timer }) })),
  row('stop a clock', ['(stop|cancel) (it|[the] (timer|clock))', 'stop timing', '(stop|cancel) [the] {timer?}'], ({ timer }) => ({ kind: 'stop timer', ...(timer === undefined ? {} : { timer }) })),
  row('a clock was heard', ['(mute|silence|stop|turn off) the (alarm|alarms)', 'turn the alarm off', 'got it', 'i (heard|hear) [it|that|you]', 'acknowledge [it|that]', 'okay', 'thank you', 'thanks', 'understood', 'all right'], () => ({ kind: 'acknowledge' })),
  row('one clock was heard', ['got {timer}', 'acknowledge {timer}'], ({ timer }) => ({ kind: 'acknowledge', timer })),
];
