import type { Response } from '../bench/reply.ts';
import { byTheBook } from '../joint/byTheBook.ts';
import type { Proportion } from '../joint/proportion.ts';
import type { Length } from '../length/length.ts';
import type { MortiseAndTenon } from '../piece/file.ts';
import { renderTelling } from '../reckoning/telling.ts';
import type { Jointing } from './jointing.ts';
import { refuse, tell } from './plain.ts';
import { sayList, sentence, spoken, written } from './saying.ts';

/** What the books make of a joint in this wood with these chisels, their range where they disagree, and where the piece file differs. */
export function tellByTheBook({ state, piece, sizes }: Jointing, joint: MortiseAndTenon): Response {
  const say = (length: Length): string => spoken(state, length);
  const found = byTheBook(piece, sizes, joint);
  if (!found.ok) return refuse(renderTelling(found.fault.message, say));
  const { chisel, share, sizes: follow, proportions, warnings: warned, differs } = found.value;
  const last = follow.at(-1);
  const told = [
    sentence(`${joint.name}, by the book: ${say(chisel)} thick, from the chisel nearest to ${share}; ${follow.map(({ of, length }) => `${of} ${say(length)}`).join('; ')}${last?.of === 'longest tenon' ? ', where it meets no other' : ''}`),
    ...proportions.filter(worthSaying).map((proportion) => sentence(sayRange(proportion, say))),
    differs.length === 0 ? 'Your plan agrees.' : sentence(`your plan has ${sayList(differs.map(({ of, planned }) => `${of} ${say(planned)}`))}`),
  ];
  const answers = proportions.length > 0 ? proportions.map(({ of, chosen }) => ({ label: of, length: chosen })) : follow.map(({ of, length }) => ({ label: of, length }));
  const warnings = warned.map((warning) => renderTelling(warning, (length) => written(state, length)));
  const sources = [...new Set(proportions.flatMap(({ published }) => published.map(({ source }) => source.split(/[:,]/)[0] ?? source)))];
  return tell({
    say: told.join(' '), lengths: answers.map(({ length }) => length),
    screen: { name: 'reckoning', result: { question: `${joint.name} by the book`, answers, note: [`By ${sayList(sources.length > 0 ? sources : [share === 'a fifth' ? 'Fairham and common practice' : 'Noyes and common practice'])}.`, ...warnings.slice(0, 1)].join(' ') } },
  });
}

/** Only the thickness is worth the ear: the rest is on the screen and in the reckoning. */
function worthSaying({ of, published }: Proportion): boolean {
  return of === 'tenon thickness' && new Set(published.map(({ says }) => says)).size > 1;
}

function sayRange({ of, published }: Proportion, say: (length: Length) => string): string {
  const says = published.map((one) => one.says).sort((one, other) => one - other);
  const [least, most] = [says[0], says.at(-1)];
  return least === undefined || most === undefined ? '' : `${of} is published from ${say(least)} to ${say(most)}`;
}
