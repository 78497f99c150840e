import { nanometres } from '../../length/length.ts';
import { failure, success, type Result } from '../../result.ts';
import { freeGauges, planGauges, type PlannedLayout } from '../gaugePlan.ts';
import { layoutJobs, type Gauging, type LayoutJob, type Setting } from '../gaugings.ts';
import type { Drawing } from './drawing.ts';
import { listSheets, type Row } from './listing.ts';
import { pageForm } from './paperSize.ts';
import { mm, type SheetSet } from './sheet.ts';
import { sizeText } from './sizeText.ts';

/** Which gauge is set to what, in the order that takes the fewest settings, from gauges that all stand free. */
export function gaugeCard(drawing: Drawing): Result<SheetSet, string> {
  const { piece, sizes, titled, drawn, paper } = drawing;
  const jobs = layoutJobs(piece.file, sizes);
  if (jobs.length === 0) return failure('Nothing in this piece is laid out with a gauge.');
  const { markingGauges, mortiseGauges } = piece.file.tools;
  const owned = { 'marking gauge': Math.max(1, markingGauges ?? 1), 'mortise gauge': Math.max(1, mortiseGauges ?? 1) } as const;
  const plan = planGauges(stages(drawing, jobs), freeGauges(owned));
  const settings = plan.reduce((sum, { resets }) => sum + resets.length, 0);
  const width = pageForm(paper, 'upright').window.width;
  return success(listSheets({
    name: 'gauge card', title: titled('gauge card'), drawn, paper, longest: nanometres(Math.max(...jobs.flatMap(({ gaugings }) => gaugings.map(({ distance }) => distance)))),
    head: [{ cells: [{ x: mm(0), width, text: `${settings} settings in all, with ${owned['marking gauge']} marking and ${owned['mortise gauge']} mortise gauge. Mark every copy before a gauge is touched.`, bold: true }] }],
    rows: plan.flatMap((layout, index) => layoutRows(drawing, layout, index + 1, owned)),
  }));
}

/** Joints before what holds the top, as the work goes. */
function stages({ piece }: Drawing, jobs: readonly LayoutJob[]): readonly (readonly LayoutJob[])[] {
  const tenoned = new Set(piece.file.joints.filter(({ kind }) => kind === 'mortise and tenon').map(({ id }) => id));
  const isJoint = ({ joint }: LayoutJob): boolean => joint !== undefined && tenoned.has(joint);
  return [jobs.filter(isJoint), jobs.filter((job) => !isJoint(job))];
}

function layoutRows(drawing: Drawing, { job, resets }: PlannedLayout, number: number, owned: Readonly<Record<Gauging['tool'], number>>): readonly Row[] {
  const width = pageForm(drawing.paper, 'upright').window.width;
  const from = mm(10);
  const setting = ({ distance, pins }: Setting): string => `${sizeText(distance, drawing.rounding)}${pins === undefined ? '' : ` to the near pin, pins ${sizeText(pins, drawing.rounding)} apart`}`;
  const named = (tool: Gauging['tool'], gauge: number): string => (owned[tool] === 1 ? tool : `${tool} ${gauge}`);
  const text = (said: string, bold = false): Row => ({ cells: [{ x: from, width: nanometres(width - from), text: said, ...(bold ? { bold: true } : {}) }] });
  return [
    { ruled: true, cells: [{ x: mm(0), width: from, text: String(number), bold: true }, { x: from, width: nanometres(width - from), text: job.say, bold: true }] },
    ...(resets.length === 0 ? [text('Every gauge stands right already.')] : resets.map(({ gauge, to }) => text(`Set the ${named(to.tool, gauge)} to ${setting(to)}.`))),
    ...job.gaugings.map((gauging) => text(`${gauging.marks}: ${setting(gauging)}, from the ${gauging.from}`)),
  ];
}
