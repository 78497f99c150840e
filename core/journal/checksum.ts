import { canonicalJson } from './canonical.ts';
import type { JournalRecord } from './entry.ts';

/**
 * CRC-32C (Castagnoli; polynomial 0x1EDC6F41, RFC 3720 section 12.1), over the UTF-8 bytes of a text. Chosen over a hash
 * because it finds every damage within 32 successive bits for certain, other damage but for one in four thousand
 * million, and is published, so that the keeper's file can be checked by any tool. It is no guard against intent.
 */
export function crc32c(text: string): number {
  let crc = -1;
  for (let index = 0; index < text.length; index++) {
    const unit = text.charCodeAt(index);
    if (unit < 0x80) {
      crc = addByte(crc, unit);
    } else if (unit < 0x800) {
      crc = addByte(addByte(crc, 0xc0 | (unit >> 6)), 0x80 | (unit & 0x3f));
    } else {
      const point = text.codePointAt(index) ?? unit;
      if (point > 0xffff) {
        index++;
        crc = addByte(addByte(crc, 0xf0 | (point >> 18)), 0x80 | ((point >> 12) & 0x3f));
      } else {
        crc = addByte(crc, 0xe0 | (point >> 12));
      }
      crc = addByte(addByte(crc, 0x80 | ((point >> 6) & 0x3f)), 0x80 | (point & 0x3f));
    }
  }
  return ~crc >>> 0;
}

function addByte(crc: number, byte: number): number {
  return (TABLE[(crc ^ byte) & 0xff] ?? 0) ^ (crc >>> 8);
}

const REVERSED_POLYNOMIAL = 0x82f63b78;
const TABLE = Int32Array.from({ length: 256 }, (_unused, index) => {
  let value = index;
  for (let bit = 0; bit < 8; bit++) value = value & 1 ? (value >>> 1) ^ REVERSED_POLYNOMIAL : value >>> 1;
  return value;
});

/**
 * The checksum of a record, eight hexadecimal digits. It covers the checksum of the record before it (`before`), so that
 * a record can be checked alone, and a record lost, doubled, swapped or from another history is seen in the chain.
 */
export function checksumOf({ number, act, at, before, entry }: Omit<JournalRecord, 'checksum'>): string {
  return crc32c(`["${before}",${number},${act},${canonicalJson(at)},${canonicalJson(entry)}]`).toString(16).padStart(8, '0');
}
