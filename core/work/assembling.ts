import type { Part } from '../piece/file.ts';
import type { Assembly, GlueUp } from './assembly.ts';
import { CAUTIONS, glueCautions } from './cautions.ts';
import { before, gate, idOf, wholeStep } from './draft.ts';
import { glueTimes, TOLERANCES } from './figures.ts';
import { coverOf, type Ground } from './ground.ts';
import { allOf, capital, counted, listed, numbered, oneOf } from './names.ts';
import type { Step } from './step.ts';
import { words } from './wording.ts';

/** Everything of an assembly dry, before anything of it is glued. */
export function dryAssembly(ground: Ground, assembly: Assembly): Step {
  const { whole, joints } = assembly;
  const tenoned = assembly.parts.filter(({ id }) => joints.some(({ tenonOn }) => tenonOn === id));
  return wholeStep(whole, assembly.parts.flatMap(coverOf), {
    operation: 'dry assembly',
    say: words(`Put the whole ${whole.title} together dry, clamp it, and check it for square and wind.`),
    show: words('Put it all together without glue, each joint by its number, in the order of the glue-up. Bring the shoulders up with the clamps and cauls that you will use. Measure both diagonals and tell the bench: it says which way to pull, and how far. Sight across the legs or rails for wind, and find out now what has to be held or turned. Lay out clamps, cauls, brush and mallet as you take it apart.'),
    tools: ['clamps', 'cauls', 'mallet', 'diagonal rods', 'winding sticks', 'try square'],
    check: { say: words('Shoulders closed all round, diagonals equal, no wind.'), tolerance: TOLERANCES.diagonals },
    cautions: [CAUTIONS.clamps],
    after: tenoned.flatMap((part) => joints.filter(({ tenonOn }) => tenonOn === part.id).flatMap((joint) => ground.unitsOf(part)
      .map((copy) => before(idOf('fit', part.id, copy, joint.id), `${capital(oneOf(part, copy))} is not fitted yet.`)))),
  });
}

/** The glued end frames with the rest dry between them: the last rehearsal. */
export function dryAssemblyOfFrames(assembly: Assembly): Step {
  return wholeStep({ id: `${assembly.whole.id}.framed`, title: 'end frames and long rails' }, assembly.parts.flatMap(coverOf), {
    operation: 'dry assembly',
    say: words('Put the rest between the glued end frames, dry, and check it for square and wind.'),
    show: words('Once more without glue: what is glued now may have moved. Stand it on its feet on a flat floor or on end on the bench, clamp it, and compare the diagonals from above and on both long sides.'),
    tools: ['clamps', 'cauls', 'mallet', 'diagonal rods', 'winding sticks'],
    check: { say: words('Shoulders closed all round, diagonals equal, and all feet on the floor.'), tolerance: TOLERANCES.diagonals },
    cautions: [CAUTIONS.clamps, CAUTIONS.lift],
    after: assembly.endFrames.map(({ id }) => before(idOf('scrape squeeze-out', id), 'The end frames are not glued yet.')),
    waits: assembly.endFrames.map(({ id, name }) => before(idOf('glue-up', id), `The clamps stay on ${name} until their time is up.`)),
  });
}

