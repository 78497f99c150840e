import type { Bench } from '../../bench/bench.ts';
import { lastPart, lastSize } from '../context.ts';
import { rowsOf } from '../pattern.ts';
import { namesOf } from '../names.ts';
import { describeSize } from '../../piece/describe.ts';
import type { Built, SlotValues } from '../slot.ts';
import { canonicalWords } from '../words.ts';

const row = rowsOf('follow-ups');

/** Half sentences that stand on what was said last: 'and the width?', 'leg two?'. */
export const FOLLOW_UP_ROWS = [
  row('another size of the same', ['(and|what about|how about|what is) [the] {dimension}', '{dimension}'], ({ dimension }, bench) => {
    const { piece } = bench.state;
    const last = lastPart(bench);
    const owner = last && namesOf(piece).owners.find(({ owner: { id, kind } }) => id === last.owner && kind !== 'parameter');
    const size = owner?.dimensions.get(dimension);
    if (!size) return { fault: 'a dimension needs its part' };
    return { kind: 'size', size: size.size, ...(last?.copy === undefined ? {} : { copy: last.copy }) };
  }),
  row('the same size of another', ['(and|what about|how about) [the] {owner}'], ({ owner }, bench) => ofAnother(owner, bench)),
  // By its name alone a part is asked for also when nothing was said before.
  row('the same size of another, or all of it', ['{owner}'], ({ owner }, bench) => ofAnother(owner, bench)),
];

function ofAnother(owner: SlotValues['owner'], bench: Bench): Built {
  const last = lastSize(bench);
  const description = last && bench.state.piece && describeSize(bench.state.piece, last.size);
  const size = description ? owner.dimensions.get(canonicalWords(description.say).join(' ')) : undefined;
  const copy = owner.copy === undefined ? {} : { copy: owner.copy };
  if (size) return { kind: 'size', size: size.size, ...copy };
  return owner.owner.kind === 'part' ? { kind: 'sizes of part', part: owner.owner.id, ...copy } : { fault: `of ${owner.say}, which size is not clear` };
}
