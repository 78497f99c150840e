import { assertNever } from '../result.ts';
import type { InTurnItem, Response } from '../bench/reply.ts';
import type { HistoryRequest } from '../bench/request.ts';
import type { State } from '../journal/state.ts';
import { linearTolerance, LINEAR_SOURCE } from '../layout/generalTolerance.ts';
import { absolute, subtract } from '../length/arithmetic.ts';
import { sayNumber } from '../length/sayNumber.ts';
import { describeSize } from '../piece/describe.ts';
import { sizeOf, type Sizes } from '../piece/evaluate.ts';
import { misfits } from '../piece/fits.ts';
import type { Measurement } from '../piece/measurement.ts';
import { pluralOf } from '../work/names.ts';
import { sayTolerance } from '../work/wording.ts';
import { sayDifference } from './consequences.ts';
import { tellAll } from './inTurn.ts';
import { noPiece, tell } from './plain.ts';
import { sayCount, saySubject, sentence, spoken } from './saying.ts';
import { sizesOf } from './views.ts';

type Asked = Extract<HistoryRequest, { kind: 'what was measured' }>;

/** What was measured, each against its plan; or only what is off by more than it may be. */
export function tellMeasured(state: State, { which, part, copy }: Asked): Response {
  const sizes = sizesOf(state);
  if (!sizes || !state.piece) return noPiece();
  const { piece, measurements } = state;
  const measured = part === undefined ? measurements : measurements.filter((one) => describeSize(piece, one.size)?.owner.id === part && (copy === undefined || one.copy === copy || one.copy === undefined));
  const last = measured.at(-1);
  if (last === undefined) return tell({ say: part === undefined ? 'Nothing has been measured yet.' : `Nothing has been measured of ${namesOfPart(state, part, copy)} yet.` });
  switch (which) {
    case 'last': return tell({ say: sayMeasured(state, sizes, last), lengths: [last.length] });
    case 'off': return tellOff(state, sizes, measured);
    case 'all': return tellAll({ say: sentence(measured.length === 1 ? 'one size is measured' : `${sayCount(measured.length, 'size', 'sizes')} are measured`) }, '', measured.map((one): InTurnItem => ({ say: sayMeasured(state, sizes, one), lengths: [one.length] })));
    default: return assertNever(which);
  }
}

function namesOfPart({ piece }: State, id: string, copy: number | undefined): string {
  const part = piece?.file.parts.find((one) => one.id === id);
  if (part === undefined) return id;
  return copy === undefined ? `the ${part.count === 1 ? part.name : pluralOf(part)}` : `${part.name} ${sayNumber(copy)}`;
}

function sayMeasured(state: State, sizes: Sizes, { size, copy, length }: Measurement): string {
  const planned = sizeOf(sizes, size, copy)?.planned;
  const difference = planned === undefined ? undefined : subtract(length, planned);
  const off = difference === undefined ? '' : difference === 0 ? ', as planned' : `, ${sayDifference(state, difference)} the plan`;
  return sentence(`${saySubject(state, size, copy)}, ${spoken(state, length)}${off}`);
}

/** By the general tolerances, fine where the size is critical; what does not go together at these sizes is counted besides, for that is another question. */
function tellOff(state: State, sizes: Sizes, measured: readonly Measurement[]): Response {
  const { piece, places, settings: { rounding: { unit } } } = state;
  const off = measured.flatMap((one): InTurnItem[] => {
    const planned = sizeOf(sizes, one.size, one.copy)?.planned;
    const critical = sizes.graph.nodes[sizes.graph.indexOf.get(one.size) ?? -1]?.critical ?? false;
    if (planned === undefined) return [];
    const tolerance = linearTolerance(planned, critical ? 'fine' : 'medium');
    return absolute(subtract(one.length, planned)) <= tolerance ? [] : [{ say: `${sayMeasured(state, sizes, one).slice(0, -1)}, where ${sayTolerance(tolerance, unit)} is usual.`, lengths: [one.length] }];
  });
  const faults = piece === null ? 0 : misfits(piece, state.measurements, places).length;
  const fits = faults === 0 ? '' : sentence(`${sayCount(faults, 'thing does', 'things do')} not go together as it stands; ask what does not fit`);
  const count = measured.length === 1 ? 'The one size measured is' : `All ${sayCount(measured.length, 'size', 'sizes')} measured are`;
  if (off.length === 0) return tell({ say: [`${count} within the general tolerances, ${LINEAR_SOURCE}.`, fits].filter(Boolean).join(' ') });
  const head = sentence(`of ${sayCount(measured.length, 'size', 'sizes')} measured, ${sayCount(off.length, 'is', 'are')} off by more than the general tolerances, ${LINEAR_SOURCE}`);
  return tellAll({ say: head, screen: { name: 'moved' } }, '', off, fits);
}
