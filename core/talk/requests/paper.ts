import type { SheetChoice } from '../../layout/paper/choice.ts';
import { rowsOf } from '../pattern.ts';

const row = rowsOf('paper');

const layout = (part: { readonly part: string; readonly copy?: number }): SheetChoice => ({ what: 'layout', ...part });

const OTHERS: readonly (readonly ['rod' | 'labels' | 'part labels' | 'cut list' | 'gauge card' | 'cutting plan', SheetChoice])[] = [
  ['rod', { what: 'rod' }], ['labels', { what: 'labels' }], ['part labels', { what: 'labels' }], ['cut list', { what: 'cut list' }], ['gauge card', { what: 'gauge card' }], ['cutting plan', { what: 'cutting plan' }],
];

/** Sheets of paper at full size: how many, print them, save them, and whether the print is true. */
export const PAPER_ROWS = [
  row('the paper screen', ['paper', 'what is on paper', 'sheets'], () => ({ kind: 'show', screen: { name: 'paper' } })),
  row('how many sheets a layout takes', ['[how many] sheets for [the] layout of [the] {part}', 'how many sheets for [the] {part}', 'how many sheets does [the] {part} take', '[show [me]] [the] layout of [the] {part} on paper'], ({ part }) => ({ kind: 'sheets', sheet: layout(part) })),
  row('print the layout of a part', ['print [the] layout of [the] {part}', 'print [the] {part}'], ({ part }) => ({ kind: 'print sheets', sheet: layout(part) })),
  row('save the layout of a part', ['save [the] layout of [the] {part}'], ({ part }) => ({ kind: 'save sheets', sheet: layout(part) })),
  ...OTHERS.flatMap(([said, sheet]) => [
    // The cutting plan has a screen of its own, which its bare name stands for.
    row(`how many sheets for the ${sheet.what}`, [`how many sheets for [the] ${said}`, `how many sheets does [the] ${said} take`, `[show [me]] [the] ${said}${said === 'cutting plan' ? ' on paper' : ''}`], () => ({ kind: 'sheets', sheet })),
    row(`print the ${sheet.what}`, [`print [the] ${said}`], () => ({ kind: 'print sheets', sheet })),
    row(`save the ${sheet.what}`, [`save [the] ${said}`], () => ({ kind: 'save sheets', sheet })),
  ]),
  row('how many sheets', ['how many sheets [does (it|that) take]'], () => ({ kind: 'sheets' })),
  row('print what is on the screen', ['print [it|that|them|the sheets]'], () => ({ kind: 'print sheets' })),
  row('save what is on the screen', ['save [it|that|them|the sheets]'], () => ({ kind: 'save sheets' })),
  row('what the bars of a print measure', ['[the] bars (measure|are) {first} across and {second} upright', '[the] bars (measure|are) {first} by {second}'], ({ first, second }) => ({ kind: 'print scale', across: first, upright: second })),
  row('what the bar across measures', ['[the] bar [across] (measures|is) {length}'], ({ length }) => ({ kind: 'print scale', across: length })),
  row('what the upright bar measures', ['[the] upright bar (measures|is) {length}', '[the] bar upright (measures|is) {length}'], ({ length }) => ({ kind: 'print scale', upright: length })),
  row('whether the print is true', ['is [the] print true [to size]', 'check [the] print'], () => ({ kind: 'print scale' })),
  row('the paper in the printer', ['[use] letter paper', 'use letter [size]'], () => ({ kind: 'set', setting: { paper: 'letter' } })),
  row('the paper in the printer', ['[use] (a four|metric) paper', 'use a four'], () => ({ kind: 'set', setting: { paper: 'a4' } })),
];
