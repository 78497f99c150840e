/**
 * How well a speech model hears: npm run bench -- hearing [MODEL.tar.gz …] [--share 0.3] [--peer]
 * Every model hears the same recordings through the kiosk's recogniser in Chromium; with --peer so does Debian's pocketsphinx, given the same phrases as
 * a grammar. Right: what was said. Wrong: another phrase of the grammar, which would have been acted on. Refused: anything else. The voices are ones that
 * the model was not trained on; recordings of people come from Debian's packages and are used for this alone.
 */
import { execFileSync } from 'node:child_process';
import { statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { basename, join } from 'node:path';
import { parseArgs } from 'node:util';
import { openEngine } from './hearing/engine.ts';
import type { HearingEngine } from './hearing/engine.ts';
import { heardByPocketsphinx } from './hearing/peer.ts';
import { heldOutSets, realSets } from './hearing/sets.ts';
import type { HearingSet } from './hearing/sets.ts';
import { missingPackages, SoundFolder } from './hearing/sounds.ts';

const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: { share: { type: 'string', default: '1' }, peer: { type: 'boolean', default: false }, mistakes: { type: 'boolean', default: false }, sets: { type: 'string', default: '' } },
});
const models = positionals.length > 0 ? positionals : [join(import.meta.dirname, '..', '..', 'sounds', 'speech-model', 'model.tar.gz')];

installMissing();
const folder = new SoundFolder(join(tmpdir(), 'benchcall-hearing'));
const share = Number(values.share);
const sets = [...heldOutSets(folder, share), ...realSets(folder, share)].filter(({ name }) => new RegExp(values.sets).test(name));
const files = sets.map(({ items }, set) => items.map(({ sound }, at) => folder.keep(`item-${process.pid}-${set}-${at}`, sound)));
const urls = files.map((paths, set) => paths.map((_, at) => `/sound/${set}/${at}`));
const recordings = new Map(files.flatMap((paths, set) => paths.map((path, at) => [urls[set]?.[at] ?? '', path] as const)));

for (const model of models) {
  const engine = await openEngine(model, recordings);
  try {
    await measure(model, engine);
  } finally {
    await engine.close();
  }
}
if (values.peer) sets.forEach((set, index) => print('pocketsphinx', set, heardByPocketsphinx(folder.folder, files[index] ?? [], set.grammar), ''));

async function measure(model: string, { page }: HearingEngine): Promise<void> {
  const loadMs = await page.evaluate(() => window.hearing.load());
  console.log(`${basename(model)}: ${(statSync(model).size / 1e6).toFixed(2)} MB, loaded in ${Math.round(loadMs)} ms`);
  for (const [index, set] of sets.entries()) {
    const unheard = await page.evaluate((phrases) => window.hearing.setGrammar(phrases), [...set.grammar, '[unk]']);
    if (unheard.length > 0) console.log(`    cannot hear: ${unheard.join(' ')}`);
    const heard: string[] = [];
    let tookMs = 0;
    let seconds = 0;
    for (const url of urls[index] ?? []) {
      const result = await page.evaluate((address) => window.hearing.hear(address), url);
      heard.push(result.text);
      tookMs += result.tookMs;
      seconds += result.seconds;
    }
    print(basename(model, '.tar.gz'), set, heard, `  ${(tookMs / 1000 / seconds).toFixed(3)} of real time`);
  }
  console.log(`    engine ${Math.round((await page.evaluate(() => window.hearing.heapBytes())) / 1024 / 1024)} MB`);
}

function print(who: string, set: HearingSet, heard: readonly string[], after: string): void {
  const phrases = new Set(set.grammar);
  const count = { right: 0, wrong: 0, refused: 0 };
  set.items.forEach(({ said }, at) => {
    const text = heard[at] ?? '';
    const outcome = text === said ? 'right' : text.split(' / ').some((each) => phrases.has(each)) ? 'wrong' : said === undefined ? 'right' : 'refused';
    count[outcome] += 1;
    if (values.mistakes && outcome !== 'right') console.log(`      ${outcome}: "${said ?? '(not for the bench)'}" heard as "${text}"`);
  });
  const percent = (part: number) => `${((100 * part) / set.items.length).toFixed(1)} %`.padStart(8);
  console.log(`${who.padEnd(14)} ${set.name.padEnd(28)} n ${String(set.items.length).padStart(3)}  right ${percent(count.right)}  wrong ${percent(count.wrong)}  refused ${percent(count.refused)}${after}`);
}

function installMissing(): void {
  const missing = missingPackages();
  if (missing.length === 0) return;
  const call = ['apt-get', 'install', '-y', '--no-install-recommends', ...missing];
  if (process.getuid?.() !== 0) throw new Error(`this needs Debian packages that are not here; as root: ${call.join(' ')}`);
  execFileSync('apt-get', call.slice(1), { stdio: 'ignore' });
}
