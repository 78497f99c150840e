import { assertNever } from '../result.ts';
import type { Bench } from '../bench/bench.ts';
import type { Response } from '../bench/reply.ts';
import type { SizeRequest } from '../bench/request.ts';
import { subtract } from '../length/arithmetic.ts';
import type { State } from '../journal/state.ts';
import { describeSize } from '../piece/describe.ts';
import { sizeOf, type SizeValue } from '../piece/evaluate.ts';
import type { SizeName } from '../piece/measurement.ts';
import { pluralOf } from '../work/names.ts';
import { noPiece, refuse, tell } from './plain.ts';
import { sayCount, sayOwner, saySubject, sentence, spoken } from './saying.ts';
import { sayDifference, tellMisfits, tellMoved } from './consequences.ts';
import { sizesOf } from './views.ts';
import { tellParts, tellPieces, tellThePiece } from './thePiece.ts';
import { tellWhy } from './why.ts';
import { tellWood } from './whatWood.ts';

/** Looking up sizes: each is said with its part, its reference and its unit once. */
export function respondToSize(bench: Bench, request: SizeRequest): Response {
  const { state } = bench;
  if (!state.piece) return noPiece();
  switch (request.kind) {
    case 'size':
      return tellSize(state, request.size, request.copy);
    case 'sizes of part':
      return tellPart(state, request.part, request.copy);
    case 'why':
      return tellWhy(state, request.size, request.copy);
    case 'how many':
      return request.pieces === true ? tellPieces(state, request.part) : tellCount(state, request.part);
    case 'the piece':
      return request.what === 'parts' ? tellParts(state.piece.file) : tellThePiece(state, state.piece);
    case 'what wood':
      return tellWood(state.piece.file, request.part);
    case 'what moved':
      return tellMoved(state);
    case 'what no longer fits':
      return tellMisfits(state);
    default:
      return assertNever(request);
  }
}

function tellSize(state: State, size: SizeName, copy: number | undefined): Response {
  const sizes = sizesOf(state);
  const value = sizes && sizeOf(sizes, size, copy);
  if (!value) return refuse(`This piece has no size called ${size}.`);
  const screen = { name: 'size' as const, size, ...(copy === undefined ? {} : { copy }) };
  return tell({ say: sentence(saySize(state, size, copy, value)), screen, lengths: [value.length] });
}

/** 'long rail, shoulder to shoulder, thirty-one, and five eighths inches', and how it stands to the plan. */
function saySize(state: State, size: SizeName, copy: number | undefined, value: SizeValue): string {
  const from = state.piece && describeSize(state.piece, size)?.from;
  const subject = saySubject(state, size, copy);
  // A reference that the size's own name already says is not said twice.
  const reference = from && !subject.includes(from) ? `, ${from}` : '';
  const said = `${subject}${reference}, ${spoken(state, value.length)}`;
  switch (value.basis) {
    case 'planned':
      return said;
    case 'measured':
      return `${said}, as measured${offPlan(state, value)}`;
    case 'follows':
      return `${said}, after what was measured${offPlan(state, value)}`;
    default:
      return assertNever(value.basis);
  }
}

function offPlan(state: State, value: SizeValue): string {
  const difference = subtract(value.length, value.planned);
  return difference === 0 ? '' : `, ${sayDifference(state, difference)} the plan`;
}

function tellPart(state: State, partId: string, copy: number | undefined): Response {
  const part = state.piece?.file.parts.find(({ id }) => id === partId);
  const sizes = sizesOf(state);
  if (!part || !sizes) return refuse('This piece has no such part.');
  const said = Object.keys(part.sizes).flatMap((key) => {
    const name = `${partId}.${key}`;
    const value = sizeOf(sizes, name, copy);
    const label = state.piece && describeSize(state.piece, name)?.say;
    return value && label ? [{ text: `${label}, ${spoken(state, value.length)}`, length: value.length }] : [];
  });
  const head = copy === undefined ? sayCount(part.count, part.name, pluralOf(part)) : sayOwner(state, `${partId}.length`, copy);
  return tell({
    say: `${sentence(head)} ${said.map(({ text }) => sentence(text)).join(' ')}`,
    screen: { name: 'part', part: partId, ...(copy === undefined ? {} : { copy }) },
    lengths: said.map(({ length }) => length),
  });
}

function tellCount(state: State, partId: string): Response {
  const part = state.piece?.file.parts.find(({ id }) => id === partId);
  if (!part) return refuse('This piece has no such part.');
  return tell({ say: sentence(sayCount(part.count, part.name, pluralOf(part))), screen: { name: 'part', part: partId } });
}
