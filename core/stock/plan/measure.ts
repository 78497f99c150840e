import type { Board } from '../board.ts';
import type { Objective } from '../objectives.ts';
import type { CutSection } from './fill.ts';
import { isRipped, trimsAlong } from './ground.ts';
import { yieldOf, type CutBoard, type Lot } from './lot.ts';

export interface Measures {
  /** Blanks that no board is left for. */
  readonly missing: number;
  readonly boards: number;
  /** Cost in cents; boards without a price count by their volume, a cent for ten cubic centimetres. */
  readonly cents: number;
  /** Metres of crosscut sawn by hand. */
  readonly crosscutMetres: number;
  readonly ripMetres: number;
  /** Metres of sawing as felt: ripping weighs more, and thick more than thin. */
  readonly effortMetres: number;
  /** Metres of whole-width off-cut at the ends of boards, those worth keeping. */
  readonly offcutMetres: number;
  /** How often parts of one kind are spread over more than one board or colour. */
  readonly mismatches: number;
}

/** Ripping by hand takes about twice the time of crosscutting the same length (common practice, no source). */
const RIP_WEIGHT = 2;
const INCH_NM = 25_400_000;
const METRE_NM = 1_000_000_000;
/** Shorter than this is kindling: 12 in (common practice, no source). */
const WORTH_KEEPING_NM = 12 * INCH_NM;

export function priceOf(board: Board): number {
  return board.cents ?? Math.round((board.length / 1e7) * (board.width / 1e7) * (board.thickness / 1e7) / 10);
}

export function measure(lot: Lot, cut: readonly CutBoard[]): Measures {
  const used = cut.filter(({ sections }) => sections.length > 0);
  const given = used.map(({ sections }) => yieldOf(lot, sections));
  const missing = lot.blanks.reduce((sum, _, blank) => sum + Math.max(0, (lot.needs[blank] ?? 0) - given.reduce((total, counts) => total + (counts[blank] ?? 0), 0)), 0);
  const saws = used.map((one) => sawing(lot, one));
  const total = (of: (saw: Sawing) => number): number => saws.reduce((sum, saw) => sum + of(saw), 0);
  return {
    missing, boards: used.length,
    cents: used.reduce((sum, { ground }) => sum + priceOf(ground.board), 0),
    crosscutMetres: total(({ crosscut }) => crosscut), ripMetres: total(({ rip }) => rip),
    effortMetres: total(({ effort }) => effort), offcutMetres: total(({ offcut }) => offcut),
    mismatches: lot.blanks.reduce((sum, _, blank) => sum + spread(used.filter((__, at) => (given[at]?.[blank] ?? 0) > 0)), 0),
  };
}

function spread(boards: readonly CutBoard[]): number {
  const colours = new Set(boards.map(({ ground }) => ground.board.colour ?? ''));
  return Math.max(0, boards.length - 1) + Math.max(0, colours.size - 1);
}

interface Sawing {
  readonly crosscut: number;
  readonly rip: number;
  readonly effort: number;
  readonly offcut: number;
}

function sawing(lot: Lot, { ground, sections }: CutBoard): Sawing {
  const { board } = ground;
  const { first, last } = trimsAlong(board, lot.saw, ground.turned);
  let [crosscut, rip, resaw, resawEffort, at] = [0, 0, 0, 0, first];
  if (first > 0) crosscut += board.width;
  for (const section of sections) {
    crosscut += board.width * (section.from > at ? 2 : 1);
    at = section.from + section.length + lot.saw.kerf;
    rip += section.strips.filter((strip) => isRipped(ground, lot.saw, section, strip)).length * section.length;
    crosscut += stripCuts(lot, section);
    for (const one of section.strips.flatMap(({ laid }) => laid).map(({ shape }) => resawing(lot, shape))) {
      resaw += one.length;
      resawEffort += one.length * one.inchesWide;
    }
  }
  const rest = board.length - last - at;
  const thick = board.thickness / INCH_NM;
  return {
    crosscut: crosscut / METRE_NM, rip: (rip + resaw) / METRE_NM,
    effort: (thick * (crosscut + RIP_WEIGHT * rip) + RIP_WEIGHT * resawEffort) / METRE_NM,
    offcut: rest >= WORTH_KEEPING_NM ? rest / METRE_NM : 0,
  };
}

/** A resaw is a rip through the whole width of its piece. */
function resawing(lot: Lot, index: number): { readonly length: number; readonly inchesWide: number } {
  const shape = lot.shapes[index];
  const blank = lot.blanks[shape?.blank ?? -1];
  if (shape === undefined || blank === undefined) return { length: 0, inchesWide: 0 };
  return { length: (shape.deep - 1) * shape.beside * shape.inLine * blank.length, inchesWide: blank.width / INCH_NM };
}

/** Crosscuts within the strips: after every piece that does not end with its section. */
function stripCuts(lot: Lot, section: CutSection): number {
  return section.strips.reduce((sum, { width, laid }) => sum + width * laid.filter(({ shape, along }) => along + (lot.shapes[shape]?.length ?? 0) < section.from + section.length).length, 0);
}

/** Below zero when `a` is better. */
export function compare(a: Measures, b: Measures, objectives: readonly Objective[]): number {
  if (a.missing !== b.missing) return a.missing - b.missing;
  for (const objective of [...objectives, 'fewest boards', 'least sawing'] as const) {
    const difference = amount(a, objective) - amount(b, objective);
    if (Math.abs(difference) > 1e-9) return difference;
  }
  return 0;
}

/** Of what is to be small. */
function amount(measures: Measures, objective: Objective): number {
  switch (objective) {
    case 'fewest boards': return measures.boards;
    case 'cheapest': return measures.cents;
    case 'least sawing': return measures.effortMetres;
    case 'longest off-cuts': return -measures.offcutMetres;
    case 'matched grain': return measures.mismatches;
  }
}
