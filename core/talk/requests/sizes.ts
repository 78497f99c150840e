import type { Bench } from '../../bench/bench.ts';
import type { Request } from '../../bench/request.ts';
import type { SizeMention } from '../../work/step.ts';
import { lastPart, lastSize, stepNow } from '../context.ts';
import { namesOf } from '../names.ts';
import { rowsOf } from '../pattern.ts';
import type { Built, SlotValues } from '../slot.ts';
import { sawnTo } from '../sawnTo.ts';
import { NO_PIECE, sizeOfOwner } from '../subjects.ts';
import { whichDimension } from '../whichDimension.ts';

const row = rowsOf('sizes');

/** Asking for sizes, and for the reasons behind them. */
export const SIZE_ROWS = [
  // In the rough it is sawn to another size than it has when it is finished.
  row('a size to saw to', ['how {adjective} do i (cut|saw|rip|crosscut) [the] {owner}'], ({ adjective, owner }, bench) => sawnTo(owner, adjective, bench) ?? withSize(owner, adjective, inUnit(undefined, bench))),
  row('a size', ['how [many {unit?}] {adjective} (is|are) [the] [finished] {owner}', 'how {adjective} (should|must) [the] {owner} be', 'how {adjective} do i (make|plane) [the] {owner}'],
    ({ adjective, owner, unit }, bench) => withSize(owner, adjective, inUnit(unit, bench))),
  row('the whole piece', ['how (big|long|wide|deep) (is|should) [the] {whole} [be]', '[what is] the overall size [of [the] {whole?}]', 'what (are we|am i) (building|making)', 'tell me about [the] {whole}', 'what is this {whole}', '(size|sizes|dimensions|measurements) of [the] {whole}'], () => ({ kind: 'the piece', what: 'sizes' })),
  row('how big what was spoken of is', ['how big is it'], (_, bench) => { const { part } = partOf(bench); return part === undefined ? { kind: 'the piece', what: 'sizes' } : { kind: 'sizes of part', part }; }),
  row('all parts of the piece', ['how many parts [are there|do i (need|make)|does it have]', 'what parts (are there|do i (need|make)|does it have)', 'what do i (make|need to make)', '(what are|list) the parts'], () => ({ kind: 'the piece', what: 'parts' })),
  row('what a part is glued up from', ['how many {pieces} [are there|do i (need|make|cut)]', 'how many (layers|boards) (per|in|for|to|make) [the|a|each|one] {parts}', 'how many (layers|boards) (does|do) [the|a|each] {parts} (have|need|take)'],
    ({ pieces, parts }) => { const part = pieces?.part ?? parts?.part; return part === undefined ? undefined : { kind: 'how many', part, pieces: true }; }),
  row('a size of what is at hand', ['how {adjective} is it [now]', 'how {adjective} (should|must) it be'], ({ adjective }, bench) => ofWhatIsAtHand(adjective, bench)),
  row('how far apart the copies of a part stand', ['how far apart are [the] {parts}', '[what is] the distance between [the] {parts}'], ({ parts: { part } }, bench) => betweenCopies(part, bench)),
  row('a size of a part, of which dimension is not clear', ['how many {unit} (is|are) [the] {owner}'], ({ owner, unit }, bench) => whichDimension(owner, inUnit(unit, bench))),
  row('a size of a part, by its noun', ['what {dimension} is [the] {owner}'], ({ dimension, owner }) => withSize(owner, [dimension], (size) => ({ kind: 'size', ...size }))),
  row('how far apart the shoulders are', ['how far apart are the shoulders (of|on) [the] {owner}', '[what is] the distance between the shoulders (of|on) [the] {owner}'], ({ owner }) => withSize(owner, ['shoulder to shoulder'], (size) => ({ kind: 'size', ...size }))),
  row('how far apart the shoulders at hand are', ['how far apart are the shoulders', '[what is] [the] shoulder to shoulder', '[what is] the distance between the shoulders'], (_, bench) => shouldersAtHand(bench)),
  row('how far a top stands over', ['how (far|much) does [the] {parts} (overhang|stand over|hang over)', '[what is] [the] overhang of [the] {parts}'], ({ parts: { part } }, bench) => overhangOf(part, bench)),
  row('a size by its name', ['what is [the] {size}', '{size}', 'how (long|big|much) (is|are) [the] {size}', '(tell|give) me [the] {size}', 'say [the] {size}', 'show [me] [the] {size}'], ({ size }) => ({ kind: 'size', ...size })),
  row('the wood of a part', ['(what|which) [kind of] wood (is|are) [the] {parts}', 'what (is|are) [the] {parts} made (of|from)'], ({ parts: { part } }) => ({ kind: 'what wood', part })),
  row('the wood', ['(what|which) [kind of] (wood|woods) [is (it|this|that)|are they|(do|must) i (need|use)]', 'what is (it|this|[the] {whole?}) made of'], (_, bench) => ({ kind: 'what wood', ...partOf(bench) })),
  row('all sizes of a part', ['how big (is|are) [the] {part}', '[what (is|are)|(tell|give) me] [the] (size|sizes|dimensions|measurements) of [the] {part}', '{part} sizes', 'what size (is|are) [the] {part}', 'what does [the] {part} measure', 'tell me about [the] {part}', 'show [me] [the] {part}'],
    ({ part }) => ({ kind: 'sizes of part', ...part })),
  row('why a size is what it is', ['why (is|are) [the] {owner} [so|that] {adjective}'], ({ owner, adjective }) => withSize(owner, adjective, (size) => ({ kind: 'why', ...size }))),
  row('why a size is what it is', ['why [is] [the] {size}', 'why is [the] {size} what it is', 'where does [the] {size} come from'], ({ size }) => ({ kind: 'why', ...size })),
  row('why the last size is what it is', ['why [is that]', 'where does (that|it) come from', 'how come', 'why so (long|wide|thick|deep|high)'], (_, bench) => {
    const size = lastSize(bench);
    return size ? { kind: 'why', ...size } : { fault: 'no size was asked for yet; say which one', notNow: true };
  }),
  row('how many of a part', ['how many {parts} [are there|do i (need|make|cut)]', 'count [the] {parts}'], ({ parts: { part } }) => ({ kind: 'how many', part })),
  row('how many of the same', ['how many of (these|them)', 'how many do i (need|make|cut)'], (_, bench) => {
    const { part = stepNow(bench)?.part } = partOf(bench);
    return part === undefined ? { fault: 'of which part is missing', notNow: true } : { kind: 'how many', part };
  }),
  row('what moved', ['what [has|have] (moved|changed)', 'what does (that|it) change', 'what is different', 'what follows'], () => ({ kind: 'what moved' })),
  row('what no longer fits', ['what no longer fits', 'what does not fit [any (more|longer)]', 'what fits no (more|longer)', 'does (it|that) matter', 'does (it|everything) [all|still] fit', 'will it [all|still] fit', 'what is wrong'], () => ({ kind: 'what no longer fits' })),
];