export function glueUp(ground: Ground, assembly: Assembly, what: GlueUp): Step {
  const times = glueTimes(ground.file.adhesive);
  const clock = what.name.replace(/^the /, '');
  const last = what === assembly.whole && assembly.endFrames.length > 0;
  const inIt = assembly.parts.filter(({ id }) => what.covers.some(({ part }) => part === id));
  const rehearsed = last ? `${what.id}.framed` : assembly.whole.id;
  return wholeStep(what, what.covers, {
    operation: 'glue-up',
    say: words(`Glue and clamp ${what.name}: ${counted(what.tenons, 'tenon')} before the open time is out.`),
    show: words(`It takes ${last ? 'the end frames, and between them ' : ''}${contents(inIt, what)}. Start the open time with the first glue. Brush the mortise walls, a thin film on the cheeks, none on the end. Drive home, clamp across the shoulders, compare diagonals at once, tell the bench when they differ, and slant the clamps the way it says until they agree. Wipe or leave the squeeze-out, not half of each.`),
    tools: ['glue', 'small brush', 'clamps', 'cauls', 'mallet', 'diagonal rods', 'winding sticks', 'damp rag'],
    check: { say: words('Diagonals equal, no wind, and every shoulder closed.'), tolerance: TOLERANCES.diagonals },
    cautions: glueCautions(ground.file),
    timer: { kind: 'open time', name: `${clock} open time`, ...times.open, starts: 'when asked' },
    clampTimer: { kind: 'clamp', name: `${clock} clamps`, ...times.clamp, starts: 'when done' },
    after: [
      gate(idOf('dry assembly', rehearsed), 'Glue gives no time to find out what does not fit. Assemble it dry first.'),
      ...inIt.flatMap((part) => [
        before(idOf('ease edges', part.id), 'Inside arrises are hard to reach once it is glued.'),
        ...ground.jointsOf(part.id).filter((joint) => joint.kind === 'fixing' && joint.to === part.id)
          .map((joint) => before(idOf('cut fixings', part.id, joint.id), 'The slots cannot be gauged and cut well once it is glued.')),
      ]),
    ],
  });
}

/** 'two legs and one short rail'; for the last glue-up, what goes between the end frames. */
function contents(parts: readonly Part[], what: GlueUp): string {
  return listed(parts.filter(({ id }) => what.adds.some(({ part }) => part === id)).map((part) => numbered(part, what.adds.filter((cover) => cover.part === part.id).length)));
}

export function scrapeAssembly(ground: Ground, what: GlueUp): Step {
  const glued = idOf('glue-up', what.id);
  return wholeStep(what, what.covers, {
    operation: 'scrape squeeze-out',
    say: words(`Take the clamps off ${what.name}, and pare away the squeeze-out.`),
    show: words('Lift the beads out of the corners while they are like rubber. When the clamp time is up take the clamps off, check the diagonals once more, and scrape what is left before it goes hard.'),
    tools: ['chisel', 'card scraper', 'diagonal rods'],
    check: { say: words('No glue left in the corners, and the shoulders still closed.') },
    cautions: [CAUTIONS.scraper],
    timer: { kind: 'rest', name: `${what.name.replace(/^the /, '')} cure`, ...glueTimes(ground.file.adhesive).cure, starts: 'when done' },
    after: [before(glued, 'Nothing is glued yet.')],
    waits: [before(glued, `The clamps stay on ${what.name} until their time is up.`)],
  });
}

/** Horns have done their work once the glue is hard. */
function hornsOf(parts: readonly Part[]): string {
  const horned = parts.filter(({ sizes }) => 'horn' in sizes || 'lowerHorn' in sizes);
  return horned.length === 0 ? '' : ` Saw the horns off ${listed(horned.map(allOf))} first.`;
}

export function level({ whole, parts, stands }: Assembly): Step {
  const scraped = idOf('scrape squeeze-out', whole.id);
  return wholeStep(whole, parts.flatMap(coverOf), {
    operation: 'level',
    say: words(stands ? `Level the ${whole.title}: feet first, then the top edges.` : `Plane the joints of the ${whole.title} flush.`, hornsOf(parts)),
    show: words(stands
      ? 'Stand it on a surface known to be flat, winding sticks across. Wedge it until it stands still, scribe the long feet with a block, and saw or pare to the line. Then plane the top edges of rails and legs into one plane, inwards from the ends.'
      : 'Plane across each joint from the high side, round the corner with the grain, until the straightedge lies on both sides of it.'),
    tools: stands ? ['winding sticks', 'straightedge', 'wedges', 'scribing block', 'fine saw', 'block plane', 'jack plane'] : ['smoothing plane', 'straightedge', 'card scraper'],
    check: { say: words(stands ? 'It does not rock, and the straightedge lies on all top edges.' : 'The fingertip feels no step at any joint.'), tolerance: TOLERANCES.rock },
    cautions: stands ? [CAUTIONS.lift, CAUTIONS.plane] : [CAUTIONS.plane],
    after: [before(scraped, 'It is not glued yet, or still in its clamps.')],
    waits: [
      before(idOf('glue-up', whole.id), `The clamps stay on ${whole.name} until their time is up.`),
      before(scraped, 'The glue is still curing: do not rack or plane it yet.'),
    ],
  });
}
