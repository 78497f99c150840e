import type { Fixing, MortiseAndTenon, Part } from '../piece/file.ts';
import { CAUTIONS } from './cautions.ts';
import { chiselFor } from './chisels.ts';
import { before, idOf, oriented, partStep, present, sizeName, type TitleWords } from './draft.ts';
import { CHOPPING, TOLERANCES } from './figures.ts';
import { copiesOf, type Ground } from './ground.ts';
import { allOf, capital, counted, listed, oneOf, plural, pluralOf } from './names.ts';
import type { Before, Step, StepId } from './step.ts';
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
function readyToLayOut(ground: Ground, part: Part): readonly Before[] {
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
    say: words(`Mark out the mortises for the ${mateOf(ground, joint)} on ${mortisedOf(joint, part)}, in one setting.`),
    show: words(part.count > 1 ? `Clamp ${mortisedOf(joint, part)} together, ends level, the faces to be mortised up, and square the lines across all of them at once` : 'Square the lines across',
      around(': mortise ', length, ' long'), around(', starting ', ground.size(sizeName(joint, 'fromTop')), ' from the top end'),
      '. Set the two pins of the mortise gauge to the chisel itself', around(', ', width), '. Stock on the reference face',
      around(', outer face of the rail ', ground.size(sizeName(joint, 'setback')), ' back from the outer face of the leg'),
      '. Gauge each one, hatch the waste, and count the faces before any wood is cut.'),
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
      around(', shoulder to shoulder ', shoulders), '. Take them apart and carry the lines round each with the square, stock on reference face and edge only. Gauge the cheeks with the mortise gauge as it stands, stock on the reference face',
      around(': tenon ', ground.size(sizeName(joint, 'tenonThickness')), ' thick'), around(', ', ground.size(sizeName(joint, 'tenonWidth')), ' wide'),
      around(', ', ground.size(sizeName(joint, 'tenonLength')), ' long'), '. Hatch the waste.'),
    sizes: ground.sizesOf(joint.id).filter(({ size }) => /\.tenon|Shoulder$/.test(size)),
    tools: ['marking knife', 'try square', 'mortise gauge', 'marking gauge', 'pencil', 'clamps'],
    check: { say: words(part.count > 1 ? 'The knife lines meet all round each one, and lie level from one to the next.' : 'The knife lines meet all round.'), tolerance: TOLERANCES.shoulders },
    after: readyToLayOut(ground, part),
  }, tenonDetail(ground, joint));
}

/** What a mortise is for: the part that comes into it, or the joint's own name where that part has several. */
function mateOf(ground: Ground, joint: MortiseAndTenon): string {
  const tenoned = ground.part(joint.tenonOn);
  return tenoned === undefined || hasSeveral(ground, joint) ? joint.name : tenoned.name;
}

function hasSeveral(ground: Ground, joint: MortiseAndTenon): boolean {
  return ground.tenonJoints.filter(({ tenonOn }) => tenonOn === joint.tenonOn).length > 1;
}

/** Which tenons: said only of a part that has several kinds. */
function tenonDetail(ground: Ground, joint: MortiseAndTenon): TitleWords {
  return hasSeveral(ground, joint) ? { detail: joint.name } : {};
}

/** 'the four legs', or 'the back left and back right legs' when only those have the joint. */
function mortisedOf(joint: MortiseAndTenon, part: Part): string {
  return joint.places === undefined ? allOf(part) : `the ${listed(joint.places)} ${joint.places.length === 1 ? part.name : pluralOf(part)}`;
}

/** A copy that has the joint: by its number, or by its place where only some places have it, for which copy that is only the maker can say. */
interface Mortised {
  readonly copy: number;
  readonly place?: string;
}

function mortisedCopies(joint: MortiseAndTenon, part: Part): readonly Mortised[] {
  if (joint.places === undefined) return copiesOf(part).map((copy) => ({ copy }));
  return joint.places.map((place, index) => ({ place, copy: (part.places?.indexOf(place) ?? -1) + 1 || index + 1 }));
}

function chopOf(joint: MortiseAndTenon, { copy, place }: Mortised): StepId {
  return idOf('chop mortises', joint.mortiseIn, place ?? copy, joint.id);
}

