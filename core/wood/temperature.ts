/** Temperatures are kept in degrees Celsius; people say them in either scale. */
export type TemperatureScale = 'celsius' | 'fahrenheit';

/** The air of a place: temperature in degrees Celsius, relative humidity in percent. */
export interface Air {
  readonly tempC: number;
  readonly humidityPercent: number;
}

/** Exact by definition (NIST SP 811, B.9). */
export function celsiusOf(degrees: number, scale: TemperatureScale): number {
  return scale === 'celsius' ? degrees : ((degrees - 32) * 5) / 9;
}

export function degreesIn(tempC: number, scale: TemperatureScale): number {
  return scale === 'celsius' ? tempC : (tempC * 9) / 5 + 32;
}

/** '5 °C', '41 °F': to the whole degree, as a shop's thermometer is read. */
export function writeTemperature(tempC: number, scale: TemperatureScale): string {
  return `${wholeDegrees(tempC, scale)} °${scale === 'celsius' ? 'C' : 'F'}`;
}

export function wholeDegrees(tempC: number, scale: TemperatureScale): number {
  return Math.round(degreesIn(tempC, scale)) || 0;
}
