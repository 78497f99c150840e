import { roundingIn } from '../measures.ts';
import { rowsOf } from '../pattern.ts';

const screens = rowsOf('screens');
const row = rowsOf('settings');

/** Screens whose name alone cannot be taken for anything else. */
const BY_NAME = [
  ['[main] menu', 'menu'], ['parts', 'parts'], ['clocks', 'clocks'], ['timers', 'clocks'], ['settings', 'settings'], ['options', 'settings'], ['journal', 'journal'], ['files', 'files'],
] as const;

/** Going to another screen, and the settings that are worth a word. */
export const SCREEN_ROWS = [
  screens('show a screen', ['show [me] [the] {screen}', '(open|go to) [the] {screen}'], ({ screen }) => ({ kind: 'show', screen })),
  ...BY_NAME.map(([word, name]) => screens('a screen by its name', [word], () => ({ kind: 'show', screen: { name } }))),
  screens('back to the step', ['[go] back to [the] (step|work)'], () => ({ kind: 'show', screen: { name: 'step' } })),
  screens('try the microphone', ['(try|test|check) [the] microphone', 'can you hear me', 'are you listening'], () => ({ kind: 'show', screen: { name: 'microphone' } })),
  screens('leave the trial of the microphone', ['leave [the] microphone'], () => ({ kind: 'show', screen: { name: 'settings' } })),
  // Before the rounding: whoever says the unit alone has not asked for whole millimetres.
  row('the unit', ['(use|show|switch to|change to|work in|speak) {unit}'], ({ unit }) => ({ kind: 'set', setting: { rounding: roundingIn(unit) } })),
  row('how sizes are rounded', ['round [off] to [the] [nearest] {rounding}', 'use {rounding}', 'say {rounding}', 'give me {rounding}', '[the] nearest {rounding}'], ({ rounding }) => ({ kind: 'set', setting: { rounding } })),
  row('how loud', ['[set] [the] (volume|sound|loudness) [to] {loudness}'], ({ loudness }) => (loudness <= 10 ? { kind: 'set', setting: { volume: loudness } } : { fault: 'loudness goes from zero to ten' })),
  row('no sound', ['mute', '[set] [the] (volume|sound|loudness) [to] (off|zero)', 'sound off', 'turn the sound off'], () => ({ kind: 'set', setting: { volume: 0 } })),
  row('speak slowly from now on', ['always speak slowly', '(speak|talk) (slowly|slower)'], () => ({ kind: 'set', setting: { speech: 'slow' } })),
  row('speak at the usual pace', ['(speak|talk) (normally|normal|faster|fast)', 'faster'], () => ({ kind: 'set', setting: { speech: 'normal' } })),
  row('light screen', ['[use] (light|day) (screen|theme)', 'screen light'], () => ({ kind: 'set', setting: { theme: 'light' } })),
  row('dark screen', ['[use] (dark|night) (screen|theme)', 'screen dark'], () => ({ kind: 'set', setting: { theme: 'dark' } })),
  row('screen by daylight', ['(screen|theme) by (daylight|the light|the sun)', 'change the screen with the (daylight|light|sun)'], () => ({ kind: 'set', setting: { theme: 'by daylight' } })),
  row('larger text', ['(larger|bigger|large|big) (text|print|letters)'], () => ({ kind: 'set', setting: { textPercent: 125 } })),
  row('usual text', ['(smaller|normal|usual|small) (text|print|letters)'], () => ({ kind: 'set', setting: { textPercent: 100 } })),
  row('what to call it', ['call yourself {address}', 'call (me|you) {address}', 'your name is {address}', '(answer|listen) to {address}'], ({ address }) => ({ kind: 'set', setting: { addressWord: address } })),
  row('stop listening', ['stop listening', 'do not listen'], () => ({ kind: 'set', setting: { listening: false } })),
  row('listen again', ['(start|keep) listening', 'listen [to me]'], () => ({ kind: 'set', setting: { listening: true } })),
  row('speak up in noise', ['speak up (over the noise|when it is loud)'], () => ({ kind: 'set', setting: { speakUp: true } })),
  row('never speak up', ['(do not|never) speak up'], () => ({ kind: 'set', setting: { speakUp: false } })),
  row('wait for a lull', ['wait for a lull'], () => ({ kind: 'set', setting: { waitForLull: true } })),
  row('never wait for a lull', ['(do not|never) wait for a lull', 'call out at once'], () => ({ kind: 'set', setting: { waitForLull: false } })),
  row('where the maker stands', ['i stand (close|beside you)'], () => ({ kind: 'set', setting: { standing: 'close' } })),
  row('where the maker stands', ['i stand in front [of you]'], () => ({ kind: 'set', setting: { standing: 'at the bench' } })),
  row('where the maker stands', ['i stand far away'], () => ({ kind: 'set', setting: { standing: 'across the shop' } })),
  row('what the caliper reads', ['[the] (caliper|calipers|tape|instrument) (reads|measures|is set to) [in] {unit}'], ({ unit }) => ({ kind: 'set', setting: { instrumentUnit: unit } })),
  row('how often to look at the edge', ['(look at|check) the edge every {interval}', 'break every {interval}'], ({ interval }) => ({ kind: 'set', setting: { breakSeconds: Math.round(interval / 1000) } })),
];
