import type { Fixing, Part } from '../piece/file.ts';
import type { Assembly } from './assembly.ts';
import { CAUTIONS } from './cautions.ts';
import { before, idOf, partStep, shaped, sizeName, wholeStep } from './draft.ts';
import { TOLERANCES } from './figures.ts';
import { coverOf, type Ground } from './ground.ts';
import { readyToLayOut } from './layout.ts';
import { allOf, capital, counted, listed, plural, pluralOf } from './names.ts';
import type { SizeMention, Step } from './step.ts';
import { around, words } from './wording.ts';

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
    tools: ['marking gauge', 'chisel', 'mallet', ...(cut === 'groove' ? ['plough plane'] : ['saw']), 'square'],
    check: { say: words('All at one height from the top edge, and of one depth.'), tolerance: TOLERANCES.mortise },
    cautions: [CAUTIONS.chisel, CAUTIONS.mallet],
    after: readyToLayOut(ground, part),
  }, { detail: `${cut} for the ${holdersOf(ground, fixing)}` });
}

/** The tongues of the buttons, or whatever a holding part needs to hold. */
export function shapeHolders(ground: Ground, part: Part): Step {
  const sizes = ground.jointsOf(part.id).flatMap(({ id }) => ground.sizesOf(id)).filter(({ size }) => /\.(?:tongue|step)/.test(size));
  const firstOf = (key: string): SizeMention | undefined => sizes.find(({ size }) => size.endsWith(`.${key}`));
  return partStep(part, undefined, {
    operation: 'cut fixings',
    say: words(`Saw the tongues of ${allOf(part)}`, around(', ', firstOf('tongueLength'), ' long'), around(' and ', firstOf('tongueThickness'), ' thick'), '.'),
    show: words(`Saw the tongue on the end of each of ${allOf(part)}`, around(': ', firstOf('tongueLength'), ' long'), around(', ', firstOf('tongueThickness'), ' thick'), around(', ', firstOf('step'), ' down from the top face'),
      '. Bore and countersink the screw hole. The step is a shade shallow on purpose: the screw then draws the parts together.'),
    sizes,
    tools: ['marking gauge', 'tenon saw', 'bench hook', 'chisel', 'drill'],
    check: { say: words('Each tongue slides freely in its groove.'), tolerance: TOLERANCES.mortise },
    cautions: [CAUTIONS.saw, CAUTIONS.drill],
    after: ground.unitsOf(part).map((copy) => before(idOf('ends', part.id, copy), 'The tongues are gauged from the sawn ends.')),
  });
}

/** What does the holding: 'button'. */
function holderOf(ground: Ground, fixing: Fixing): string {
  const made = fixing.with === undefined ? undefined : ground.part(fixing.with);
  return made?.name ?? fixing.name;
}

function holdersOf(ground: Ground, fixing: Fixing): string {
  const made = fixing.with === undefined ? undefined : ground.part(fixing.with);
  if (made !== undefined) return pluralOf(made);
  return fixing.count === 1 || fixing.name.endsWith('s') ? fixing.name : plural(fixing.name);
}

/** All fixings of one part in one step: it is laid face down once. */
export function fixTop(ground: Ground, held: Part, assemblies: readonly Assembly[]): Step {
  const fixings = ground.fixings.filter(({ holds }) => holds === held.id);
  const others = [...new Set(fixings.flatMap(({ to, with: by }) => [to, by ?? to]))].map(ground.part).filter((part) => part !== undefined);
  const frames = assemblies.filter(({ parts }) => fixings.some(({ to }) => parts.some(({ id }) => id === to)));
  const kinds = [...new Set(fixings.map((fixing) => holderOf(ground, fixing)))];
  const countOf = (kind: string): number => fixings.filter((fixing) => holderOf(ground, fixing) === kind).reduce((sum, { count }) => sum + count, 0);
  const holders = listed(kinds.map((kind) => counted(countOf(kind), kind)));
  return wholeStep({ id: held.id, title: `with ${listed(kinds.map((kind) => `${countOf(kind)} ${countOf(kind) === 1 ? kind : plural(kind)}`))}`, operation: `fix ${held.name}` }, [held, ...others].flatMap(coverOf), {
    operation: 'fix top',
    say: words(`Fix ${allOf(held)} with ${holders}, free to move across its grain.`),
    show: words(`Lay ${allOf(held)} face down on a blanket, centre the frame on it, and set ${holders}. Leave room where its width grows and shrinks; hold it fast only in the middle, or along one edge. Bore with a depth stop, and no tighter than by hand.`),
    sizes: fixings.flatMap(({ id }) => ground.sizesOf(id)),
    tools: ['tape', 'drill with depth stop', 'awl', 'screwdriver', 'blanket'],
    check: { say: words('It lies flat on the frame, the overhang is even, and nothing keeps its width from moving.'), tolerance: TOLERANCES.diagonals },
    cautions: [CAUTIONS.drill, CAUTIONS.lift],
    after: [
      ...frames.map(({ id }) => before(idOf('level', id), `${capital(allOf(held))} would follow a frame that is not level.`)),
      ...[held, ...others].flatMap((part) => shaped(ground, part, `Not all sides of ${allOf(part)} are true to size yet.`)),
      ...fixings.map(({ id, to }) => before(idOf('cut fixings', to, id), 'There is nothing yet for the fixings to hold in.')),
      ...others.filter(ground.inOneGo).map(({ id }) => before(idOf('cut fixings', id), 'The fixings are not shaped yet.')),
    ],
  });
}
