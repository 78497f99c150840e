import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { nanometres, NANOMETRES_PER_INCH } from '../../../core/length/length.ts';
import { readBoards } from '../../../core/stock/boardTable.ts';
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
