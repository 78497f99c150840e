import type { Part } from '../piece/file.ts';
import { assembliesOf, type Assembly } from './assembly.ts';
import { dryAssembly, dryAssemblyOfFrames, glueUp, level, scrapeAssembly } from './assembling.ts';
import { finishCoats } from './finishing.ts';
import { cutFixings, fixTop, shapeHolders } from './fixings.ts';
import { gluedStockSteps } from './gluedStock.ts';
import type { Ground } from './ground.ts';
import { chopMortises, fit, sawTenons } from './joinery.ts';
import { inLayoutOrder } from './layoutOrder.ts';
import { mortiseLayout, orientAndMark, tenonLayout } from './layout.ts';
import { lotsOf, rest, roughSteps } from './roughWork.ts';
import { easeEdges, footBevel } from './softening.ts';
import type { Operation, Step } from './step.ts';
import { edgeSteps, faceSteps, sizingSteps } from './truing.ts';

/**
 * All steps, in the order of the bench. One operation runs through all copies, so that a gauge is set once; waiting is filled with other work:
 *
 * 1. Everything is cut rough and rests, the wood of the laminated parts first.
 * 2. Laminations are faced and glued copy by copy (glue goes on the day the face is planed), each in clamps while the next is faced.
 * 3. The solid parts are trued while the laminations cure; then those are trued again.
 * 4. Joints: laid out, chopped, sawn, fitted.
 * 5. The top is faced and glued, and cures while the frame is eased, assembled and glued; it is trued while the frame is in clamps.
 * 6. Level, fix the top, finish.
 */
export function planWork(ground: Ground): readonly Step[] {
  const { parts } = ground.file;
  const assemblies = assembliesOf(ground);
  const isLate = (part: Part): boolean => ground.inOneGo(part) || (part.made.kind === 'panel' && !takesJoints(ground, part));
  const frame = parts.filter((part) => !isLate(part));
  const late = parts.filter(isLate);
  const glued = frame.filter(({ made }) => made.kind !== 'solid');

  return scrapesLater([
    ...lotsOf(parts).flatMap((lot) => [...byOperation(lot.parts.map((part) => roughSteps(ground, part))), rest(ground, lot)]),
    ...glued.flatMap((part) => gluing(ground, part)),
    ...frame.filter(({ made }) => made.kind === 'solid').flatMap((part) => truing(ground, part)),
    ...glued.flatMap((part) => truing(ground, part)),
    ...frame.map((part) => orientAndMark(ground, part)),
    ...joinery(ground),
    ...late.flatMap((part) => gluing(ground, part)),
    ...frame.flatMap((part) => softening(ground, part)),
    ...assembling(ground, assemblies, late.flatMap((part) => [
      ...truing(ground, part), ...(ground.inOneGo(part) ? [shapeHolders(ground, part)] : [orientAndMark(ground, part)]), ...softening(ground, part),
    ])),
    ...parts.filter(({ id }) => ground.fixings.some(({ holds }) => holds === id)).map((held) => fixTop(ground, held, assemblies)),
    ...finishCoats(ground, assemblies),
  ]);
}

/** All parts of a lot are crosscut, then all get their edge, then all are ripped. */
function byOperation(sequences: readonly (readonly Step[])[]): readonly Step[] {
  const longest = Math.max(0, ...sequences.map(({ length }) => length));
  return Array.from({ length: longest }, (_, index) => sequences.flatMap((sequence) => sequence[index] ?? [])).flat();
}

/** Boards and layers up to the scraped blank, copy by copy: planed and glued on the same day. Nothing for a solid part. */
function gluing(ground: Ground, part: Part): readonly Step[] {
  if (part.made.kind === 'solid') return [];
  const { edges, dryChecks, glueUps, scrapes } = gluedStockSteps(ground, part);
  const faces = faceSteps(ground, part);
  return faces.flatMap((face, copy) => [face, ...[edges, dryChecks, glueUps, scrapes].flatMap((steps) => steps[copy] ?? [])]);
}

