import { between } from '../clock/between.ts';
import type { Moment } from '../clock/moment.ts';
import type { Label } from '../glue/adhesive.ts';
import type { Length } from '../length/length.ts';
import { faceKey, keptWith, sideOf, turnedTo, withReading, type BoardFace, type FaceReading } from '../true/readings.ts';
import type { StepId } from '../work/step.ts';

/** Whose temperature and humidity was told: the shop's, of wood or glue brought elsewhere, and of the house in its driest and dampest month. */
export const AIR_PLACES = ['shop', 'wood', 'glue', 'house dry', 'house damp'] as const;
export type AirPlace = (typeof AIR_PLACES)[number];

export interface AirTold {
  readonly tempC?: number;
  readonly humidityPercent?: number;
  readonly at: Moment;
  readonly by: 'said' | 'sensor';
}

/** What was seen of a part that rests. */
export interface RestSeen {
  readonly part: string;
  readonly copy?: number;
  readonly bow?: Length;
  readonly wind?: Length;
  readonly grams?: number;
}

export type GluingMode = 'rehearsal' | 'glue';

/** A rehearsal or a glue-up that is going on. */
export interface Gluing {
  readonly step: StepId;
  readonly mode: GluingMode;
  readonly joints: readonly string[];
  readonly begunAt: Moment;
  /** When each move was done, in order. */
  readonly doneAt: readonly Moment[];
}

export interface RehearsalKept {
  readonly joints: readonly string[];
  /** Of each move in its order. */
  readonly ms: readonly number[];
}

/** What belongs to one piece beside the progress of its steps. */
export interface Craft {
  readonly label: Partial<Label>;
  readonly rests: readonly (RestSeen & { readonly at: Moment })[];
  /** Side of a board (faceKey) → what was held against it. */
  readonly surfaces: ReadonlyMap<string, readonly FaceReading[]>;
  readonly rehearsals: ReadonlyMap<StepId, RehearsalKept>;
  /** A glue-up that was divided: the joints of each part of it. */
  readonly divided: ReadonlyMap<StepId, readonly (readonly string[])[]>;
  readonly glued: ReadonlyMap<StepId, readonly string[]>;
}

export const NO_CRAFT: Craft = { label: {}, rests: [], surfaces: new Map(), rehearsals: new Map(), divided: new Map(), glued: new Map() };

/** The entries of wood, air and glue. */
export type CraftEntry =
  | { readonly kind: 'air told'; readonly place: AirPlace; readonly tempC?: number; readonly humidityPercent?: number; readonly by: 'said' | 'sensor' }
  | { readonly kind: 'moisture told'; readonly percent: number }
  | { readonly kind: 'label told'; readonly label: Partial<Label> }
  | ({ readonly kind: 'rest seen' } & RestSeen)
  | { readonly kind: 'surface read'; readonly of: BoardFace; readonly reading: FaceReading }
  /** What was read of that side says nothing any more; nor does the thickness, after a face. */
  | { readonly kind: 'surface planed'; readonly of: BoardFace }
  | { readonly kind: 'gluing begun'; readonly step: StepId; readonly mode: GluingMode; readonly joints: readonly string[] }
  | { readonly kind: 'gluing move done' }
  | { readonly kind: 'gluing ended'; readonly finished: boolean }
  | { readonly kind: 'gluing divided'; readonly step: StepId; readonly stages: readonly (readonly string[])[] };

/** The part of the state that these entries write. */
export interface CraftState {
  readonly airs: ReadonlyMap<AirPlace, AirTold>;
  readonly stockMoisture: number | null;
  readonly gluing: Gluing | null;
  /** By the name of the piece. */
  readonly crafts: ReadonlyMap<string, Craft>;
}

export const NO_CRAFT_STATE: CraftState = { airs: new Map(), stockMoisture: null, gluing: null, crafts: new Map() };

