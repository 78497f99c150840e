import fc from 'fast-check';
import { mkdir, symlink, writeFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { describe, expect, it } from 'vitest';
import { checkFiles } from '../../../deploy/model/checkFiles.ts';
import { writeFault } from '../../../deploy/model/fault.ts';
import { openModel } from '../../../deploy/model/openModel.ts';
import { packModel } from '../../../deploy/model/pack.ts';
import { inFolder } from '../help.ts';
import { tarGzOf, tarOf, zipOf, type Packed } from './archives.ts';

const MODEL: readonly Packed[] = [
  { name: 'small/am/final.mdl', content: 'network' }, { name: 'small/conf/mfcc.conf', content: '--num-ceps=13\n' }, { name: 'small/conf/model.conf', content: '' }, { name: 'small/README', content: 'a model' },
];
const PATHS = ['README', 'am/final.mdl', 'conf/mfcc.conf', 'conf/model.conf'];

/** What opening a file of this content comes to: its paths, or the fault in words. */
async function opened(content: Buffer, name = 'model.zip'): Promise<readonly string[] | string> {
  return inFolder(async (folder) => {
    await writeFile(join(folder, name), content);
    const result = await openModel(join(folder, name));
    return result.ok ? [...result.value.keys()].sort() : writeFault(result.fault);
  });
}

describe('a speech model', () => {
  it.each([
    ['a .tar.gz', tarGzOf(MODEL)],
    ['a .tar', tarOf(MODEL)],
    ['a .zip', zipOf(MODEL)],
    ['a .zip with what other systems leave in it', zipOf([...MODEL, { name: '__MACOSX/small/._final.mdl', content: 'x' }, { name: 'small/.DS_Store', content: 'x' }])],
    ['an archive without a folder around it', tarGzOf(MODEL.map(({ name, ...rest }) => ({ ...rest, name: name.replace('small/', '') })))],
    ['an archive with two folders around it', zipOf(MODEL.map(({ name, ...rest }) => ({ ...rest, name: `downloads/${name}` })))],
    ['the kiosk\'s own packing', packModel(new Map(MODEL.map(({ name, content }) => [name.replace('small/', ''), Uint8Array.from(Buffer.from(content ?? ''))])))],
  ])('is read from %s', async (_, content) => {
    expect(await opened(content)).toEqual(PATHS);
  });

  it('is read from its folder', () => inFolder(async (folder) => {
    for (const { name, content = '' } of MODEL) {
      await mkdir(dirname(join(folder, name)), { recursive: true });
      await writeFile(join(folder, name), content);
    }
    for (const path of [folder, join(folder, 'small')]) {
      const result = await openModel(path);
      expect(result.ok && [...result.value.keys()].sort()).toEqual(PATHS);
    }
    await symlink('/etc/passwd', join(folder, 'small', 'conf', 'secret'));
    const result = await openModel(folder);
    expect(result.ok ? '' : writeFault(result.fault)).toMatch(/"small\/conf\/secret" is a link, and only files are taken/);
  }));

  it('that is not there is told', async () => {
    const result = await openModel('/nowhere/model.zip');
    expect(result.ok ? '' : writeFault(result.fault)).toMatch(/\/nowhere\/model\.zip: there is no such file or folder/);
  });
});

const many = Array.from({ length: 3_000 }, (_, index) => ({ name: `small/${index}`, content: '' }));

describe('an archive', () => {
  it.each<[string, () => Buffer, RegExp]>([
    ['that is empty', () => Buffer.alloc(0), /it is empty/],
    ['that is a web page', () => Buffer.from('<!doctype html><p>Sign in'), /it is a web page.*The download did not work/],
    ['of another kind', () => Buffer.from('fd377a585a000004', 'hex'), /packed with xz, which is not read here.*pack that as \.zip or \.tar\.gz/],
    ['of no kind', () => Buffer.from('hello, this is a text and no archive'), /neither a \.zip nor a \.tar\.gz/],
    ['with nothing in it', () => tarGzOf([]), /it holds no files/],
    ['with another engine\'s model', () => zipOf([{ name: 'encoder.onnx', content: 'x' }]), /no am\/final\.mdl, but "encoder\.onnx": it is a model for another engine/],
    ['of the oldest layout', () => zipOf([{ name: 'm/final.mdl', content: 'x' }, { name: 'm/mfcc.conf', content: 'x' }]), /lie side by side, as the oldest models have them/],
    ['with two models', () => zipOf([...MODEL, { name: 'large/am/final.mdl', content: 'x' }]), /several models.*Give one of them/],
    ['that leads out of itself (tar)', () => tarGzOf([{ name: 'small/../../../etc/cron.d/x', content: 'x' }]), /points outside the archive/],
    ['that leads out of itself (zip)', () => zipOf([{ name: '../../x', content: 'x' }]), /unpacked as zip \(invalid relative path/],
    ['with an absolute name (tar)', () => tarGzOf([{ name: '/etc/passwd', content: 'x' }]), /"\/etc\/passwd" begins at the root of a disk/],
    ['with an absolute name (zip)', () => zipOf([{ name: '/etc/passwd', content: 'x' }]), /unpacked as zip \(absolute path/],
    ['with the name of another system\'s disk', () => tarGzOf([{ name: 'C:\\windows\\x', content: 'x' }]), /begins at the root of a disk/],
    ['with a link (tar)', () => tarGzOf([...MODEL, { name: 'small/graph/Gr.fst', type: '2' }]), /"small\/graph\/Gr\.fst" is a link/],
    ['with a hard link (tar)', () => tarGzOf([...MODEL, { name: 'small/graph/Gr.fst', type: '1' }]), /is a link/],
    ['with a link (zip)', () => zipOf([...MODEL, { name: 'small/graph/Gr.fst', content: '/etc/passwd', mode: 0o120777 }]), /is a link/],
    ['with a password', () => zipOf([{ name: 'small/am/final.mdl', content: 'x', locked: true }]), /locked by a password/],
    ['with thousands of files (tar)', () => tarGzOf(many), /more than 500 files/],
    ['with thousands of files (zip)', () => zipOf(many), /more than 500 files/],
    ['with one file twice', () => tarGzOf([...MODEL, { name: 'small/am/final.mdl', content: 'another' }]), /holds "small\/am\/final\.mdl" twice/],
    ['that says it is without end (tar)', () => gzipSync(tarOf([{ name: 'small/am/final.mdl', content: 'x', says: 8_000_000_000 }])), /larger than 768 MB/],
    ['that says it is without end (zip)', () => zipOf([{ name: 'small/am/final.mdl', content: 'x', says: 4_000_000_000 }]), /larger than 768 MB/],
    ['that unpacks to more than it says (zip)', () => zipOf([{ name: 'small/am/final.mdl', content: 'x'.repeat(100_000), says: 10 }]), /unpacked as zip/],
    ['that unpacks to less than it says (zip)', () => zipOf([{ name: 'small/am/final.mdl', content: 'x', says: 1000 }]), /unpacked as zip/],
    ['with control signs in a name', () => tarGzOf([{ name: '\u001b[2Jx\n', type: '2' }]), /"\?\[2Jx\?" is a link/],
    ['with a name longer than any', () => tarGzOf([{ name: 'x', type: 'L', says: 70_000, content: 'y'.repeat(70_000) }]), /longer than any name/],
  ])('%s is refused in words', async (_, make, sentence) => {
    expect(await opened(make())).toMatch(sentence);
  }, 60_000);

  it.each([['tar.gz', tarGzOf(MODEL)], ['zip', zipOf(MODEL)]])('that is a .%s cut short anywhere is refused', async (name, whole) => {
    for (let part = 1; part < 20; part += 1) {
      expect(await opened(whole.subarray(0, Math.floor((whole.length * part) / 20)), `model.${name}`), `${part}`).toEqual(expect.any(String));
    }
  });

  it('with any bytes changed is refused in words or taken whole, and never hangs or throws', async () => {
    const change = fc.array(fc.tuple(fc.nat(), fc.nat(255)), { minLength: 1, maxLength: 8 });
    await fc.assert(fc.asyncProperty(fc.constantFrom(tarGzOf(MODEL), zipOf(MODEL), tarOf(MODEL)), change, async (whole, changes) => {
      const damaged = Buffer.from(whole);
      for (const [at, value] of changes) damaged[at % damaged.length] = value;
      const result = await opened(damaged);
      expect(typeof result === 'string' ? result : result.join(' ')).not.toBe('');
    }), { numRuns: 150 });
  }, 60_000);

  it('with any bytes in the place of a model\'s files is refused in words', () => {
    const file = fc.tuple(fc.constantFrom('am/final.mdl', 'conf/mfcc.conf', 'conf/model.conf', 'graph/HCLr.fst', 'graph/Gr.fst', 'graph/words.txt', 'graph/disambig_tid.int'), fc.uint8Array({ maxLength: 400 }));
    fc.assert(fc.property(fc.array(file, { maxLength: 7 }), (files) => {
      const faults = checkFiles(new Map(files.map(([path, content]) => [path, Uint8Array.from(content)]))).faults;
      expect(faults.length).toBeGreaterThan(0);
      for (const fault of faults) expect(writeFault(fault)).toMatch(/^[a-zA-Z_/.]+: .+\. .+\.$/);
    }));
  });
});
