import { nanometres, NANOMETRES_PER_INCH, NANOMETRES_PER_MILLIMETRE, type Length } from '../../core/length/length.ts';
import { writeLength } from '../../core/length/write.ts';
import type { Question } from '../../core/bench/reply.ts';
import type { State } from '../../core/journal/state.ts';
import { boardsIn, readingsCome, sideToTrue, takenOf } from '../../core/respond/truingSide.ts';
import { writeSide } from '../../core/respond/truingWords.ts';
import type { SideAsRead } from '../../core/true/asRead.ts';
import { turnedTo, type BoardFace, type ReadingKind } from '../../core/true/readings.ts';
import type { PlaningDrawing } from '../draw/planingLayout.ts';

export type AskedReading = Extract<Question, { kind: 'surface reading' }>;

/** The drawing of what is to be planed: a contour where each stage ends. */
export function planingDrawingOf({ surface, board: { first, plan } }: SideAsRead, shaving: Length): PlaningDrawing {
  const levels = plan.stages.map((_, index) => nanometres(plan.stages.slice(index + 1).reduce((sum, { shavings }) => sum + shavings, 0) * shaving));
  return { surface, depths: first.depths, shavings: plan.shavings, levels };
}

/** Gaps that one press says, in the unit of the bench; of the thickness, what is over the planned one; of the second diagonal, the first. */
export function usualReadings(state: State, { what, of }: AskedReading): readonly Length[] {
  const inch = state.settings.rounding.unit === 'inch';
  if (what === 'first diagonal' || what === 'second diagonal') return takenOf(state, turnedTo(of, 'face')).filter((one) => one.what === 'first diagonal' && what === 'second diagonal').map(({ gap }) => gap);
  if (what === 'thickness') {
    const planned = sideToTrue(state, turnedTo(of, 'face'))?.planned;
    if (planned === undefined) return [];
    return (inch ? [0, 1 / 32, 1 / 16, 1 / 8, 3 / 16, 1 / 4] : [0, 0.5, 1, 2, 3, 5]).map((over) => nanometres(planned + Math.round(over * (inch ? NANOMETRES_PER_INCH : NANOMETRES_PER_MILLIMETRE))));
  }
  return inch ? [1, 2, 3, 4, 8].map((part) => nanometres((NANOMETRES_PER_INCH / 64) * part)) : [0.1, 0.2, 0.5, 1, 2].map((part) => nanometres(Math.round(part * NANOMETRES_PER_MILLIMETRE)));
}

/** How a quick size is printed on its key. */
export function keySize(state: State, length: Length): string {
  return writeLength(length, state.settings.rounding.unit === 'inch' ? { unit: 'inch', denominator: 64 } : { unit: 'millimetre', step: nanometres(100_000) });
}

/** A count of the smallest steps that are typed: thousandths of an inch, or hundredths of a millimetre. */
export function smallStep(unit: 'inch' | 'millimetre'): { readonly step: number; readonly label: string; readonly say: string } {
  return unit === 'inch' ? { step: NANOMETRES_PER_INCH / 1000, label: '/1000 in', say: 'in thousandths' } : { step: NANOMETRES_PER_MILLIMETRE / 100, label: '/100 mm', say: 'in hundredths' };
}

/** Every board of the piece by its reference face: parts, copies, layers and boards. */
export function allBoards(state: State): readonly BoardFace[] {
  return (state.piece?.file.parts ?? []).flatMap((part) => Array.from({ length: part.count }, (_, index) => (part.count === 1 ? {} : { copy: index + 1 })).flatMap((copy): BoardFace[] => {
    const boards = boardsIn(part);
    const single = Array.from({ length: boards }, (_, index): BoardFace => ({ part: part.id, ...copy, board: index + 1, face: 'face' }));
    return [...single, { part: part.id, ...copy, face: 'face' }];
  }));
}

/** 'leg 2, layer 1', and how much of its face is read. */
export function boardLabel(state: State, of: BoardFace): { readonly label: string; readonly detail: string } {
  const found = takenOf(state, of).length === 0 ? undefined : readingsCome(state, of);
  const [label = ''] = writeSide(state, of).split(':');
  const part = state.piece?.file.parts.find(({ id }) => id === of.part);
  const whole = of.board === undefined && part !== undefined && boardsIn(part) > 0;
  const read = found?.ok === true ? (found.value.trueEnough ? 'true enough' : `${found.value.board.plan.most} to plane`) : 'not read';
  return { label, detail: whole ? `glued up, ${read}` : read };
}

export const READING_TITLES: Readonly<Record<ReadingKind, string>> = { 'sticks': 'Winding sticks', 'along': 'Straightedge along', 'across': 'Straightedge across', 'square': 'Try square', 'thickness': 'Calipers', 'first diagonal': 'Tape, corner to corner', 'second diagonal': 'Tape, corner to corner' };
