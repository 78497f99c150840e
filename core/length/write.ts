import { lengthFigure, type LengthFigure } from './figure.ts';
import type { Length } from './length.ts';
import type { Rounding } from './rounding.ts';

/** '31 5/8 in', '7/16 in scant', '803.5 mm full', '-1/4 in', '0 in'. Read back by parseLength. */
export function writeLength(length: Length, rounding: Rounding): string {
  const figure = lengthFigure(length, rounding);
  const lost = figure.lost === 'exact' ? '' : ` ${figure.lost}`;
  return `${figure.negative ? '-' : ''}${writeFigure(figure)} ${figure.unit === 'inch' ? 'in' : 'mm'}${lost}`;
}

function writeFigure({ whole, numerator, denominator, decimals }: LengthFigure): string {
  if (decimals !== undefined) return `${whole}.${decimals}`;
  if (numerator === 0) return String(whole);
  const fraction = `${numerator}/${denominator}`;
  return whole === 0 ? fraction : `${whole} ${fraction}`;
}
