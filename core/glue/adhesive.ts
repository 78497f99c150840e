import type { Adhesive } from '../piece/file.ts';

/** How a glue sets: by losing water, by reacting, or first by cooling to a gel. */
export type Setting = 'by drying' | 'by reacting' | 'by cooling';

/** What a label says, and what is kept of it. Times at about 21 °C. */
export interface Label {
  /** From the first glue to the closed joint. */
  readonly openMinutes: number;
  /** From the closed joint to full pressure. */
  readonly closedMinutes: number;
  readonly clampMinutes: number;
  /** Until it may be planed, chopped and loaded. */
  readonly workHours: number;
  readonly fullCureHours: number;
  /** Lowest temperature of wood, glue and air alike. */
  readonly lowestC: number;
}
export const LABEL_KEYS = ['openMinutes', 'closedMinutes', 'clampMinutes', 'workHours', 'fullCureHours', 'lowestC'] as const satisfies readonly (keyof Label)[];

/** A class of adhesive: never a brand. */
export interface AdhesiveClass {
  readonly name: string;
  readonly called: RegExp;
  readonly sets: Setting;
  readonly usual: Label;
  /** Grams to the square metre of one glue line, from and to. */
  readonly spreadGm2: readonly [number, number];
  /** By the density of the wood; contact only, where pressure starves the joint; or its own, in MPa. */
  readonly pressure: 'by density' | 'contact' | { readonly fromMpa: number; readonly toMpa: number };
  /** A rag with warm water takes it off while it is wet. */
  readonly washes: boolean;
  readonly irritates: boolean;
  /** What else its users should know. */
  readonly remark?: string;
}

/** All figures of a class that no source is named for. */
export const CLASS_BASIS = 'common practice for its class, no source; your label rules';
export const GLUE_SOURCES: readonly string[] = [
  'times: usual label figures by class at about 21 °C, common practice, no source; hot hide glue in clamps from Noyes 1910, urea powder from a reference article',
  'spread: 35 to 50 lb to 1000 square feet (a trade article)', 'lowest temperatures: a hobby publication and an adhesive distributor; the others common practice',
];

const PVA = { open: 4, closed: 10, clamp: 60 };

/** On the safe side of what labels usually say: shorter open times, longer clamp times, the warmer lowest temperature. */
export const ADHESIVES: readonly AdhesiveClass[] = [
  { name: 'liquid hide glue', called: /liquid hide/i, sets: 'by drying', spreadGm2: [200, 250], pressure: 'by density', washes: true, irritates: false,
    usual: { openMinutes: 10, closedMinutes: 20, clampMinutes: 720, workHours: 24, fullCureHours: 24, lowestC: 10 } },
  { name: 'hot hide glue', called: /hide|bone|fish|animal/i, sets: 'by cooling', spreadGm2: [170, 250], pressure: 'contact', washes: true, irritates: false,
    usual: { openMinutes: 1, closedMinutes: 1, clampMinutes: 360, workHours: 12, fullCureHours: 24, lowestC: 20 }, remark: 'glue at 60 to 63 °C, never over 65; warm the wood first, for it gels as it cools' },
  { name: 'epoxy', called: /epoxy/i, sets: 'by reacting', spreadGm2: [100, 250], pressure: 'contact', washes: false, irritates: true,
    usual: { openMinutes: 20, closedMinutes: 20, clampMinutes: 1440, workHours: 24, fullCureHours: 72, lowestC: 15 }, remark: 'contact only: a squeezed joint starves' },
  { name: 'polyurethane', called: /polyurethane|\bpur\b/i, sets: 'by reacting', spreadGm2: [100, 200], pressure: { fromMpa: 0.6, toMpa: 1 }, washes: false, irritates: true,
    usual: { openMinutes: 10, closedMinutes: 10, clampMinutes: 360, workHours: 12, fullCureHours: 24, lowestC: 10 }, remark: 'it cures with the water in the wood: 8 to 16 percent' },
  { name: 'urea glue', called: /urea|\buf\b/i, sets: 'by reacting', spreadGm2: [170, 250], pressure: { fromMpa: 0.7, toMpa: 1.7 }, washes: true, irritates: true,
    usual: { openMinutes: 15, closedMinutes: 15, clampMinutes: 600, workHours: 24, fullCureHours: 24, lowestC: 21 }, remark: 'below about 21 °C it dries out before it has cured' },
  { name: 'cross-linking glue', called: /cross/i, sets: 'by drying', spreadGm2: [170, 250], pressure: 'by density', washes: true, irritates: false,
    usual: { openMinutes: 5, closedMinutes: 15, clampMinutes: 60, workHours: 12, fullCureHours: 24, lowestC: 7 } },
  { name: 'white glue', called: /white/i, sets: 'by drying', spreadGm2: [170, 250], pressure: 'by density', washes: true, irritates: false,
    usual: { openMinutes: PVA.open, closedMinutes: PVA.closed, clampMinutes: PVA.clamp, workHours: 12, fullCureHours: 24, lowestC: 13 } },
];

/** Yellow glue, and whatever is not named: the commonest at a bench. */
const YELLOW: AdhesiveClass = {
  name: 'yellow glue', called: /./, sets: 'by drying', spreadGm2: [170, 250], pressure: 'by density', washes: true, irritates: false,
  usual: { openMinutes: PVA.open, closedMinutes: PVA.closed, clampMinutes: PVA.clamp, workHours: 12, fullCureHours: 24, lowestC: 10 },
};

export const ADHESIVE_NAMES: readonly string[] = [...ADHESIVES.map(({ name }) => name), YELLOW.name];

/** The class that a piece file's own words mean; yellow glue when they mean none. */
export function adhesiveCalled(kind: string): AdhesiveClass {
  return ADHESIVES.find(({ called }) => called.test(kind)) ?? YELLOW;
}

/** Where one figure comes from. */
export type Basis = 'your label' | 'your piece file' | 'common practice';

/** The adhesive as it is used on this piece: the maker's own figures over the file's, the file's over those of its class. */
export interface AdhesiveInUse {
  readonly kind: string;
  readonly glue: AdhesiveClass;
  readonly label: Label;
  readonly basis: Readonly<Record<keyof Label, Basis>>;
}

export function adhesiveInUse(file: Adhesive, own: Partial<Label> = {}): AdhesiveInUse {
  const glue = adhesiveCalled(file.kind);
  const label: Record<keyof Label, number> = { ...glue.usual };
  const basis: Partial<Record<keyof Label, Basis>> = {};
  for (const key of LABEL_KEYS) {
    const [said, filed] = [own[key], fileFigure(file, key)];
    label[key] = said ?? filed ?? glue.usual[key];
    basis[key] = said !== undefined ? 'your label' : filed !== undefined ? 'your piece file' : 'common practice';
  }
  return { kind: file.kind, glue, label, basis: basis as Record<keyof Label, Basis> };
}

function fileFigure(file: Adhesive, key: keyof Label): number | undefined {
  return key === 'workHours' || key === 'lowestC' ? undefined : file[key];
}
