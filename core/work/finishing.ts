import { sayNumber } from '../length/say.ts';
import type { PieceFile } from '../piece/file.ts';
import type { Assembly } from './assembly.ts';
import { finishCautions } from './cautions.ts';
import { before, idOf, wholeStep } from './draft.ts';
import { finishKindOf } from '../piece/finishKinds.ts';
import { recoatTime, type Duration } from './figures.ts';
import { coverOf, type Ground } from './ground.ts';
import type { Before, Step } from './step.ts';
import { words } from './wording.ts';

/** The clock until the next coat: 'coat two dries'. */
export function coatClockName(coat: number): string {
  return `coat ${sayNumber(coat)} dries`;
}

/** The clock after the last coat. */
export const CURE_CLOCK = 'the finish cures';

/** Until the last coat has hardened through; undefined for what never hardens. */
export function cureTime(kind: string): Duration | undefined {
  const { cureHours } = finishKindOf(kind);
  return cureHours === undefined ? undefined : { durationMs: cureHours * 3_600_000, basis: 'common practice; the label rules' };
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
      ...clockAfter(file, coat, coats),
      after: coat === 1 ? readyToFinish(ground, assemblies) : [before(previous, 'The coat before it is not on yet.')],
      waits: coat === 1 ? [] : [before(previous, 'The coat before it is still drying.')],
    });
  });
}

/** After a coat the time until the next one, after the last one the time until it has cured. */
function clockAfter({ finish }: PieceFile, coat: number, coats: number): Partial<Pick<Step, 'timer'>> {
  if (coat < coats) return { timer: { kind: 'rest', name: coatClockName(coat), ...recoatTime(finish.recoatHours), starts: 'when done' } };
  const cure = cureTime(finish.kind);
  return cure === undefined ? {} : { timer: { kind: 'rest', name: CURE_CLOCK, ...cure, starts: 'when done' } };
}

function readyToFinish(ground: Ground, assemblies: readonly Assembly[]): readonly Before[] {
  return [
    ...ground.file.parts.map((part) => before(idOf('ease edges', part.id), 'Easing afterwards would cut through the finish.')),
    ...ground.file.parts.filter(({ footBevel }) => footBevel !== undefined).map((part) => before(idOf('foot bevel', part.id), 'Bevelling afterwards would cut through the finish.')),
    ...assemblies.map(({ id }) => before(idOf('level', id), 'Levelling afterwards would cut through the finish.')),
  ];
}
