import { FACE_RECKONINGS } from '../core/faces/reckonings.ts';
import { GLUE_RECKONINGS } from '../core/glue/reckonings.ts';
import { JOINT_RECKONINGS } from '../core/joint/reckonings.ts';
import { LAYOUT_RECKONINGS } from '../core/layout/reckonings.ts';
import { expectedOf, readInputs } from '../core/reckoning/readInputs.ts';
import type { Field, Fields, InputFault, Reckoning } from '../core/reckoning/reckoning.ts';
import { writeOutcome, writeTelling } from '../core/reckoning/writeOutcome.ts';
import { EDGE_RECKONINGS } from '../core/edge/reckonings.ts';
import { TRUE_RECKONINGS } from '../core/true/reckonings.ts';
import { WOOD_RECKONINGS } from '../core/wood/reckonings.ts';

/** Every folder of the core that reckons contributes its own. */
const RECKONINGS: readonly Reckoning[] = [...WOOD_RECKONINGS, ...JOINT_RECKONINGS, ...LAYOUT_RECKONINGS, ...FACE_RECKONINGS, ...GLUE_RECKONINGS, ...EDGE_RECKONINGS, ...TRUE_RECKONINGS];

const USAGE = `npm run reckon                              what can be reckoned, and from what
npm run reckon -- NAME                      the inputs of one, when it needs any; else its answer
npm run reckon -- NAME key=value …          the answer as JSON: result, unit, how it was reckoned, source
npm run reckon -- NAME in=mm key=value …    in millimetres; numbers without a unit are millimetres too (or: in=in)
A value with blanks needs quotes: rail.width="4 1/2 in".`;

/** Answers one reckoning; the exit status is 0 only when there is an answer. */
function main(words: readonly string[]): number {
  const [name, ...rest] = words;
  if (name === undefined || name === '--help') {
    console.log(`${USAGE}\n\n${RECKONINGS.map(describe).join('\n\n')}`);
    return 0;
  }
  const found = RECKONINGS.find((reckoning) => reckoning.name === name);
  if (found === undefined) return complain(`Nothing is reckoned under the name “${name}”. Expected one of: ${RECKONINGS.map((reckoning) => reckoning.name).join(', ')}.`);
  return answer(found, rest);
}

function answer(found: Reckoning, words: readonly string[]): number {
  const loose = words.find((word) => !/^[^=]+=/u.test(word));
  if (loose !== undefined) return complain(`Expected key=value, found “${loose}”. A value with blanks needs quotes: key="4 1/2 in".`);
  const { in: unit, ...given } = Object.fromEntries(words.map((word) => [word.slice(0, word.indexOf('=')), word.slice(word.indexOf('=') + 1)])) as Record<string, string> & { in?: string };
  if (unit !== undefined && unit !== 'in' && unit !== 'mm') return complain(`in: expected in or mm, found “${unit}”.`);
  if (words.length === 0 && Object.values(found.inputs).some(mustBeGiven)) return complain(describe(found));
  const values = readInputs(found.inputs, given, unit === 'mm' ? 'millimetre' : unit === 'in' ? 'inch' : undefined);
  if (!values.ok) return complain(values.fault.map((fault) => writeFault(fault, unit)).join('\n'));
  const outcome = found.reckon(values.value);
  if (!outcome.ok) return complain(writeFault(outcome.fault, unit));
  console.log(JSON.stringify(writeOutcome(found.name, outcome.value, unit ?? 'in'), null, 2));
  return 0;
}

function writeFault({ key, message }: InputFault, unit: 'in' | 'mm' | undefined): string {
  return `${key === undefined ? '' : `${key}: `}${writeTelling(message, unit ?? 'in')}`;
}

function describe({ name, about, inputs }: Reckoning): string {
  return [`${name}: ${about}`, ...describeInputs(inputs)].join('\n');
}

function describeInputs(inputs: Fields): readonly string[] {
  const longest = Math.max(...Object.keys(inputs).map((key) => key.length));
  return Object.entries(inputs).map(([key, field]) => `  ${key.padEnd(longest)}  ${field.say}: ${expectedOf(field)}; ${defaultOf(field)}`);
}

function defaultOf(field: Field): string {
  if (field.default !== undefined) return `${field.default} when not given`;
  return field.optional === true ? 'may be left out' : 'must be given';
}

function mustBeGiven(field: Field): boolean {
  return field.default === undefined && field.optional !== true;
}

function complain(message: string): number {
  console.error(message);
  return 1;
}

process.exitCode = main(process.argv.slice(2));
