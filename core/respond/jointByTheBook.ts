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
  const { plan, differs } = found.value;
  const told = [
    sentence(`${joint.name}, by the book: ${say(plan.chisel)} thick, from the chisel nearest to a third; shoulders ${say(plan.topShoulder)} above and ${say(plan.bottomShoulder)} below; at the longest, where it meets no other, ${say(plan.longest)}`),
    ...plan.proportions.filter(worthSaying).map((proportion) => sentence(sayRange(proportion, say))),
    differs.length === 0 ? 'Your plan agrees.' : sentence(`your plan has ${sayList(differs.map(({ of, planned }) => `${of} ${say(planned)}`))}`),
  ];
  const answers = plan.proportions.map(({ of, chosen }) => ({ label: of, length: chosen }));
  const warnings = plan.warnings.map((warning) => renderTelling(warning, (length) => written(state, length)));
  const sources = [...new Set(plan.proportions.flatMap(({ published }) => published.map(({ source }) => source.split(/[:,]/)[0] ?? source)))];
  return tell({
    say: told.join(' '), lengths: answers.map(({ length }) => length),
    screen: { name: 'reckoning', result: { question: `${joint.name} by the book`, answers, note: [`By ${sayList(sources)}.`, ...warnings.slice(0, 1)].join(' ') } },
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
