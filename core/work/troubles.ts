/** What goes wrong under the hands, by what the trade calls it: boards, joints, frames; and what is asked of the handwork itself. */
export const TROUBLES = [
  'cup', 'wind', 'bow', 'hump', 'hollow', 'high corners', 'edge out of square', 'tear-out', 'not flat',
  'tenon loose', 'tenon tight', 'tenon short', 'tenon long', 'tenon wide', 'tenon narrow', 'tenon split',
  'mortise wide', 'mortise narrow', 'mortise long', 'mortise short', 'mortise deep', 'mortise shallow', 'mortise split',
  'shoulder open', 'shoulder out of square', 'cheek not flat', 'wrong face', 'end blown out',
  'frame out of square', 'side of the line', 'mortise or tenon first',
] as const;
export type Trouble = (typeof TROUBLES)[number];
