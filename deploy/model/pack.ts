import { gzipSync } from 'node:zlib';
import type { Files } from './fault.ts';

const BLOCK = 512;
const LONGEST_NAME = 100;
/** Packed for a loopback: quickly rather than tightly. */
const GZIP_LEVEL = 3;

/** A model's files as a .tar.gz with one folder around them (POSIX.1 ustar), the same bytes for the same files. */
export function packModel(files: Files): Buffer {
  const parts: Uint8Array[] = [];
  for (const [path, bytes] of [...files].sort(([one], [other]) => (one < other ? -1 : 1))) {
    parts.push(header(`model/${path}`, bytes.length), bytes, Buffer.alloc((BLOCK - (bytes.length % BLOCK)) % BLOCK));
  }
  return gzipSync(Buffer.concat([...parts, Buffer.alloc(2 * BLOCK)]), { level: GZIP_LEVEL });
}

function header(name: string, size: number): Buffer {
  if (Buffer.byteLength(name) > LONGEST_NAME) throw new Error(`"${name}" is longer than any file of a model`);
  const block = Buffer.alloc(BLOCK);
  const octal = (value: number, digits: number) => `${value.toString(8).padStart(digits, '0')}\0`;
  block.write(name, 0);
  block.write(octal(0o644, 7), 100);
  block.write(octal(0, 7), 108);
  block.write(octal(0, 7), 116);
  block.write(octal(size, 11), 124);
  block.write(octal(0, 11), 136);
  block.write('        ', 148);
  block.write('0', 156);
  block.write('ustar\x0000', 257, 'latin1');
  const sum = block.reduce((total, byte) => total + byte, 0);
  block.write(`${sum.toString(8).padStart(6, '0')}\0 `, 148);
  return block;
}