/** The size said as usual, or in the other unit when that was named. */
function inUnit(unit: SlotValues['unit'] | undefined, { state: { settings: { rounding } } }: Bench): (size: SizeMention) => Request {
  return (size) => (unit === undefined || unit === rounding.unit ? { kind: 'size', ...size } : { kind: 'in other unit', of: size, unit });
}

/** The part that was last spoken of. */
function partOf(bench: Bench): { readonly part?: string } {
  const last = lastPart(bench);
  return bench.state.piece?.file.parts.some(({ id }) => id === last?.owner) === true && last !== undefined ? { part: last.owner } : {};
}

/** The size of the owner that an adjective asks for. */
function withSize(owner: SlotValues['owner'], adjective: SlotValues['adjective'], build: (size: SlotValues['size']) => Built): Built {
  const size = sizeOfOwner(owner, adjective);
  return size ? build(size.value) : { fault: `${owner.say} has no ${adjective[0] ?? 'such size'}` };
}

/** Between the shoulders of the part last spoken of, or of the step; else it is asked of which. */
function shouldersAtHand(bench: Bench): Built {
  const { piece } = bench.state;
  const parts = namesOf(piece).owners.flatMap((owner) => {
    const size = owner.owner.kind === 'part' ? sizeOfOwner(owner, ['shoulder to shoulder']) : undefined;
    return size ? [{ part: owner.owner.id, say: owner.say, request: { kind: 'size', ...size.value } as const }] : [];
  });
  const near = [lastPart(bench)?.owner, stepNow(bench)?.part].flatMap((at) => parts.filter(({ part }) => part === at));
  return oneOf(near.length > 0 ? near.slice(0, 1) : parts, piece ? 'nothing in this piece has shoulders' : NO_PIECE);
}

/** Of the part last spoken of; else the sizes of the step tell it. What is deep is a mortise. */
function ofWhatIsAtHand(adjective: SlotValues['adjective'], bench: Bench): Request {
  if (adjective.includes('depth')) return { kind: 'how deep' };
  const last = lastPart(bench);
  const owner = namesOf(bench.state.piece).owners.find(({ owner: { id, kind } }) => id === last?.owner && kind !== 'parameter');
  const size = owner && sizeOfOwner(last?.copy === undefined ? owner : { ...owner, copy: last.copy }, adjective);
  return size ? { kind: 'size', ...size.value } : { kind: 'tell the step', what: 'sizes' };
}

/** What the piece measures from one copy to the other: 'leg to leg along the front'. */
function betweenCopies(part: string, { state: { piece } }: Bench): Built {
  const name = piece?.file.parts.find(({ id }) => id === part)?.name ?? part;
  const found = Object.entries(piece?.file.parameters ?? {}).flatMap(([id, parameter]) => {
    const from = typeof parameter === 'string' ? undefined : parameter.from;
    return from?.startsWith(`${name} to ${name}`) === true ? [{ say: from, request: { kind: 'size', size: id } as const }] : [];
  });
  return oneOf(found, `this piece tells of no size from ${name} to ${name}`);
}

/** The overhangs that the sizes of a part are reckoned from. */
function overhangOf(part: string, { state: { piece } }: Bench): Built {
  const sizes = JSON.stringify(piece?.file.parts.find(({ id }) => id === part)?.sizes ?? {});
  const overhangs = namesOf(piece).owners.flatMap((owner) => {
    const size = owner.owner.kind === 'parameter' && owner.say.startsWith('overhang') ? sizeOfOwner(owner, ['']) : undefined;
    return size && sizes.includes(size.value.size) ? [{ say: owner.say, request: { kind: 'size', ...size.value } as const }] : [];
  });
  return oneOf(overhangs, 'this piece tells of no overhang of that part');
}

/** The only one there is, or the question which. */
function oneOf(choices: readonly { readonly say: string; readonly request: Request }[], none: string): Built {
  const [only, other] = choices;
  if (!only) return { fault: none };
  return other ? { kind: 'which', choices: choices.map(({ say, request }) => ({ say, request })) } : only.request;
}
