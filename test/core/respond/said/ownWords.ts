import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

/** Where the kiosk says things of its own, which no request answers: what was saved, what could not be kept, a fault of its own. */
const FOLDERS = ['host', 'store'];
const KIOSK = join(import.meta.dirname, '..', '..', '..', '..', 'kiosk');
/** `say: '…'`, `const say = '…'`, `say: \`…\``, and the reasons for which something was not kept, which are said. */
const SAID = /(?:\bsay\b\s*[:=]\s*|new NotKept\()(?:'((?:[^'\\]|\\.)*)'|`((?:[^`\\]|\\.)*)`)/g;
/** What stands for what is put in. */
const PUT_IN = 'layout of the leg';

/** Read out of its own sources, so that none is forgotten; what is put in at the time is said as something of the kind. */
export function wordsOfTheKioskItself(): readonly string[] {
  return FOLDERS.flatMap((folder) => readdirSync(join(KIOSK, folder)).filter((file) => file.endsWith('.ts')).flatMap((file) => saidIn(readFileSync(join(KIOSK, folder, file), 'utf8'))));
}

function saidIn(source: string): readonly string[] {
  return [...source.matchAll(SAID)].map(([, quoted, template]) => (quoted ?? template ?? '').replaceAll(/\$\{(?:[^{}]|\{[^{}]*\})*\}/g, PUT_IN).replaceAll('\\\'', '\'')).filter((text) => text !== '');
}
