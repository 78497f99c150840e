import type { Progress } from './state.ts';

export const NO_PROGRESS: Progress = { measurements: [], done: new Set(), skipped: new Set(), currentStep: null, places: new Map(), turns: new Map(), likes: new Map(), faceOrders: new Map(), arches: new Map() };

/** What a form of a piece has a place for. */
export interface Places {
  size(name: string, copy: number | undefined): boolean;
  step(id: string): boolean;
  copy(part: string, copy: number): boolean;
  board(part: string, board: number): boolean;
}

/** Divides progress into what the piece has a place for, and what is kept hidden until it has again. */
export function divideProgress(progress: Progress, has: Places): { shown: Progress; hidden: Progress } {
  const part = (shown: boolean): Progress => ({
    measurements: progress.measurements.filter(({ size, copy }) => has.size(size, copy) === shown),
    done: new Set([...progress.done].filter((step) => has.step(step) === shown)),
    skipped: new Set([...progress.skipped].filter((step) => has.step(step) === shown)),
    currentStep: progress.currentStep !== null && has.step(progress.currentStep) === shown ? progress.currentStep : null,
    places: having(progress.places, (key) => hasCopy(has, key) === shown),
    turns: having(progress.turns, (key) => hasCopy(has, key) === shown),
    likes: having(progress.likes, (key) => hasCopy(has, key) === shown),
    faceOrders: having(progress.faceOrders, (part) => has.copy(part, 1) === shown),
    arches: having(progress.arches, (key) => hasBoard(has, key) === shown),
  });
  return { shown: part(true), hidden: part(false) };
}

export function joinProgress(shown: Progress, hidden: Progress): Progress {
  return {
    measurements: [...shown.measurements, ...hidden.measurements],
    done: new Set([...shown.done, ...hidden.done]),
    skipped: new Set([...shown.skipped, ...hidden.skipped]),
    currentStep: shown.currentStep ?? hidden.currentStep,
    places: new Map([...shown.places, ...hidden.places]),
    turns: new Map([...shown.turns, ...hidden.turns]),
    likes: new Map([...shown.likes, ...hidden.likes]),
    faceOrders: new Map([...shown.faceOrders, ...hidden.faceOrders]),
    arches: new Map([...shown.arches, ...hidden.arches]),
  };
}

export function isEmpty({ measurements, done, skipped, currentStep, places, turns, likes, faceOrders, arches }: Progress): boolean {
  const told = places.size + turns.size + likes.size + faceOrders.size + arches.size;
  return measurements.length + done.size + skipped.size + told === 0 && currentStep === null;
}

function having<Value>(map: ReadonlyMap<string, Value>, keep: (key: string) => boolean): ReadonlyMap<string, Value> {
  return new Map([...map].filter(([key]) => keep(key)));
}

/** The key of a placed copy: 'leg/3'. */
export function placeKey(part: string, copy: number): string {
  return `${part}/${copy}`;
}

function hasCopy(has: Places, key: string): boolean {
  return has.copy(...splitKey(key));
}

function hasBoard(has: Places, key: string): boolean {
  return has.board(...splitKey(key));
}

/** 'leg/3' → leg, 3 */
function splitKey(key: string): readonly [string, number] {
  const slash = key.lastIndexOf('/');
  return [key.slice(0, slash), Number(key.slice(slash + 1))];
}
