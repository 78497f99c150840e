import type { Bench } from '../../bench/bench.ts';
import { negate } from '../../length/arithmetic.ts';
import { lastPart, lastSize } from '../context.ts';
import { NANOMETRES_PER_INCH } from '../../length/length.ts';
import { namesOf, partNamed, type OwnerMention } from '../names.ts';
import { rowsOf } from '../pattern.ts';
import type { Built, SlotValues } from '../slot.ts';
import { sizeOfOwner } from '../subjects.ts';
import { whichDimension } from '../whichDimension.ts';
import { canonicalWords } from '../words.ts';

const row = rowsOf('recording');

/** So much more or less than it should be. */
function offBy(owner: OwnerMention, gap: SlotValues['gap'], { dimensions, sign }: SlotValues['off']): Built {
  const size = sizeOfOwner(owner, dimensions);
  return size ? { kind: 'record off', ...size.value, off: sign < 0 ? negate(gap) : gap } : { fault: `${owner.say} has no ${dimensions[0] ?? 'such size'}` };
}

/** A size that several joints share by its name ('the mortise') is not what was measured: it is that of one of them. */
function measured(owner: OwnerMention, { state: { piece } }: Bench, build: (owner: OwnerMention) => Built): Built {
  const joints = owner.owner.kind === 'parameter' ? (namesOf(piece).loose.get(canonicalWords(owner.say).join(' ')) ?? []).filter(({ owner: { kind } }) => kind === 'joint') : [];
  const choices = [...new Map(joints.map((one) => [one.owner.id, one])).values()].flatMap((one) => {
    const request = build(one);
    return request && 'kind' in request ? [{ say: one.say, request }] : [];
  });
  const [only, other] = choices;
  if (!only) return build(owner);
  return other ? { kind: 'which', choices } : only.request;
}

/** Writing down what was measured, and taking it back. */
export const RECORDING_ROWS = [
  row('record a size', ['record [the] {size} [is|as|at|of] {length}', '[the] {size} (is|measures|was) {length}', '(i|we) measured [the] {size} [as|at|is] {length}', 'measured [the] {size} [as|at|is] {length}', 'record {length} (for|as) [the] {size}'], ({ size, length }) => ({ kind: 'record', ...size, length })),
  row('record a size of a part', ['[record] [the] {owner} (is|measures|came out) {length} {adjective}', '[record] [the] {owner} is {adjective} {length}'], ({ owner, length, adjective }, bench) => measured(owner, bench, (one) => {
    const size = sizeOfOwner(one, adjective);
    return size ? { kind: 'record', ...size.value, length, ...(length < NANOMETRES_PER_INCH ? { orOver: true } : {}) } : { fault: `${one.say} has no ${adjective[0] ?? 'such size'}` };
  })),
  row('record how far off a size is', ['[the] {owner} (is|came out) {gap} {off}'], ({ owner, gap, off }, bench) => measured(owner, bench, (one) => offBy(one, gap, off))),
  // The copy first: 'leg two a sixteenth' is not two sixteenths of a leg.
  row('a copy that is off somehow', ['i (made|cut|planed) [the] {copy} {off}'], ({ copy: { part, copy }, off: { dimensions } }, { state: { piece } }) => {
    const owner = partNamed(piece, part);
    const size = owner && sizeOfOwner({ ...owner, copy }, dimensions);
    return size && { kind: 'off somehow', ...size.value };
  }),
  row('record how far off a copy was made', ['i (made|cut) [the] {copy} {gap} {off}'], ({ copy: { part, copy }, gap, off }, { state: { piece } }) => {
    const owner = partNamed(piece, part);
    return owner && offBy({ ...owner, copy }, gap, off);
  }),
  row('record how far off a part was made', ['i (made|cut) [the] {owner} {gap} {off}'], ({ owner, gap, off }, bench) => measured(owner, bench, (one) => offBy(one, gap, off))),
  row('a part that is off somehow', ['i (made|cut) [the] {owner} {off}', '[the] {owner} (is|came out) {off}'], ({ owner, off: { dimensions } }) => {
    const size = owner.owner.kind === 'part' ? sizeOfOwner(owner, dimensions) : undefined;
    return size && { kind: 'off somehow', ...size.value };
  }),
  row('how far off the last part is', ['it (is|came out) {gap} {off}', 'i (made|cut) it {gap} {off}'], ({ gap, off }, bench) => {
    const last = lastPart(bench);
    const owner = namesOf(bench.state.piece).owners.find(({ owner: { id, kind } }) => id === last?.owner && kind !== 'parameter');
    if (!owner) return { fault: 'of which part is missing; say it with its name', notNow: true };
    return offBy(last?.copy === undefined ? owner : { ...owner, copy: last.copy }, gap, off);
  }),
  row('record the size shown', ['record {length}', 'record it (is|as|at) {length}'], ({ length }, bench) => {
    const size = lastSize(bench);
    return size ? { kind: 'record', ...size, length } : { fault: 'what was measured is missing; say part, dimension and size', notNow: true };
  }),
  row('forget a measurement', ['forget [the] {size}', 'forget the (measurement|measure|size|record) of [the] {size}'], ({ size }) => ({ kind: 'withdraw measurement', ...size })),
  row('forget the last measurement', ['(forget|undo|delete) [that|the|the last] (measurement|measure|size)'], (_, bench) => {
    const size = bench.state.measurements.at(-1);
    return size ? { kind: 'withdraw measurement', size: size.size, ...(size.copy === undefined ? {} : { copy: size.copy }) } : { fault: 'nothing has been measured yet', notNow: true };
  }),
  row('ask to record a size', ['(record|measure) [the] {size}'], ({ size }) => ({ kind: 'show', screen: { name: 'record', ...size } })),
  row('record the last size', ['record (it|that|this)'], (_, bench) => {
    const size = lastSize(bench);
    return size ? { kind: 'show', screen: { name: 'record', ...size } } : { fault: 'no size was asked for yet; say which one', notNow: true };
  }),
  row('record a size, of which dimension is not clear', ['record [the] {owner} [is|as|at] {length}', '[the] {owner} (is|measures) {length}'], ({ owner, length }) => whichDimension(owner, (size) => ({ kind: 'record', ...size, length }))),
  row('ask to record, which dimension is not clear', ['(record|measure) [the] {owner}'], ({ owner }) => whichDimension(owner, (size) => ({ kind: 'show', screen: { name: 'record', ...size } }))),
  row('a note', ['note that {text}', 'note {text}', 'make a note that {text}', 'make a note {text}', 'write down that {text}', 'write down {text}'], ({ text }) => ({ kind: 'note', text })),
];
