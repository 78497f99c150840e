import type { Bench } from '../bench/bench.ts';
import { freeGauges, gaugesOwned, planThis, type Standing } from '../layout/gaugePlan.ts';
import { layoutJobs, type GaugeTool, type LayoutJob } from '../layout/gaugings.ts';
import type { Operation, Step } from '../work/step.ts';
import { sizesOf, stepsOf } from './views.ts';

/** A layout of the piece and the step in which it is done. */
interface PlacedLayout {
  readonly job: LayoutJob;
  readonly step: Step;
}

/** How the gauges stand if every layout was done as the bench said, and what is still to be laid out, by stages. */
export interface GaugeState {
  readonly owned: Readonly<Record<GaugeTool, number>>;
  readonly standing: Standing;
  readonly stages: readonly (readonly LayoutJob[])[];
  readonly layouts: readonly PlacedLayout[];
}

/** What is laid out with gauges. */
const LAYOUTS: readonly Operation[] = ['joint layout', 'cut fixings'];
/** The joints are laid out before what holds the top is cut, and the buttons come last. */
const STAGES: readonly ((layout: PlacedLayout) => boolean)[] = [
  ({ step }) => step.operation === 'joint layout', ({ step, job }) => step.operation === 'cut fixings' && job.joint !== undefined, ({ job }) => job.joint === undefined,
];

const kept = new WeakMap<Bench['records'], { readonly bench: Bench['state']; readonly found: GaugeState }>();

/** From the piece and the order in which the steps were done; null without a piece. */
export function gaugeState(bench: Bench): GaugeState | null {
  const known = kept.get(bench.records);
  if (known?.bench === bench.state) return known.found;
  const found = workOut(bench);
  if (found) kept.set(bench.records, { bench: bench.state, found });
  return found;
}

function workOut({ state, records }: Bench): GaugeState | null {
  const sizes = sizesOf(state);
  if (!state.piece || !sizes) return null;
  const layouts = placed(layoutJobs(state.piece.file, sizes), stepsOf(state));
  const owned = gaugesOwned(state.piece.file.tools);
  const doneAt = new Map(records.flatMap(({ entry, number }) => (entry.kind === 'step done' ? [[entry.step, number] as const] : [])));
  // What is just being written down has no number yet: it came last.
  const doneIn = ({ step }: PlacedLayout): number => doneAt.get(step.id) ?? records.length + 1;
  const done = layouts.filter(({ step }) => state.done.has(step.id)).sort((one, other) => doneIn(one) - doneIn(other));
  const open = layouts.filter(({ step }) => !state.done.has(step.id) && !state.skipped.has(step.id));
  const stagesOf = (some: readonly PlacedLayout[]): readonly (readonly LayoutJob[])[] => STAGES.map((isOfIt) => some.filter(isOfIt).map(({ job }) => job));
  const standing = done.reduce((stands, { job }, index) => planThis(job, stagesOf([...done.slice(index), ...open]), stands).leaves, freeGauges(owned));
  return { owned, standing, stages: stagesOf(open), layouts };
}

/** In the order of the work; a layout that no step of the work is for is left out. */
function placed(jobs: readonly LayoutJob[], steps: readonly Step[]): readonly PlacedLayout[] {
  return steps.flatMap((step) => {
    const job = LAYOUTS.includes(step.operation) ? jobs.find(({ part, joint }) => part === step.part && joint === step.joint) : undefined;
    // Mortises and tenons of one joint are told apart by their part.
    return job ? [{ job, step }] : [];
  });
}
