import type { Mark } from '../joint/marks.ts';
import { listFaces } from './likes.ts';
import type { LegMap } from './map.ts';

/** The marks of one copy with its own faces in them: where each mortise is, which face the gauge runs on, which end is the top. */
export function onFaces(marks: readonly Mark[], map: LegMap | undefined): readonly Mark[] {
  return map === undefined ? marks : marks.map((mark) => onFace(mark, map));
}

function onFace(mark: Mark, { mortises, turn }: LegMap): Mark {
  const own = mortises.filter(({ joint }) => joint === mark.joint);
  const faces = [...new Set(own.map(({ face }) => face))].sort();
  const gauged = [...new Set(own.flatMap(({ gaugeFrom }) => gaugeFrom ?? []))].sort();
  const on = mark.on.startsWith('the face towards') && faces.length > 0 ? `face${faces.length > 1 ? 's' : ''} ${listFaces(faces)}, ${mark.on.replace(/^the face /, '')}` : mark.on;
  if (mark.from.kind === 'end') return turn.up === 'other' && /^the (?:top|bottom) end$/.test(mark.from.say) ? { ...mark, on, from: { ...mark.from, say: `${mark.from.say}, ${numberOn(mark.from.say)}` } } : { ...mark, on };
  return mark.from.say === 'the outer face' && gauged.length === 1 ? { ...mark, on, from: { ...mark.from, say: `the outer face, ${listFaces(gauged)}` } } : { ...mark, on };
}

/** Only with the numbered end down there is something to be said about it. */
function numberOn(end: string): string {
  return end === 'the top end' ? 'the one without the number' : 'the numbered one';
}
