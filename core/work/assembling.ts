import { sayNumber } from '../length/say.ts';
import type { Part } from '../piece/file.ts';
import type { Assembly, GlueUp } from './assembly.ts';
import { CAUTIONS, finishCautions, glueCautions } from './cautions.ts';
import { before, gate, idOf, oriented, partStep, sizeName, wholeStep } from './draft.ts';
import { glueTimes, recoatTime, TOLERANCES } from './figures.ts';
import { coverOf, type Ground } from './ground.ts';
import { holderOf } from './joinery.ts';
import { allOf, capital, counted, listed, numbered, oneOf, plural } from './names.ts';
import type { Before, Step } from './step.ts';
import { around, words } from './wording.ts';

/** All cuts and fits of the joints that a part has a share in: until they are done, its arrises are the reference. */
function jointsDone(ground: Ground, part: Part, because: string): readonly Before[] {
  return ground.jointsOf(part.id).flatMap((joint) => {
    if (joint.kind === 'fixing') {
      if (joint.with === part.id) return [before(idOf('cut fixings', part.id), because)];
      return joint.to === part.id ? [before(idOf('cut fixings', part.id, joint.id), because)] : [];
    }
    const tenoned = ground.part(joint.tenonOn);
    return (tenoned === undefined ? [] : ground.unitsOf(tenoned)).map((copy) => before(idOf('fit', joint.tenonOn, copy, joint.id), because));
  });
}

function shaped(ground: Ground, part: Part, because: string): readonly Before[] {
  return ground.unitsOf(part).map((copy) => before(idOf('ends', part.id, copy), because));
}

export function easeEdges(ground: Ground, part: Part): Step {
  const size = ground.size(sizeName(part, 'easing'));
  return partStep(part, undefined, {
    operation: 'ease edges',
    say: words(`Ease the arrises of ${allOf(part)}`, around(' by ', size), size === undefined ? ', just so that they do not cut.' : '.'),
    show: words(`Take the last shavings off the faces that show. Then ease the arrises of ${allOf(part)} with a few even strokes`, around(': ', size),
      '. Leave alone the arrises at shoulders and mortises, and any edge that meets another part.'),
    tools: ['smoothing plane', 'block plane', 'scraper', 'fine sandpaper on a block'],
    check: { say: words('Even to the thumb along every arris, and shoulders and mortises still crisp.'), tolerance: TOLERANCES.easing },
    cautions: [CAUTIONS.plane, CAUTIONS.dust],
    after: [
      ...shaped(ground, part, 'The ends are squared from the arrises.'),
      ...oriented(ground, part, 'Mark first which edges will show.'),
      ...jointsDone(ground, part, 'An eased edge is no reference: the joints are gauged and fitted from it.'),
    ],
  });
}

export function footBevel(ground: Ground, part: Part): Step {
  const size = ground.size(sizeName(part, 'footBevel'));
  return partStep(part, undefined, {
    operation: 'foot bevel',
    say: words(`Bevel the foot of ${part.count === 1 ? allOf(part) : `each of ${allOf(part)}`} all round`, around(', ', size), '.'),
    show: words(`Gauge round the bottom end of ${allOf(part)}`, around(': ', size), ' on the end and up the sides. Chisel or block plane to the lines, from the corners inwards. A bevelled foot does not split when the piece is dragged.'),
    tools: ['marking gauge', 'block plane', 'chisel'],
    check: { say: words('The bevels meet at the corners and leave a square flat foot.'), tolerance: TOLERANCES.easing },
    cautions: [CAUTIONS.chisel],
    after: [...shaped(ground, part, 'The bevel is gauged from the squared end.'), ...oriented(ground, part, 'Without its marks, the bevel may land on the top end.')],
  });
}

/** Everything of an assembly dry, before anything of it is glued. */
export function dryAssembly(ground: Ground, assembly: Assembly): Step {
  const { whole, joints } = assembly;
  const tenoned = assembly.parts.filter(({ id }) => joints.some(({ tenonOn }) => tenonOn === id));
  return wholeStep(whole, assembly.parts.flatMap(coverOf), {
    operation: 'dry assembly',
    say: words(`Put the whole ${whole.title} together dry, clamp it, and check it for square and wind.`),
    show: words('Put it all together without glue, each joint by its number, in the order of the glue-up. Bring the shoulders up with the clamps and cauls that you will use. Compare diagonals, sight across the legs or rails for wind, and find out now what has to be held or turned. Lay out clamps, cauls, brush and mallet as you take it apart.'),
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
    after: assembly.endFrames.map((frame) => before(idOf('scrape squeeze-out', frame.id), 'The end frames are not glued yet.')),
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
    show: words(`It takes ${last ? 'the end frames, and between them ' : ''}${contents(inIt, what)}. Start the open time with the first glue. Brush the mortise walls, a thin film on the cheeks, none on the end. Drive home, clamp across the shoulders, compare diagonals at once, and slant the clamps until they agree. Wipe or leave the squeeze-out, not half of each.`),
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
    tools: ['chisel', 'scraper', 'diagonal rods'],
    check: { say: words('No glue left in the corners, and the shoulders still closed.') },
    cautions: [CAUTIONS.scraper],
    timer: { kind: 'rest', name: `${what.name.replace(/^the /, '')} cure`, ...glueTimes(ground.file.adhesive).cure, starts: 'when done' },
    after: [before(glued, 'Nothing is glued yet.')],
    waits: [before(glued, `The clamps stay on ${what.name} until their time is up.`)],
  });
}

