import type { Mark } from '../../joint/marks.ts';
import { ZERO_LENGTH } from '../../length/length.ts';
import type { LoadedPiece } from '../../piece/loadedPiece.ts';
import type { FaceView, PartSize } from './faceView.ts';

/** The end that the slot of a bridle runs out of, with the gauge lines carried over it: from the face that the slot opens in to the far one. None while a horn stands on that end. */
export function slotEnd({ file }: LoadedPiece, size: PartSize, marks: readonly Mark[]): readonly FaceView[] {
  return file.joints.flatMap((joint): readonly FaceView[] => {
    if (joint.kind !== 'mortise and tenon' || joint.shape !== 'bridle') return [];
    const own = marks.filter((mark) => mark.joint === joint.id && (mark.kind === 'mortise near side' || mark.kind === 'mortise far side'));
    const [near, far] = own;
    if (near === undefined || far === undefined) return [];
    const below = marks.some((mark) => mark.joint === joint.id && mark.kind === 'mortise start');
    if ((below ? size.lowerHorn : size.horn) > 0) return [];
    const [along, across] = (joint.mortiseInto ?? 'width') === 'width' ? [size.width, size.thickness] : [size.thickness, size.width];
    return [{
      name: below ? 'bottom end' : 'top end', along, across, leftIs: 'one edge', topIs: 'outer face', gaugeFrom: 'top', depths: [],
      lines: own.map((mark) => ({ mark, lies: 'along', at: mark.at, from: ZERO_LENGTH, to: along })),
      waste: [{ from: ZERO_LENGTH, to: along, top: near.at, bottom: far.at }],
    }];
  });
}
