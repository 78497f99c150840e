/**
 * Stage 6: one archive, without words: the kiosk gives the model those of the dictionary.
 * tsx sounds/speech-model/recipe/pack.ts MODEL_FOLDER ARCHIVE.tar.gz
 */
import { execFileSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { copyFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';

const [folder = '', archive = ''] = process.argv.slice(2);
if (folder === '' || archive === '') throw new Error('tsx sounds/speech-model/recipe/pack.ts MODEL_FOLDER ARCHIVE.tar.gz');

copyFileSync(join(import.meta.dirname, '..', 'LICENCES.txt'), join(folder, 'LICENCES.txt'));
// The same files give the same archive: in order, without times or owners.
const options = ['--sort=name', '--mtime=@0', '--owner=0', '--group=0', '--numeric-owner', '--mode=u=rwX,go=rX', '--transform=s,^\\.,bench,'];
const packed = gzipSync(execFileSync('tar', [...options, '-cf', '-', '-C', folder, './LICENCES.txt', './am', './conf'], { maxBuffer: 2 ** 28 }), { level: 9 });
writeFileSync(archive, packed);
console.log(`${archive}: ${packed.length} bytes, SHA-256 ${createHash('sha256').update(packed).digest('hex')}`);
