import { planChopping } from '../joint/chopping.ts';
import { hardnessOf } from '../joint/ofPiece.ts';
import { sayNumber } from '../length/say.ts';
import type { MortiseAndTenon, Part } from '../piece/file.ts';
import { CAUTIONS } from './cautions.ts';
import { chiselFor } from './chisels.ts';
import { before, idOf, partStep, present, sizeName } from './draft.ts';
import { CHOPPING, TOLERANCES } from './figures.ts';
import type { Ground } from './ground.ts';
import { alsoChopped, alsoSawn, tenonsAtEnd } from './jointWording.ts';
import { chopOf, mateOf, mortisedCopies, tenonDetail } from './mates.ts';
import { capital, counted, listed, oneOf } from './names.ts';
import type { Step } from './step.ts';
import { around, words } from './wording.ts';

/** One joint in one copy a step, joint by joint: the chisel and its depth mark stay as they are through the set. */
export function chopMortises(ground: Ground, joint: MortiseAndTenon, part: Part): readonly Step[] {
  const copies = mortisedCopies(joint, part);
  // Both ends of each tenoned part, shared among the copies; no number is said when they do not share out evenly.
  const each = ((ground.part(joint.tenonOn)?.count ?? 0) * 2 * tenonsAtEnd(joint)) / copies.length;
  return copies.map((mortised) => {
    const name = mortised.place === undefined ? oneOf(part, mortised.copy) : `the ${mortised.place} ${part.name}`;
    return partStep(part, mortised.copy, {
      operation: 'chop mortises',
      joint: joint.id,
      ...(joint.shape === 'bridle' ? slotting(ground, joint, name) : chopping(ground, joint, part, { name, each })),
      sizes: present(ground.size(sizeName(joint, 'mortiseWidth')), ground.size(sizeName(joint, 'mortiseLength'))),
      tools: [chiselFor(ground, joint), 'mallet', 'try square', 'depth gauge', 'clamps', 'strop'],
      check: { say: words('Walls upright, ends on the line, and the bottom deep enough all along.'), tolerance: TOLERANCES.mortise },
      cautions: [CAUTIONS.chisel, CAUTIONS.mallet, CAUTIONS.dullEdge],
      timer: { kind: 'break', name: 'look at the edge', ...CHOPPING, starts: 'when asked' },
      after: [before(idOf('joint layout', part.id, joint.id), 'There are no mortise lines to chop to.')],
    }, { detail: mateOf(ground, joint), ...(mortised.place === undefined ? {} : { place: mortised.place }) });
  });
}

function chopping(ground: Ground, joint: MortiseAndTenon, part: Part, { name, each }: { readonly name: string; readonly each: number }): Pick<Step, 'say' | 'show'> {
  const depth = ground.size(sizeName(joint, 'mortiseDepth'));
  const through = joint.shape === 'through';
  return {
    say: words(`In ${name}, chop the ${each === 1 ? 'mortise' : 'mortises'} for the ${mateOf(ground, joint)}`, through ? ', right through' : around(', ', depth, ' deep'), '.'),
    show: words(`${capital(Number.isInteger(each) && each > 0 ? counted(each, 'mortise') : 'the mortises')} here. Clamp ${name} where the bench is most solid.`,
      through ? ' It goes through: half from each face, never out of the far one. ' : words(' Mark the depth on the chisel', around(': ', depth), '. '),
      `${orderOfChopping(ground, joint, part)} Then trim the ends upright.`, alsoChopped(ground, joint)),
  };
}

/** The open mortise of a bridle joint is sawn, and only its bottom is chopped. */
function slotting(ground: Ground, joint: MortiseAndTenon, name: string): Pick<Step, 'say' | 'show'> {
  const deep = ground.size(sizeName(joint, 'mortiseLength'));
  return {
    say: words(`In ${name}, saw the slot for the ${mateOf(ground, joint)}`, around(', ', deep, ' deep'), ', and chop out its bottom.'),
    show: words(`Clamp ${name} upright. Saw both cheeks of the slot on the waste side, corner to corner from both edges, then straight down to the knife line`, around(': ', deep),
      '. Chop the bottom half from each edge, a little hollow in the middle, and pare the cheeks flat.'),
  };
}

