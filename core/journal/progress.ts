import type { Progress } from './state.ts';

export const NO_PROGRESS: Progress = { measurements: [], done: new Set(), skipped: new Set(), currentStep: null, places: new Map() };

/** What a form of a piece has a place for. */
export interface Places {
  size(name: string, copy: number | undefined): boolean;
  step(id: string): boolean;
  copy(part: string, copy: number): boolean;
}

/** Divides progress into what the piece has a place for, and what is kept hidden until it has again. */
export function divideProgress(progress: Progress, has: Places): { shown: Progress; hidden: Progress } {
  const part = (shown: boolean): Progress => ({
    measurements: progress.measurements.filter(({ size, copy }) => has.size(size, copy) === shown),
    done: new Set([...progress.done].filter((step) => has.step(step) === shown)),
    skipped: new Set([...progress.skipped].filter((step) => has.step(step) === shown)),
    currentStep: progress.currentStep !== null && has.step(progress.currentStep) === shown ? progress.currentStep : null,
    places: new Map([...progress.places].filter(([key]) => hasCopy(has, key) === shown)),
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
  };
}

export function isEmpty({ measurements, done, skipped, currentStep, places }: Progress): boolean {
  return measurements.length + done.size + skipped.size + places.size === 0 && currentStep === null;
}

/** The key of a placed copy: 'leg/3'. */
export function placeKey(part: string, copy: number): string {
  return `${part}/${copy}`;
}

function hasCopy(has: Places, key: string): boolean {
  const slash = key.lastIndexOf('/');
  return has.copy(key.slice(0, slash), Number(key.slice(slash + 1)));
}
