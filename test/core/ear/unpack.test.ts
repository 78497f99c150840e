import { describe, expect, it } from 'vitest';
import { execFileSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { unpackTarGz } from '../../../kiosk/ear/unpack.ts';

/** Packed by the system's own tar, so that what is read is what others write. */
function packed(files: Readonly<Record<string, Buffer>>, format: 'ustar' | 'gnu' | 'pax'): Buffer {
  const folder = mkdtempSync(join(tmpdir(), 'tar-'));
  try {
    for (const [name, content] of Object.entries(files)) {
      mkdirSync(join(folder, name, '..'), { recursive: true });
      writeFileSync(join(folder, name), content);
    }
    return execFileSync('tar', [`--format=${format}`, '-C', folder, '-czf', '-', '.'], { maxBuffer: 1e8 });
  } finally {
    rmSync(folder, { recursive: true });
  }
}

/** As it comes from a network: in pieces of odd length. */
function stream(bytes: Buffer, pieceBytes = 1_000): ReadableStream<Uint8Array<ArrayBuffer>> {
  let at = 0;
  return new ReadableStream({
    pull(controller) {
      if (at >= bytes.length) {
        controller.close();
        return;
      }
      controller.enqueue(Uint8Array.from(bytes.subarray(at, at + pieceBytes)));
      at += pieceBytes;
    },
  });
}

async function unpacked(bytes: Buffer): Promise<Map<string, Buffer>> {
  const files = new Map<string, Buffer>();
  for await (const { path, bytes: content } of unpackTarGz(stream(bytes))) files.set(path, Buffer.from(content));
  return files;
}

const LONG_NAME = `model/${'a-rather-long-folder-name/'.repeat(3)}${'x'.repeat(60)}.fst`;
const FILES = { 'model/am/final.mdl': Buffer.alloc(70_001, 'm'), 'model/conf/model.conf': Buffer.from('--beam=12\n'), 'model/empty': Buffer.alloc(0), [LONG_NAME]: Buffer.from('long') };

describe('a packed model', () => {
  for (const format of ['ustar', 'gnu', 'pax'] as const) {
    it(`packed as ${format} comes out as it went in`, async () => {
      const files = await unpacked(packed(FILES, format));
      expect([...files.keys()].sort()).toEqual(Object.keys(FILES).sort());
      for (const [name, content] of Object.entries(FILES)) expect(files.get(name)?.equals(content), name).toBe(true);
    });
  }

  it('that was cut short anywhere is refused', async () => {
    const whole = packed(FILES, 'gnu');
    for (const part of [0, 0.1, 0.5, 0.9, 0.99]) {
      await expect(unpacked(whole.subarray(0, Math.floor(whole.length * part))), `${part}`).rejects.toThrow(/cut short|unpacked as gzip/);
    }
  });

  it('that is not gzip at all is refused', async () => {
    await expect(unpacked(Buffer.from('<!doctype html><p>Not found</p>'))).rejects.toThrow('cannot be unpacked as gzip');
  });

  it('that is gzip of something else is refused', async () => {
    await expect(unpacked(gzipSync(Buffer.alloc(2_000, 'z')))).rejects.toThrow('header is damaged');
  });

  it('that points outside itself is refused', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'tar-'));
    try {
      writeFileSync(join(folder, 'a'), 'a');
      const out = join(folder, 'out.tar.gz');
      execFileSync('tar', ['-P', '-C', folder, '--transform=s|a|../../a|', '-czf', out, 'a']);
      await expect(unpacked(readFileSync(out))).rejects.toThrow('points outside');
    } finally {
      rmSync(folder, { recursive: true });
    }
  });
});
