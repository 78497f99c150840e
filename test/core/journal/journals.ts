import type { Moment } from '../../../core/clock/moment.ts';
import type { Entry, JournalRecord } from '../../../core/journal/entry.ts';
import { makeRecords } from '../../../core/journal/record.ts';
import type { PieceFile } from '../../../core/piece/file.ts';
import { writePiece } from '../../../core/piece/load.ts';
import { at, MINUTE } from '../clock/clocks.ts';

export type GivenAct = Entry | readonly Entry[] | Act;

/** A journal written act by act, a minute apart unless a moment is given. */
export function journal(...acts: readonly GivenAct[]): JournalRecord[] {
  const records: JournalRecord[] = [];
  for (const [index, given] of acts.entries()) {
    const act: Act = 'moment' in given ? given : { moment: at(index * MINUTE), entries: 'kind' in given ? [given] : given };
    records.push(...makeRecords(act.entries, records.at(-1) ?? null, act.moment));
  }
  return records;
}

interface Act {
  readonly moment: Moment;
  readonly entries: readonly Entry[];
}

/** A sawing stool of our own: a top and four legs, the least that loads. */
export function stool(changes: Partial<PieceFile> = {}): string {
  return writePiece({
    format: 'benchcall piece', version: 2, name: 'sawing stool',
    parameters: { height: '18 in', over: '24 in' },
    parts: [
      part('top', 'top', 1, 'over', '8 in'),
      part('leg', 'leg', 4, 'height - top.thickness', '2 in'),
    ],
    joints: [],
    allowances: { roughLength: '1 in', roughWidth: '1/4 in', roughThickness: '1/8 in' },
    tools: { chisels: ['1/2 in'], clamps: [] },
    adhesive: { kind: 'white PVA' },
    finish: { kind: 'oil', coats: 2, recoatHours: 24 },
    ...changes,
  });
}

export function part(id: string, name: string, count: number, length: string, width: string): PieceFile['parts'][number] {
  return { id, name, count, species: 'hard maple', sizes: { length, width, thickness: '1 3/4 in' }, made: { kind: 'solid' } };
}
