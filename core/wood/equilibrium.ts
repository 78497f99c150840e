import type { InputFault } from '../reckoning/reckoning.ts';
import { failure, success, type Result } from '../result.ts';
import { degreesIn, type Air } from './temperature.ts';

/** The printed table runs from 30 to 210 °F and from 5 to 95 percent (Wood Handbook, Table 4-2); down to dry air the equation falls to nothing. */
export const AIR_RANGE = { coldestC: -1.2, warmestC: 99, dampestPercent: 95 } as const;

export const EQUILIBRIUM_SOURCE = 'Hailwood and Horrobin 1946 in the form of Simpson, FPL-RN-0268 (1998); USDA Wood Handbook, chapter 4, equation and Table 4-2';

/** Coefficients of the equation as powers of the temperature: constant, first, second. */
interface Coefficients {
  readonly w: readonly [number, number, number];
  readonly k: readonly [number, number, number];
  readonly k1: readonly [number, number, number];
  readonly k2: readonly [number, number, number];
}

/** Simpson, FPL-RN-0268, temperature in degrees Celsius. */
const BY_CELSIUS: Coefficients = {
  w: [349, 1.29, 0.0135], k: [0.805, 0.000736, -0.00000273], k1: [6.27, -0.00938, -0.000303], k2: [1.91, 0.0407, -0.000293],
};

/** Wood Handbook, chapter 4, temperature in degrees Fahrenheit (from memory; agrees with the printed table by its rounding). */
const BY_FAHRENHEIT: Coefficients = {
  w: [330, 0.452, 0.00415], k: [0.791, 0.000463, -0.000000844], k1: [6.34, 0.000775, -0.0000935], k2: [1.09, 0.0284, -0.0000904],
};

/**
 * The moisture, in percent, that wood comes to in this air when it is left long enough. Within about 0.1 of the printed table; species, history and stress
 * move real wood by up to a point. Fault outside the table: colder than -1.2 °C, hotter than 99 °C, over 95 percent humidity.
 */
export function equilibriumMoisture(air: Air): Result<number, InputFault> {
  const fault = airFault(air);
  return fault === undefined ? success(equation(air.humidityPercent, air.tempC, BY_CELSIUS)) : failure(fault);
}

/** The same by the coefficients for degrees Fahrenheit, as the table was printed; the two differ by 0.03 at most. */
export function equilibriumMoistureByFahrenheit(air: Air): Result<number, InputFault> {
  const fault = airFault(air);
  return fault === undefined ? success(equation(air.humidityPercent, degreesIn(air.tempC, 'fahrenheit'), BY_FAHRENHEIT)) : failure(fault);
}

function airFault({ tempC, humidityPercent }: Air): InputFault | undefined {
  const { coldestC, warmestC, dampestPercent } = AIR_RANGE;
  if (!(humidityPercent >= 0 && humidityPercent <= dampestPercent)) {
    return { key: 'humidity', message: `The humidity is ${humidityPercent} percent, and the table goes from 0 to ${dampestPercent}. Above that the air is near fog, and wood goes on taking up water.` };
  }
  if (!(tempC >= coldestC && tempC <= warmestC)) {
    return { key: 'temperature', message: 'The table goes from minus one to ninety-nine degrees Celsius (30 to 210 Fahrenheit). Give a temperature in between.' };
  }
  return undefined;
}

/** EMC = (1800 / W) · [ K h / (1 − K h) + (K1 K h + 2 K1 K2 K² h²) / (1 + K1 K h + K1 K2 K² h²) ], h the humidity as a fraction. */
function equation(humidityPercent: number, degrees: number, { w, k, k1, k2 }: Coefficients): number {
  const at = ([constant, first, second]: readonly [number, number, number]): number => constant + first * degrees + second * degrees ** 2;
  const kh = (at(k) * humidityPercent) / 100;
  const [one, two] = [at(k1) * kh, at(k1) * at(k2) * kh ** 2];
  return (1800 / at(w)) * (kh / (1 - kh) + (one + 2 * two) / (1 + one + two));
}
