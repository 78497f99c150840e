import fc from 'fast-check';
import { describe, expect, it, vi } from 'vitest';
import { canonicalJson } from '../../../core/journal/canonical.ts';
import { validPrefix } from '../../../core/journal/chain.ts';
import { crc32c } from '../../../core/journal/checksum.ts';
import type { Entry, JournalRecord } from '../../../core/journal/entry.ts';
import { makeRecords, readEntry, readRecord } from '../../../core/journal/record.ts';
import { nanometres } from '../../../core/length/length.ts';
import { at } from '../clock/clocks.ts';
import { journal } from './journals.ts';

// Many random cases, on a machine that may be busy with others.
vi.setConfig({ testTimeout: 60_000 });

const three = (): JournalRecord[] => journal(
  { kind: 'noted', text: 'knot – near “the top” 🌳' },
  [{ kind: 'measured', measurement: { size: 'leg.length', copy: 2, length: nanometres(396_875) } }, { kind: 'step done', step: 'ends/leg/2' }],
);

describe('the checksum', () => {
  it.each([
    // The check value of the Rocksoft model for this polynomial, as catalogued for CRC-32C.
    ['123456789', 0xe3069283],
    // RFC 3720, B.4: 32 bytes of zeros (its bytes AA 36 91 8A are read from the lowest), and 32 rising bytes from 0 (4E 79 DD 46).
    ['\0'.repeat(32), 0x8a9136aa],
    [String.fromCharCode(...Array.from({ length: 32 }, (_unused, index) => index)), 0x46dd794e],
    // RFC 3720, B.4: 32 falling bytes from 31 to 0 (5C DB 3F 11).
    [String.fromCharCode(...Array.from({ length: 32 }, (_unused, index) => 31 - index)), 0x113fdb5c],
  ])('is the published one (%#)', (text, sum) => {
    expect(crc32c(text)).toBe(sum);
  });

  it('is over the UTF-8 bytes of any text, as a plain bit-by-bit reckoning over the encoder\'s bytes gives it', () => {
    const slow = (bytes: Uint8Array) => {
      let crc = 0xffffffff;
      for (const byte of bytes) {
        crc ^= byte;
        for (let bit = 0; bit < 8; bit++) crc = crc & 1 ? (crc >>> 1) ^ 0x82f63b78 : crc >>> 1;
      }
      return (crc ^ 0xffffffff) >>> 0;
    };
    fc.assert(fc.property(fc.string({ unit: 'binary' }), (text) => crc32c(text) === slow(new TextEncoder().encode(text))));
  });

  it('does not depend on the order of the keys, nor on fields that are undefined', () => {
    expect(canonicalJson({ b: [1, undefined, { d: 2, c: 'x' }], a: undefined })).toBe('{"b":[1,null,{"c":"x","d":2}]}');
    const [record] = three();
    const turned = JSON.parse(JSON.stringify(record), (_key, value: unknown) => typeof value === 'object' && value !== null ? Object.fromEntries(Object.entries(value).reverse()) : value) as unknown;
    expect(readRecord(turned).ok).toBe(true);
  });
});

