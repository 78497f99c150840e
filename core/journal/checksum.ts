import { canonicalJson } from './canonical.ts';
import type { JournalRecord } from './entry.ts';

/**
 * CRC-32C (Castagnoli; polynomial 0x1EDC6F41, RFC 3720 section 12.1), over the UTF-8 bytes of a text. Chosen over a hash
 * because it finds every damage within 32 successive bits for certain, other damage but for one in four thousand
 * million, and is published, so that the keeper's file can be checked by any tool. It is no guard against intent.
 */
export function crc32c(text: string): number {
  let crc = 0xffffffff;
  const byte = (value: number) => { crc = (TABLE[(crc ^ value) & 0xff] ?? 0) ^ (crc >>> 8); };
  for (let index = 0; index < text.length; index++) {
    const unit = text.charCodeAt(index);
    if (unit < 0x80) {
      byte(unit);
      continue;
    }
    const point = text.codePointAt(index) ?? unit;
    if (point > 0xffff) index++;
    if (point < 0x800) byte(0xc0 | (point >> 6));
    else {
      if (point < 0x10000) byte(0xe0 | (point >> 12));
      else {
        byte(0xf0 | (point >> 18));
        byte(0x80 | ((point >> 12) & 0x3f));
      }
      byte(0x80 | ((point >> 6) & 0x3f));
    }
    byte(0x80 | (point & 0x3f));
  }
  return (crc ^ 0xffffffff) >>> 0;
}

const REVERSED_POLYNOMIAL = 0x82f63b78;
const TABLE = Uint32Array.from({ length: 256 }, (_unused, index) => {
  let value = index;
  for (let bit = 0; bit < 8; bit++) value = value & 1 ? (value >>> 1) ^ REVERSED_POLYNOMIAL : value >>> 1;
  return value;
});

/**
 * The checksum of a record, eight hexadecimal digits. It covers the checksum of the record before it (`before`), so that
 * a record can be checked alone, and a record lost, doubled, swapped or from another history is seen in the chain.
 */
export function checksumOf({ number, act, at, before, entry }: Omit<JournalRecord, 'checksum'>): string {
  return crc32c(canonicalJson([before, number, act, at, entry])).toString(16).padStart(8, '0');
}