export function level({ whole, parts, stands }: Assembly): Step {
  const scraped = idOf('scrape squeeze-out', whole.id);
  return wholeStep(whole, parts.flatMap(coverOf), {
    operation: 'level',
    say: words(stands ? `Level the ${whole.title}: feet first, then the top edges.` : `Plane the joints of the ${whole.title} flush.`),
    show: words(stands
      ? 'Stand it on a surface known to be flat, winding sticks across. Wedge it until it stands still, scribe the long feet with a block, and saw or pare to the line. Then plane the top edges of rails and legs into one plane, inwards from the ends.'
      : 'Plane across each joint from the high side, round the corner with the grain, until the straightedge lies on both sides of it.'),
    tools: stands ? ['winding sticks', 'straightedge', 'wedges', 'scribing block', 'fine saw', 'block plane', 'jack plane'] : ['smoothing plane', 'straightedge', 'scraper'],
    check: { say: words(stands ? 'It does not rock, and the straightedge lies on all top edges.' : 'The fingertip feels no step at any joint.'), tolerance: TOLERANCES.rock },
    cautions: stands ? [CAUTIONS.lift, CAUTIONS.plane] : [CAUTIONS.plane],
    after: [before(scraped, 'The frame is not glued yet, or still in its clamps.')],
    waits: [before(scraped, 'The glue is still curing: do not rack or plane the frame yet.')],
  });
}

/** All fixings of one part in one step: it is laid face down once. */
export function fixTop(ground: Ground, held: Part, assemblies: readonly Assembly[]): Step {
  const fixings = ground.file.joints.filter((joint) => joint.kind === 'fixing' && joint.holds === held.id).filter((joint) => joint.kind === 'fixing');
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

/** One step a coat. Fixing the top may come before or after: the wood does not mind, as long as both faces of a panel get the same coats. */
export function finishCoats(ground: Ground, assemblies: readonly Assembly[]): readonly Step[] {
  const { file } = ground;
  const coats = Math.max(1, file.finish.coats);
  return Array.from({ length: coats }, (_, index) => {
    const coat = index + 1;
    const previous = idOf('finish', `coat.${coat - 1}`);
    return wholeStep({ id: `coat.${coat}`, title: coats === 1 ? 'one coat' : `coat ${coat} of ${coats}` }, file.parts.flatMap(coverOf), {
      operation: 'finish',
      say: words(coat === 1 ? `Put on the first coat of ${file.finish.kind}.` : `Rub down lightly, and put on coat ${sayNumber(coat)} of ${file.finish.kind}.`),
      show: words(`${coat === 1 ? 'Dust off, and look over every face in a low light for tear-out and glue.' : 'Cut back what stands up, and wipe the dust off.'} Thin and even, with the grain, and wipe off what the wood does not take if its label says so. Both faces of a panel alike, or it cups.`),
      tools: ['lint-free rags or a brush', 'low lamp', ...(coat === 1 ? [] : ['fine abrasive'])],
      check: { say: words('Even under a low light, no runs, no bare spots.') },
      cautions: finishCautions(file),
      ...(coat === coats ? {} : { timer: { kind: 'rest' as const, name: `coat ${sayNumber(coat)} dries`, ...recoatTime(file.finish.recoatHours), starts: 'when done' as const } }),
      after: coat === 1 ? readyToFinish(ground, assemblies) : [before(previous, 'The coat before it is not on yet.')],
      waits: coat === 1 ? [] : [before(previous, 'The coat before it is still drying.')],
    });
  });
}

function readyToFinish(ground: Ground, assemblies: readonly Assembly[]): readonly Before[] {
  return [
    ...ground.file.parts.map((part) => before(idOf('ease edges', part.id), 'Easing afterwards would cut through the finish.')),
    ...ground.file.parts.filter(({ footBevel }) => footBevel !== undefined).map((part) => before(idOf('foot bevel', part.id), 'Bevelling afterwards would cut through the finish.')),
    ...assemblies.map(({ id }) => before(idOf('level', id), 'Levelling afterwards would cut through the finish.')),
  ];
}
