import type { InputFault } from '../reckoning/reckoning.ts';
import { failure, success, type Result } from '../result.ts';

/** By two weighings: (wet − dry) / dry × 100. Any unit of mass, the same for both. Faults: nothing weighed; dry heavier than wet. */
export function ovenDryMoisture(wet: number, dry: number): Result<number, InputFault> {
  if (!(dry > 0)) return failure({ key: 'dry', message: 'The dry weight is more than nothing.' });
  if (!(wet >= dry)) return failure({ key: 'wet', message: `It weighed ${wet} before and ${dry} after the oven: wood loses weight as it dries. Look at the weighings again.` });
  return success(((wet - dry) / dry) * 100);
}

/** Most resistance meters are calibrated at about 70 °F (common practice; its manual says). */
export const METER_CALIBRATED_C = 21;
/** Half a percent of moisture for 10 °F (5.6 °C): add when the wood is colder than the calibration (Wood Handbook, chapter 13). */
const POINTS_PER_KELVIN = 0.5 / 5.6;

export interface CorrectedReading {
  readonly percent: number;
  /** A resistance meter reads true from 6 to 30 percent (Wood Handbook, chapter 13). */
  readonly reliable: boolean;
}

/** The reading of a resistance meter, corrected for the temperature of the wood. Readings from 0 to 60. */
export function correctMeter(readingPercent: number, woodTempC: number, calibratedC = METER_CALIBRATED_C): CorrectedReading {
  const percent = Math.max(0, readingPercent + (calibratedC - woodTempC) * POINTS_PER_KELVIN);
  return { percent, reliable: readingPercent >= 6 && readingPercent <= 30 };
}