/** What such an entry makes of the state; `piece` is the name of the piece on the bench. */
export function applyCraft(state: CraftState, entry: CraftEntry, at: Moment, piece: string): CraftState {
  const change = (part: Partial<Craft>): CraftState => ({ ...state, crafts: new Map([...state.crafts, [piece, { ...craftCalled(state, piece), ...part }]]) });
  const craft = craftCalled(state, piece);
  switch (entry.kind) {
    case 'air told': return { ...state, airs: new Map([...state.airs, [entry.place, airOf(state.airs.get(entry.place), entry, at)]]) };
    case 'moisture told': return { ...state, stockMoisture: entry.percent };
    case 'label told': return change({ label: { ...craft.label, ...entry.label } });
    case 'rest seen': return change({ rests: [...craft.rests, { ...restOf(entry), at }] });
    case 'surface read': return change({ surfaces: withSurface(craft.surfaces, entry.of, entry.reading) });
    case 'surface planed': return change({ surfaces: planed(craft.surfaces, entry.of) });
    case 'gluing begun': return { ...state, gluing: { step: entry.step, mode: entry.mode, joints: entry.joints, begunAt: at, doneAt: [] } };
    case 'gluing move done': return state.gluing ? { ...state, gluing: { ...state.gluing, doneAt: [...state.gluing.doneAt, at] } } : state;
    case 'gluing ended': return entry.finished && state.gluing ? { ...change(keepGluing(craft, state.gluing)), gluing: null } : { ...state, gluing: null };
    case 'gluing divided': return change({ divided: new Map([...craft.divided, [entry.step, entry.stages]]) });
  }
}

export function craftCalled(state: Pick<CraftState, 'crafts'>, piece: string): Craft {
  return state.crafts.get(piece) ?? NO_CRAFT;
}

/** What was seen, without the rest of a request or entry that brings it. */
export function restOf({ part, copy, bow, wind, grams }: RestSeen): RestSeen {
  return { part, ...(copy === undefined ? {} : { copy }), ...(bow === undefined ? {} : { bow }), ...(wind === undefined ? {} : { wind }), ...(grams === undefined ? {} : { grams }) };
}

function withSurface(surfaces: Craft['surfaces'], of: BoardFace, reading: FaceReading): Craft['surfaces'] {
  const key = faceKey(keptWith(of, reading.what));
  return new Map([...surfaces, [key, withReading(surfaces.get(key) ?? [], reading)]]);
}

function planed(surfaces: Craft['surfaces'], of: BoardFace): Craft['surfaces'] {
  const left = new Map([...surfaces].filter(([key]) => key !== faceKey(sideOf(of))));
  const face = turnedTo(of, 'face');
  const kept = of.face === 'other face' ? left.get(faceKey(face))?.filter(({ what }) => what !== 'thickness') : undefined;
  return kept === undefined ? left : new Map([...left, [faceKey(face), kept]]);
}

/** What was told before of the same place holds until it is told anew, but for a reading of a sensor, which is whole. */
function airOf(before: AirTold | undefined, { tempC, humidityPercent, by }: Extract<CraftEntry, { kind: 'air told' }>, at: Moment): AirTold {
  const told = { tempC: tempC ?? before?.tempC, humidityPercent: humidityPercent ?? before?.humidityPercent };
  return { ...(told.tempC === undefined ? {} : { tempC: told.tempC }), ...(told.humidityPercent === undefined ? {} : { humidityPercent: told.humidityPercent }), at, by };
}

function keepGluing(craft: Craft, gluing: Gluing): Partial<Craft> {
  if (gluing.mode === 'glue') return { glued: new Map([...craft.glued, [gluing.step, [...(craft.glued.get(gluing.step) ?? []), ...gluing.joints]]]) };
  return { rehearsals: new Map([...craft.rehearsals, [gluing.step, { joints: gluing.joints, ms: moveTimes(gluing) }]]) };
}

/** How long each move that is done took; what a restart made unknown counts as nothing. */
export function moveTimes({ begunAt, doneAt }: Pick<Gluing, 'begunAt' | 'doneAt'>): readonly number[] {
  return doneAt.map((at, index) => {
    const run = between(doneAt[index - 1] ?? begunAt, at);
    return run.by === 'unknown' ? 0 : Math.max(0, Math.round(run.ms));
  });
}
