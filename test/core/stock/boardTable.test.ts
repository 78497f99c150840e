import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { nanometres, NANOMETRES_PER_INCH } from '../../../core/length/length.ts';
import type { Board } from '../../../core/stock/board.ts';
import { readBoards, writeBoards } from '../../../core/stock/boardTable.ts';
import { readParts } from '../../../core/stock/partTable.ts';
import { parseCsv, writeCsv } from '../../../core/stock/csv.ts';

const inches = (count: number) => nanometres(count * NANOMETRES_PER_INCH);
const HEAD = 'board,species,length,width,thickness,far width,sapwood,colour,price,defects';

function messages(text: string): string[] {
  const read = readBoards(text);
  return read.ok ? [] : read.fault.map(({ message }) => message);
}

describe('comma-separated values', () => {
  it('come back as they were written, whatever is in them (RFC 4180)', () => {
    const cell = fc.string({ unit: fc.constantFrom('a', ' ', ',', '"', '\r\n', '\n', '½') }).filter((text) => text.trim() !== '');
    fc.assert(fc.property(fc.array(fc.array(cell, { minLength: 1, maxLength: 4 }), { maxLength: 5 }), (rows) => {
      const read = parseCsv(writeCsv(rows));
      expect(read.ok && read.value.map(({ cells }) => cells)).toEqual(rows);
    }));
  });

  it('reads the examples of RFC 4180, section 2', () => {
    const read = parseCsv('"aaa","b""bb","ccc"\r\nzzz,"y\r\nyy",xxx\r\nlast,,row');
    expect(read.ok && read.value).toEqual([
      { line: 1, cells: ['aaa', 'b"bb', 'ccc'] }, { line: 2, cells: ['zzz', 'y\r\nyy', 'xxx'] }, { line: 4, cells: ['last', '', 'row'] },
    ]);
  });

  it('names the line of a quote that is not closed', () => {
    const read = parseCsv('a,b\nc,"d\ne');
    expect(!read.ok && read.fault.line).toBe(2);
  });
});

describe('a table of boards', () => {
  it('is read with fractions, feet, quarters, tapers and defects', () => {
    const read = readBoards(`${HEAD}\n3,hard maple,8',7 1/2 in,8/4,6 in,1/2 in,red,18.50,"knot 30 in to 34 in, 1 in to 2 1/2 in; check 0 in to 5 in, 3 in to 4 in, marked face"`);
    expect(read.ok && read.value).toEqual([{
      number: 3, species: 'hard maple', length: inches(96), width: inches(7.5), farWidth: inches(6), thickness: inches(2), sapwood: inches(0.5), colour: 'red', cents: 1850,
      defects: [
        { what: 'knot', from: inches(30), to: inches(34), fromEdge: inches(1), toEdge: inches(2.5), face: 'through' },
        { what: 'check', from: inches(0), to: inches(5), fromEdge: inches(3), toEdge: inches(4), face: 'marked face' },
      ],
    }]);
  });

  it('takes bare numbers in the unit that was told, and refuses them without', () => {
    const text = 'board,species,length,width,thickness\n1,ash,2440,180,50';
    const read = readBoards(text, 'millimetre');
    expect(read.ok && read.value[0]?.length).toBe(nanometres(2_440_000_000));
    expect(messages(text)[0]).toMatch(/^Line 2: length: .*unit is missing/);
  });

  it('tells every fault at once, each with its line and what was expected', () => {
    const faults = messages('board,species,length,width,thickness,defects\nx,,96 in,0 in,1 in,\n2,ash,96 in,6 in,1 in,knot somewhere\n3,ash,96 in,6 in,1 in,"knot 100 in to 101 in, 0 in to 1 in"');
    expect(faults.map((fault) => fault.slice(0, 16))).toEqual(['Line 2: board: “', 'Line 2: species:', 'Line 2: width: “', 'Line 3: defects:', 'Line 4: defects:']);
    expect(faults.at(-1)).toContain('outside the board');
  });

  it('refuses columns that are missing or unknown, and one number on two boards', () => {
    expect(messages('board,species,length,width\n1,ash,96 in,6 in')[0]).toContain('“thickness” is missing');
    expect(messages('board,species,length,width,thickness,knots\n')[0]).toContain('“knots” is no column');
    expect(messages('board,species,length,width,thickness\n1,ash,96 in,6 in,1 in\n1,ash,96 in,6 in,1 in')[0]).toContain('Board 1 is there twice');
    expect(messages('')).toHaveLength(1);
  });
});

describe('boards written as a table', () => {
  it('come back as the same boards', () => {
    const size = fc.integer({ min: 64, max: 64 * 120 }).map((count) => nanometres(count * 396_875));
    const board = fc.record({ length: size, width: size, sapwood: fc.constantFrom(nanometres(0), nanometres(396_875)), thickness: fc.constantFrom(inches(1), inches(2), inches(1.5), inches(1.7)), grain: fc.constantFrom('flat', 'rift', undefined), pithSide: fc.constantFrom('marked face', 'other face', undefined), from: fc.integer({ min: 0, max: 40 }) });
    fc.assert(fc.property(fc.array(board, { minLength: 1, maxLength: 5 }), (told) => {
      const boards = told.map(({ from, grain, pithSide, ...one }, index): Board => ({
        ...one, number: index + 1, species: 'hard maple, figured', farWidth: one.width, ...(grain === undefined ? {} : { grain }), ...(pithSide === undefined ? {} : { pithSide }),
        defects: [{ what: 'knot', from: nanometres(from * 396_875), to: nanometres((from + 1) * 396_875), fromEdge: nanometres(0), toEdge: nanometres(396_875), face: 'marked face' }],
      }));
      const read = readBoards(writeBoards(boards));
      expect(read.ok ? read.value : read.fault).toEqual(boards);
    }));
  });
});

describe('a table of rough parts', () => {
  const PARTS = 'part,count,species,length,width,thickness,together\r\n';

  it('is read with its counts and sizes', () => {
    const read = readParts(`${PARTS}rail,2,cherry,50 1/2 in,5 in,1 3/8 in,\r\nleg layer,12,cherry,845 mm,86 mm,32 mm,3\r\n`);
    expect(read.ok && read.value.map(({ name, count, together, length }) => [name, count, together, length])).toEqual([['rail', 2, 1, inches(50.5)], ['leg layer', 12, 3, nanometres(845_000_000)]]);
  });

  it('with faults is refused as a whole, each fault by its line', () => {
    const read = readParts(`${PARTS}rail,none,cherry,50 in,5 in,1 in,\r\n,2,cherry,long,5 in,0 in,\r\n`);
    expect(read.ok ? [] : read.fault.map(({ line }) => line)).toEqual([2, 3, 3, 3]);
    const many = readParts(`${PARTS}rail,9000,cherry,50 in,5 in,1 in,\r\nstile,9000,cherry,50 in,5 in,1 in,\r\n`);
    expect(many.ok ? '' : many.fault[0]?.message).toContain('18000 parts');
    expect(readParts('part,count\r\n').ok).toBe(false);
  });
});
