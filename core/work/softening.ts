import { bevelOf, USUAL_SHAVING } from '../joint/bevel.ts';
import { sayNumber } from '../length/say.ts';
import type { Part } from '../piece/file.ts';
import { CAUTIONS } from './cautions.ts';
import { before, idOf, oriented, partStep, shaped, sizeName } from './draft.ts';
import { TOLERANCES } from './figures.ts';
import type { Ground } from './ground.ts';
import { allOf } from './names.ts';
import type { Before, Step } from './step.ts';
import { around, words } from './wording.ts';

/** All cuts and fits of the joints that a part has a share in: until they are done, its arrises are the reference. */
function jointsDone(ground: Ground, part: Part, because: string): readonly Before[] {
  return ground.jointsOf(part.id).flatMap((joint) => {
    if (joint.kind === 'fixing') {
      if (ground.inOneGo(part)) return [before(idOf('cut fixings', part.id), because)];
      return joint.to === part.id ? [before(idOf('cut fixings', part.id, joint.id), because)] : [];
    }
    const tenoned = ground.part(joint.tenonOn);
    return (tenoned === undefined ? [] : ground.unitsOf(tenoned)).map((copy) => before(idOf('fit', joint.tenonOn, copy, joint.id), because));
  });
}

export function easeEdges(ground: Ground, part: Part): Step {
  const size = ground.size(sizeName(part, 'easing'));
  const joined = ground.jointsOf(part.id).some(({ kind }) => kind === 'mortise and tenon');
  return partStep(part, undefined, {
    operation: 'ease edges',
    say: words(`Ease the arrises of ${allOf(part)}`, around(' by ', size), size === undefined ? ', just so that they do not cut.' : '.'),
    show: words(`Take the last shavings off the faces that show. Then ease the arrises of ${allOf(part)} with a few even strokes`, around(': ', size),
      joined ? '. Leave alone the arrises at shoulders and mortises, and any edge that meets another part.' : '. Leave alone any edge that meets another part.'),
    tools: ['smoothing plane', 'block plane', 'card scraper', 'fine sandpaper on a block'],
    check: { say: words(joined ? 'Even to the thumb along every arris, and shoulders and mortises still crisp.' : 'Even to the thumb along every arris.'), tolerance: TOLERANCES.easing },
    cautions: [CAUTIONS.plane, CAUTIONS.dust],
    after: [
      ...shaped(ground, part, 'The ends are squared from the arrises.'),
      ...oriented(ground, part, 'Mark first which edges will show.'),
      ...jointsDone(ground, part, 'An eased edge is no reference: the joints are gauged and fitted from it.'),
    ],
  });
}

export function footBevel(ground: Ground, part: Part): Step {
  const [size, inwards] = ['footBevel', 'footBevelInwards'].map((key) => ground.size(sizeName(part, key)));
  return partStep(part, undefined, {
    operation: 'foot bevel',
    say: words(`Bevel the foot of ${part.count === 1 ? allOf(part) : `each of ${allOf(part)}`} all round`, around(', ', size), '.'),
    show: words(`Gauge round the bottom end of ${allOf(part)}`, around(': ', size), inwards === undefined ? ' on the end and up the sides.' : words(' up the sides', around(', and ', inwards, ' in on the end'), '.'),
      ` It is end grain: plane from each corner to the middle, and come in from the other side${shavingsOf(ground, part)}. A bevelled foot does not split when the piece is dragged.`),
    tools: ['marking gauge', 'block plane', 'chisel'],
    check: { say: words('The bevels meet at the corners and leave a square flat foot.'), tolerance: TOLERANCES.easing },
    cautions: [CAUTIONS.chisel],
    after: [...shaped(ground, part, 'The bevel is gauged from the squared end.'), ...oriented(ground, part, 'Without its marks, the bevel may land on the top end.')],
  });
}

/** ', about forty-five fine shavings a side'; nothing when the bevel cannot be worked out. */
function shavingsOf(ground: Ground, part: Part): string {
  const [setback, inwards, width, thickness] = ['footBevel', 'footBevelInwards', 'width', 'thickness'].map((key) => ground.planned(sizeName(part, key)));
  if (setback === undefined || width === undefined || thickness === undefined) return '';
  const found = bevelOf({ setback, otherSetback: inwards ?? setback, shaving: USUAL_SHAVING, across: 'end grain', section: { width, thickness } });
  return found.ok ? `, about ${sayNumber(found.value.shavings)} fine shavings a side` : '';
}