describe('records', () => {
  it('are numbered from one without holes, and share the number of their act', () => {
    expect(three().map(({ number, act }) => [number, act])).toEqual([[1, 1], [2, 2], [3, 2]]);
  });

  it('come back from JSON as they were', () => {
    for (const record of three()) expect(readRecord(JSON.parse(JSON.stringify(record)))).toEqual({ ok: true, value: record });
  });

  it('are never made from an entry that could not be read back', () => {
    expect(() => makeRecords([{ kind: 'noted', text: 'x'.repeat(10_001) }], null, at(0))).toThrow(/at text at most 10000 characters was expected/);
    expect(() => makeRecords([{ kind: 'timer started', timer: { kind: 'plain', name: 'x', durationMs: 0, basis: '' } }], null, at(0))).toThrow(/durationMs/);
  });

  it.each<[string, unknown, string]>([
    ['an unknown kind', { kind: 'sanded' }, 'kind'],
    ['a field too many', { kind: 'noted', text: 'x', by: 'me' }, 'by'],
    ['a missing field', { kind: 'noted' }, 'text'],
    ['a length that is no whole number', { kind: 'measured', measurement: { size: 'a', length: 0.5 } }, 'measurement.length'],
    ['copy nought', { kind: 'measured', measurement: { size: 'a', length: 1, copy: 0 } }, 'measurement.copy'],
    ['a setting out of range', { kind: 'setting changed', setting: { volume: 11 } }, 'setting.volume'],
    ['a rounding that no rule has', { kind: 'setting changed', setting: { rounding: { unit: 'inch', denominator: 10 } } }, 'setting.rounding.denominator'],
    ['a timer of a year', { kind: 'timer started', timer: { kind: 'rest', name: 'x', durationMs: 365 * 86_400_000, basis: '' } }, 'timer.durationMs'],
    ['no object', 'noted', ''],
    ['nothing', null, ''],
  ])('refuse %s and say where', (_what, value, path) => {
    const read = readEntry(value);
    expect(read.ok ? null : read.fault.path).toBe(path);
  });

  it('take over nothing that would reach into the program: __proto__, constructor', () => {
    const hostile = JSON.parse('{"kind":"setting changed","setting":{"volume":3,"__proto__":{"theme":"dark"}},"__proto__":{"polluted":true}}') as unknown;
    const read = readEntry(hostile);
    if (read.ok) expect(Object.getPrototypeOf((read.value as Extract<Entry, { kind: 'setting changed' }>).setting)).toBe(Object.prototype);
    expect(({} as Record<string, unknown>)['polluted']).toBeUndefined();
    expect(readEntry(JSON.parse('{"kind":"noted","text":"x","constructor":{}}')).ok).toBe(false);
  });
});

describe('a stored copy', () => {
  const long = journal(...Array.from({ length: 12 }, (_unused, index): Entry => ({ kind: 'noted', text: `note ${index}` })));

  it('with a record lost, doubled or swapped is believed up to there', () => {
    expect(validPrefix(long).records).toEqual(long);
    const lost = validPrefix(long.filter(({ number }) => number !== 5));
    expect([lost.records.length, lost.stranded.map(({ number }) => number)]).toEqual([4, [6, 7, 8, 9, 10, 11, 12]]);
    expect(validPrefix([...long, ...long.slice(3, 6)]).records).toEqual(long);
    expect(validPrefix([...long].reverse()).records).toEqual(long);
    const other = journal({ kind: 'noted', text: 'of another journal' }, { kind: 'noted', text: 'note 1' });
    expect(validPrefix([long[0], other[1]]).records).toHaveLength(1);
  });

  it('with any byte changed is refused from there on or read as it was, and never throws', () => {
    const lines = long.map((record) => JSON.stringify(record));
    fc.assert(fc.property(fc.nat(11), fc.nat(), fc.integer({ min: 0, max: 255 }), (line, place, byte) => {
      const bytes = new TextEncoder().encode(lines[line]);
      bytes[place % bytes.length] = byte;
      const values = lines.map((text, index) => {
        try {
          return JSON.parse(index === line ? new TextDecoder().decode(bytes) : text) as unknown;
        } catch {
          return null;
        }
      });
      const { records } = validPrefix(values);
      expect(records).toEqual(long.slice(0, records.length));
      expect([line, long.length]).toContain(records.length);
    }), { numRuns: 1_000 });
  });

  it('of anything at all is read without throwing', () => {
    fc.assert(fc.property(fc.array(fc.anything({ withBigInt: true, withDate: true, withMap: true, withNullPrototype: true, withTypedArray: true })), (values) => validPrefix(values).records.length === 0));
  });
});
