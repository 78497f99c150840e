import { NANOMETRES_PER_INCH, NANOMETRES_PER_MILLIMETRE, type Length } from '../length/length.ts';
import { nanometres } from '../length/length.ts';
import type { Rounding } from '../length/rounding.ts';
import { writeLength } from '../length/write.ts';
import type { Figure, Outcome } from './reckoning.ts';
import { renderTelling, type Telling } from './telling.ts';

/** What is printed for an answer. Lengths come as a number of `unit`, as they are written in the shop, and exactly. */
export interface WrittenOutcome {
  readonly reckoning: string;
  readonly result: Readonly<Record<string, unknown>>;
  /** Of every length in the result that says no other. */
  readonly unit: 'in' | 'mm';
  readonly how: readonly string[];
  readonly source: readonly string[];
  readonly warnings?: readonly string[];
}

const WRITING: Readonly<Record<'in' | 'mm', Rounding>> = {
  in: { unit: 'inch', denominator: 64 },
  mm: { unit: 'millimetre', step: nanometres(NANOMETRES_PER_MILLIMETRE / 10) },
};

export function writeOutcome(name: string, { result, how, source, warnings }: Outcome, unit: 'in' | 'mm'): WrittenOutcome {
  const written = Object.fromEntries(result.map((figure) => [figure.key, writeFigure(figure, unit)]));
  const told = (tellings: readonly Telling[]): readonly string[] => tellings.map((telling) => writeTelling(telling, unit));
  return { reckoning: name, result: written, unit, how: told(how), source, ...(warnings === undefined || warnings.length === 0 ? {} : { warnings: told(warnings) }) };
}

export function writeTelling(telling: Telling, unit: 'in' | 'mm'): string {
  return renderTelling(telling, (length) => writeLength(length, WRITING[unit]));
}

function writeFigure(figure: Figure, unit: 'in' | 'mm'): unknown {
  if ('length' in figure) return writeOne(figure.length, unit);
  if ('lengths' in figure) return figure.lengths.map((length) => writeOne(length, unit));
  if ('number' in figure) return { value: significant(figure.number), unit: figure.unit };
  return 'text' in figure ? figure.text : { value: figure.data, unit: figure.unit };
}

function writeOne(length: Length, unit: 'in' | 'mm'): { readonly value: number; readonly written: string; readonly nanometres: number } {
  return { value: length / (unit === 'in' ? NANOMETRES_PER_INCH : NANOMETRES_PER_MILLIMETRE), written: writeLength(length, WRITING[unit]), nanometres: length };
}

/** Six figures: more than any of these numbers is worth, and few enough to read. */
function significant(number: number): number {
  return Number(number.toPrecision(6));
}
