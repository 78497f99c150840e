import { assertNever } from '../result.ts';
import { sayNumber } from '../length/sayNumber.ts';
import { wholeDegrees, type TemperatureScale } from '../wood/temperature.ts';
import type { Reason, Tonight } from './tonight.ts';

/** 'twelve degrees', 'fifty-four degrees Fahrenheit'. */
export function sayDegrees(tempC: number, scale: TemperatureScale): string {
  const degrees = wholeDegrees(tempC, scale);
  return `${sayNumber(degrees)} ${Math.abs(degrees) === 1 ? 'degree' : 'degrees'}${scale === 'fahrenheit' ? ' Fahrenheit' : ''}`;
}

/** All reasons, the weightiest first, each a sentence without its stop; what is too cold is told together. */
export function sayReasons(reasons: readonly Reason[], scale: TemperatureScale): readonly string[] {
  const cold = reasons.filter((reason) => reason.kind === 'too cold');
  const [first] = cold;
  const alike = first !== undefined && cold.length > 1 && cold.every(({ isC }) => isC === first.isC);
  const together = alike ? [sayCold(cold.map(({ what }) => what), first.isC, first.lowestC, scale)] : cold.map(({ what, isC, lowestC }) => sayCold([what], isC, lowestC, scale));
  return [...together, ...reasons.filter((reason) => reason.kind !== 'too cold').map((reason) => sayReason(reason, scale))];
}

function sayCold(what: readonly ('wood' | 'glue' | 'air')[], isC: number, lowestC: number, scale: TemperatureScale): string {
  const named = what.map((one) => (one === 'air' ? 'shop' : one));
  const subject = named.length === 1 ? `the ${named[0] ?? ''} is` : `${named.slice(0, -1).join(', ')} and ${named.at(-1) ?? ''} are`;
  return `${subject} at ${sayDegrees(isC, scale)}, and this glue asks for ${sayDegrees(lowestC, scale)}: colder, it chalks and does not hold`;
}

function sayReason(reason: Exclude<Reason, { kind: 'too cold' }>, scale: TemperatureScale): string {
  switch (reason.kind) {
    case 'stretched': return `clamps stay on ${sayTimes(reason.times)} as long, ${reason.by === 'reacting rule' ? 'by the rule of twice the time for every ten degrees Celsius colder' : 'for a cold shop may need up to twice the time'}`;
    case 'near the limit': return `it is close to the ${sayDegrees(reason.lowestC, scale)} that the glue asks for: keep the heat on until the clamps are off`;
    case 'warm': return `warmth shortens the open time to ${sayNumber(Math.round(reason.openShare * 100))} percent`;
    case 'damp air': return `at ${sayNumber(Math.round(reason.humidityPercent))} percent humidity the water leaves slowly: give the clamps longer`;
    case 'dry air': return `at ${sayNumber(Math.round(reason.humidityPercent))} percent humidity the glue skins over sooner: spread and close quickly`;
    case 'wood too wet': return `the wood is at ${sayNumber(Math.round(reason.percent))} percent moisture, too wet to glue`;
    case 'wood too dry': return `the wood is at ${sayNumber(Math.round(reason.percent))} percent moisture, dry for this glue: it drinks the water, or cures slowly`;
    default: return assertNever(reason);
  }
}

/** 'one point eight times' */
function sayTimes(times: number): string {
  const tenths = Math.round(times * 10);
  return `${sayNumber(Math.floor(tenths / 10))}${tenths % 10 === 0 ? '' : ` point ${sayNumber(tenths % 10)}`} times`;
}

/** The verdict in a few words. */
export function sayVerdict({ verdict }: Pick<Tonight, 'verdict'>): string {
  switch (verdict) {
    case 'go': return 'Go';
    case 'with care': return 'Go, with care';
    case 'do not': return 'Do not glue tonight';
    default: return assertNever(verdict);
  }
}

/** What would make it a go; empty when nothing is wrong with the warmth. */
export function sayRemedy({ warm }: Pick<Tonight, 'warm'>, scale: TemperatureScale): string {
  if (!warm) return '';
  const what = warm.what.length === 3 ? 'wood, glue and shop' : warm.what.map((one) => (one === 'air' ? 'shop' : one)).join(' and ');
  return `Bring ${what} to ${sayDegrees(warm.toC, scale)}, and keep them there until the clamps are off`;
}
