import type { Bench } from '../bench/bench.ts';
import type { Response } from '../bench/reply.ts';
import type { LayoutRequest } from '../bench/request.ts';
import type { State } from '../journal/state.ts';
import { contributorsOf, type Contributor } from '../layout/contributors.ts';
import { LINEAR_SOURCE } from '../layout/generalTolerance.ts';
import { stackOf, tightened, type Stack } from '../layout/stack.ts';
import type { Length } from '../length/length.ts';
import { sayNumber } from '../length/sayNumber.ts';
import { sayTolerance, writeTolerance } from '../work/wording.ts';
import { noPiece, refuse, tell } from './plain.ts';
import { sayList, saySubject, sentence } from './saying.ts';
import { sizesOf } from './views.ts';

type Asked = Extract<LayoutRequest, { kind: 'tolerance' }>;

/** More than these are neither said one by one nor shown: the ear would lose them, and the screen has no room. */
const MOST_SAID = 4;

/** How far off a size may come out, by the parts that make it; with a target, how true each of them must be. */
export function respondToTolerance(bench: Bench, request: Asked): Response {
  const { state } = bench;
  const sizes = sizesOf(state);
  if (!sizes) return noPiece();
  const { size, copy, target } = request;
  if (target !== undefined && target <= 0) return refuse('Nothing can be held to nothing. Say how far off it may be.');
  const contributors = contributorsOf(sizes, size, copy);
  if (!contributors.ok) return refuse(contributors.fault);
  const stack = stackOf(contributors.value);
  const subject = saySubject(state, size, copy);
  if (stack.worst === 0) return tell({ say: sentence(`${subject}: all that it stands on was measured, so nothing of it is open`), lengths: [stack.worst] });
  return target === undefined ? howFar(state, subject, contributors.value, stack) : howTrue(state, { subject, target }, contributors.value, stack);
}

function howFar(state: State, subject: string, contributors: readonly Contributor[], { worst, rootSumSquare, parts }: Stack): Response {
  const { unit } = state.settings.rounding;
  const largest = contributors[parts.indexOf(Math.max(...parts))];
  const alone = contributors.length === 1 && contributors[0]?.pieces === 1;
  const likely = alone ? '' : `; most likely within ${sayTolerance(rootSumSquare, unit)}`;
  const most = alone || !largest ? '' : ` Most of it comes from ${sayContributor(state, largest)}.`;
  return tell({
    say: `${sentence(`${subject}, at worst ${sayTolerance(worst, unit)} off, either way${likely}`)}${most}`,
    screen: { name: 'reckoning', result: {
      question: `± ${subject}`,
      answers: [{ label: `at worst: ${writeTolerance(worst, unit)}`, length: worst }, { label: `root sum square: ${writeTolerance(rootSumSquare, unit)}`, length: rootSumSquare }],
      note: `each by ${LINEAR_SOURCE}: fine where critical, else medium`,
    } },
    lengths: [worst, rootSumSquare],
  });
}

/** In proportion, and for the worst case: the other figure trusts to chance, and says so. */
function howTrue(state: State, { subject, target }: { readonly subject: string; readonly target: Length }, contributors: readonly Contributor[], { worst, rootSumSquare }: Stack): Response {
  const { unit } = state.settings.rounding;
  const open = contributors.flatMap((one) => {
    const sure = tightened(one.tolerance, worst, target);
    const likely = tightened(one.tolerance, rootSumSquare, target);
    return one.tolerance === 0 || sure === undefined || likely === undefined ? [] : [{ one, sure, likely }];
  });
  const said = open.slice(0, MOST_SAID).map(({ one, sure }) => `${sayContributor(state, one)} within ${sayTolerance(sure, unit)}`);
  const [first] = open;
  const chance = first && (open.length > 1 || first.one.pieces > 1) ? ` If they are off by chance, ${sayContributor(state, first.one)} within ${sayTolerance(first.likely, unit)}, and the others alike.` : '';
  const more = open.length > MOST_SAID ? `, and ${sayNumber(open.length - MOST_SAID)} more in proportion` : '';
  return tell({
    say: `${sentence(`to hold ${subject} to ${sayTolerance(target, unit)}: ${sayList(said)}${more}`)}${chance}`,
    screen: { name: 'reckoning', result: {
      question: `${subject}, to ${writeTolerance(target, unit)}`, answers: open.slice(0, MOST_SAID).map(({ one, sure }) => ({ label: `${sayContributor(state, one)} ± ${writeTolerance(sure, unit)}`, length: sure })),
      note: worst <= target ? `as usual it is enough: ${LINEAR_SOURCE}` : 'worst case, all off the same way',
    } },
    lengths: open.map(({ sure }) => sure),
  });
}

/** A tolerance stands in the label too, for the large figure is at the maker's rounding, and may round it away. 'leg, width, two of them,' */
function sayContributor(state: State, { size, copy, pieces }: Contributor): string {
  const subject = saySubject(state, size, copy);
  return pieces === 1 ? subject : `${subject}, ${sayNumber(pieces)} of them,`;
}
