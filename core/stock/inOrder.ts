import type { TakenBoard } from './cutting.ts';
import type { PlacedBlank } from './plan/placed.ts';

/**
 * Numbers the boards of panels, so that they can be glued up as they grew: along each board from its mark, then across it, board after board.
 * What has a number keeps it; the others take the free ones in order. `counts`: how many boards there are of each panel's blank.
 */
export function inOrder(boards: readonly TakenBoard[], counts: ReadonlyMap<string, number>): readonly TakenBoard[] {
  const free = new Map([...counts].map(([id, count]) => {
    const taken = new Set(boards.flatMap(({ placed }) => placed.filter(({ blank, nth }) => blank === id && nth !== undefined).map(({ nth }) => nth)));
    return [id, Array.from({ length: count }, (_, at) => at + 1).filter((nth) => !taken.has(nth))] as const;
  }));
  return boards.map((board) => {
    const numbers = new Map<PlacedBlank, number>();
    for (const blank of [...board.placed].sort((a, b) => a.from - b.from || a.fromEdge - b.fromEdge)) {
      const next = blank.nth === undefined ? free.get(blank.blank)?.shift() : undefined;
      if (next !== undefined) numbers.set(blank, next);
    }
    return { ...board, placed: board.placed.map((blank) => { const nth = numbers.get(blank); return nth === undefined ? blank : { ...blank, nth }; }) };
  });
}

/** What is written on a blank: 'leg layer', 'top board 3'. */
export function markOf({ name, nth }: Pick<PlacedBlank, 'name' | 'nth'>): string {
  return nth === undefined ? name : `${name} ${nth}`;
}
