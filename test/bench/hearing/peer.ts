import { execFileSync } from 'node:child_process';
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

const MODEL = '/usr/share/pocketsphinx/model/en-us';

/** What Debian's pocketsphinx hears in raw recordings with the phrases as a JSGF grammar; '' where it hears none. Words that its dictionary lacks are left out. */
export function heardByPocketsphinx(folder: string, recordings: readonly string[], phrases: readonly string[]): readonly string[] {
  const known = new Set(readFileSync(join(MODEL, 'cmudict-en-us.dict'), 'latin1').split('\n').map((line) => line.split(' ', 1)[0] ?? ''));
  const rules = phrases.filter((phrase) => phrase.split(' ').every((word) => known.has(word)));
  writeFileSync(join(folder, 'peer.jsgf'), `#JSGF V1.0;\ngrammar peer;\npublic <said> = ${rules.join(' | ')} ;\n`);
  writeFileSync(join(folder, 'peer.ctl'), `${recordings.map((path) => path.replace(/\.raw$/, '')).join('\n')}\n`);
  execFileSync('pocketsphinx_batch', ['-hmm', join(MODEL, 'en-us'), '-dict', join(MODEL, 'cmudict-en-us.dict'), '-jsgf', join(folder, 'peer.jsgf'), '-adcin', 'yes', '-adchdr', '0',
    '-cepext', '.raw', '-ctl', join(folder, 'peer.ctl'), '-hyp', join(folder, 'peer.hyp')], { stdio: 'ignore' });
  return readFileSync(join(folder, 'peer.hyp'), 'utf8').trimEnd().split('\n').map((line) => line.replace(/ \([^)]*\)$/, '').trim());
}
