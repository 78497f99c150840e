import { rowsOf } from '../pattern.ts';

const row = rowsOf('boards');

/** Boards on the rack, the cutting plan, cutting by it, and buying. */
export const BOARD_ROWS = [
  row('a new board', ['[a] new board [is] {first} [long] by {second} [wide] [{quarter?}] [[of] {species?}]', '[a] new board {first} long [and] {second} wide [{quarter?}] [[of] {species?}]', '[a] new board {quarter?} {first} by {second} [[of] {species?}]'],
    ({ first, second, quarter, species }) => ({ kind: 'new board', length: first, width: second, ...(quarter === undefined ? {} : { thickness: quarter }), ...(species === undefined ? {} : { species }) })),
  row('something in the board', ['[a] {defect} [from] {from} to {to}', '[on] board {count} [has] [a] {defect} [from] {from} to {to}'],
    ({ defect, from, to, count }) => ({ kind: 'board defect', what: defect, from, to, ...ofBoard(count) })),
  // In a breath of its own: four lengths in one sentence are neither said nor heard well.
  row('where across the board it was', ['across {from} to {to}', '[it is] {from} to {to} across'], ({ from, to }) => ({ kind: 'narrow defect', narrowed: { fromEdge: from, toEdge: to } })),
  row('on which face it shows', ['[it is] on the marked face [only|alone]'], () => ({ kind: 'narrow defect', narrowed: { face: 'marked face' } })),
  row('on which face it shows', ['[it is] on the other face [only|alone]'], () => ({ kind: 'narrow defect', narrowed: { face: 'other face' } })),
  row('a board tapers', ['[it|the board|board {count?}] tapers to {length}'], ({ length, count }) => ({ kind: 'board is', change: { farWidth: length }, ...ofBoard(count) })),
  row('the sapwood of a board', ['sapwood [is] {length}', 'board {count} sapwood [is] {length}'], ({ length, count }) => ({ kind: 'board is', change: { sapwood: length }, ...ofBoard(count) })),
  row('a board was measured again', ['board {count} is {length} long'], ({ length, count }) => ({ kind: 'board is', change: { length }, ...ofBoard(count) })),
  row('a board was measured again', ['board {count} is {length} wide'], ({ length, count }) => ({ kind: 'board is', change: { width: length }, ...ofBoard(count) })),
  row('how thick a board is', ['(it|board {count?}) is {quarter}'], ({ quarter, count }) => ({ kind: 'board is', change: { thickness: quarter }, ...ofBoard(count) })),
  row('the wood of a board', ['(it|board {count?}) is [of] {species}'], ({ species, count }) => ({ kind: 'board is', change: { species }, ...ofBoard(count) })),
  row('the grain of a board', ['(it|board {count?}) is quarter sawn'], ({ count }) => ({ kind: 'board is', change: { grain: 'quarter' }, ...ofBoard(count) })),
  row('the grain of a board', ['(it|board {count?}) is flat sawn'], ({ count }) => ({ kind: 'board is', change: { grain: 'flat' }, ...ofBoard(count) })),
  row('the grain of a board', ['(it|board {count?}) is rift sawn'], ({ count }) => ({ kind: 'board is', change: { grain: 'rift' }, ...ofBoard(count) })),
  row('boards of one colour', ['board {count} is [of] color [group] {spaces}', 'color group {spaces}'], ({ spaces, count }) => ({ kind: 'board is', change: { colour: String(spaces) }, ...ofBoard(count) })),
  row('a board is used up', ['board {count} is (used up|gone)', '(it|the board) is used up', 'used up'], ({ count }) => ({ kind: 'board used up', ...ofBoard(count) })),
  row('how many boards', ['how many boards [are (there|left|on the rack)|do i have]', 'what is on the rack'], () => ({ kind: 'how many boards' })),
  row('the rack as a table', ['save the boards', 'save the rack'], () => ({ kind: 'save boards' })),
  row('the rack', ['[show [me]] [the] rack', '[show [me]] [the] boards'], () => ({ kind: 'show', screen: { name: 'boards' } })),
  row('one board', ['[show [me]|tell me about] board {count}', 'what is board {count}'], ({ count }) => ({ kind: 'tell board', board: count })),
  row('a cutting plan', ['plan [the] (cutting|boards|cuts)', 'plan (it|them) again', 'plan again', 'lay out the boards'], () => ({ kind: 'plan cutting' })),
  row('no more planning', ['stop planning', 'that plan is good enough'], () => ({ kind: 'stop planning' })),
  row('take the plan', ['take [the|this|that] plan', 'cut by (this|that|the) plan'], () => ({ kind: 'take plan' })),
  row('how good the plan is', ['how good is [the|this|that] plan', 'what is the best possible', 'what changed in the plan'], () => ({ kind: 'how good is the plan' })),
  row('show the plan', ['[show [me]] [the] cutting plan'], () => ({ kind: 'show', screen: { name: 'cutting' } })),
  row('what is left on rough parts', ['[show [me]] [the] rough sizes', 'what is left on [the] rough parts'], () => ({ kind: 'show', screen: { name: 'cutting', sizes: true } })),
  row('what to cut next', ['what do i (cut|saw) [next|now]', '[the] next cut', 'what is the next cut', 'what do i cut next on board {count?}'], ({ count }) => ({ kind: 'next cut', ...ofBoard(count) })),
  row('what lies where on a board', ['where on board {count}', 'what (comes|do i get) from board {count}', 'where are the parts on board {count}'], ({ count }) => ({ kind: 'where on board', board: count })),
  row('all cuts of a board', ['read [me] [the] cuts [of|on|for] [board {count?}]', '[what are] the cuts (of|for) board {count?}'], ({ count }) => ({ kind: 'read cuts', ...ofBoard(count) })),
  row('a cut is made', ['cut', 'sawn', '[the|that] cut is (made|done)', '(it|that) is (cut|sawn)', 'i (cut|sawed) it', 'cut on board {count?}'], ({ count }) => ({ kind: 'cut made', ...ofBoard(count) })),
  row('what the saw takes', ['[the] kerf is {length}', 'the saw takes {length}'], ({ length }) => ({ kind: 'set sawing', setting: { kerf: length } })),
  row('what is trimmed off the ends', ['trim {length} off (each|the) end', '[the] end trim is {length}'], ({ length }) => ({ kind: 'set sawing', setting: { endTrim: length } })),
  row('longer layers', ['cut layers {length} longer'], ({ length }) => ({ kind: 'set sawing', setting: { layerExtra: length } })),
  row('longer boards of a panel', ['cut panel boards {length} longer'], ({ length }) => ({ kind: 'set sawing', setting: { panelExtra: length } })),
  row('what counts in the plan', ['plan for [the] {objective}'], ({ objective }) => ({ kind: 'set sawing', setting: { first: objective } })),
  row('what to buy', ['what (do|must|should) i buy', 'what is to be bought', 'what is missing', '[read [me]] the (shopping|buying) list'], () => ({ kind: 'what to buy' })),
  row('whether a board helps', ['does [a board] [of] {first} by {second} [{quarter?}] help', 'does this [one] help {first} by {second} [{quarter?}]'], ({ first, second, quarter }) => ({ kind: 'does it help', length: first, width: second, ...(quarter === undefined ? {} : { thickness: quarter }) })),
  row('a board is bought', ['[i] bought [it]', 'buy it'], () => ({ kind: 'bought' })),
  row('the width of boards at the yard', ['[the] boards at the yard are [about] {length} wide'], ({ length }) => ({ kind: 'set sawing', setting: { yardWidth: length } })),
  row('the price of a board foot', ['a board foot costs {count}', '{count} [for] a board foot'], ({ count }) => ({ kind: 'set sawing', setting: { centsPerBoardFoot: count * 100 } })),
  row('the grade that is bought', ['buy (first and seconds|the best grade)'], () => ({ kind: 'set sawing', setting: { grade: 'FAS' } })),
  row('the grade that is bought', ['buy number one common'], () => ({ kind: 'set sawing', setting: { grade: 'No. 1 Common' } })),
  row('the grade that is bought', ['buy number two common'], () => ({ kind: 'set sawing', setting: { grade: 'No. 2A Common' } })),
];

function ofBoard(count: number | undefined): { readonly board?: number } {
  return count === undefined ? {} : { board: count };
}
