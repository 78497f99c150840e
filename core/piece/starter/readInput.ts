import type { Length } from '../../length/length.ts';
import { nanometres } from '../../length/length.ts';
import { parseLength } from '../../length/parseWritten.ts';
import { failure, success } from '../../result.ts';
import type { Result } from '../../result.ts';
import { nearestName } from '../nearest.ts';
import { writeExact } from '../writeExact.ts';
import type { StarterField, StarterInput } from './fields.ts';
import { STARTER_DEFAULTS, STARTER_FIELDS } from './fields.ts';

/** What is wrong with one answer. */
export interface StarterFault {
  /** The field, or whatever was given in its stead; empty when the whole does not fit together. */
  readonly key: string;
  readonly expected: string;
  readonly found: string;
  /** The whole of it in a sentence or two, with what to do. */
  readonly message: string;
}

/** Reads answers as they were typed; what is not given, or left empty, takes its default. Tells every fault at once. */
export function readStarterInput(answers: Readonly<Record<string, string>>, unitWhenNone?: 'inch' | 'millimetre'): Result<StarterInput, readonly StarterFault[]> {
  const faults: StarterFault[] = [];
  const given: [string, Length | number | string][] = [];
  for (const [key, answer] of Object.entries(answers)) {
    const field = STARTER_FIELDS.find((known) => known.key === key);
    if (field === undefined) { faults.push(unknownField(key)); continue; }
    if (answer.trim() === '') continue;
    const value = readAnswer(field, answer.trim(), unitWhenNone);
    if (value.ok) given.push([key, value.value]);
    else faults.push(value.fault);
  }
  const input: StarterInput = { ...STARTER_DEFAULTS, ...Object.fromEntries(given) };
  return faults.length === 0 ? success(input) : failure(faults);
}

/** Reads one answer; for asking field by field. */
export function readAnswer(field: StarterField, answer: string, unitWhenNone?: 'inch' | 'millimetre'): Result<Length | number | string, StarterFault> {
  if (field.kind === 'length') {
    const read = parseLength(answer, unitWhenNone);
    if (!read.ok) return failure({ key: field.key, expected: read.fault.expected, found: `'${read.fault.found}'`, message: read.fault.message });
    return checked(field, read.value);
  }
  if (field.kind === 'count') return checked(field, /^\d{1,6}$/u.test(answer) ? Number(answer) : answer);
  return checked(field, answer);
}

/** The faults of a whole input, however it was made. */
export function checkInput(input: StarterInput): readonly StarterFault[] {
  return STARTER_FIELDS.flatMap((field) => {
    const result = checked(field, input[field.key]);
    return result.ok ? [] : [result.fault];
  });
}

function checked(field: StarterField, value: Length | number | string): Result<Length | number | string, StarterFault> {
  return isWithin(field, value) ? success(value) : failure(fault(field, value));
}

function isWithin(field: StarterField, value: Length | number | string): boolean {
  switch (field.kind) {
    case 'length':
    case 'count': return typeof value === 'number' && Number.isSafeInteger(value) && value >= field.min && value <= field.max;
    case 'choice': return typeof value === 'string' && field.choices.includes(value);
    // The schema's own rule for words: no control characters.
    case 'text': return typeof value === 'string' && value.length >= field.min && value.length <= field.max && /^\P{Cc}+$/u.test(value);
  }
}

function fault(field: StarterField, value: Length | number | string): StarterFault {
  const found = typeof value === 'string' ? `'${value.slice(0, 60)}'` : field.kind === 'length' && Number.isSafeInteger(value) ? writeExact(nanometres(value)) : String(value);
  const expected = expectedOf(field);
  return { key: field.key, expected, found, message: `${field.say.charAt(0).toUpperCase()}${field.say.slice(1)}: give ${expected}, not ${found}.` };
}

/** 'from 8 in to 120 in', 'laminated or solid': for a form's hint as well. */
export function expectedOf(field: StarterField): string {
  switch (field.kind) {
    case 'length': return `from ${writeExact(field.min)} to ${writeExact(field.max)}`;
    case 'count': return `a whole number from ${field.min} to ${field.max}`;
    case 'choice': return field.choices.join(' or ');
    case 'text': return `words, at most ${field.max} letters`;
  }
}

function unknownField(key: string): StarterFault {
  const known = STARTER_FIELDS.map((field) => field.key);
  const near = nearestName(key, known);
  const found = `'${key.slice(0, 60)}'`;
  const advice = near === undefined ? `Leave it out, or give one of ${known.join(', ')}.` : `Did you mean ${near}?`;
  return { key, expected: `one of ${known.join(', ')}`, found, message: `Nothing is called ${found} here. ${advice}` };
}
