import { nanometres, NANOMETRES_PER_INCH, type Length } from '../length/length.ts';

/** Books that this folder takes proportions from, by the name they are told under. */
export const BOOKS = {
  noyes: 'Noyes, Handwork in Wood, 1910, ch. VII',
  joyce: 'Joyce, The Technique of Furniture Making',
  fairham: 'Fairham, Woodwork Joints',
  practice: 'common practice, no source',
} as const;

/** A proportion on which the books do not agree, or leave room: what each says of this joint, and what was chosen. */
export interface Proportion {
  readonly of: string;
  readonly published: readonly { readonly source: string; readonly says: Length }[];
  readonly chosen: Length;
  readonly because: string;
}

/** Wood that is left where it is cut away; common practice, no source, but where one is named. */
export const LEFT = {
  /** Above a mortise, to the end of the leg: less splits out under the chisel or the wedge of the tenon. */
  end: inches(1),
  /** Beside a mortise, cheek to face; and under it, to the outer face. */
  wall: inches(1, 4),
  /** Between two mortises. */
  web: inches(1, 8),
  /** Shoulder above and below the tenon of a rail that is wide enough for it. */
  edgeShoulder: inches(1, 4),
} as const;

function inches(numerator: number, denominator = 1): Length {
  return nanometres((NANOMETRES_PER_INCH * numerator) / denominator);
}
