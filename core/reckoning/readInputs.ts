import type { Length } from '../length/length.ts';
import { parseLength } from '../length/parseWritten.ts';
import { assertNever, failure, success, type Result } from '../result.ts';
import type { Field, Fields, InputFault, Value, Values } from './reckoning.ts';

const MOST_IN_LIST = 40;

/**
 * Reads what was typed for each input. All faults at once; nothing is guessed. Lengths without a unit take `unit`, and are refused without
 * one, for a bare 3 may be inches or millimetres.
 */
export function readInputs(fields: Fields, given: Readonly<Record<string, string>>, unit?: 'inch' | 'millimetre'): Result<Values, readonly InputFault[]> {
  const faults: InputFault[] = Object.keys(given).filter((key) => !Object.hasOwn(fields, key))
    .map((key) => ({ key, message: `nothing here is called ${key}. Expected one of: ${Object.keys(fields).join(', ')}.` }));
  const values: Record<string, Value> = {};
  for (const [key, field] of Object.entries(fields)) {
    const typed = given[key]?.trim();
    const text = typed === undefined || typed === '' ? field.default : typed;
    if (text === undefined) {
      if (field.optional !== true) faults.push({ key, message: `${field.say} is missing. Expected ${expectedOf(field)}.` });
      continue;
    }
    const read = readOne(field, text, unit);
    if (read.ok) values[key] = read.value;
    else faults.push({ key, message: read.fault });
  }
  return faults.length > 0 ? failure(faults) : success(values);
}

/** What may be typed for an input: 'a length', 'a number of degrees from 1 to 89', 'one of: square, mitred'. */
export function expectedOf(field: Field): string {
  switch (field.kind) {
    case 'length': return 'a length such as 1 1/4 in or 32 mm';
    case 'lengths': return 'lengths with commas between, such as 1/4 in, 3/8 in';
    case 'number': return `a ${field.whole ? 'whole ' : ''}number${field.unit === '' ? '' : ` (${field.unit})`} from ${field.least} to ${field.most}`;
    case 'choice': return `one of: ${field.options.join(', ')}`;
    case 'words': return `words such as ${field.such}`;
    default: return assertNever(field);
  }
}

function readOne(field: Field, text: string, unit: 'inch' | 'millimetre' | undefined): Result<Value, string> {
  switch (field.kind) {
    case 'length': return readLength(text, unit, field.mayBeNegative === true);
    case 'lengths': return readList(text, unit, field.mayBeNegative === true);
    case 'number': return readNumber(field, text);
    case 'choice': return field.options.includes(text) ? success(text) : failure(`“${text}” is none of them. Expected ${expectedOf(field)}.`);
    case 'words': return success(text);
    default: return assertNever(field);
  }
}

function readLength(text: string, unit: 'inch' | 'millimetre' | undefined, mayBeNegative: boolean): Result<Length, string> {
  const read = parseLength(text, unit);
  if (!read.ok) return failure(read.fault.message);
  if (read.value < 0 && !mayBeNegative) return failure(`“${text}” is less than nothing. Expected a length of nothing or more.`);
  return read;
}

function readList(text: string, unit: 'inch' | 'millimetre' | undefined, mayBeNegative: boolean): Result<readonly Length[], string> {
  if (/^none$/iu.test(text)) return success([]);
  const items = text.split(',').map((item) => item.trim()).filter((item) => item !== '');
  if (items.length > MOST_IN_LIST) return failure(`that is more than ${MOST_IN_LIST} lengths.`);
  const lengths: Length[] = [];
  for (const item of items) {
    const read = readLength(item, unit, mayBeNegative);
    if (!read.ok) return read;
    lengths.push(read.value);
  }
  return success(lengths);
}

function readNumber(field: Extract<Field, { kind: 'number' }>, text: string): Result<number, string> {
  const number = Number(text);
  const sound = /^[+-]?(?:\d+\.?\d*|\.\d+)$/u.test(text) && number >= field.least && number <= field.most && (field.whole !== true || Number.isInteger(number));
  return sound ? success(number) : failure(`“${text}” will not do. Expected ${expectedOf(field)}.`);
}