/** One joint in one copy a step, joint by joint: the chisel and its depth mark stay as they are through the set. */
export function chopMortises(ground: Ground, joint: MortiseAndTenon, part: Part): readonly Step[] {
  const copies = mortisedCopies(joint, part);
  const depth = ground.size(sizeName(joint, 'mortiseDepth'));
  // Both ends of each tenoned part, shared among the copies; no number is said when they do not share out evenly.
  const each = ((ground.part(joint.tenonOn)?.count ?? 0) * 2) / copies.length;
  return copies.map((mortised) => {
    const name = mortised.place === undefined ? oneOf(part, mortised.copy) : `the ${mortised.place} ${part.name}`;
    return partStep(part, mortised.copy, {
      operation: 'chop mortises',
      joint: joint.id,
      say: words(`In ${name}, chop the ${each === 1 ? 'mortise' : 'mortises'} for the ${mateOf(ground, joint)}`, around(', ', depth, ' deep'), '.'),
      show: words(`${capital(Number.isInteger(each) && each > 0 ? counted(each, 'mortise') : 'the mortises')} here. Clamp ${name} where the bench is most solid. Mark the depth on the chisel`, around(': ', depth),
        '. Start in the middle, stay off both end lines, chop and lever down to depth, then trim the ends upright.'),
      sizes: present(ground.size(sizeName(joint, 'mortiseWidth')), ground.size(sizeName(joint, 'mortiseLength'))),
      tools: [chiselFor(ground, joint), 'mallet', 'try square', 'depth gauge', 'clamps', 'strop'],
      check: { say: words('Walls upright, ends on the line, and the bottom deep enough all along.'), tolerance: TOLERANCES.mortise },
      cautions: [CAUTIONS.chisel, CAUTIONS.mallet, CAUTIONS.dullEdge],
      timer: { kind: 'break', name: 'look at the edge', ...CHOPPING, starts: 'when asked' },
      after: [before(idOf('joint layout', part.id, joint.id), 'There are no mortise lines to chop to.')],
    }, { detail: mateOf(ground, joint), ...(mortised.place === undefined ? {} : { place: mortised.place }) });
  });
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
        joint.tenonEnds === 'mitred' ? ' Mitre the ends where two tenons meet inside the leg, with a gap between them.' : ''),
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

/** Grooves or slots that hold the top: cut while the part still lies flat on the bench. */
export function cutFixings(ground: Ground, fixing: Fixing, part: Part): Step {
  const cut = ground.size(sizeName(fixing, 'grooveWidth')) === undefined ? 'slots' : 'groove';
  const where = ground.size(sizeName(fixing, 'grooveFromTop'));
  return partStep(part, undefined, {
    operation: 'cut fixings',
    joint: fixing.id,
    say: words(`Cut the ${cut} for the ${holdersOf(ground, fixing)} in ${allOf(part)}`, around(', ', where, ' from the top edge'), '.'),
    show: words(`Gauge from the top edge on the inside of ${allOf(part)}, all with one setting, and cut the ${cut}`, around(': ', where, ' from the top edge'),
      around(', ', ground.size(sizeName(fixing, 'grooveWidth')), ' wide'), around(', ', ground.size(sizeName(fixing, 'grooveDepth')), ' deep'),
      `. Between them they take ${counted(fixing.count, holderOf(ground, fixing))}.`),
    sizes: ground.sizesOf(fixing.id).filter(({ size }) => size.includes('.groove')),
    tools: ['marking gauge', 'chisel', 'mallet', ...(cut === 'groove' ? ['grooving plane'] : ['saw']), 'square'],
    check: { say: words('All at one height from the top edge, and of one depth.'), tolerance: TOLERANCES.mortise },
    cautions: [CAUTIONS.chisel, CAUTIONS.mallet],
    after: readyToLayOut(ground, part),
  }, { detail: `${cut} for the ${holdersOf(ground, fixing)}` });
}

/** The tongues of the buttons, or whatever a holding part needs to hold. */
export function shapeHolders(ground: Ground, part: Part): Step {
  const sizes = ground.jointsOf(part.id).flatMap(({ id }) => ground.sizesOf(id)).filter(({ size }) => /\.(?:tongue|step)/.test(size));
  const firstOf = (key: string) => sizes.find(({ size }) => size.endsWith(`.${key}`));
  return partStep(part, undefined, {
    operation: 'cut fixings',
    say: words(`Saw the tongues of ${allOf(part)}`, around(', ', firstOf('tongueLength'), ' long'), around(' and ', firstOf('tongueThickness'), ' thick'), '.'),
    show: words(`Saw the tongue on the end of each of ${allOf(part)}`, around(': ', firstOf('tongueLength'), ' long'), around(', ', firstOf('tongueThickness'), ' thick'), around(', ', firstOf('step'), ' down from the top face'),
      '. Bore the screw hole, countersunk, and pull each one down with the step a shade shallow, so that it draws.'),
    sizes,
    tools: ['marking gauge', 'tenon saw', 'bench hook', 'chisel', 'drill'],
    check: { say: words('The tongue slides in its groove without play up or down.'), tolerance: TOLERANCES.mortise },
    cautions: [CAUTIONS.saw, CAUTIONS.drill],
    after: ground.unitsOf(part).map((copy) => before(idOf('ends', part.id, copy), 'The tongues are gauged from the sawn ends.')),
  });
}

/** What does the holding: 'button'. */
export function holderOf(ground: Ground, fixing: Fixing): string {
  const made = fixing.with === undefined ? undefined : ground.part(fixing.with);
  return made?.name ?? fixing.name;
}

function holdersOf(ground: Ground, fixing: Fixing): string {
  const made = fixing.with === undefined ? undefined : ground.part(fixing.with);
  if (made !== undefined) return pluralOf(made);
  return fixing.count === 1 || fixing.name.endsWith('s') ? fixing.name : plural(fixing.name);
}
