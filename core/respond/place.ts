import type { Bench } from '../bench/bench.ts';
import type { Response } from '../bench/reply.ts';
import { noPiece, refuse, write } from './plain.ts';
import { sayNumber } from '../length/sayNumber.ts';
import { sayList, sentence } from './saying.ts';

/** Says where a copy goes: 'leg three is front left'. One place holds one copy. */
export function placeCopy(bench: Bench, partId: string, copy: number, place: string): Response {
  const { state } = bench;
  if (!state.piece) return noPiece();
  const part = state.piece.file.parts.find(({ id }) => id === partId);
  if (!part) return refuse('This piece has no such part.');
  if (copy < 1 || copy > part.count) return refuse(`There is no ${part.name} ${sayNumber(copy)}: this piece has ${sayNumber(part.count)}.`);
  const places = part.places ?? [];
  if (!places.includes(place)) {
    return refuse(places.length > 0 ? `A ${part.name} goes ${sayList(places, 'or')}.` : `The piece file names no places for the ${part.name}.`);
  }
  const holder = [...state.places].find(([key, held]) => held === place && key.startsWith(`${partId}/`) && key !== `${partId}/${copy}`);
  if (holder) {
    const holding = Number(holder[0].slice(partId.length + 1));
    return refuse(sentence(`${place} is taken by ${part.name} ${sayNumber(holding)}. Give that one another place first`));
  }
  return write([{ kind: 'placed', part: partId, copy, place }], {
    say: sentence(`${part.name} ${sayNumber(copy)} is ${place}`), signal: 'done', screen: { name: 'part', part: partId, copy },
  });
}
