import { hollowOf } from '../joint/mates.ts';
import type { MortiseAndTenon, Part } from '../piece/file.ts';
import { sizeName } from './draft.ts';
import type { Ground } from './ground.ts';
import type { SizeMention, Wording } from './step.ts';
import { around, words } from './wording.ts';

/** What a joint asks for beside the plain blind one, in the steps that lay it out and cut it. */

function sized(ground: Ground, joint: MortiseAndTenon, key: string): SizeMention | undefined {
  return ground.size(sizeName(joint, key));
}

/** How many mortises a joint has at each end of its rail. */
export function tenonsAtEnd({ tenons }: MortiseAndTenon): 1 | 2 {
  return tenons === undefined || tenons === 'one' ? 1 : 2;
}

/** After the lines of the mortise itself. */
export function alsoLaidOut(ground: Ground, joint: MortiseAndTenon, part: Part): Wording {
  return words(
    joint.tenons === 'one above the other' ? words(' The second mortise', around(' begins ', sized(ground, joint, 'gap'), ' below the first'), '.') : undefined,
    joint.tenons === 'side by side' ? words(' Gauge the second mortise beside the first', around(', ', sized(ground, joint, 'gap'), ' further in'), ', all from the same face.') : undefined,
    joint.shape === 'through' ? ' Square the end lines right round and gauge the far face as well, stock on the same reference face.' : undefined,
    joint.shape === 'bridle' ? ` It is open at the end: gauge both sides over the end grain and down both edges, and knife only the bottom of the ${hollowOf(joint)}.` : undefined,
    joint.haunch === undefined ? undefined : words(' Carry the two side lines up', around(' for the socket of the haunch, ', sized(ground, joint, 'haunchWidth'), ' high'), '.'),
    ground.size(sizeName(part, 'horn')) === undefined ? undefined : ' Measure from the knife line of the finished end, not from the end of the horn.',
  );
}

/** After the lines of the tenon itself. */
export function alsoLaidOutOnTenon(ground: Ground, joint: MortiseAndTenon): Wording {
  return words(
    tenonsAtEnd(joint) === 1 ? undefined : words(' They are twins', around(', ', sized(ground, joint, 'gap'), ' apart'), ': gauge both from the same side.'),
    joint.haunch === undefined ? undefined : words(' Mark the haunch', around(', ', sized(ground, joint, 'haunchLength'), ' from the shoulder'), around(' and ', sized(ground, joint, 'haunchWidth'), ' wide'), joint.haunch === 'sloped' ? ', sloping to nothing at the top edge.' : '.'),
    shapedEnds(joint, 'Mark the'),
  );
}

export function alsoSawn(ground: Ground, joint: MortiseAndTenon): Wording {
  return words(
    joint.haunch === undefined ? undefined : words(' Saw the haunch back', around(' to ', sized(ground, joint, 'haunchLength')), ', not to the shoulder.'),
    tenonsAtEnd(joint) === 1 ? undefined : ' Saw down both sides of the gap between the twins, and chop its bottom back from both faces.',
    joint.shape === 'through' ? ' The end is seen: leave it a shaving long, and chamfer it so that it does not tear the far face.' : undefined,
    shapedEnds(joint, 'Saw the'),
  );
}

function shapedEnds({ tenonEnds }: MortiseAndTenon, lead: string): string | undefined {
  switch (tenonEnds) {
    case 'mitred': return ` ${lead} mitre of the ends where two tenons meet inside the leg, with a gap between them.`;
    case 'stepped': return ` ${lead} step of the ends where two tenons meet inside the leg: long in one half, short in the other, with a gap between them.`;
    default: return undefined;
  }
}

export function alsoChopped(ground: Ground, joint: MortiseAndTenon): Wording {
  if (joint.haunch === undefined) return [];
  return words(' Chop the socket of the haunch last', around(', ', sized(ground, joint, 'haunchLength'), ' deep'), joint.haunch === 'sloped' ? ' at the mortise and sloping out to nothing.' : ', and saw its sides first.');
}