/** From a blank to the finished size. */
function truing(ground: Ground, part: Part): readonly Step[] {
  const reference = part.made.kind === 'solid' ? [...faceSteps(ground, part), ...edgeSteps(ground, part)] : gluedStockSteps(ground, part).truings;
  return [...reference, ...sizingSteps(ground, part)];
}

/** Laid out in the order that takes the fewest settings of the gauges; then mortises are cut before any tenon, for a tenon can be pared to fit. */
function joinery(ground: Ground): readonly Step[] {
  const joints = ground.tenonJoints.flatMap((joint) => {
    const [mortised, tenoned] = [ground.part(joint.mortiseIn), ground.part(joint.tenonOn)];
    return mortised === undefined || tenoned === undefined ? [] : [{ joint, mortised, tenoned }];
  });
  const layouts = joints.flatMap(({ joint, mortised, tenoned }) => [mortiseLayout(ground, joint, mortised), tenonLayout(ground, joint, tenoned)]);
  const fixings = ground.fixings.flatMap((fixing) => {
    const to = ground.part(fixing.to);
    return to === undefined ? [] : [cutFixings(ground, fixing, to)];
  });
  const early = ({ part, joint }: Step): number => ground.layoutOrder(part ?? '', joint ?? '');
  return [
    ...inLayoutOrder(layouts, early),
    ...joints.flatMap(({ joint, mortised }) => chopMortises(ground, joint, mortised)),
    ...joints.flatMap(({ joint, tenoned }) => [...sawTenons(ground, joint, tenoned), ...fit(ground, joint, tenoned)]),
    ...inLayoutOrder(fixings, early),
  ];
}

/** A panel that has joints or grooves cut in it is wanted with the frame; a top that is only held comes last. */
function takesJoints(ground: Ground, part: Part): boolean {
  return ground.jointsOf(part.id).some((joint) => joint.kind === 'mortise and tenon' || joint.to === part.id);
}

function softening(ground: Ground, part: Part): readonly Step[] {
  return [easeEdges(ground, part), ...(part.footBevel === undefined ? [] : [footBevel(ground, part)])];
}

/** Dry, then glued, end frames first; `meanwhile` is the work that fills the time in clamps, shared out among the glue-ups. */
function assembling(ground: Ground, assemblies: readonly Assembly[], meanwhile: readonly Step[]): readonly Step[] {
  const sequences = assemblies.map((assembly) => {
    const glueAndScrape = [...assembly.endFrames, assembly.whole].map((what) => [glueUp(ground, assembly, what), scrapeAssembly(ground, what)]);
    const last = glueAndScrape.pop() ?? [];
    const rehearsal = assembly.endFrames.length > 0 ? [dryAssemblyOfFrames(assembly)] : [];
    return [[dryAssembly(ground, assembly)], ...glueAndScrape, [...rehearsal, ...last]];
  });
  const glueUps = sequences.flatMap((sequence) => sequence.slice(1)).length;
  const share = Math.ceil(meanwhile.length / Math.max(1, glueUps));
  let filled = 0;
  const filler = (): readonly Step[] => meanwhile.slice(filled, filled += share);
  return [
    ...sequences.flatMap(([dry = [], ...glued]) => [...dry, ...glued.flatMap((steps) => [...steps, ...filler()])]),
    ...filler(),
    ...assemblies.map(level),
  ];
}

const TAKES_NO_FILLING: ReadonlySet<Operation> = new Set(['dry check', 'lamination glue-up', 'panel glue-up', 'scrape squeeze-out', 'dry assembly', 'glue-up']);

/** Glue needs its time in clamps: a scraping changes places with the step after it, where that is other work that does not need it. */
function scrapesLater(steps: readonly Step[]): readonly Step[] {
  const ordered: Step[] = [];
  let waiting: Step | undefined;
  for (const step of steps) {
    if (step.operation === 'scrape squeeze-out') {
      waiting = step;
      continue;
    }
    const after = waiting !== undefined && !TAKES_NO_FILLING.has(step.operation) && step.after.every(({ step: id }) => id !== waiting?.id);
    if (waiting === undefined) ordered.push(step);
    else ordered.push(...(after ? [step, waiting] : [waiting, step]));
    waiting = undefined;
  }
  return waiting === undefined ? ordered : [...ordered, waiting];
}
