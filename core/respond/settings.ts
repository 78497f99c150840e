import type { Response } from '../bench/reply.ts';
import type { State } from '../journal/state.ts';
import { ADDRESS_WORDS, type Settings } from '../journal/settings.ts';
import { PAPERS } from '../layout/paper/paperSize.ts';
import { nanometres, NANOMETRES_PER_INCH, NANOMETRES_PER_MILLIMETRE } from '../length/length.ts';
import type { Rounding } from '../length/rounding.ts';
import { sayDuration } from '../clock/sayDuration.ts';
import { sayNumber, sayOrdinal } from '../length/sayNumber.ts';
import { sayLength } from '../length/say.ts';
import { sayTolerance } from '../work/wording.ts';
import { refuse, write } from './plain.ts';
import { sayList, sentence } from './saying.ts';

const LIGHTEST_CLAMP_LBF = 20;
const STRONGEST_CLAMP_LBF = 20_000;
const THINNEST_SHAVING = NANOMETRES_PER_INCH / 2000;
const THICKEST_SHAVING = (NANOMETRES_PER_INCH * 30) / 1000;
const SHORTEST_STICK = 6 * NANOMETRES_PER_INCH;
const LONGEST_STICK = 96 * NANOMETRES_PER_INCH;

/** As much as the journal takes of either size of a honing guide, in nanometres. */
const MOST_OF_A_GUIDE = 100_000_000;

/** Changes one setting or several, and says what holds from now on. */
export function changeSettings(setting: Partial<Settings>, unit: Rounding['unit'] = 'inch'): Response {
  const said: string[] = [];
  if (setting.rounding) said.push(`sizes are said to ${sayRounding(setting.rounding)}`);
  if (setting.volume !== undefined) {
    if (!Number.isInteger(setting.volume) || setting.volume < 0 || setting.volume > 10) return refuse('Loudness goes from zero to ten.');
    said.push(setting.volume === 0 ? 'I am mute; the words stay on the screen' : `loudness ${sayNumber(setting.volume)}`);
  }
  if (setting.speech) said.push(setting.speech === 'slow' ? 'I speak slowly' : 'I speak at the usual pace');
  if (setting.theme) said.push(`the screen is ${setting.theme}`);
  if (setting.textPercent) said.push(`text at ${sayNumber(setting.textPercent)} percent`);
  if (setting.addressWord) {
    if (!ADDRESS_WORDS.includes(setting.addressWord)) return refuse(`Call me ${sayList(ADDRESS_WORDS, 'or')}.`);
    said.push(`call me ${setting.addressWord}`);
  }
  said.push(...saySound(setting));
  if (setting.breakSeconds !== undefined) {
    if (!(setting.breakSeconds >= 10 && setting.breakSeconds <= 3600)) return refuse('The break clock goes from ten seconds to one hour.');
    said.push(`a look at the edge every ${sayDuration(setting.breakSeconds * 1000)}`);
  }
  if (setting.paper) said.push(`sheets are cut for ${PAPERS[setting.paper].say} paper`);
  if (setting.instrumentUnit !== undefined) said.push(`the caliper reads ${setting.instrumentUnit === 'inch' ? 'inches' : 'millimetres'} where it does not send its unit`);
  if ((setting.guideRoller ?? 0) > MOST_OF_A_GUIDE || (setting.guideAxis ?? 0) > MOST_OF_A_GUIDE) return refuse('No honing guide is larger than four inches: measure its roller across, and from its axle up to the blade.');
  if (setting.guideRoller !== undefined) said.push('the radius of the guide’s roller is kept');
  if (setting.guideAxis !== undefined) said.push('how far the guide’s axle lies under the blade is kept');
  if (setting.clampLbf !== undefined) {
    if (!(setting.clampLbf >= LIGHTEST_CLAMP_LBF && setting.clampLbf <= STRONGEST_CLAMP_LBF)) return refuse('A clamp presses with twenty pounds to twenty thousand.');
    said.push(`one of your clamps presses ${sayNumber(Math.round(setting.clampLbf))} pounds`);
  }
  const truing = sayTruing(setting, unit);
  if (typeof truing === 'string') return refuse(truing);
  said.push(...truing);
  if (setting.temperature) said.push(`degrees are ${setting.temperature === 'celsius' ? 'Celsius' : 'Fahrenheit'}`);
  if (said.length === 0) return refuse('No setting was named.');
  return write([{ kind: 'setting changed', setting: setting.clampLbf === undefined ? setting : { ...setting, clampLbf: Math.round(setting.clampLbf) } }], { say: said.map(sentence).join(' '), signal: 'done' });
}

/** What holds from now on of hearing, and of speaking in a loud shop. */
function saySound({ listening, speakUp, waitForLull, standing, microphone }: Partial<Settings>): readonly string[] {
  return [
    ...(listening === undefined ? [] : [listening ? 'I listen for my word' : 'I listen only while the listen key is used']),
    ...(speakUp === undefined ? [] : [speakUp ? 'I speak up while the shop is loud' : 'I speak at the loudness that you set, however loud the shop is']),
    ...(waitForLull === undefined ? [] : [waitForLull ? 'what can wait is called out between the blows' : 'the clocks call out at once, also into hammering']),
    ...(standing === undefined ? [] : [`I speak for someone ${standing}`]),
    ...(microphone === undefined ? [] : [microphone === '' ? 'I listen with the microphone that the system prefers' : `I listen with the microphone ${microphone}`]),
  ];
}

/** What the plane takes, and how long the winding sticks are; or why it cannot be so. */
function sayTruing({ shaving, stick }: Partial<Settings>, unit: Rounding['unit']): readonly string[] | string {
  if (shaving !== undefined && !(shaving >= THINNEST_SHAVING && shaving <= THICKEST_SHAVING)) return 'A shaving is from half a thousandth to thirty thousandths of an inch. Tell it anew.';
  if (stick !== undefined && !(stick >= SHORTEST_STICK && stick <= LONGEST_STICK)) return 'Winding sticks are from six inches to eight feet long. Tell it anew.';
  return [...(shaving === undefined ? [] : [`one shaving is ${sayTolerance(shaving, unit)}`]), ...(stick === undefined ? [] : [`the winding sticks are ${sayLength(stick, unit === 'inch' ? { unit, denominator: 16 } : { unit, step: nanometres(NANOMETRES_PER_MILLIMETRE) })} long`])];
}

/** 'the nearest thirty-second of an inch', 'half a millimetre' */
function sayRounding(rounding: Rounding): string {
  return rounding.unit === 'inch' ? `the nearest ${sayOrdinal(rounding.denominator)} of an inch` : `steps of ${sayLength(rounding.step, { unit: 'millimetre', step: rounding.step })}`;
}

/** The same settings, one step louder or quieter; undefined at the end of the scale. */
export function nextVolume(state: State, step: 1 | -1): number | undefined {
  const volume = state.settings.volume + step;
  return volume < 0 || volume > 10 ? undefined : volume;
}
