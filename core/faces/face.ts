/**
 * The four faces round the length of a part, as the maker has lettered them on the blank: look at the numbered end, and A, B, C, D go
 * round clockwise. The letters stay with the wood; which way they look is the turn.
 */
export const FACES = ['A', 'B', 'C', 'D'] as const;
export type Face = (typeof FACES)[number];

/** The end with the number on it, and the other one. */
export type End = 'numbered' | 'other';

/** The sides of the piece that a face of an upright part can look to; clockwise, seen from above. */
export const RING = ['front', 'left', 'back', 'right'] as const;
export type Side = (typeof RING)[number];

/** The sides of a part that lies: outwards, and so round, its numbered end to the left of who looks at it from outside. */
const LYING_RING = ['outside', 'bottom', 'inside', 'top'] as const;
export type LyingSide = (typeof LYING_RING)[number];

/**
 * How a copy stands. Upright: `front` looks to the front of the piece, and the numbered end is up, or the other one. Lying:
 * `front` looks outwards, and 'numbered' has the numbered end to the left of who looks at it from outside.
 */
export interface Turn {
  readonly front: Face;
  readonly up: End;
}

/** Every turn, the ones that need no turning first. */
export const TURNS: readonly Turn[] = (['numbered', 'other'] as const).flatMap((up) => FACES.map((front) => ({ front, up })));

/** The face that looks to that side, of an upright part. */
export function faceTowards(turn: Turn, side: Side): Face {
  return faceAt(turn, RING.indexOf(side));
}

/** The face on that side, of a part that lies. */
export function faceLying(turn: Turn, side: LyingSide): Face {
  return faceAt(turn, LYING_RING.indexOf(side));
}

/** With the other end up, the letters go the other way round. */
function faceAt({ front, up }: Turn, steps: number): Face {
  const at = FACES.indexOf(front) + (up === 'numbered' ? steps : -steps);
  return FACES[(at + FACES.length) % FACES.length] ?? front;
}

export function oppositeFace(face: Face): Face {
  return FACES[(FACES.indexOf(face) + 2) % FACES.length] ?? face;
}

export function oppositeSide(side: Side): Side {
  return RING[(RING.indexOf(side) + 2) % RING.length] ?? side;
}

export function sameTurn(one: Turn | undefined, other: Turn | undefined): boolean {
  return one?.front === other?.front && one?.up === other?.up;
}
