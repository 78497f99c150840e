import type { Response } from '../bench/reply.ts';
import type { State } from '../journal/state.ts';
import type { Length } from '../length/length.ts';
import { toBuy } from '../stock/buying.ts';
import { cutNoun } from '../stock/blanks.ts';
import { quarterName } from '../stock/rack.ts';
import { QUARTERS } from '../wood/lumber/quarters.ts';
import { allBlanks } from './cuttingState.ts';
import { tell } from './plain.ts';
import { sayThickness } from './sayBoards.ts';
import { sayList, sentence, spoken, written, type TellLength } from './saying.ts';

/** How thick the boards must be that the piece is cut from; of one thickness, what it is in inches and what is cut from it. */
export function tellThickness(state: State, asked: Length | undefined): Response {
  const uses = usesOf(state);
  const screen = { name: 'parts' } as const;
  if (asked === undefined) {
    const say = uses.map(({ thickness, parts }) => sentence(`${sayThickness(state, thickness)} for ${sayParts(parts)}`)).join(' ');
    return tell({ say, note: uses.map(({ thickness, parts }) => sentence(`${quarterName(thickness) ?? written(state, thickness)}: ${parts.join(', ')}`)).join(' '), screen });
  }
  const quarter = QUARTERS.find(({ rough }) => rough === asked);
  const use = uses.find(({ thickness }) => thickness === asked);
  const needed = use === undefined ? sentence(`this piece needs none: it is cut from ${sayList(uses.map(({ thickness }) => sayThickness(state, thickness)))}`) : sentence(`you need it for ${sayParts(use.parts)}`);
  const told = (put: TellLength) => {
    const planed = quarter === undefined ? '' : `, at least ${put(state, quarter.bothFaces)} once both faces are planed`;
    return [sentence(`${sayThickness(state, asked)} is ${put(state, asked)} in the rough${planed}`), needed].join(' ');
  };
  return tell({ say: told(spoken), note: told(written), screen });
}

function sayParts(parts: readonly string[]): string {
  return sayList(parts.map((part) => `the ${part}`));
}

/** Every thickness that is bought, with what is cut from it. */
function usesOf(state: State): readonly { readonly thickness: Length; readonly parts: readonly string[] }[] {
  const blanks = allBlanks(state);
  const lists = toBuy(blanks.map(({ id, count }) => ({ blank: id, count, why: 'no board left' as const })), blanks, state.sawing.grade);
  return byThickness(lists.flatMap(({ quarter, thickness, blanks: cut }) => cut.map((blank) => ({ thickness: quarter?.rough ?? thickness, part: cutNoun(state.piece?.file.parts ?? [], blank, blank.count) }))));
}

function byThickness(cut: readonly { readonly thickness: Length; readonly part: string }[]) {
  return [...new Set(cut.map(({ thickness }) => thickness))].map((thickness) => ({ thickness, parts: cut.filter((one) => one.thickness === thickness).map(({ part }) => part) }));
}
