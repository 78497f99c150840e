import type { Operation } from './step.ts';

/** What goes wrong under the hands, by what the trade calls it: boards, joints, frames; and what is asked of the handwork itself. */
export const TROUBLES = [
  'cup', 'wind', 'bow', 'hump', 'hollow', 'high corners', 'edge out of square', 'tear-out', 'not flat',
  'tenon loose', 'tenon tight', 'tenon short', 'tenon long', 'tenon wide', 'tenon narrow', 'tenon split',
  'mortise wide', 'mortise narrow', 'mortise long', 'mortise short', 'mortise deep', 'mortise shallow', 'mortise split',
  'shoulder open', 'shoulder out of square', 'cheek not flat', 'wrong face', 'end blown out',
  'frame out of square', 'side of the line', 'mortise or tenon first',
] as const;
export type Trouble = (typeof TROUBLES)[number];

const OF_A_FACE = ['cup', 'wind', 'bow', 'hump', 'hollow', 'high corners', 'tear-out'] as const;
const OF_AN_EDGE = ['edge out of square', 'hump', 'hollow', 'tear-out'] as const;

/** What usually goes wrong at a work, as many as can be chosen from at once. Common practice, no source. */
const USUAL_AT: Readonly<Partial<Record<Operation, readonly Trouble[]>>> = {
  'reference edge': ['hump', 'hollow', 'tear-out'], face: OF_A_FACE, edge: OF_AN_EDGE, thickness: OF_A_FACE, 'true again': OF_A_FACE, width: OF_AN_EDGE,
  'joint layout': ['wrong face', 'mortise or tenon first', 'side of the line'],
  'chop mortises': ['mortise wide', 'mortise long', 'mortise deep', 'mortise shallow', 'mortise split', 'end blown out', 'wrong face'],
  'saw tenons': ['tenon wide', 'tenon narrow', 'tenon short', 'tenon long', 'shoulder out of square', 'cheek not flat', 'tenon split', 'side of the line'],
  fit: ['tenon tight', 'tenon loose', 'shoulder open', 'cheek not flat', 'mortise shallow', 'mortise split', 'tenon split'],
  'dry assembly': ['frame out of square', 'shoulder open', 'tenon tight', 'tenon loose'], 'glue-up': ['frame out of square', 'shoulder open'],
};

/** None where no work of the hands is known to go wrong. */
export function usualTroubles(operation: Operation): readonly Trouble[] {
  return USUAL_AT[operation] ?? [];
}
