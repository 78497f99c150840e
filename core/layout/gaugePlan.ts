import { GAUGE_TOOLS, settingKey, type GaugeTool, type LayoutJob, type Setting } from './gaugings.ts';
import { searchFor, type Hold, type Need } from './gaugeSearch.ts';

/** What each gauge holds, gauge one first. */
export type Standing = Readonly<Record<GaugeTool, readonly (Setting | undefined)[]>>;

/** One gauge set anew. */
export interface Reset {
  readonly gauge: number;
  readonly to: Setting;
  readonly from?: Setting;
  /** What it held is still needed by a layout that comes later: it will have to be set again. */
  readonly loses: boolean;
}

export interface PlannedLayout {
  readonly job: LayoutJob;
  readonly resets: readonly Reset[];
  /** How the gauges stand when it is done. */
  readonly leaves: Standing;
}

/** So many layouts are weighed against each other; what comes after them is planned after them, for the search would take long. */
export const MOST_PLANNED = 12;

/** Whoever marks lines has one gauge of each kind at least, whatever the file leaves out. */
export function gaugesOwned({ markingGauges = 1, mortiseGauges = 1 }: { readonly markingGauges?: number; readonly mortiseGauges?: number }): Readonly<Record<GaugeTool, number>> {
  return { 'marking gauge': Math.max(1, markingGauges), 'mortise gauge': Math.max(1, mortiseGauges) };
}

/** All gauges free. */
export function freeGauges(owned: Readonly<Record<GaugeTool, number>>): Standing {
  const free = (tool: GaugeTool): readonly undefined[] => Array.from({ length: owned[tool] }, () => undefined);
  return { 'marking gauge': free('marking gauge'), 'mortise gauge': free('mortise gauge') };
}

/**
 * The order of the layouts, and which gauge is set to what in each, that needs the fewest settings in all, from how the gauges stand now. Layouts of a
 * later stage come after all of an earlier one; within a stage any order will do, and of equal ones the given order is kept. Within one layout
 * every copy is marked before a gauge is touched.
 */
export function planGauges(stages: readonly (readonly LayoutJob[])[], standing: Standing): readonly PlannedLayout[] {
  const window = firstOf(stages);
  const jobs = window.flat();
  const search = searchFor(needsOf(window), gaugesOf(standing));
  const planned: PlannedLayout[] = [];
  let stands = standing;
  for (let left = allOf(jobs); left !== 0;) {
    const { job: index, kept } = search(left, holdOf(stands));
    const job = jobs[index];
    if (job === undefined) break;
    left &= ~(1 << index);
    const layout = carryOut(job, stands, kept, jobs.filter((_, other) => (left >> other) & 1));
    planned.push(layout);
    stands = layout.leaves;
  }
  const later = stages.map((some) => some.filter((job) => !jobs.includes(job)));
  return later.flat().length === 0 ? planned : [...planned, ...planGauges(later, stands)];
}

/** As `planGauges`, but what is done next is given: the best way to set the gauges for it, with what comes after in mind. */
export function planThis(job: LayoutJob, stages: readonly (readonly LayoutJob[])[], standing: Standing): PlannedLayout & { readonly settings: number } {
  const after = firstOf(without(stages, job));
  const next = searchFor(needsOf([[job], ...after]), gaugesOf(standing))(allOf([job, ...after.flat()]), holdOf(standing));
  return { ...carryOut(job, standing, next.kept, after.flat()), settings: next.settings };
}

/** Fewest settings for all that is left. */
export function settingsLeft(stages: readonly (readonly LayoutJob[])[], standing: Standing): number {
  const window = firstOf(stages);
  return searchFor(needsOf(window), gaugesOf(standing))(allOf(window.flat()), holdOf(standing)).settings;
}

function allOf(jobs: readonly LayoutJob[]): number {
  return (1 << jobs.length) - 1;
}

function firstOf(stages: readonly (readonly LayoutJob[])[]): readonly (readonly LayoutJob[])[] {
  let room = MOST_PLANNED;
  return stages.map((jobs) => {
    const taken = jobs.slice(0, room);
    room -= taken.length;
    return taken;
  });
}

function without(stages: readonly (readonly LayoutJob[])[], job: LayoutJob): readonly (readonly LayoutJob[])[] {
  return stages.map((jobs) => jobs.filter((one) => one !== job));
}

function needsOf(stages: readonly (readonly LayoutJob[])[]): readonly Need[] {
  return stages.flatMap((jobs, stage) => jobs.map(({ gaugings }) => ({ stage, settings: GAUGE_TOOLS.map((tool) => keys(gaugings.filter((one) => one.tool === tool))) })));
}

function gaugesOf(standing: Standing): readonly number[] {
  return GAUGE_TOOLS.map((tool) => standing[tool].length);
}

function holdOf(standing: Standing): Hold {
  return GAUGE_TOOLS.map((tool) => keys(standing[tool].filter((one) => one !== undefined)));
}

function keys(settings: readonly Setting[]): readonly string[] {
  return [...new Set(settings.map(settingKey))];
}

/** Settings that are there already are used first; then those that nothing later needs, on one gauge; last those that stay. */
function carryOut(job: LayoutJob, standing: Standing, kept: readonly (readonly string[])[], later: readonly LayoutJob[]): PlannedLayout {
  const needed = new Set(later.flatMap(({ gaugings }) => gaugings.map(settingKey)));
  const done = GAUGE_TOOLS.map((tool, index) => setGauges(standing[tool], job.gaugings.filter((one) => one.tool === tool), new Set(kept[index]), needed));
  const [marking, mortise] = done;
  return { job, resets: done.flatMap(({ resets }) => resets), leaves: { 'marking gauge': marking?.stands ?? [], 'mortise gauge': mortise?.stands ?? [] } };
}

function setGauges(standing: readonly (Setting | undefined)[], wanted: readonly Setting[], kept: ReadonlySet<string>, needed: ReadonlySet<string>): { readonly stands: readonly (Setting | undefined)[]; readonly resets: readonly Reset[] } {
  const held = new Set(keys(standing.filter((one) => one !== undefined)));
  const loads = [...new Map(wanted.map((one) => [settingKey(one), one])).values()].filter((one) => !held.has(settingKey(one)));
  const stays = (one: Setting): boolean => kept.has(settingKey(one));
  const stands = [...standing];
  // Gauges that hold nothing come before those that hold what nobody needs.
  const free = stands.flatMap((one, gauge) => (one !== undefined && stays(one) ? [] : [gauge])).sort((one, other) => Number(stands[one] !== undefined) - Number(stands[other] !== undefined) || one - other);
  const staying = loads.filter(stays);
  const passing = free[staying.length] ?? free[0] ?? 0;
  const resets: Reset[] = [];
  const set = (gauge: number, to: Setting): void => {
    const from = stands[gauge];
    resets.push({ gauge: gauge + 1, to, ...(from === undefined ? {} : { from }), loses: from !== undefined && needed.has(settingKey(from)) });
    stands[gauge] = to;
  };
  for (const one of loads.filter((load) => !stays(load))) set(passing, one);
  staying.forEach((one, index) => set(free[index] ?? 0, one));
  return { stands, resets };
}
