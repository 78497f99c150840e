import type { Length } from '../../length/length.ts';
import type { FaceReadings } from '../surface.ts';

/** What every reckoning of a face is given. */
export const FACE_FIELDS = {
  length: { kind: 'length', say: 'length of the board' },
  width: { kind: 'length', say: 'width of the face' },
  stations: { kind: 'lengths', say: 'where it was read, from the marked end, in order' },
  along: { kind: 'lengths', say: 'gap under a straightedge along the middle, at each place', optional: true },
  stick: { kind: 'length', say: 'length of the winding sticks', default: '24 in' },
  sticks: { kind: 'lengths', say: 'how much higher the left end of the far stick stands, at each place, the near stick staying at the first; -1/16 in where the right end is high', optional: true, mayBeNegative: true },
  across: { kind: 'lengths', say: 'gap in the middle of a straightedge across, at each place; -1/32 in where the face is crowned by that much', optional: true, mayBeNegative: true },
} as const;

interface FaceInputs {
  readonly length: Length;
  readonly width: Length;
  readonly stations: readonly Length[];
  readonly along: readonly Length[] | undefined;
  readonly stick: Length;
  readonly sticks: readonly Length[] | undefined;
  readonly across: readonly Length[] | undefined;
}

export function readingsFrom({ length, width, stations, along, stick, sticks, across }: FaceInputs): FaceReadings {
  return { length, width, stations, ...(along ? { along } : {}), ...(sticks ? { sticks: { length: stick, leftHigh: sticks } } : {}), ...(across ? { across } : {}) };
}
