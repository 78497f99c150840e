/** What this browser remembers apart from its database, so that a database that was lost is not taken for a first start. */
export interface Memo {
  /** Number of the last record that was ever kept here; 0 when there was none. */
  readonly lastNumber: number;
  /** Sentences of the keeper that were passed on already. */
  readonly told: readonly string[];
}

const NOTHING: Memo = { lastNumber: 0, told: [] };

export function readMemo(name: string): Memo {
  try {
    const value = JSON.parse(localStorage.getItem(keyOf(name)) ?? 'null') as Partial<Record<keyof Memo, unknown>> | null;
    const lastNumber = Number.isSafeInteger(value?.lastNumber) ? Number(value?.lastNumber) : 0;
    return { lastNumber, told: Array.isArray(value?.told) ? value.told.filter((one) => typeof one === 'string') : [] };
  } catch {
    return NOTHING;
  }
}

/** A browser that refuses is let be: the memo only makes the telling better. */
export function writeMemo(name: string, change: Partial<Memo>): void {
  try {
    localStorage.setItem(keyOf(name), JSON.stringify({ ...readMemo(name), ...change }));
  } catch {
    // Nothing depends on it.
  }
}

function keyOf(name: string): string {
  return `${name} journal`;
}
