import type { Part, PieceFile, SizeSource } from '../../../core/piece/file.ts';

/** A sound file with the parts and parameters given, and the least of everything else. */
export function pieceOf(parts: readonly Part[], parameters: Readonly<Record<string, SizeSource>> = {}, more: Partial<PieceFile> = {}): PieceFile {
  return {
    format: 'benchcall piece', version: 2, name: 'Test piece', parameters, parts, joints: [],
    allowances: { roughLength: '1 in', roughWidth: '1/4 in', roughThickness: '1/8 in' },
    tools: { chisels: [], clamps: [] },
    adhesive: { kind: 'PVA' },
    finish: { kind: 'wax', coats: 1, recoatHours: 1 },
    ...more,
  };
}

export function partOf(id: string, count: number, sizes: Readonly<Record<string, SizeSource>>): Part {
  return { id, name: id, count, species: 'white oak', sizes: { length: '20 in', width: '3 in', thickness: '1 in', ...sizes }, made: { kind: 'solid' } };
}
