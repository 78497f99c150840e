import { sayDuration } from '../../clock/sayDuration.ts';
import { reckoning } from '../../reckoning/reckoning.ts';
import { success } from '../../result.ts';
import { celsiusOf } from '../../wood/temperature.ts';
import { ADHESIVE_NAMES, adhesiveInUse, CLASS_BASIS, GLUE_SOURCES, type Label } from '../adhesive.ts';
import { sayReasons, sayRemedy } from '../telling.ts';
import { tonight } from '../tonight.ts';

const COLD_SOURCE = 'cold shop up to twice the clamp time (published); reacting glues twice for every 10 °C (engineering rule, not a standard)';

export const glueTonight = reckoning({
  name: 'glue-tonight',
  about: 'whether a glue will work in this shop this evening, and its times at this temperature',
  inputs: {
    adhesive: { kind: 'choice', options: ADHESIVE_NAMES, say: 'class of the adhesive', default: 'yellow glue' },
    temperature: { kind: 'number', unit: 'degrees', least: -50, most: 150, say: 'temperature of the shop' },
    humidity: { kind: 'number', unit: 'percent', least: 0, most: 100, say: 'humidity of the shop' },
    wood: { kind: 'number', unit: 'degrees', least: -50, most: 150, say: 'temperature of the wood; of the shop when not given', optional: true },
    glue: { kind: 'number', unit: 'degrees', least: -50, most: 150, say: 'temperature of the glue; of the shop when not given', optional: true },
    moisture: { kind: 'number', unit: 'percent', least: 0, most: 60, say: 'moisture of the wood, when known', optional: true },
    scale: { kind: 'choice', options: ['celsius', 'fahrenheit'], say: 'scale of the temperatures', default: 'celsius' },
    open: { kind: 'number', unit: 'minutes', least: 0.5, most: 600, say: 'open time on the label', optional: true },
    clamp: { kind: 'number', unit: 'minutes', least: 1, most: 10_000, say: 'clamp time on the label', optional: true },
    lowest: { kind: 'number', unit: 'degrees', least: -20, most: 150, say: 'lowest temperature on the label', optional: true },
  },
  reckon: ({ adhesive, temperature, humidity, wood, glue, moisture, scale, open, clamp, lowest }) => {
    const own: Partial<Label> = { ...(open === undefined ? {} : { openMinutes: open }), ...(clamp === undefined ? {} : { clampMinutes: clamp }), ...(lowest === undefined ? {} : { lowestC: celsiusOf(lowest, scale) }) };
    const inUse = adhesiveInUse({ kind: adhesive }, own);
    const found = tonight(inUse, {
      air: { tempC: celsiusOf(temperature, scale), humidityPercent: humidity }, ...(wood === undefined ? {} : { woodC: celsiusOf(wood, scale) }),
      ...(glue === undefined ? {} : { glueC: celsiusOf(glue, scale) }), ...(moisture === undefined ? {} : { woodMoisturePercent: moisture }),
    });
    const { times } = found;
    const minutes = (key: string, ms: number) => ({ key, number: ms / 60_000, unit: 'minutes' });
    return success({
      result: [
        { key: 'verdict', text: found.verdict }, { key: 'reasons', text: sayReasons(found.reasons, scale).join('; ') || 'none' },
        ...(found.warm ? [{ key: 'wouldGo', text: sayRemedy(found, scale) }] : []),
        minutes('open', times.openMs), minutes('assembly', times.assemblyMs), minutes('clamp', times.clampMs), minutes('work', times.workMs), minutes('cure', times.cureMs),
        { key: 'stretch', number: times.stretch, unit: 'times the clamp time at 21 °C' },
      ],
      how: [`The coldest of wood, glue and air rules: clamps ${sayDuration(times.clampMs)}.`, ...(found.warm ? ['Times are those at its lowest temperature.'] : []), `Figures of ${inUse.glue.name}: ${CLASS_BASIS}.`, ...(inUse.glue.remark === undefined ? [] : [`${inUse.glue.name}: ${inUse.glue.remark}.`])],
      source: [COLD_SOURCE, ...GLUE_SOURCES],
    });
  },
});
