import { reckoning } from '../../reckoning/reckoning.ts';
import { telling } from '../../reckoning/telling.ts';
import { failure, success } from '../../result.ts';
import { freeGauges, MOST_PLANNED, planGauges } from '../gaugePlan.ts';
import type { LayoutJob } from '../gaugings.ts';

export const gauges = reckoning({
  name: 'gauges',
  about: 'which gauge to set to what, and when, so that the fewest settings are needed',
  inputs: {
    lines: { kind: 'lengths', say: `distances to be gauged, in the order in which they are needed, at most ${MOST_PLANNED}` },
    gauges: { kind: 'number', unit: 'marking gauges owned', least: 1, most: 20, whole: true, say: 'marking gauges', default: '1' },
    order: { kind: 'choice', options: ['as given', 'free'], say: 'whether the lines may be marked in another order', default: 'as given' },
  },
  reckon: ({ lines, gauges: owned, order }) => {
    if (lines.length === 0 || lines.length > MOST_PLANNED) return failure({ key: 'lines', message: `Give from one to ${MOST_PLANNED} distances.` });
    if (lines.some((distance) => distance <= 0)) return failure({ key: 'lines', message: 'A gauge does not stand at nothing: there the line is the edge itself.' });
    const jobs = lines.map((distance, index): LayoutJob => ({ part: String(index + 1), say: `line ${index + 1}`, gaugings: [{ tool: 'marking gauge', distance, from: 'reference', marks: 'line' }] }));
    const plan = planGauges(order === 'free' ? [jobs] : jobs.map((job) => [job]), freeGauges({ 'marking gauge': owned, 'mortise gauge': 1 }));
    const resets = plan.flatMap(({ job, resets: set }) => set.map(({ gauge, to, loses }) => ({ before: job.say, gauge, distance: to.distance, loses })));
    return success({
      result: [
        { key: 'settings', number: resets.length, unit: 'settings' },
        { key: 'order', lengths: plan.flatMap(({ job }) => job.gaugings.map(({ distance }) => distance)) },
        { key: 'set', data: resets, unit: 'nanometres' },
      ],
      how: ['Every order that is allowed and every choice of what to keep on the gauges was weighed, each situation once: no plan needs fewer settings.'],
      source: ['exact search (dynamic programming)'],
      warnings: plan.flatMap(({ resets: set }) => set.flatMap(({ gauge, from, loses }) => (loses && from ? [telling`Gauge ${{ count: gauge }} gives up ${from.distance}, which is needed again later.`] : []))),
    });
  },
});
