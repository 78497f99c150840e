import type { Length } from '../../length/length.ts';
import type { InputFault } from '../../reckoning/reckoning.ts';
import { failure, success, type Result } from '../../result.ts';
import { equilibriumMoisture } from '../equilibrium.ts';
import { atRingAngle, coefficientsOf, GRAINS, RING_DEGREES, type Grain } from '../movement.ts';
import { seasonsOf, type Seasons } from '../seasons.ts';
import { speciesCalled, SPECIES_NAMES } from '../species.ts';
import { celsiusOf, type TemperatureScale } from '../temperature.ts';

/** Inputs that several reckonings of this folder share. */
export const SPECIES_FIELD = { kind: 'choice', options: SPECIES_NAMES, say: 'wood', default: 'hard maple' } as const;
export const GRAIN_FIELD = { kind: 'choice', options: GRAINS, say: 'how the growth rings stand to the face', default: 'flat-sawn' } as const;
export const RINGS_FIELD = { kind: 'number', unit: 'degrees', least: 0, most: 90, say: 'angle of the growth rings to the face instead of the grain: 0 flat-sawn, 90 quarter-sawn', optional: true } as const;
export const SCALE_FIELD = { kind: 'choice', options: ['celsius', 'fahrenheit'], say: 'scale of the temperatures', default: 'celsius' } as const;

export function temperatureField<const Say extends string>(say: Say) {
  return { kind: 'number', unit: 'degrees', least: -50, most: 250, say } as const;
}

export function humidityField<const Say extends string>(say: Say) {
  return { kind: 'number', unit: 'percent', least: 0, most: 100, say } as const;
}

export function moistureField<const Say extends string>(say: Say) {
  return { kind: 'number', unit: 'percent', least: 0, most: 30, say } as const;
}

export const MOVING_FIELDS = { species: SPECIES_FIELD, grain: GRAIN_FIELD, rings: RINGS_FIELD } as const;

export interface MovingInput {
  readonly species: string;
  readonly grain: Grain;
  readonly rings: number | undefined;
}

/** Part of a size that changes for one percent of moisture, and how that was found. */
export interface PerPoint {
  readonly coefficient: number;
  readonly ringDegrees: number;
  readonly how: string;
  readonly remarks: readonly string[];
}

export function perPointOf({ species: name, grain, rings }: MovingInput): Result<PerPoint, InputFault> {
  const species = speciesCalled(name);
  const across = species && coefficientsOf(species);
  if (!species || !across) return failure({ key: 'species', message: `The table has no ${name}.` });
  const ringDegrees = rings ?? RING_DEGREES[grain];
  const coefficient = atRingAngle(across, ringDegrees);
  const ground = across.by === 'table' ? species.coefficient?.ground : species.shrinkage?.ground;
  return success({
    coefficient, ringDegrees,
    how: `${species.name}: ${(coefficient * 100).toFixed(3)} percent of the size for one percent of moisture, rings at ${ringDegrees} degrees to the face; coefficients ${across.by === 'table' ? 'from the table' : 'computed from the shrinkage, 1 / (3000 / S − 20)'}, ${ground ?? 'from memory'}.`,
    remarks: species.remark === undefined ? [] : [`${species.name}: ${species.remark}.`],
  });
}

/** The year of a piece, as it is asked on the command line: its own moisture, and the air of the driest and the dampest month. */
export const YEAR_FIELDS = {
  moistureNow: moistureField('moisture of the wood as it is made'),
  dryTemperature: temperatureField('temperature of the driest month, in the house'),
  dryHumidity: humidityField('humidity of the driest month'),
  dampTemperature: temperatureField('temperature of the dampest month'),
  dampHumidity: humidityField('humidity of the dampest month'),
  scale: SCALE_FIELD,
} as const;

export interface YearInput {
  readonly moistureNow: number;
  readonly dryTemperature: number;
  readonly dryHumidity: number;
  readonly dampTemperature: number;
  readonly dampHumidity: number;
  readonly scale: TemperatureScale;
}

export interface ReckonedYear {
  readonly driest: number;
  readonly dampest: number;
  readonly seasons: Seasons;
}

export function yearOf(width: Length, coefficient: number, input: YearInput): Result<ReckonedYear, InputFault> {
  const dry = equilibriumMoisture({ tempC: celsiusOf(input.dryTemperature, input.scale), humidityPercent: input.dryHumidity });
  if (!dry.ok) return failure({ ...dry.fault, key: dry.fault.key === 'humidity' ? 'dryHumidity' : 'dryTemperature' });
  const damp = equilibriumMoisture({ tempC: celsiusOf(input.dampTemperature, input.scale), humidityPercent: input.dampHumidity });
  if (!damp.ok) return failure({ ...damp.fault, key: damp.fault.key === 'humidity' ? 'dampHumidity' : 'dampTemperature' });
  const seasons = seasonsOf(width, coefficient, { now: input.moistureNow, driest: dry.value, dampest: damp.value });
  return seasons.ok ? success({ driest: dry.value, dampest: damp.value, seasons: seasons.value }) : failure({ ...seasons.fault, key: 'dryHumidity' });
}
