import type { Bench } from '../bench/bench.ts';
import type { Response } from '../bench/reply.ts';
import type { HandworkRequest, SideMeant } from '../bench/request.ts';
import type { Screen } from '../bench/screen.ts';
import { divideHalfAway } from '../length/arithmetic.ts';
import { nanometres, type Length } from '../length/length.ts';
import { describeSize } from '../piece/describe.ts';
import { sizeOf } from '../piece/evaluate.ts';
import type { MortiseAndTenon } from '../piece/file.ts';
import { stepNow } from '../talk/context.ts';
import { jointsAtHand } from '../talk/jointsAtHand.ts';
import { TOLERANCES } from '../work/figures.ts';
import { usualTroubles, type Trouble } from '../work/troubles.ts';
import { sayTolerance } from '../work/wording.ts';
import { noPiece, refuse, tell } from './plain.ts';
import { sayList, sentence, spoken } from './saying.ts';
import { toSay } from './toSay.ts';
import { sideMeant, sideToTrue } from './truingSide.ts';
import { REMEDIES } from './troubleWords.ts';
import { sizesOf } from './views.ts';

type Asked = Extract<HandworkRequest, { kind: 'trouble' }>;

/** Of a board: its side is read and planed. */
const OF_BOARDS: ReadonlySet<Trouble> = new Set(['cup', 'wind', 'bow', 'hump', 'hollow', 'high corners', 'edge out of square', 'not flat']);

/** Which of what usually goes wrong at the step at hand it is. */
export function askWhatWentWrong(bench: Bench): Response {
  if (!bench.state.piece) return noPiece();
  const step = stepNow(bench);
  const usual = step ? usualTroubles(step.operation) : [];
  if (usual.length === 0) return refuse('I know of nothing that usually goes wrong at this step.');
  return tell({ say: 'What went wrong?', question: { kind: 'which', choices: usual.map((about) => ({ say: about, request: { kind: 'trouble', about } })) } });
}

/** What the trade does about it, with the sizes of the plan that it goes by. Nothing is written down. */
export function tellTrouble(bench: Bench, { about, joint, of, gap }: Asked): Response {
  if (about === 'frame out of square') return frame(bench, gap);
  if (OF_BOARDS.has(about)) return board(bench, about, of ?? {});
  const found = (REMEDIES[about].figures ?? []).flatMap((key) => figureOf(bench, key, joint));
  const figures = found.length === 0 ? '' : sentence(`by the plan: ${sayList(found.map(({ label, length }) => `${label}, ${spoken(bench.state, length)}`), 'and')}`);
  const { say } = REMEDIES[about];
  return tell({
    say: [say, figures].filter(Boolean).join(' '), note: say, lengths: found.map(({ length }) => length),
    ...(found.length === 0 ? {} : { screen: { name: 'reckoning', result: { question: about, answers: found } } }),
  });
}

/** A size of the joint meant, or of all that may be meant when they agree. */
function figureOf(bench: Bench, key: string, joint: string | undefined): readonly { readonly label: string; readonly length: Length }[] {
  const { state, state: { piece } } = bench;
  const sizes = sizesOf(state);
  if (!piece || !sizes) return [];
  const near = joint === undefined ? jointsAtHand(bench) : [joint];
  const joints = piece.file.joints.filter((one): one is MortiseAndTenon => one.kind === 'mortise and tenon' && (near.length === 0 || near.includes(one.id)));
  const names = [...new Set(joints.map((one) => (key === 'shoulders' ? `${one.tenonOn}.shoulders` : `${one.id}.${key}`)))];
  const [length, ...more] = [...new Set(names.flatMap((name) => sizeOf(sizes, name)?.length ?? []))];
  const label = describeSize(piece, names[0] ?? '')?.say;
  return length === undefined || more.length > 0 || label === undefined ? [] : [{ label, length }];
}

function board({ state, ...bench }: Bench, about: Trouble, meant: SideMeant): Response {
  const side = sideMeant({ state, ...bench }, about === 'edge out of square' ? { ...meant, face: meant.face ?? 'edge' } : meant);
  const known = side.ok ? sideToTrue(state, side.value) : undefined;
  const { unit } = state.settings.rounding;
  const limit = known === undefined ? undefined : about === 'edge out of square' ? known.squareWithin : known.limit.limit;
  const enough = limit === undefined ? '' : `Within ${sayTolerance(limit, unit)} is enough.`;
  const isRead = known !== undefined && known.taken.length > 0;
  const then = isRead ? toSay('Ask what to plane, and I tell it from its readings.', 'Say: what do I plane.') : toSay('Have its readings taken, and I tell where and how much.', 'Say: take the readings.');
  // Drawn there is what was read; before that the words are wanted, and they stand below the step.
  const screen: Screen | undefined = side.ok && isRead ? { name: 'truing', of: side.value } : undefined;
  return tell({ say: [REMEDIES[about].say, enough, then].filter(Boolean).join(' '), ...(screen ? { screen } : {}) });
}

/** Of two diagonals that differ, the longer has to lose half of it. */
function frame({ state }: Bench, gap: Length | undefined): Response {
  const { say } = REMEDIES['frame out of square'];
  const half = gap === undefined ? undefined : nanometres(Number(divideHalfAway(BigInt(gap), 2n)));
  const much = gap === undefined || half === undefined ? '' : `If that is what they differ by, the longer has to lose about ${spoken(state, half)}.`;
  const words = [say, much, `Within ${sayTolerance(TOLERANCES.diagonals, state.settings.rounding.unit)} is right.`].filter(Boolean).join(' ');
  return tell({ say: words, note: `${words} Say: the diagonals are … and ….`, ...(half === undefined ? {} : { lengths: [half] }) });
}
