import { crc32, deflateRawSync, gzipSync } from 'node:zlib';

/** Archives made byte by byte, so that they can be as no packer makes them. */
export interface Packed {
  readonly name: string;
  readonly content?: string | Uint8Array;
  /** The kind in a tar header: '0' file, '1' and '2' links, '5' folder. */
  readonly type?: string;
  /** A size that is not that of the content. */
  readonly says?: number;
  readonly mode?: number;
  readonly locked?: boolean;
}

export function tarOf(entries: readonly Packed[]): Buffer {
  return Buffer.concat([...entries.flatMap(({ name, content = '', type = '0', says }) => {
    const bytes = Buffer.from(content);
    return [tarHeader(name, says ?? bytes.length, type), bytes, Buffer.alloc((512 - (bytes.length % 512)) % 512)];
  }), Buffer.alloc(1024)]);
}

export const tarGzOf = (entries: readonly Packed[]): Buffer => gzipSync(tarOf(entries));

function tarHeader(name: string, size: number, type: string): Buffer {
  const block = Buffer.alloc(512);
  block.write(name, 0, 100);
  block.write('0000644\x00', 100, 'latin1');
  block.write(`${size.toString(8).padStart(11, '0')}\x00`, 124, 'latin1');
  block.write('        ', 148);
  block.write(type, 156);
  block.write('ustar\x0000', 257, 'latin1');
  block.write(`${block.reduce((sum, byte) => sum + byte, 0).toString(8).padStart(6, '0')}\x00 `, 148, 'latin1');
  return block;
}

/** A zip as PKWARE's APPNOTE 4.3 lays it out, deflated. */
export function zipOf(entries: readonly Packed[]): Buffer {
  const parts: Buffer[] = [];
  const directory: Buffer[] = [];
  let at = 0;
  for (const { name, content = '', says, mode = 0o100644, locked = false } of entries) {
    const bytes = Buffer.from(content);
    const packed = deflateRawSync(bytes);
    const size = says ?? bytes.length;
    const common = Buffer.alloc(26);
    common.writeUInt16LE(20, 0);
    common.writeUInt16LE(locked ? 1 : 0, 2);
    common.writeUInt16LE(8, 4);
    common.writeUInt32LE(crc32(bytes), 10);
    common.writeUInt32LE(packed.length, 14);
    common.writeUInt32LE(size, 18);
    common.writeUInt16LE(Buffer.byteLength(name), 22);
    const local = Buffer.concat([Buffer.from('504b0304', 'hex'), common, Buffer.from(name), packed]);
    const rest = Buffer.alloc(14);
    rest.writeUInt32LE((mode << 16) >>> 0, 6);
    rest.writeUInt32LE(at, 10);
    directory.push(Buffer.concat([Buffer.from('504b0102', 'hex'), Buffer.from([20, 3]), common, rest, Buffer.from(name)]));
    parts.push(local);
    at += local.length;
  }
  const end = Buffer.alloc(22);
  end.writeUInt32BE(0x504b0506, 0);
  end.writeUInt16LE(entries.length, 8);
  end.writeUInt16LE(entries.length, 10);
  end.writeUInt32LE(Buffer.concat(directory).length, 12);
  end.writeUInt32LE(at, 16);
  return Buffer.concat([...parts, ...directory, end]);
}
