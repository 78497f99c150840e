import { success, type Result } from '../result.ts';
import { lengthFault, type LengthFault } from './fault.ts';
import type { Length } from './length.ts';
import { parseLength } from './parseWritten.ts';

/** What an instrument that types sent, as a length. */
export interface InstrumentReading {
  readonly length: Length;
  /** The unit stood in what was typed; else it was taken from the setting. */
  readonly unitWritten: boolean;
}

const EXPECTED = 'a number as a caliper types it, such as 82.55, +3.2500 in or 0,05 mm';
const SENT = /^([+-]?)\s*(\d[\d\s./,-]*|[.,]\d+)\s*([a-z]*|["'])$/i;

/**
 * Reads what a caliper or a tape gauge types: a sign or none, leading noughts, a decimal point or a comma, a unit or none, or inches with a fraction.
 * Unlike a person's comma, an instrument's never means thousands. Exact to the nanometre.
 */
export function parseReading(text: string, unitWhenNone: 'inch' | 'millimetre'): Result<InstrumentReading, LengthFault> {
  const found = text.trim();
  const match = SENT.exec(found);
  if (match === null) return lengthFault(found, 'that is not what an instrument types', EXPECTED);
  const [, sign = '', number = '', unit = ''] = match;
  const plain = `${sign === '-' ? '-' : ''}${number.replace(',', '.').trim()}${unit === '' ? '' : ` ${unit}`}`;
  const read = parseLength(plain, unitWhenNone);
  return read.ok ? success({ length: read.value, unitWritten: unit !== '' || number.includes('/') }) : read;
}

/** Whether a line has the form of a reading at all, whatever its unit. */
export function looksLikeReading(text: string): boolean {
  return parseReading(text, 'millimetre').ok;
}
