import { USUAL_RESAW } from '../../journal/cutting.ts';
import { ZERO_LENGTH } from '../../length/length.ts';
import { SIDES } from '../../stock/rough.ts';
import { rowsOf } from '../pattern.ts';
import type { Built, SlotValues } from '../slot.ts';

const row = rowsOf('boards');

/** However a board is told of: on the rack, or just bought. */
const NEW_BOARD = '([a] new board|another board|(add|i have|i got|i bought) (a|another) [new] board)';

/** Boards on the rack, the cutting plan, cutting by it, and buying. */
export const BOARD_ROWS = [
  row('a new board', [`${NEW_BOARD} [is] {first} [long] by {second} [wide] [{quarter?}] [[of] {species?}]`, `${NEW_BOARD} {first} long [and] {second} wide [{quarter?}] [[of] {species?}]`, `${NEW_BOARD} {quarter?} {first} by {second} [[of] {species?}]`],
    ({ first, second, quarter, species }) => ({ kind: 'new board', length: first, width: second, ...(quarter === undefined ? {} : { thickness: quarter }), ...(species === undefined ? {} : { species }) })),
  row('something in the board', ['(there is|(this|that|the) board has) [a] {defect} [from] {from} to {to}', '[a] {defect} from {from} to {to}', '[on] board {board} [has] [a] {defect} [from] {from} to {to}'],
    ({ defect, from, to, board }) => ({ kind: 'board defect', what: defect, from, to, ...ofBoard(board) })),
  row('something in the board, without where it begins and ends', ['(there is|(this|that|the) board has|board {board?} has) a {defect} [at {from}]'], ({ defect }) => ({ kind: 'defect without ends', what: defect })),
  // In a breath of its own: four lengths in one sentence are neither said nor heard well.
  row('where across the board it was', ['across {from} to {to}', '[it is] {from} to {to} across'], ({ from, to }) => ({ kind: 'narrow defect', narrowed: { fromEdge: from, toEdge: to } })),
  row('on which face it shows', ['[it is] on the marked face [only|alone]'], () => ({ kind: 'narrow defect', narrowed: { face: 'marked face' } })),
  row('on which face it shows', ['[it is] on the other face [only|alone]'], () => ({ kind: 'narrow defect', narrowed: { face: 'other face' } })),
  row('a board tapers', ['[it|the board|board {board?}] tapers to {length}'], ({ length, board }) => ({ kind: 'board is', change: { farWidth: length }, ...ofBoard(board) })),
  row('the sapwood of a board', ['sapwood [is] {small}', 'board {board} sapwood [is] {small}'], ({ small, board }) => ({ kind: 'board is', change: { sapwood: small }, ...ofBoard(board) })),
  row('a board was measured again', ['board {board} is {length} long'], ({ length, board }) => ({ kind: 'board is', change: { length }, ...ofBoard(board) })),
  row('a board was measured again', ['board {board} is {length} wide'], ({ length, board }) => ({ kind: 'board is', change: { width: length }, ...ofBoard(board) })),
  row('how thick a board is', ['(it|board {board?}) is {quarter}'], ({ quarter, board }) => ({ kind: 'board is', change: { thickness: quarter }, ...ofBoard(board) })),
  row('the wood of a board', ['(it|board {board?}) is [of] {species}'], ({ species, board }) => ({ kind: 'board is', change: { species }, ...ofBoard(board) })),
  row('the grain of a board', ['(it|board {board?}) is quarter sawn'], ({ board }) => ({ kind: 'board is', change: { grain: 'quarter' }, ...ofBoard(board) })),
  row('the grain of a board', ['(it|board {board?}) is flat sawn'], ({ board }) => ({ kind: 'board is', change: { grain: 'flat' }, ...ofBoard(board) })),
  row('the grain of a board', ['(it|board {board?}) is rift sawn'], ({ board }) => ({ kind: 'board is', change: { grain: 'rift' }, ...ofBoard(board) })),
  row('the heart side of a board', ['[the] heart side is [the] marked face', 'board {board} heart side is [the] marked face'], ({ board }) => ({ kind: 'board is', change: { pithSide: 'marked face' }, ...ofBoard(board) })),
  row('the heart side of a board', ['[the] heart side is [the] other face', 'board {board} heart side is [the] other face'], ({ board }) => ({ kind: 'board is', change: { pithSide: 'other face' }, ...ofBoard(board) })),
  row('boards of one colour', ['board {board} is [of] color [group] {spaces}', 'color group {spaces}'], ({ spaces, board }) => ({ kind: 'board is', change: { colour: String(spaces) }, ...ofBoard(board) })),
  row('a board is used up', ['board {board} is (used up|gone|no good)', '(it|the board) is (used up|no good)', 'used up', '(take|remove) board {board} off the rack', 'forget board {board}'], ({ board }) => ({ kind: 'board used up', ...ofBoard(board) })),
  row('how many boards', ['how many boards [are (there|left|on the rack)|do i have]', '(what|which) boards (are there|do i have)', 'what is on the rack', 'what [(wood|boards)] (is|are) left over'], () => ({ kind: 'how many boards' })),
  row('that boards came', ['[the] (boards|wood|lumber) (came [in]|arrived|(is|are) here) [today]', 'i (bought|got|have) (a|another|some|the) [new] (board|boards|wood|lumber) [today]'], () => ({ kind: 'boards came' })),
  row('the board feet on the rack', ['how many board feet (do i have|are (there|on the rack))', 'how much (wood|lumber) do i have'], () => ({ kind: 'board feet', board: 'all' })),
  row('the board feet of a board', ['how many board feet (is|are in) (that|this board|board {board?})'], ({ board }) => ({ kind: 'board feet', ...ofBoard(board) })),
  row('the rack as a table', ['save the boards', 'save the rack'], () => ({ kind: 'save boards' })),
  row('the rack', ['[show [me]] [the] rack', '[show [me]] [the] boards'], () => ({ kind: 'show', screen: { name: 'boards' } })),
  row('one board', ['[show [me]|tell me about] board {board}', 'what is board {board}', 'how (long|wide|thick|big) is board {board}'], ({ board }) => ({ kind: 'tell board', board: board })),
  row('a cutting plan', ['plan [the] (cutting|boards|cuts)', 'make a [cutting] plan', 'plan (it|them) again', 'plan again', 'lay out the boards'], () => ({ kind: 'plan cutting' })),
  row('no more planning', ['stop planning', 'that plan is good enough'], () => ({ kind: 'stop planning' })),
  row('take the plan', ['take [the|this|that] plan', 'cut by (this|that|the) plan'], () => ({ kind: 'take plan' })),
  row('how good the plan is', ['how good is [the|this|that] plan', 'what is the best possible', 'what changed in the plan'], () => ({ kind: 'how good is the plan' })),
  row('the piece as a file', ['save the piece'], () => ({ kind: 'save piece' })),
  row('the plan as a table', ['save the plan'], () => ({ kind: 'save plan' })),
  row('show the plan', ['[show [me]] [the] cutting plan'], () => ({ kind: 'show', screen: { name: 'cutting' } })),
  row('what is left on rough parts', ['[show [me]] [the] rough sizes', 'what is left on [the] rough parts'], () => ({ kind: 'show', screen: { name: 'cutting', sizes: true } })),
  row('what to cut next', ['what do i (cut|saw) [next|now|first]', 'which board (do i cut [next|first]|is next|comes next)', 'where do i (cut|saw) [it|this board|the first board|board {board?}|first]', '[the] next cut', 'what is the next cut', 'what do i cut next on board {board?}'], ({ board }) => ({ kind: 'next cut', ...ofBoard(board) })),
  row('what lies where on a board', ['where on board {board}', 'what (comes|(do|will) i get|can i (get|cut|make)|do i cut) (from|out of) (board {board?}|(this|that|the) board)', 'what goes on (board {board?}|this board)', 'where are the parts on board {board}'], ({ board }) => ({ kind: 'where on board', ...ofBoard(board) })),
  row('from which boards a part is cut', ['which board (is|are) [the] {parts} from', 'which (board|boards) [do i use|is|are] for [the] {parts}'], ({ parts: { part } }) => ({ kind: 'which boards', part })),
  row('what comes from each board', ['(what|which (part|parts)) (comes|come|is|are) from which board', '(what|which) board is for what'], () => ({ kind: 'which boards' })),
  row('all cuts of a board', ['read [me] [the] cuts [of|on|for] [board {board?}]', '[what are] the cuts (of|for) board {board?}', '(what|how many) cuts are left'], ({ board }) => ({ kind: 'read cuts', ...ofBoard(board) })),
  row('a cut is made', ['cut', 'sawn', '[the|that] cut is (made|done)', '(it|that|(the|this|that) board) is (cut|sawn)', 'i (cut|sawed) (it|(the|this|that) board)', 'cut on board {board?}'], ({ board }) => ({ kind: 'cut made', ...ofBoard(board) })),
  row('what the saw takes', ['[the] kerf is {gap}', 'the saw takes {gap}'], ({ gap }) => ({ kind: 'set sawing', setting: { kerf: gap } })),
  row('what is trimmed off the ends', ['trim {small} off (each|the) end', '[the] end trim is {small}'], ({ small }) => ({ kind: 'set sawing', setting: { endTrim: small } })),
  row('what a resaw takes', ['a resaw takes {gap}'], ({ gap }) => ({ kind: 'set sawing', setting: { resaw: gap } })),
  row('thick boards resawn', ['resaw [the] thick boards'], () => ({ kind: 'set sawing', setting: { resaw: USUAL_RESAW } })),
  row('no resawing', ['do not resaw', 'no resaw'], () => ({ kind: 'set sawing', setting: { resaw: ZERO_LENGTH } })),
  row('longer layers', ['cut layers {small} longer'], ({ small }) => ({ kind: 'set sawing', setting: { layerExtra: small } })),
  row('wider layers', ['cut layers {small} wider'], ({ small }) => ({ kind: 'set sawing', setting: { layerWider: small } })),
  row('thicker layers', ['cut layers {small} thicker'], ({ small }) => ({ kind: 'set sawing', setting: { layerThicker: small } })),
  row('longer boards of a panel', ['cut panel boards {small} longer'], ({ small }) => ({ kind: 'set sawing', setting: { panelExtra: small } })),
  row('wider boards of a panel', ['cut panel boards {small} wider'], ({ small }) => ({ kind: 'set sawing', setting: { panelWider: small } })),
  row('thicker boards of a panel', ['cut panel boards {small} thicker'], ({ small }) => ({ kind: 'set sawing', setting: { panelThicker: small } })),
  row('more on one part', ['cut [the] {parts} {small} longer'], ({ parts: { part }, small }) => ({ kind: 'part rough', part, rough: { longer: small } })),
  row('more on one part', ['cut [the] {parts} {small} wider'], ({ parts: { part }, small }) => ({ kind: 'part rough', part, rough: { wider: small } })),
  row('more on one part', ['cut [the] {parts} {small} thicker'], ({ parts: { part }, small }) => ({ kind: 'part rough', part, rough: { thicker: small } })),
  row('a part that may hide a knot', ['[the] {parts} may hide (a knot|knots)'], ({ parts: { part } }) => ({ kind: 'part rough', part, rough: { mayHideDefect: true } })),
  row('a part that may hide no knot', ['[the] {parts} (must|may) not hide (a knot|knots)', '[the] {parts} must be clear'], ({ parts: { part } }) => ({ kind: 'part rough', part, rough: { mayHideDefect: false } })),
  row('what a part measures in the rough', ['[what is] [the] rough size of [the] {parts}', 'what is left on [the] {parts}'], ({ parts: { part } }) => ({ kind: 'rough size', part })),
  row('one size of a part in the rough', ['how {adjective} (is|are) [the|each|one] (rough {parts?}|[rough] {pieces?})', 'how {adjective} (should|must) [the] (rough {parts?}|[rough] {pieces?}) be', 'how {adjective} do i (make|cut|saw|rip|plane) [the] (rough {parts?}|{pieces?})', 'how {adjective} (is|are|do i (cut|saw)) [the] {parts} in the rough'],
    ({ adjective, parts, pieces }) => inTheRough(parts?.part ?? pieces?.part, adjective)),
  row('what is left on everything in the rough', ['how much (do|should|must) i (add|allow|leave [on]) [for (waste|planing|the saw|rough length|the rough size)]', 'how much (waste|extra) (do|should|must) i (add|allow|leave)', 'what are the allowances', 'how much over do i cut', 'how much does the saw take', 'how wide is the kerf'], () => ({ kind: 'allowances' })),
  row('what counts in the plan', ['plan for [the] {objective}'], ({ objective }) => ({ kind: 'set sawing', setting: { first: objective } })),
  row('what to buy', ['(what|which) [wood|lumber|boards] (do|must|should) i [(need|have) to] buy [at the yard]', 'what do i (need|have) to get [at the yard]', '(what|which) (lumber|boards) do i need', 'what to buy', 'what is to be bought', 'what is missing', 'how (much (wood|lumber)|many (boards|board feet)) (do|must|should) i (need [to buy]|buy|have to buy)', 'how many board feet [will it take]', '[read [me]] the (shopping|buying) list'], () => ({ kind: 'what to buy' })),
  row('whether the boards are enough', ['(do i have|is there) enough (wood|lumber|boards)', 'do i need (more (wood|lumber|boards)|another board)', 'will it [all] fit on (the|my|these) boards [i have|on the rack]', 'are there enough boards'], () => ({ kind: 'what to buy', about: 'enough' })),
  row('what the wood costs', ['(what|how much) (does|will|do) (it|the wood|the lumber|the boards) cost'], () => ({ kind: 'what to buy', about: 'cost' })),
  row('how thick the boards must be', ['how thick (must|should|do) [the] (boards|wood|lumber) [have to|need to] be', 'what thickness [[of] (boards|wood|lumber)] do i (need|buy)'], () => ({ kind: 'board thickness' })),
  row('what a thickness is', ['(what|how (thick|much)) is {quarter}', 'do i need [any] {quarter}'], ({ quarter }) => ({ kind: 'board thickness', thickness: quarter })),
  row('whether a board helps', ['does [a board] [of] {first} by {second} [{quarter?}] help', 'does this [one] help {first} by {second} [{quarter?}]'], ({ first, second, quarter }) => ({ kind: 'does it help', length: first, width: second, ...(quarter === undefined ? {} : { thickness: quarter }) })),
  row('a board is bought', ['[i] bought [it]', 'buy it'], () => ({ kind: 'bought' })),
  row('the width of boards at the yard', ['[the] boards at the yard are [about] {length} wide'], ({ length }) => ({ kind: 'set sawing', setting: { yardWidth: length } })),
  row('the price of a board foot', ['a board foot costs {price}', '{price} (for|per) a board foot'], ({ price }) => ({ kind: 'set sawing', setting: { centsPerBoardFoot: price } })),
  row('the grade that is bought', ['buy (first and seconds|the best grade)'], () => ({ kind: 'set sawing', setting: { grade: 'FAS' } })),
  row('the grade that is bought', ['buy number one common'], () => ({ kind: 'set sawing', setting: { grade: 'No. 1 Common' } })),
  row('the grade that is bought', ['buy number two common'], () => ({ kind: 'set sawing', setting: { grade: 'No. 2A Common' } })),
];

/** The side of a part in the rough that an adjective asks for. */
function inTheRough(part: string | undefined, [dimension]: SlotValues['adjective']): Built {
  const side = SIDES.find((one) => one === dimension);
  if (part === undefined) return undefined;
  return side === undefined ? { fault: 'in the rough a part has a length, a width and a thickness' } : { kind: 'rough size', part, side };
}

function ofBoard(board: number | undefined): { readonly board?: number } {
  return board === undefined ? {} : { board };
}
