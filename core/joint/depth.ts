import { fractionOf, subtract } from '../length/arithmetic.ts';
import { nanometres, type Length } from '../length/length.ts';
import { BOOKS, LEFT, type Proportion } from './proportion.ts';

export interface Deepest {
  /** Of a blind mortise, measured from the face that the rail meets. */
  readonly depth: Length;
  /** Left under it, to the outer face. */
  readonly floor: Length;
  readonly proportion: Proportion;
}

/** How deep a blind mortise may go into wood of that thickness: seven eighths, and never nearer than a quarter inch to the outer face. */
export function deepestMortise(into: Length): Deepest {
  const fairham = fractionOf(into, 7, 8);
  const practice = subtract(into, LEFT.wall);
  const depth = nanometres(Math.min(fairham, practice));
  return {
    depth,
    floor: subtract(into, depth),
    proportion: {
      of: 'deepest mortise',
      published: [{ source: `${BOOKS.fairham}: about seven eighths of the stile`, says: fairham }, { source: `${BOOKS.practice}: a quarter inch left to the outer face`, says: practice }],
      chosen: depth,
      because: 'The shallower of both: a thinner floor shows through, and breaks under the bar of the clamp.',
    },
  };
}

/** Down to a whole number of steps, for a length that is set on a gauge; shorter than one step it stays as it is. */
export function downTo(step: Length, length: Length): Length {
  return length < step || step <= 0 ? length : nanometres(Math.floor(length / step) * step);
}
