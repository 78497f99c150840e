import { canonicalJson } from '../journal/canonical.ts';
import type { Entry } from '../journal/entry.ts';
import { joinProgress, NO_PROGRESS, placeKey } from '../journal/progress.ts';
import type { Progress, State } from '../journal/state.ts';
import { sayNumber } from '../length/sayNumber.ts';
import type { FiledTold, PieceFile } from '../piece/file.ts';
import type { PartRough } from '../stock/rough.ts';
import { levelsOf, likesFiled, likingsOf, roughOf } from './filedTold.ts';
import { sayList, sentence } from './saying.ts';

export interface BroughtTold {
  readonly entries: readonly Entry[];
  readonly say: string;
}

/** What becomes of one item of the file: what is to be written down, and whether the bench has it otherwise. */
interface Told {
  readonly entries: readonly Entry[];
  readonly otherwise: boolean;
}

/** More names than these are on the screens, not in the ear. */
const MOST_NAMED = 4;

/**
 * What a piece file tells of its parts, as entries behind the loading: only what the bench was never told of that part, copy or board, so that nothing
 * doubles; what was told otherwise at the bench stays, and that is said.
 */
export function bringTold(state: State, file: PieceFile): BroughtTold {
  const before = progressOf(state, file.name);
  const rough = state.rough.get(file.name) ?? new Map<string, PartRough>();
  const items = (file.told ?? []).map((told) => ({ told, ...bringOne(told, before, rough) }));
  const fresh = items.filter(({ entries }) => entries.length > 0).map(({ told }) => nameOf(told, file));
  const kept = items.filter(({ otherwise }) => otherwise).map(({ told }) => nameOf(told, file));
  return {
    entries: items.flatMap(({ entries }) => entries),
    say: [
      fresh.length === 0 ? '' : sentence(`what was told of ${sayNames(fresh)} comes with it`),
      kept.length === 0 ? '' : sentence(`of ${sayNames(kept)} something else was told here: that stays`),
    ].filter(Boolean).join(' '),
  };
}

function progressOf(state: State, name: string): Progress {
  return state.pieceName === name ? joinProgress(state, state.hidden) : state.shelf.get(name) ?? NO_PROGRESS;
}

function bringOne(told: FiledTold, before: Progress, rough: ReadonlyMap<string, PartRough>): Told {
  if (told.copy !== undefined) return bringCopy(told, told.copy, before);
  if (told.board !== undefined) return bringBoard(told, told.board, before);
  const [ofRough, ofOrder] = [bringRough(told, rough.get(told.part) ?? {}), bringOrder(told, before)];
  return { entries: [...ofRough.entries, ...ofOrder.entries], otherwise: ofRough.otherwise || ofOrder.otherwise };
}

function bringCopy(told: FiledTold, copy: number, { likes }: Progress): Told {
  const { part, up, arch } = told;
  const had = likes.get(placeKey(part, copy));
  if (had !== undefined) return { entries: [], otherwise: canonicalJson(had) !== canonicalJson(likesFiled(told)) };
  const ends = ([['up', up], ['arch', arch]] as const).flatMap(([what, end]): Entry[] => (end === undefined ? [] : [{ kind: 'end liked', part, copy, what, end }]));
  return { entries: [...likingsOf(told).map(({ faces, as }): Entry => ({ kind: 'faces liked', part, copy, faces, as })), ...ends], otherwise: false };
}

function bringBoard({ part, arches: arch }: FiledTold, board: number, { arches }: Progress): Told {
  const had = arches.get(placeKey(part, board));
  if (arch === undefined || had !== undefined) return { entries: [], otherwise: had !== arch };
  return { entries: [{ kind: 'board liked', part, board, arch }], otherwise: false };
}

function bringOrder(told: FiledTold, { faceOrders }: Progress): Told {
  const [had, order] = [faceOrders.get(told.part), levelsOf(told)];
  if (told.order === undefined || had !== undefined) return { entries: [], otherwise: told.order !== undefined && canonicalJson(had) !== canonicalJson(order) };
  return { entries: [{ kind: 'faces ordered', part: told.part, order }], otherwise: false };
}

/** Side by side: what was told of one does not keep the others away. */
function bringRough(told: FiledTold, had: PartRough): Told {
  const wanted = Object.entries(roughOf(told)) as [keyof PartRough, PartRough[keyof PartRough]][];
  const fresh = wanted.filter(([key]) => had[key] === undefined);
  return { entries: fresh.length === 0 ? [] : [{ kind: 'part rough', part: told.part, rough: Object.fromEntries(fresh) }], otherwise: wanted.some(([key, value]) => had[key] !== undefined && had[key] !== value) };
}

/** 'leg two', 'board three of the top', 'the long rail' */
function nameOf({ part: id, copy, board }: FiledTold, { parts }: PieceFile): string {
  const part = parts.find((one) => one.id === id);
  const name = part?.name ?? id;
  if (board !== undefined) return `board ${sayNumber(board)} of the ${name}`;
  return copy === undefined || part?.count === 1 ? `the ${name}` : `${name} ${sayNumber(copy)}`;
}

function sayNames(names: readonly string[]): string {
  const each = [...new Set(names)];
  return each.length > MOST_NAMED ? `${each.slice(0, MOST_NAMED).join(', ')} and ${sayNumber(each.length - MOST_NAMED)} more` : sayList(each);
}
