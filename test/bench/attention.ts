/**
 * The listening around the recogniser: npm run bench -- attention [PART …] [--share 0.3] [--minutes 30] [--hours 24] [--word bench] [--place 10]
 * Needs Debian's espeak-ng, flite and sox. Voices are synthetic: the figures compare settings with each other and promise nothing about a person.
 */
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { ADDRESS_WORDS } from '../../core/journal/settings.ts';
import { heardFrom, PLACES, wokenByRadio } from './attention/address.ts';
import { blowsAlone, heardAfterBlows } from './attention/blows.ts';
import { cpuShare, memoryOfHours } from './attention/cost.ts';
import { ownVoiceHeard } from './attention/ownVoice.ts';
import { NodeEngine } from '../voice/earInNode.ts';
import { SoundFolder } from './hearing/sounds.ts';

const { values, positionals } = parseArgs({ allowPositionals: true, options: { share: { type: 'string', default: '1' }, minutes: { type: 'string', default: '30' }, hours: { type: 'string', default: '24' }, word: { type: 'string' }, place: { type: 'string', default: '' } } });
const share = Number(values.share);
const words = ADDRESS_WORDS.filter((word) => values.word === undefined || word === values.word);
const minutes = Number(values.minutes);
const folder = () => new SoundFolder(join(tmpdir(), 'benchcall-attention'));

const PARTS: Readonly<Record<string, () => Promise<void> | void>> = {
  async distance() {
    const engine = await NodeEngine.start();
    for (const place of PLACES.filter(({ name }) => new RegExp(values.place).test(name))) heardFrom(place, engine, folder(), share, words);
  },
  async radio() {
    wokenByRadio(await NodeEngine.start(), folder(), minutes, words);
  },
  async 'own-voice'() {
    ownVoiceHeard(await NodeEngine.start(), share);
  },
  async blows() {
    const engine = await NodeEngine.start();
    blowsAlone(engine, 20);
    heardAfterBlows(engine, folder(), share);
  },
  cpu: cpuShare,
  memory: () => memoryOfHours(folder(), Number(values.hours)),
};

const unknown = positionals.find((part) => PARTS[part] === undefined);
if (unknown !== undefined) throw new Error(`"${unknown}" is no part of this benchmark: choose of ${Object.keys(PARTS).join(', ')}`);
for (const part of positionals.length > 0 ? positionals : Object.keys(PARTS)) await PARTS[part]?.();
