import { readFileSync } from 'node:fs';
import { loadPiece, writeFault } from '../../../core/piece/load.ts';
import type { LoadedPiece } from '../../../core/piece/loadedPiece.ts';

/** The text of the baker's work table. */
export const DEMO_TEXT = readFileSync(new URL('../../../core/piece/demo/bakers-work-table.json', import.meta.url), 'utf8');

/** Loads a piece that must be sound; the faults stand in the error otherwise. */
export function loadSound(text: string): LoadedPiece {
  const loaded = loadPiece(text);
  if (!loaded.ok) throw new Error(loaded.fault.map(writeFault).join('\n'));
  return loaded.value;
}
