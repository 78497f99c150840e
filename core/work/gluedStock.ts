import type { Part } from '../piece/file.ts';
import { CAUTIONS, glueCautions } from './cautions.ts';
import { before, gate, idOf, partStep } from './draft.ts';
import { glueTimes, TOLERANCES } from './figures.ts';
import type { Ground } from './ground.ts';
import { counted, oneOf, stockOf } from './names.ts';
import type { Operation, Step } from './step.ts';
import { piecesOf } from './truing.ts';
import { words } from './wording.ts';

/** What turns layers or boards into a blank, by kind of step, one step a copy in each. */
export interface GluedStockSteps {
  /** The mating edges of a panel's boards; a laminated part has none. */
  readonly edges: readonly Step[];
  readonly dryChecks: readonly Step[];
  readonly glueUps: readonly Step[];
  readonly scrapes: readonly Step[];
  readonly truings: readonly Step[];
}

export function gluedStockSteps(ground: Ground, part: Part): GluedStockSteps {
  const copies = ground.unitsOf(part);
  return {
    edges: part.made.kind === 'panel' ? copies.map((copy) => matingEdges(part, copy)) : [],
    dryChecks: copies.map((copy) => dryCheck(part, copy)),
    glueUps: copies.map((copy) => glueUp(ground, part, copy)),
    scrapes: copies.map((copy) => scrape(ground, part, copy)),
    truings: copies.map((copy) => trueAgain(part, copy)),
  };
}

function glueUpOf(part: Part): Operation {
  return part.made.kind === 'panel' ? 'panel glue-up' : 'lamination glue-up';
}

function matingEdges(part: Part, copy: number | undefined): Step {
  const { ofCopy } = stockOf(part);
  return partStep(part, copy, {
    operation: 'edge',
    say: words(`Joint the meeting edges of ${ofCopy(copy)}, two at a time.`),
    show: words(`Lay out ${ofCopy(copy)} for looks and grain and draw a triangle across them all. Fold each pair shut like a book, both face marks out, and plane the two edges together: what leans on one leans back on the other. Finish with a straight full-length shaving.`),
    tools: ['jointer plane', 'straightedge', 'try square', 'chalk'],
    check: { say: words('One board stands on the other without rocking, no light between, and the faces in one plane.'), tolerance: TOLERANCES.gluedGap },
    cautions: [CAUTIONS.plane],
    after: [before(idOf('face', part.id, copy), 'The edges are squared from the flat face.')],
  }, piecesOf(part));
}

function dryCheck(part: Part, copy: number | undefined): Step {
  const { ofCopy } = stockOf(part);
  const panel = part.made.kind === 'panel';
  return partStep(part, copy, {
    operation: 'dry check',
    say: words(`Clamp ${ofCopy(copy)} dry, and look for light at every joint.`),
    show: words(panel
      ? `Clamp ${ofCopy(copy)} without glue, clamps above and below by turns. The joints close with light pressure, the faces line up, the straightedge lies flat across. Number the joints. Lay out clamps, cauls, brush and glue as they will be needed.`
      : `Stack ${ofCopy(copy)} in their order, best faces out, grain of all running the same way, and clamp without glue. The joints close with light pressure; draw a triangle over the edges. Lay out clamps, cauls, brush and glue as they will be needed.`),
    tools: ['clamps', 'cauls', 'feeler gauge or thin paper', 'straightedge', 'pencil'],
    check: { say: words('No joint lets thin paper in, with the clamps no more than snug.'), tolerance: TOLERANCES.gluedGap },
    cautions: [CAUTIONS.clamps],
    after: [panel
      ? before(idOf('edge', part.id, copy), 'The meeting edges are not planed yet.')
      : before(idOf('face', part.id, copy), 'The mating faces are not planed yet.')],
  });
}

