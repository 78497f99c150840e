import { assertNever } from '../result.ts';
import type { Response } from '../bench/reply.ts';
import type { State } from '../journal/state.ts';
import type { SizeName } from '../piece/measurement.ts';
import { explain, type WhyLink } from '../piece/why.ts';
import { noPiece, refuse, tell } from './plain.ts';
import { sayList, saySubject, sentence, spoken } from './saying.ts';

/** The first links are for the ear; the whole chain is on the screen. */
const MOST_SAID = 4;

/** Why a size is what it is: what it stands on, down to what was given or measured. */
export function tellWhy(state: State, size: SizeName, copy: number | undefined): Response {
  if (!state.piece) return noPiece();
  const chain = explain(state.piece, state.measurements, size, copy);
  if (chain.length === 0) return refuse(`This piece has no size called ${size}.`);
  const said = chain.slice(0, MOST_SAID).map((link) => sentence(sayLink(state, link)));
  const screen = { name: 'why' as const, size, ...(copy === undefined ? {} : { copy }) };
  return tell({ say: said.join(' '), screen, lengths: chain.slice(0, 1).map(({ value }) => value.length) });
}

function sayLink(state: State, link: WhyLink): string {
  // Without 'is', for 'the width is three inches' is what a maker says who measured it.
  const said = `${saySubject(state, link.size, link.copy)}, ${spoken(state, link.value.length)}`;
  const under = link.standsOn.map((mention) => saySubject(state, mention.size, mention.copy));
  switch (link.reason) {
    case 'given':
      return `${said}, as the piece file gives it`;
    case 'measured':
      return `${said}, as measured`;
    case 'largest made':
      return `${said}, the largest of those made`;
    case 'worked out':
      return `${said}, from ${sayList(under)}`;
    default:
      return assertNever(link.reason);
  }
}
