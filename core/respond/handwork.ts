import { assertNever } from '../result.ts';
import type { Bench } from '../bench/bench.ts';
import type { Response } from '../bench/reply.ts';
import type { HandworkRequest } from '../bench/request.ts';
import { facesLiked } from '../faces/likes.ts';
import type { State } from '../journal/state.ts';
import { sizeOf } from '../piece/evaluate.ts';
import type { Part } from '../piece/file.ts';
import { lastPart, stepNow } from '../talk/context.ts';
import { oneOf, pluralOf } from '../work/names.ts';
import { likesOf } from './facesState.ts';
import { noPiece, refuse, tell } from './plain.ts';
import { sayList, sentence, spoken } from './saying.ts';
import { askWhatWentWrong, tellTrouble } from './troubles.ts';
import { sizesOf } from './views.ts';

/** What is asked of the handwork: what to do about what went wrong, what is gauged from, what is eased. */
export function respondToHandwork(bench: Bench, request: HandworkRequest): Response {
  switch (request.kind) {
    case 'what goes wrong': return askWhatWentWrong(bench);
    case 'trouble': return tellTrouble(bench, request);
    case 'reference sides': return tellReferenceSides(bench, request);
    case 'easing': return tellEasing(bench, request.part);
    default: return assertNever(request);
  }
}

/** The part that was named, last spoken of, or is worked on. */
function partMeant(bench: Bench, named: string | undefined): Part | undefined {
  const parts = bench.state.piece?.file.parts ?? [];
  return [named, lastPart(bench)?.owner, stepNow(bench)?.part].map((id) => parts.find((part) => part.id === id)).find((part) => part !== undefined);
}

/** From which face and edge a part is gauged and squared; of one copy, which of its faces was told to be those. */
function tellReferenceSides(bench: Bench, { part: named, copy }: Extract<HandworkRequest, { kind: 'reference sides' }>): Response {
  const { state } = bench;
  if (!state.piece) return noPiece();
  const part = partMeant(bench, named);
  if (!part) return tell({ say: sentence(sayAlike(state.piece.file.parts, sidesOf)) });
  const sides = sidesOf(part);
  if (sides === undefined) return refuse(`The piece file names no reference face of the ${part.name}. Choose one, mark it, and gauge and square everything from it.`);
  const told = copy === undefined ? '' : toldOf(state, part, copy);
  const name = copy === undefined ? part.count === 1 ? `the ${part.name}` : pluralOf(part) : oneOf(part, copy);
  return tell({ say: [sentence(`${name}: ${sides}`), told, 'All is gauged and squared from these.'].filter(Boolean).join(' '), screen: { name: 'part', part: part.id, ...(copy === undefined ? {} : { copy }) } });
}

function sidesOf({ referenceFace: face, referenceEdge: edge }: Part): string | undefined {
  return face === undefined ? undefined : `the reference face is the ${face}${edge === undefined ? '' : `, the reference edge the ${edge}`}`;
}

function toldOf(state: State, { id }: Part, copy: number): string {
  const likes = likesOf(state, id, copy);
  const marked = (['face side', 'face edge'] as const).flatMap((mark) => facesLiked(likes, mark).map((face) => `the ${mark} is face ${face}`));
  return marked.length === 0 ? '' : sentence(`you told me that ${sayList(marked)}`);
}

/** How far the arrises of the part at hand are eased, else of every part. */
function tellEasing(bench: Bench, named: string | undefined): Response {
  const { state } = bench;
  const sizes = sizesOf(state);
  if (!state.piece || !sizes) return noPiece();
  const eased = ({ id }: Part): string | undefined => { const size = sizeOf(sizes, `${id}.easing`); return size && spoken(state, size.length); };
  const foot = ({ id }: Part): string => { const size = sizeOf(sizes, `${id}.footBevel`); return size ? `; the foot is bevelled ${spoken(state, size.length)} all round` : ''; };
  const part = partMeant(bench, named);
  const told = part ? eased(part) : sayAlike(state.piece.file.parts, eased);
  if (told === undefined || told === '') return refuse(part ? `The piece file does not say how far the ${part.name} is eased. A sixteenth is usual where hands come; more on a top.` : 'The piece file does not say how far anything is eased.');
  const much = part ? `${part.count === 1 ? `the ${part.name}` : pluralOf(part)}, every arris that shows: ${told}${foot(part)}` : `arrises are eased: ${told}`;
  return tell({ say: `${sentence(much)} Leave those at shoulders and mortises crisp.`, ...(part && sizeOf(sizes, `${part.id}.easing`) ? { screen: { name: 'size', size: `${part.id}.easing` } } : {}) });
}

/** 'legs and long rails, one sixteenth; top, one eighth': parts of which the same is told, together. */
function sayAlike(parts: readonly Part[], of: (part: Part) => string | undefined): string {
  const groups = new Map<string, string[]>();
  for (const part of parts) {
    const told = of(part);
    if (told !== undefined) groups.set(told, [...(groups.get(told) ?? []), part.count === 1 ? part.name : pluralOf(part)]);
  }
  return [...groups].map(([told, names]) => `${sayList(names)}, ${told}`).join('; ');
}
