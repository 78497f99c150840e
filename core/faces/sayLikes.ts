import type { LegMap, RailMap } from './map.ts';
import { FIGURES, facesLiked, listFaces, told, type CopyLikes, type Quality } from './likes.ts';
import { FACES, type End, type Face } from './face.ts';

/** A quality told of faces: 'show A and B', 'face side A', 'flat grain on B'. */
export function sayQuality(as: Quality, faces: readonly Face[]): string {
  const list = listFaces(faces);
  switch (as) {
    case 'show': case 'hide': return `${as} ${list}`;
    case 'best': return `best ${list}`;
    case 'face side': case 'face edge': return `${as} ${list}`;
    case 'glue lines': return `glue lines on ${list}`;
    case 'straight': case 'flat': return `${as} grain on ${list}`;
    case 'figured': return `figured ${list}`;
    case 'plain': return `nothing told of ${list}`;
  }
}

const TOLD_IN_ORDER: readonly Quality[] = ['best', 'show', 'hide', 'glue lines', ...FIGURES, 'face side', 'face edge'];

/** All that was told of a copy; empty when that is nothing. */
export function sayLikes(likes: CopyLikes): readonly string[] {
  const faces = TOLD_IN_ORDER.flatMap((as) => {
    const liked = facesLiked(likes, as);
    return liked.length === 0 ? [] : [sayQuality(as, liked)];
  });
  return [...faces, ...(likes.up === undefined ? [] : [sayUp(likes.up)]), ...(likes.arch === undefined ? [] : [sayArch(likes.arch)])];
}

export function sayUp(up: End | 'either'): string {
  return up === 'either' ? 'either end up' : `the ${up} end up`;
}

export function sayArch(arch: End | 'either'): string {
  return arch === 'either' ? 'no arches' : `arches to the ${arch} end`;
}

/** Of one face, for the eye: 'best · flat grain'. */
export function writeFaceTold(likes: CopyLikes, face: Face): string {
  const { wish, mark, glueLines, figure } = told(likes, face);
  return [wish, figure === undefined ? undefined : figure === 'figured' ? figure : `${figure} grain`, glueLines ? 'glue lines' : undefined, mark].filter((one) => one !== undefined).join(' · ');
}

/** 'mortises in B and C, gauged from A and D; the inside corner is B and C'. */
export function sayMap({ mortised, mortises, insideCorner }: LegMap): string {
  const gauged = FACES.filter((face) => mortises.some(({ gaugeFrom }) => gaugeFrom === face));
  const inside = insideCorner.length === 0 || insideCorner.join() === mortised.join() ? '' : `; the inside corner is ${listFaces(insideCorner)}`;
  return mortised.length === 0 ? `no mortises${inside}` : `mortises in ${listFaces(mortised)}${gauged.length === 0 ? '' : `, gauged from ${listFaces(gauged)}`}${inside}`;
}

export function sayRail({ outside, top, numberedEnd }: RailMap): string {
  return `face ${outside} outside, ${top} up, the numbered end to the ${numberedEnd}`;
}
