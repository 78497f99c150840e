import { hollowOf } from '../joint/mates.ts';
import type { MortiseAndTenon, Part } from '../piece/file.ts';
import { chiselFor } from './chisels.ts';
import { before, idOf, oriented, partStep, sizeName } from './draft.ts';
import { TOLERANCES } from './figures.ts';
import type { Ground } from './ground.ts';
import { alsoLaidOut, alsoLaidOutOnTenon } from './jointWording.ts';
import { mateOf, mortisedOf, tenonDetail } from './mates.ts';
import { allOf, listed } from './names.ts';
import type { Before, Step } from './step.ts';
import { around, words } from './wording.ts';

/** One step for all copies: which goes where is only seen when they stand side by side. */
export function orientAndMark(ground: Ground, part: Part): Step {
  const several = part.count > 1;
  return partStep(part, undefined, {
    operation: 'orient and mark',
    say: words(several ? `Stand ${allOf(part)} together, choose where each goes, and mark them.` : `Choose which way ${allOf(part)} faces, and mark it.`),
    show: words(several ? `Stand ${allOf(part)} side by side as in the finished piece. Best figure out, grain running alike` : 'Best face to be seen, flaws inside or below',
      several ? ', flaws inside. Draw one triangle across the whole set, then write name, number and place on each, where no joint will take it away.' : '. Write its name and which way it goes, where no joint will take it away.',
      part.places === undefined ? '' : ` ${several ? 'The places' : 'The place'}: ${listed(part.places)}. Tell the bench which copy goes where.`),
    tools: ['pencil', 'try square'],
    check: { say: words(several ? 'Set apart and put together again, there is only one way that they go.' : 'The mark tells face, edge and which way it goes.') },
    after: ground.unitsOf(part).flatMap((copy) => [
      before(idOf('thickness', part.id, copy), 'Planing to thickness takes the marks away.'),
      before(idOf('width', part.id, copy), 'Planing to width takes the marks away.'),
    ]),
  });
}

/** All that comes before a line can be measured from an end or gauged from a face. */
export function readyToLayOut(ground: Ground, part: Part): readonly Before[] {
  return [
    ...oriented(ground, part, 'Without orientation marks, a joint lands on the wrong face.'),
    ...ground.unitsOf(part).map((copy) => before(idOf('ends', part.id, copy), 'The joints are measured from the ends: square them first.')),
  ];
}

export function mortiseLayout(ground: Ground, joint: MortiseAndTenon, part: Part): Step {
  const width = ground.size(sizeName(joint, 'mortiseWidth'));
  const length = ground.size(sizeName(joint, 'mortiseLength'));
  return partStep(part, undefined, {
    operation: 'joint layout',
    joint: joint.id,
    say: words(`Mark out the ${hollowOf(joint)}s for the ${mateOf(ground, joint)} on ${mortisedOf(joint, part)}, in one setting.`),
    show: words(part.count > 1 ? `Clamp ${mortisedOf(joint, part)} together, ends level, the faces to be mortised up, and square the lines across all of them at once` : 'Square the lines across',
      around(`: ${hollowOf(joint)} `, length, joint.shape === 'bridle' ? ' deep' : ' long'), around(', starting ', joint.shape === 'bridle' ? undefined : ground.size(sizeName(joint, 'fromTop')), ' from the top end'),
      '. Set the two pins of the mortise gauge to the chisel itself', around(', ', width), '. Stock on the reference face',
      around(`, outer face of the ${ground.part(joint.tenonOn)?.name ?? 'rail'} `, ground.size(sizeName(joint, 'setback')), ` back from the outer face of the ${part.name}`),
      '.', alsoLaidOut(ground, joint, part), ' Gauge each one, hatch the waste, and count the faces before any wood is cut.'),
    sizes: ground.sizesOf(joint.id).filter(({ size }) => !/\.tenon|Shoulder$/.test(size)),
    tools: ['mortise gauge', chiselFor(ground, joint), 'marking knife', 'try square', 'pencil', 'clamps'],
    check: { say: words('Set back in their places, each mortise faces the part that it waits for, and every set of lines agrees.'), tolerance: TOLERANCES.mortise },
    after: readyToLayOut(ground, part),
  }, { detail: `mortises for the ${mateOf(ground, joint)}` });
}

/** Shoulders of all copies are knifed as one: pairs that agree beat any that are right by the rule. */
export function tenonLayout(ground: Ground, joint: MortiseAndTenon, part: Part): Step {
  const shoulders = ground.size(sizeName(part, 'shoulders'));
  return partStep(part, undefined, {
    operation: 'joint layout',
    joint: joint.id,
    say: words(`Knife the shoulders of ${allOf(part)}${part.count > 1 ? ' together' : ''}`, around(', ', shoulders, ' apart'), '.'),
    show: words(part.count > 1 ? `Clamp ${allOf(part)} together, reference edges up, ends level, and knife both shoulder lines across all of them at once` : 'Knife both shoulder lines',
      around(', shoulder to shoulder ', shoulders), '. Take them apart and carry the lines round each with the square, stock on reference face and edge only. Gauge the cheeks with the mortise gauge, pins as for the mortise, stock on the reference face',
      around(', the near pin ', ground.size(sizeName(joint, 'outerShoulder')), ' from it'),
      around(': tenon ', ground.size(sizeName(joint, 'tenonThickness')), ' thick'), around(', ', ground.size(sizeName(joint, 'tenonWidth')), ' wide'),
      around(', ', ground.size(sizeName(joint, 'tenonLength')), ' long'), '.', alsoLaidOutOnTenon(ground, joint), ' Hatch the waste.'),
    sizes: ground.sizesOf(joint.id).filter(({ size }) => /\.tenon|Shoulder$/.test(size)),
    tools: ['marking knife', 'try square', 'mortise gauge', 'marking gauge', 'pencil', 'clamps'],
    check: { say: words(part.count > 1 ? 'The knife lines meet all round each one, and lie level from one to the next.' : 'The knife lines meet all round.'), tolerance: TOLERANCES.shoulders },
    after: readyToLayOut(ground, part),
  }, tenonDetail(ground, joint));
}
