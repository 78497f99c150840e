import { sayNumber } from '../length/sayNumber.ts';

/** 'nine percent', 'nine point five percent' */
export function sayPercent(percent: number): string {
  const tenths = Math.round(percent * 10);
  return `${sayNumber(Math.floor(tenths / 10))}${tenths % 10 === 0 ? '' : ` point ${sayNumber(tenths % 10)}`} percent`;
}
