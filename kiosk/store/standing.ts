import type { CopyFault } from './copy.ts';
import type { Replica } from './replica.ts';

/** What the words about the journal's standing depend on. */
export interface Standing {
  readonly closed: boolean;
  /** This window holds the right to write. */
  readonly writing: boolean;
  /** Neither copy could be opened: what is recorded lasts as long as the page. */
  readonly memoryOnly: boolean;
  readonly browser: Replica;
  readonly keeper: Replica;
}

/** Written by a newer bench: shown, but not touched. */
export function isNewer({ browser, keeper }: Pick<Standing, 'browser' | 'keeper'>): boolean {
  return browser.fault?.kind === 'newer' || keeper.fault?.kind === 'newer';
}

/** What is the matter as long as it lasts, a sentence each, and what to do. Empty when all is well. */
export function warnings(standing: Standing): readonly string[] {
  const { browser, keeper } = standing;
  if (standing.closed) return ['The journal has been closed.'];
  if (!standing.writing) return ['The bench is open in another window: this one only shows it.'];
  if (isNewer(standing)) return [`The journal was written by a newer bench and is only shown: ${reasons(standing)}.`];
  if (standing.memoryOnly) return [`NOTHING IS BEING KEPT: ${reasons(standing)}. What you record now is gone when this page closes.`];
  return [...onlyIn(keeper.fault, browser), ...onlyIn(browser.fault, keeper)];
}

/** All that is the matter with the copies, for the middle of a sentence. */
export function reasons({ browser, keeper }: Pick<Standing, 'browser' | 'keeper'>): string {
  return [browser.fault, keeper.fault].filter((fault) => fault !== undefined).map((fault) => fault.message).join('; ');
}

function onlyIn(fault: CopyFault | undefined, other: Replica): readonly string[] {
  if (fault === undefined) return [];
  const consequence = other.sound ? `Entries are kept in ${other.copy.place} alone until that is put right.` : 'Nothing can be written down until that is put right.';
  return [`${sentenceStart(fault.message)}. ${consequence}`];
}

export function sentenceStart(text: string): string {
  return `${text[0]?.toUpperCase() ?? ''}${text.slice(1)}`;
}
