import type { Part } from '../piece/file.ts';
import { CAUTIONS } from './cautions.ts';
import { before, idOf, partStep, present, sizeName, wholeStep } from './draft.ts';
import { REST, TOLERANCES } from './figures.ts';
import { coverOf, type Ground } from './ground.ts';
import { listed, pluralOf, stockOf } from './names.ts';
import type { Step, StepId } from './step.ts';
import { around, words } from './wording.ts';

/**
 * Rough work goes by part, not by copy: until they are faced, the blanks of a part are all one and are
 * sawn in a row with one setting of gauge and stop. They get their numbers as they come off the saw.
 */
export function roughSteps(ground: Ground, part: Part): readonly Step[] {
  return [roughCrosscut(ground, part), referenceEdge(part), rip(ground, part)];
}

function roughCrosscut(ground: Ground, part: Part): Step {
  const stock = stockOf(part);
  const length = ground.size(sizeName(part, 'roughLength'));
  return partStep(part, undefined, {
    operation: 'rough crosscut',
    say: ground.inOneGo(part)
      ? words(`Crosscut strips for ${stock.all}`, around(', ', length, ' for each'), '.')
      : words(`Crosscut ${stock.all}`, around(' to ', length), ' in the rough.'),
    show: words('Lay the parts out on the boards first, around knots, splits and short grain, and chalk each name',
      around('. The boards must be ', ground.size(sizeName(part, 'roughThickness')), ' thick or more'), `. Trim the checked end off, then crosscut ${stock.all}`, around(': ', length),
        ground.inOneGo(part) ? ' for each, in strips long enough to hold and plane. They come apart when their ends are sawn.' : '.'),
    sizes: present(ground.size(sizeName(part, 'length'))),
    tools: ['tape', 'chalk', 'try square', 'crosscut saw', 'saw horses'],
    check: { say: words('At the mark or over, whole and sound.'), tolerance: TOLERANCES.roughCut },
    cautions: [CAUTIONS.saw],
  }, { subject: stock.title });
}

function referenceEdge(part: Part): Step {
  const stock = stockOf(part);
  return partStep(part, undefined, {
    operation: 'reference edge',
    say: words(`Plane one edge straight on ${stock.count === 1 ? '' : 'each of '}${stock.all}, to rip from.`),
    show: words(`Sight along both edges of ${stock.all} and take the better one. Plane the hump away, then full length, until the straightedge does not rock. Mark it: the gauge or the rip line runs from here.`),
    tools: ['jack plane', 'jointer plane', 'straightedge', 'pencil'],
    check: { say: words('The straightedge does not rock and shows no hump.'), tolerance: TOLERANCES.edgeToRipFrom },
    cautions: [CAUTIONS.plane],
    after: [before(idOf('rough crosscut', part.id), 'A board planes straight sooner once it is cut to length.')],
  }, { subject: stock.title });
}

function rip(ground: Ground, part: Part): Step {
  const stock = stockOf(part);
  // The first ripping leaves what the second truing takes, where the piece says how much.
  const width = ground.size(sizeName(part, 'ripWidth')) ?? ground.size(sizeName(part, 'roughWidth'));
  return partStep(part, undefined, {
    operation: 'rip',
    say: words(`Rip ${stock.all}`, around(' to ', width), ' in the rough.'),
    show: words(`Gauge or chalk from the planed edge and rip ${stock.all}`, around(': ', width),
      '. Number each blank on its end as it comes off the saw. If the kerf closes on the saw, the board holds stress: wedge it, go on, and watch that one after the rest.'),
    sizes: present(ground.size(sizeName(part, part.made.kind === 'panel' ? 'boardWidth' : 'width'))),
    tools: ['panel gauge', 'rip saw', 'wedges', 'saw horses', 'pencil'],
    check: { say: words('Each is wide enough along its whole length, and numbered.'), tolerance: TOLERANCES.roughCut },
    cautions: [CAUTIONS.saw],
    after: [before(idOf('reference edge', part.id), 'The rip line is gauged from the planed edge.')],
  }, { subject: stock.title });
}

/** Parts that are made the same way rest in one stack, with one clock: one person needs one announcement, not one a part. */
export interface Lot {
  readonly kind: Part['made']['kind'];
  readonly parts: readonly Part[];
}

/** Laminated parts first: their glue must cure while the rails are made. Panels last: the top is needed last. */
export function lotsOf(parts: readonly Part[]): readonly Lot[] {
  const kinds = ['laminated', 'solid', 'panel'] as const;
  return kinds
    .map((kind) => ({ kind, parts: parts.filter((part) => part.made.kind === kind) }))
    .filter((lot) => lot.parts.length > 0);
}

/** A dot, so that no part's id can be taken for it. */
function restOf(lot: Pick<Lot, 'kind'>): StepId {
  return idOf('rest', `lot.${lot.kind}`);
}

const LOT_NAMES = { laminated: 'layers', solid: 'solid parts', panel: 'boards' } as const;

export function rest(ground: Ground, lot: Lot): Step {
  const [first, ...others] = lot.parts;
  const name = first !== undefined && others.length === 0 ? stockOf(first).title : LOT_NAMES[lot.kind];
  const all = listed(lot.parts.map((part) => (part.made.kind === 'solid' ? pluralNameOf(part) : stockOf(part).title)));
  return wholeStep({ id: `lot.${lot.kind}`, title: name }, lot.parts.flatMap(coverOf), {
    operation: 'rest',
    say: words(`Stack the ${name} on sticks, both faces open to the air, and let them rest.`),
    show: words(`Stack the ${all} on sticks, all faces open to the air, out of the sun. What stress bends shows at once; what moisture bends takes days. Sight along one or weigh it today and again later, and go by that more than by the clock.`),
    sizes: present(ground.size('allowance.afterRest')),
    tools: ['stickers', 'straightedge', 'winding sticks'],
    check: { say: words('Bow, cup and wind no longer change from one day to the next.') },
    timer: { kind: 'rest', name: `${name} rest`, ...REST, starts: 'when done' },
    after: lot.parts.map((part) => before(idOf('rip', part.id), 'They rest in one stack: rip them all first.')),
  });
}

function pluralNameOf(part: Part): string {
  return part.count === 1 ? part.name : pluralOf(part);
}

/** For the first step after a rest: facing. */
export function afterRest(part: Part): Pick<Step, 'after' | 'waits'> {
  const rested = restOf(part.made);
  return {
    after: [before(rested, 'Fresh sawn wood goes on moving: what is flat today would not be tomorrow.')],
    waits: [before(rested, 'The wood is still resting.')],
  };
}
