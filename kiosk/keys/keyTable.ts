import type { Does, KeySpec, PadSymbol } from './keySpec.ts';

/**
 * The keys of every screen in the order in which they are drawn, each with the number-pad key that presses it. The one table:
 * screens draw their keys from it, and the key card prints it. A label is what can be said as well.
 */
export const KEY_TABLE = {
  step: { back: '-', faces: '1', 'cutting plan': '1', sizes: '1', stages: '1', layout: '1', readings: '1', 'start clock': '1', more: '2', 'glue-up': '3', 'say again': '.', listen: '*', next: '+', done: 'enter' },
  'step in full': { step: '0', skip: '1', 'start clock': '2', record: '3', 'open again': '4', faces: '5', 'other sizes': '+', 'went wrong': '6', menu: '/', done: 'enter' },
  'no step': { files: '1', listen: '*', menu: '/' },
  steps: { step: '0', back: '-', next: '+', listen: '*', menu: '/' },
  parts: { step: '0', back: '-', next: '+', listen: '*', menu: '/' },
  part: { parts: '-', faces: '9', layout: '8', 'other sizes': '+', listen: '*', menu: '/', step: '0' },
  size: { part: '-', why: '1', record: '2', 'digit by digit': '3', 'say again': '.', listen: '*', step: '0' },
  why: { size: '-', next: '+', 'what moved': '1', 'say again': '.', listen: '*', menu: '/', step: '0' },
  'told in turn': { enough: 'enter', back: '-', 'say again': '.', listen: '*', next: '+' },
  moved: { step: '0', back: '-', next: '+', 'what fits': '1', listen: '*', menu: '/' },
  reckoning: { half: '1', third: '2', times: '3', spaces: '4', plus: '5', less: '6', 'new size': 'enter' },
  'reckoning, above': { step: '0', quarter: '7', gaps: '8', 'other unit': '9', menu: '/' },
  faces: { step: '0', 'choose faces': '1', 'place them': '2', 'second best': '3', 'what counts': '4', listen: '*', 'take it': 'enter' },
  'faces of one': { corners: '-', next: '+', listen: '*', menu: '/', step: '0' },
  clocks: { step: '0', 'five less': '-', 'five more': '+', hold: '7', 'go on': '7', stop: '9', 'new clock': 'enter', menu: '/' },
  'new clock': { leave: '-', next: '+', 'type it': 'enter' },
  edges: { step: '0', next: '+', cutting: 'enter', stopped: 'enter', stropped: '.', honed: '-', ground: '*', menu: '/' },
  boards: { step: '0', back: '-', next: '+', 'cutting plan': '.', 'new board': 'enter', listen: '*', menu: '/' },
  board: { rack: '-', 'add defect': '1', 'put right': '2', 'used up': '3', 'tell me': '.', listen: '*', 'new board': 'enter' },
  form: { leave: '-' },
  'board form': { leave: '-', more: '+', 'on the rack': 'enter' },
  cutting: { boards: '9', back: '-', next: '+', 'read the cuts': '1', plan: '2', stop: '2', buy: '3', sizes: '4', step: '0', 'take the plan': 'enter', cut: 'enter' },
  'rough parts': { 'all sizes': '9', back: '-', next: '+', longer: '1', wider: '2', thicker: '3', 'hide a knot': '4', step: '0' },
  buying: { boards: '9', back: '-', next: '+', 'read the list': '1', 'the yard': '3', 'does it help': '2', bought: 'enter' },
  journal: { step: '0', back: '-', next: '+', 'put back': '2', 'scratch that': '1', menu: '/' },
  settings: { step: '0', quieter: '-', louder: '+', 'more settings': 'enter', menu: '/' },
  microphone: { leave: '-', 'play back': '1', 'next microphone': '2', 'next model': '3', listen: '*' },
  files: { step: '0', back: '-', next: '+', 'look again': '9', 'put away': '9', menu: '/' },
  starter: { leave: '-', back: '.', next: 'enter', 'make it': 'enter' },
  help: { step: '0', back: '-', next: '+', 'key card': '1', menu: '/' },
  card: { help: '-', next: '+', print: '1', step: '0' },
  menu: { step: '0', back: '-', next: '+', listen: '*', 'put away': '9' },
  layout: { step: '0', 'previous face': '-', 'next face': '+', 'next copy': '1', paper: '9', listen: '*', menu: '/' },
  chopping: { step: '0', back: '-', layout: '1', 'say again': '.', listen: '*', next: '+' },
  paper: { step: '0', back: '-', next: '+', save: '8', print: '9', listen: '*', menu: '/' },
  air: { step: '0', why: '9', 'warm up': '.', 'glue-up': '+', listen: '*', menu: '/' },
  wood: { step: '0', 'tell me': '9', 'is it ready': '+', 'parts at rest': '-', listen: '*', menu: '/' },
  'wood at rest': { step: '0', 'the year': '-', settled: '9', 'next part': '+', listen: '*', menu: '/' },
  'glue-up': { step: '0', air: '-', clamps: '1', rehearse: '+', divide: '2', listen: '*', 'start gluing': 'enter' },
  gluing: { leave: '-', 'how long': '1', 'say again': '.', listen: '*', next: 'enter' },
  truing: { step: '0', 'other side': '-', 'how is it': '1', 'what to plane': '2', more: '+', listen: '*', read: 'enter' },
  'truing, more': { back: '-', step: '0', listen: '*', menu: '/' },
  'boards to true': { step: '0', back: '-', next: '+', listen: '*', menu: '/' },
  'reading asked': { leave: '-', back: '0', 'say again': '.', listen: '*', 'leave out': '+' },
  due: { stop: '1', 'five more': '+', listen: '*', 'got it': 'enter' },
  question: { no: '-', listen: '*', yes: 'enter' },
} as const satisfies Readonly<Record<string, Readonly<Record<string, PadSymbol>>>>;

export type KeyScreen = keyof typeof KEY_TABLE;

type Wanted = Does | (Partial<KeySpec> & { readonly does: Does }) | null;

/** The key row of a screen: what each key of its table does; null leaves the key out. */
export function keyRow<Name extends KeyScreen>(screen: Name, does: { readonly [Label in keyof (typeof KEY_TABLE)[Name]]: Wanted }): readonly KeySpec[] {
  return Object.entries<PadSymbol>(KEY_TABLE[screen]).flatMap(([label, pad]) => {
    const wanted = (does as Readonly<Record<string, Wanted>>)[label] ?? null;
    if (wanted === null) return [];
    return ['does' in wanted ? { label, pad, ...wanted } : { label, pad, does: wanted }];
  });
}

/** What these keys do wherever the screen has no key of its own for them. */
export const EVERYWHERE: readonly { readonly pad: PadSymbol; readonly label: string; readonly does: Does }[] = [
  { pad: '0', label: 'step', does: { request: { kind: 'show', screen: { name: 'step' } } } },
  { pad: '.', label: 'say again', does: { request: { kind: 'say again', how: 'as before' } } },
  { pad: '*', label: 'listen', does: { act: { kind: 'listen' } } },
  { pad: '/', label: 'menu', does: { request: { kind: 'show', screen: { name: 'menu' } } } },
  { pad: 'take back', label: 'scratch that', does: { request: { kind: 'scratch that' } } },
];
