import { reckoning } from '../../reckoning/reckoning.ts';
import { success } from '../../result.ts';
import { gritSequence } from '../grit.ts';
import { microBevelGrowth } from '../microBevel.ts';
import { IRON_SETTINGS, PLANES } from '../planeIron.ts';
import { minutesWonByHoning } from '../upkeep.ts';
import { angleField } from './angles.ts';

export const microBevel = reckoning({
  name: 'micro-bevel',
  about: 'how a micro-bevel grows, and after how many honings grinding pays',
  inputs: {
    ground: { ...angleField('angle it is ground at'), default: '25' },
    honed: { ...angleField('angle it is honed at'), default: '30' },
    thickness: { kind: 'length', say: 'thickness of the blade', default: '1/8 in' },
    setBack: { kind: 'length', say: 'what one honing takes off the edge, along the blade (common practice, no source)', default: '0.004 in' },
    grindAt: { kind: 'length', say: 'length of the micro-bevel at which you grind again', default: '1/16 in' },
  },
  reckon: ({ ground, honed, thickness, setBack, grindAt }) => {
    const found = microBevelGrowth({ groundDegrees: ground, honedDegrees: honed, thickness }, setBack, grindAt);
    if (!found.ok) return found;
    return success({
      result: [{ key: 'bevel', length: found.value.bevelLength }, { key: 'growthEachHoning', length: found.value.growthEach }, { key: 'honingsToGrinding', number: found.value.honingsToGrinding, unit: 'honings' }],
      how: ['m = x · sin α / sin(β − α), with x what was honed off along the blade since it was ground.'],
      source: ['law of sines', 'set-back of a honing: common practice, no source'],
    });
  },
});

export const grits = reckoning({
  name: 'grit-sequence',
  about: 'which of the stones owned to use, in order, and where a step is too wide',
  inputs: {
    first: { kind: 'number', unit: 'grit', least: 80, most: 30_000, say: 'a stone', default: '1000' },
    second: { kind: 'number', unit: 'grit', least: 80, most: 30_000, say: 'another', optional: true },
    third: { kind: 'number', unit: 'grit', least: 80, most: 30_000, say: 'another', optional: true },
    fourth: { kind: 'number', unit: 'grit', least: 80, most: 30_000, say: 'another', optional: true },
    for: { kind: 'choice', options: ['refresh', 'hone', 'grind'], say: 'what the edge wants', default: 'hone' },
  },
  reckon: ({ first, second, third, fourth, for: care }) => {
    const found = gritSequence([first, second, third, fourth].filter((grit) => grit !== undefined), care);
    if (!found.ok) return found;
    const { grits: order, gaps } = found.value;
    return success({
      result: [{ key: 'order', text: order.join(', ') }],
      how: ['Coarse to fine; each until the scratches of the one before are gone and the burr is felt all along.'], source: ['common practice, no source'],
      warnings: gaps.map(({ from, to, between }) => `From ${from} to ${to} is a wide step: a stone of about ${between} between them saves time.`),
    });
  },
});

export const capIron = reckoning({
  name: 'cap-iron',
  about: 'how far the cap iron stands back, and what shaving the plane is for',
  inputs: { plane: { kind: 'choice', options: PLANES, say: 'plane' } },
  reckon: ({ plane }) => {
    const { capIronBack, shaving: [least, most], source } = IRON_SETTINGS[plane];
    return success({ result: [{ key: 'setBack', length: capIronBack }, { key: 'shavingLeast', length: least }, { key: 'shavingMost', length: most }], how: ['Closer for wild grain, further for coarse work.'], source: [source] });
  },
});

export const honingPays = reckoning({
  name: 'honing-pays',
  about: 'whether honing now saves time over going on with a dull edge',
  inputs: {
    minutesLeft: { kind: 'number', unit: 'minutes', least: 0, most: 1000, say: 'cutting that is still to do, with a keen edge' },
    slower: { kind: 'number', unit: 'percent', least: 0, most: 300, say: 'how much slower the dull edge cuts', default: '30' },
    honing: { kind: 'number', unit: 'minutes', least: 1, most: 60, say: 'what honing takes', default: '8' },
  },
  reckon: ({ minutesLeft, slower, honing }) => {
    const won = minutesWonByHoning(minutesLeft * (1 + slower / 100), slower, honing);
    return success({
      result: [{ key: 'pays', text: won > 0 ? 'yes' : 'no' }, { key: 'minutesWon', number: won, unit: 'minutes' }],
      how: ['What the dull edge costs more, less what honing takes. Torn grain and slips are not in it: a dull edge needs more force and is the more dangerous one.'], source: ['arithmetic; the percentage is the maker’s own'],
    });
  },
});
