import { CopyFault } from './copy.ts';
import type { Memo } from './memo.ts';
import type { Found, Recovered } from './recover.ts';

/** What the opening of the journal found that the person should hear, a sentence each. Silence means that all is as it was left. */
export function tellRecovery(recovered: Recovered, memo: Memo, browserOpening: { readonly fresh: boolean; readonly lossMessage: string } | undefined): readonly string[] {
  const { records, browser, keeper } = recovered;
  const told: string[] = [];
  if (recovered.partedAfter !== undefined) told.push(`From entry ${recovered.partedAfter + 1} on the browser and the journal's file differed. The longer one was kept; the other's entries were set aside, not thrown away.`);
  else told.push(...tellBrowser(recovered, memo, browserOpening), ...tellKeeper(records.length, keeper));
  const lost = memo.lastNumber - records.length;
  if (lost > 0 && !(browser instanceof CopyFault && keeper instanceof CopyFault)) {
    told.push(`${entries(lost)} that ${lost === 1 ? 'was' : 'were'} kept before (up to number ${memo.lastNumber}) can be found in neither copy. Look over what was recorded last.`);
  }
  return told;
}

function tellBrowser({ records, browser }: Recovered, memo: Memo, opening: { readonly fresh: boolean; readonly lossMessage: string } | undefined): readonly string[] {
  if (browser instanceof CopyFault) return [];
  const missing = records.length - browser.records.length;
  const damaged = browser.end.lastNumber > browser.records.length;
  const wiped = browser.end.lastNumber === 0 && (memo.lastNumber > 0 || (opening?.lossMessage ?? '') !== '');
  if (missing === 0) return wiped && records.length === 0 ? ['The browser has lost its journal, and the journal\'s file is empty or does not answer: nothing could be restored yet.'] : [];
  if (wiped) return [`The browser had lost its journal. It was restored from the journal's file: ${entries(missing)}.`];
  if (damaged) return [`The browser's journal was damaged after entry ${browser.records.length}. ${entries(missing)} ${missing === 1 ? 'was' : 'were'} restored from the journal's file.`];
  if (browser.end.lastNumber === 0) return [`This browser had no journal yet. ${entries(missing)} ${missing === 1 ? 'was' : 'were'} taken over from the journal's file on this machine.`];
  return [`${entries(missing)} ${missing === 1 ? 'was' : 'were'} missing in the browser and restored from the journal's file.`];
}

function tellKeeper(length: number, keeper: Found | CopyFault): readonly string[] {
  if (keeper instanceof CopyFault) return [];
  const missing = length - keeper.records.length;
  if (missing === 0) return [];
  if (keeper.end.lastNumber === 0) return [`The journal's file was empty. It was written again from the browser: ${entries(missing)}.`];
  return [`${entries(missing)} ${missing === 1 ? 'was' : 'were'} missing in the journal's file and written again from the browser.`];
}

function entries(count: number): string {
  return count === 1 ? 'One entry' : `${count} entries`;
}
