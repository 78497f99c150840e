import { rowsOf } from '../pattern.ts';

const row = rowsOf('truing');

/** Readings of a face, and what to plane. */
export const TRUING_ROWS = [
  row('take the readings', ['take [the] readings', 'take [the] readings of [the] {side?}', 'read [the] {side?}', 'read'], ({ side }) => ({ kind: 'read side', of: side ?? {} })),
  row('take the thickness', ['take [the] thickness', 'take [the] thickness of [the] {side?}'], ({ side }) => ({ kind: 'read side', of: side ?? {}, about: 'thickness' })),
  row('take the diagonals', ['take [the] diagonals', 'take [the] diagonals of [the] {side?}'], ({ side }) => ({ kind: 'read side', of: side ?? {}, about: 'diagonals' })),
  row('what the sticks show', ['[the] [winding] sticks (at|in|near) [the] {spot} [show] {lean} [by] {gap}'], ({ spot, lean, gap }) => (lean === 'left' || lean === 'right' ? { kind: 'surface reading', of: {}, what: 'sticks', at: spot, gap, sense: lean } : undefined)),
  row('a gap under the straightedge', ['[the] gap (at|in|near) [the] {spot} is {gap}'], ({ spot, gap }) => ({ kind: 'surface reading', of: {}, what: 'along', at: spot, gap })),
  row('a gap across', ['across (at|in|near) [the] {spot} [it is] {across} [by] {gap}'], ({ spot, across, gap }) => (across === 'hollow' || across === 'crowned' ? { kind: 'surface reading', of: {}, what: 'across', at: spot, gap, sense: across } : undefined)),
  row('light under the square', ['[the] square (at|in|near) [the] {spot} [shows] {light} [by] {gap}'], ({ spot, light, gap }) => (light === 'far side' || light === 'face side' ? { kind: 'surface reading', of: {}, what: 'square', at: spot, gap, sense: light } : undefined)),
  row('the thickness at a place', ['[the] thickness (at|in|near) [the] {spot} is {small}'], ({ spot, small }) => ({ kind: 'surface reading', of: {}, what: 'thickness', at: spot, gap: small })),
  row('what to plane', ['(what|where) (do|should) i plane', 'where is it high', 'what to plane', 'how many [more] (shavings|strokes)', 'how much [more] (do|must) i [(need|have) to] (plane|take) off', 'where are the (high|low) spots', 'which (corner|end) is high', 'how much is left to plane', '(what|where) do i plane (off|on) [the] {side?}'], ({ side }) => ({ kind: 'what to plane', of: side ?? {} })),
  row('how a face is', ['how is (the face|it)', 'how much wind is (there|in it)', 'is there [any] wind [in it]', 'is it (twisted|in wind)', 'is it square [enough]', 'is it out of square', 'how much is it out', 'is [the] {side?} (flat|true|straight|square) [enough]', 'is [the] {side?} out of wind', 'how (flat|true|straight|square) is [the] {side?}'], ({ side }) => ({ kind: 'is it flat', of: side ?? {} })),
  row('how thick it will be', ['how thick will [the] {side?} be', 'what thickness is left'], ({ side }) => ({ kind: 'thickness left', of: side ?? {} })),
  row('whether they will close', ['will (they|it|the joints|the boards|the layers) close', 'do they meet', 'will [the] {side?} close'], ({ side }) => ({ kind: 'will they close', of: side ?? {} })),
  row('a face was planed', ['[i have] planed it', 'i [have] planed [the] {side?}'], ({ side }) => ({ kind: 'surface planed', of: side ?? {} })),
  row('the other side', ['[the] other side', 'turn it over'], () => ({ kind: 'other side', of: {} })),
  row('how much a shaving is', ['(one|a) shaving is {gap}', 'the plane takes {gap}'], ({ gap }) => ({ kind: 'set', setting: { shaving: gap } })),
  row('how long the sticks are', ['(the|my) [winding] sticks are {length} long'], ({ length }) => ({ kind: 'set', setting: { stick: length } })),
];
