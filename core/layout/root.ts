import { nanometres, type Length } from '../length/length.ts';

/** The side of a square of that area, in nanometres, to the nearest one. Exact: no area of a piece fits a plain number. Throws below nothing. */
export function sideOfSquare(areaNm2: bigint): Length {
  if (areaNm2 < 0n) throw new RangeError('an area is nothing or more');
  let root = BigInt(Math.floor(Math.sqrt(Number(areaNm2))));
  // The plain root is near; a step of Newton or two brings it home.
  for (let better = newton(root, areaNm2); better < root || better > root + 1n; better = newton(root, areaNm2)) root = better;
  while (root * root > areaNm2) root -= 1n;
  while ((root + 1n) * (root + 1n) <= areaNm2) root += 1n;
  return nanometres(Number(areaNm2 - root * root > root ? root + 1n : root));
}

function newton(root: bigint, area: bigint): bigint {
  return root === 0n ? area : (root + area / root) / 2n;
}

export function squared(length: Length): bigint {
  return BigInt(length) * BigInt(length);
}