function glueUp(ground: Ground, part: Part, copy: number | undefined): Step {
  const { ofCopy } = stockOf(part);
  const times = glueTimes(ground.file.adhesive);
  const name = plainNameOf(part, copy);
  const panel = part.made.kind === 'panel';
  const joints = part.made.kind === 'laminated' ? part.made.layers - 1 : part.made.kind === 'panel' ? part.made.boards - 1 : 0;
  return partStep(part, copy, {
    operation: glueUpOf(part),
    say: words(`Glue and clamp ${ofCopy(copy)}.`),
    show: words(`Start the open time as the first glue goes on. Spread an even film on ${counted(joints, 'joint')}, ${panel ? 'edge' : 'face'} by ${panel ? 'edge' : 'face'}, in the order of the triangle. Clamp from the middle out, by turns, until a fine bead shows all along. ${panel ? 'Tap the boards level and check across with the straightedge.' : 'Line up the edges with light clamps across before the pressure comes on.'}`,
      joints > 3 ? ' If that is more than the open time allows, glue it in two halves first, and join them when those have cured.' : ''),
    tools: ['glue', 'brush or spreader', 'clamps', 'cauls', 'damp rag', ...(panel ? ['straightedge'] : [])],
    check: { say: words('A fine bead of glue all along every joint, and nothing has slid.'), ...(panel ? { tolerance: TOLERANCES.flat } : {}) },
    cautions: glueCautions(ground.file),
    timer: { kind: 'open time', name: `${name} open time`, ...times.open, starts: 'when asked' },
    clampTimer: { kind: 'clamp', name: `${name} clamps`, ...times.clamp, starts: 'when done' },
    after: [gate(idOf('dry check', part.id, copy), 'A gap that shows once the glue is on stays for good. Check it dry first.')],
  });
}

/** For the name of a clock: 'leg two', 'top'. */
function plainNameOf(part: Part, copy: number | undefined): string {
  return oneOf(part, copy).replace(/^the /, '');
}

function scrape(ground: Ground, part: Part, copy: number | undefined): Step {
  const { cure } = glueTimes(ground.file.adhesive);
  const name = oneOf(part, copy);
  const glued = idOf(glueUpOf(part), part.id, copy);
  return partStep(part, copy, {
    operation: 'scrape squeeze-out',
    say: words(`Take the clamps off ${name}, and scrape off the squeeze-out.`),
    show: words('Scrape the beads while they are still like rubber, where the clamps leave room. Take the clamps off when their time is up, scrape the rest, and stand the blank so that air reaches it from all sides while the glue cures.'),
    tools: ['card scraper', 'old chisel'],
    check: { say: words('The joint lines are clean enough not to nick a plane, and closed along their whole length.') },
    cautions: [CAUTIONS.scraper],
    timer: { kind: 'rest', name: `${plainNameOf(part, copy)} cure`, ...cure, starts: 'when done' },
    after: [before(glued, 'Nothing is glued yet.')],
    waits: [before(glued, `The clamps stay on ${name} until their time is up.`)],
  });
}

function trueAgain(part: Part, copy: number | undefined): Step {
  const name = oneOf(part, copy);
  const scraped = idOf('scrape squeeze-out', part.id, copy);
  const panel = part.made.kind === 'panel';
  return partStep(part, copy, {
    operation: 'true again',
    say: words(`True ${name} again: reference face flat, reference edge straight and square.`),
    show: words(panel
      ? `Plane the reference face of ${name} across the boards first, then along, until straightedge and winding sticks agree. Then joint its reference edge, square to that face. Put the marks on again.`
      : `Treat ${name} as a new blank. Flatten the reference face, then plane the reference edge straight and square to it, across all layers. Put the marks on again.`),
    tools: [...FLATTENING_AGAIN, ...(panel ? ['long straightedge'] : ['try square'])],
    check: { say: words('No wind, no hollow, and no light under the try square from face to edge.'), tolerance: panel ? TOLERANCES.flat : TOLERANCES.square },
    cautions: panel ? [CAUTIONS.plane, CAUTIONS.lift] : [CAUTIONS.plane],
    after: [before(scraped, 'The clamps must be off, and hard glue nicks the plane.')],
    waits: [
      before(idOf(glueUpOf(part), part.id, copy), `The clamps stay on ${name} until their time is up.`),
      before(scraped, `The glue in ${name} is still curing: a joint planed now sinks as it dries.`),
    ],
  });
}

const FLATTENING_AGAIN = ['jack plane', 'jointer plane', 'winding sticks', 'straightedge', 'pencil'];
