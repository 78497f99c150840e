/**
 * How well the ear hears: npm run bench -- hearing [MODEL.tar.gz …] [--only requests,numbers,real,remarks,false-acts,speed,confusions] [--hours 10] [--share 1] [--learned FOLDER] [--no-peer] [--mistakes] [--table]
 * Every model hears the same recordings through the kiosk's engine, grammar, gate of confidence and parser; Debian's pocketsphinx hears them too, given the
 * same phrases as a grammar. Right: the request that was meant. Asked: the kiosk asks which of two, and one of them is it. Wrong: another request, which
 * would have been acted on. Refused: nothing is done. The voices are ones that the model was not trained on; recordings of people come from Debian's
 * packages and are used for this alone. --share 0.3 takes three in ten of everything, --table prints rows for README.md,
 * --learned adds learned voices that were kept out of training, out of share/kokoro of what sounds/speech-model/recipe/gather.sh has gathered (needs python3-torch).
 */
import { execFileSync } from 'node:child_process';
import { statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { basename, join } from 'node:path';
import { parseArgs } from 'node:util';
import { TALKATIVE } from '../core/talk/benches.ts';
import { engineInNode } from '../../deploy/model/engineInNode.ts';
import { SHIPPED_MODEL } from '../voice/models.ts';
import { measureConfusions } from './hearing/confusions.ts';
import { falseActs } from './hearing/falseActs.ts';
import { Listener } from './hearing/listener.ts';
import { OUTCOMES, outcomeIn } from './hearing/outcome.ts';
import type { Outcome } from './hearing/outcome.ts';
import { heardByPocketsphinx } from './hearing/peer.ts';
import { heldOutSets, learnedSets, realSets } from './hearing/sets.ts';
import type { HearingSet } from './hearing/sets.ts';
import { missingPackages, SoundFolder } from './hearing/sounds.ts';

const { values, positionals } = parseArgs({
  allowPositionals: true, allowNegative: true,
  options: { only: { type: 'string', default: 'requests,numbers,real,remarks,false-acts,speed' }, hours: { type: 'string', default: '10' }, share: { type: 'string', default: '1' }, learned: { type: 'string' }, peer: { type: 'boolean', default: true }, mistakes: { type: 'boolean', default: false }, table: { type: 'boolean', default: false } },
});
const models = positionals.length > 0 ? positionals : [SHIPPED_MODEL];
const only = new Set(values.only.split(','));

installMissing();
const folder = new SoundFolder(join(tmpdir(), 'benchcall-hearing'));
const share = Number(values.share);
const chosen = [...heldOutSets(folder, share), ...realSets(folder, share)].filter(({ part }) => only.has(part));
const sets = values.learned === undefined ? chosen : [...chosen, ...learnedSets(folder, values.learned, share)];
const engine = await engineInNode();
for (const model of models) {
  const listener = await Listener.open(model, engine);
  console.log(`${basename(model)}: ${(statSync(model).size / 1e6).toFixed(2)} MB`);
  for (const set of sets) measure(listener, set);
  if (only.has('false-acts')) quietShop(listener);
  if (only.has('confusions')) console.log(measureConfusions(listener, folder).join(',\n'));
  console.log(`    ${(listener.tookSeconds / Math.max(1, listener.heardSeconds)).toFixed(3)} of real time (of the processor), engine ${(engine.engine.HEAPU8.length / 2 ** 20).toFixed(0)} MB`);
}
if (values.peer) for (const [index, set] of sets.entries()) measurePeer(set, index);
if (only.has('speed')) execFileSync('npx', ['tsx', join(import.meta.dirname, 'hearing-speed.ts')], { stdio: 'inherit' });

function measure(listener: Listener, set: HearingSet): void {
  listener.listenFor(set.sentences, set.phrases);
  print('benchcall', set, set.items.map(({ said, sound }) => {
    const heard = listener.hear(sound());
    return { said, outcome: outcomeIn(set, said, heard), heard: heard.map(({ words }) => words).join(' / ') };
  }));
}

/** It has no measure of its own certainty that it could be asked about: what it hears is what it would do. */
function measurePeer(set: HearingSet, index: number): void {
  const files = set.items.map(({ sound }, at) => folder.keep(`item-${process.pid}-${index}-${at}`, sound()));
  const heard = heardByPocketsphinx(folder.folder, files, set.phrases);
  files.forEach((file) => { folder.forget(file); });
  print('pocketsphinx', set, set.items.map(({ said }, at) => {
    const words = heard[at] ?? '';
    return { said, outcome: outcomeIn(set, said, words === '' ? [] : [{ words, sureness: [], standsOutDb: undefined }]), heard: words };
  }));
}

function print(who: string, set: HearingSet, results: readonly { readonly said: string | undefined; readonly outcome: Outcome; readonly heard: string }[]): void {
  const share = (outcome: Outcome) => ((100 * results.filter((each) => each.outcome === outcome).length) / results.length).toFixed(1);
  const percent = (outcome: Outcome) => `${outcome} ${share(outcome)} %`.padEnd(15);
  if (values.table) console.log(`| ${[`${set.name}${who === 'benchcall' ? '' : `, ${who}`}`, results.length, ...OUTCOMES.map(share)].join(' | ')} |`);
  else console.log(`${who.padEnd(13)} ${set.name.padEnd(32)} n ${String(results.length).padStart(4)}  ${OUTCOMES.map(percent).join('  ')}`);
  if (values.mistakes) for (const { said, outcome, heard } of results) if (outcome !== 'right') console.log(`      ${outcome}: "${said ?? '(not for the bench)'}" heard as "${heard}"`);
}

function quietShop(listener: Listener): void {
  const [set] = heldOutSets(folder, 0);
  if (set === undefined) return;
  listener.listenFor(set.sentences, set.phrases);
  const megabytes = () => (engine.engine.HEAPU8.length / 2 ** 20).toFixed(0);
  const memory = [megabytes()];
  const { seconds, passedSeconds, acts, addresses } = falseActs(listener, folder, TALKATIVE, Number(values.hours), () => memory.push(megabytes()));
  console.log(`not addressed, ${(seconds / 3600).toFixed(1)} h of noise, talk, other languages and music (${(passedSeconds / 3600).toFixed(1)} h passed the gate): ${acts.length} false acts, the address word alone ${addresses} times`);
  console.log(`      memory of the engine at the beginning and after each hour: ${memory.join(', ')} MB`);
  for (const act of acts) console.log(`      acted on "${act}"`);
}

function installMissing(): void {
  const missing = missingPackages();
  if (missing.length === 0) return;
  const call = ['apt-get', 'install', '-y', '--no-install-recommends', ...missing];
  if (process.getuid?.() !== 0) throw new Error(`this needs Debian packages that are not here; as root: ${call.join(' ')}`);
  execFileSync('apt-get', call.slice(1), { stdio: 'ignore' });
}