/** In how many passes, and when to strop; only the order where the piece does not say how large the mortise is. */
function orderOfChopping(ground: Ground, joint: MortiseAndTenon, part: Part): string {
  const [from, length, width, depth] = ['fromTop', 'mortiseLength', 'mortiseWidth', 'mortiseDepth'].map((size) => ground.planned(sizeName(joint, size)));
  const wood = ground.planned(sizeName(part, joint.mortiseInto ?? 'width'));
  const order = 'from the middle to one end, turn the bevel, then to the other, staying off both end lines';
  if (from === undefined || length === undefined || width === undefined || depth === undefined || wood === undefined) return `Go ${order}.`;
  const plan = planChopping({ from, length, width, depth, wood, hardness: hardnessOf(part.species) });
  if (!plan.ok) return `Go ${order}.`;
  const { flags, stropAfter, through } = plan.value;
  const strop = stropAfter.length === 0 ? '' : `, and strop after ${listed(stropAfter.map((pass) => sayNumber(pass)))}`;
  return `In ${counted(flags.length, 'pass')}${through ? ' from each face' : ''}, go ${order}. Lever from the second pass on${strop}.`;
}

export function sawTenons(ground: Ground, joint: MortiseAndTenon, part: Part): readonly Step[] {
  return ground.unitsOf(part).map((copy) => {
    const shoulders = ground.size(sizeName(part, 'shoulders'), copy);
    return partStep(part, copy, {
      operation: 'saw tenons',
      joint: joint.id,
      say: words(`Saw the tenons of ${oneOf(part, copy)}, a whisker fat, and the shoulders to the knife line.`),
      show: words('Saw the cheeks on the waste side of the gauge lines: corner to corner from both sides, then straight down. Chisel a groove on the waste side of each knife line and saw the shoulder in it',
        around('; shoulder to shoulder ', shoulders), '. Leave the cheeks fat: they are pared to their own mortise.',
        alsoSawn(ground, joint)),
      sizes: present(...['tenonThickness', 'tenonWidth', 'tenonLength'].map((size) => ground.size(sizeName(joint, size)))),
      tools: ['tenon saw', 'bench hook', 'chisel', 'marking knife', 'try square'],
      check: { say: words('Shoulders square and level all round, and the cheeks not under the line.'), tolerance: TOLERANCES.shoulders },
      cautions: [CAUTIONS.saw],
      record: present(shoulders),
      after: [before(idOf('joint layout', part.id, joint.id), 'There are no shoulder lines to saw to.')],
    }, tenonDetail(ground, joint));
  });
}

export function fit(ground: Ground, joint: MortiseAndTenon, part: Part): readonly Step[] {
  const mortised = ground.part(joint.mortiseIn);
  const chopped = mortised === undefined ? [] : mortisedCopies(joint, mortised).map((each) => chopOf(joint, each));
  return ground.unitsOf(part).map((copy) => partStep(part, copy, {
    operation: 'fit',
    joint: joint.id,
    say: words(`Fit both tenons of ${oneOf(part, copy)}, each to its own mortise.`),
    show: words('Pare across the cheeks, the same off both, until the tenon goes home by hand with a tap at the last. Watch which face stays flush with which. Chamfer the end, undercut no more than the middle of the shoulder, and number tenon and mortise alike.'),
    tools: ['paring chisel', 'shoulder plane', 'square', 'pencil'],
    check: { say: words('It holds by itself when lifted, and the shoulder is closed all round.'), tolerance: TOLERANCES.tenonFit },
    cautions: [CAUTIONS.chisel],
    after: [
      before(idOf('saw tenons', part.id, copy, joint.id), 'The tenons are not sawn yet.'),
      ...chopped.map((id) => before(id, 'Each tenon is pared to its own mortise: chop them first.')),
    ],
  }, tenonDetail(ground, joint)));
}
