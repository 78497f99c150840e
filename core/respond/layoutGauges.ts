import type { Bench } from '../bench/bench.ts';
import type { Response } from '../bench/reply.ts';
import type { LayoutRequest } from '../bench/request.ts';
import type { ReckoningResult } from '../bench/screen.ts';
import type { State } from '../journal/state.ts';
import { MOST_PLANNED, planGauges, planThis, settingsLeft, type PlannedLayout, type Reset, type Standing } from '../layout/gaugePlan.ts';
import { GAUGE_TOOLS, settingKey, type GaugeTool, type LayoutJob, type Setting } from '../layout/gaugings.ts';
import { sayNumber } from '../length/sayNumber.ts';
import { assertNever } from '../result.ts';
import { currentStep } from '../work/progress.ts';
import type { Step } from '../work/step.ts';
import { gaugeState, type GaugeState } from './layoutGaugeState.ts';
import { tellAll } from './inTurn.ts';
import { noPiece, refuse, tell } from './plain.ts';
import { sayCount, sayList, sentence, spoken, written, type TellLength } from './saying.ts';
import { stepsOf } from './views.ts';

type Asked = Extract<LayoutRequest, { kind: 'gauges' }>;
/** More layouts than these are only said: the screen is read from the bench, and asked again as the work goes on. */
const MOST_SHOWN = 3;

type Answers = ReckoningResult['answers'];

/** Which gauge holds what, what this layout needs, and the order of marking that takes the fewest settings. */
export function respondToGauges(bench: Bench, request: Asked): Response {
  const gauges = gaugeState(bench);
  if (!gauges) return noPiece();
  if (gauges.layouts.length === 0) return refuse('Nothing in this piece is laid out with a gauge.');
  switch (request.what) {
    case 'how they stand': return howTheyStand(bench, gauges);
    case 'for this step': return forThisStep(bench, gauges);
    case 'order': return order(bench, gauges);
    case 'for a joint': return forJoint(bench, gauges, request);
    default: return assertNever(request);
  }
}

function howTheyStand({ state }: Bench, gauges: GaugeState): Response {
  const { standing } = gauges;
  const [next] = planGauges(gauges.stages, standing);
  const held = GAUGE_TOOLS.flatMap((tool) => standing[tool].flatMap((setting, index) => (setting ? [`${nameOf(gauges, tool, index + 1)} ${saySetting(state, setting)}`] : [])));
  const now = held.length === 0 ? 'No gauge is set.' : held.map(sentence).join(' ');
  const then = next ? sentence(`then ${next.job.say}: ${sayResets(state, gauges, next.resets)}`) : 'Nothing more is to be gauged.';
  return tell({ say: `${now} ${then}`, ...shown('gauges as they stand', standingAnswers(gauges, standing), next ? `next: ${next.job.say}` : 'nothing more is to be gauged') });
}

/** The layout of the step at hand, else the one that comes next. */
function forThisStep(bench: Bench, gauges: GaugeState): Response {
  const { state } = bench;
  const here = openLayout(gauges, currentStep(stepsOf(state), state));
  const planned = here ? planThis(here, gauges.stages, gauges.standing) : planGauges(gauges.stages, gauges.standing)[0];
  return planned ? tellLayout(state, gauges, planned, here ? warningFor(gauges, here) : '') : refuse('Nothing more is to be gauged.');
}

/** The layout of one side of a joint, be it its turn or not. */
function forJoint({ state }: Bench, gauges: GaugeState, { joint: id, side }: Extract<Asked, { what: 'for a joint' }>): Response {
  const joint = state.piece?.file.joints.find((one) => one.id === id);
  const part = joint?.kind === 'mortise and tenon' ? (side === 'tenon' ? joint.tenonOn : joint.mortiseIn) : undefined;
  const found = gauges.layouts.find(({ job }) => job.joint === id && (part === undefined || job.part === part));
  if (!found) return refuse('That joint is not laid out with a gauge.');
  const open = openLayout(gauges, found.step);
  return tellLayout(state, gauges, planThis(found.job, gauges.stages, gauges.standing), open ? warningFor(gauges, open) : '');
}

function tellLayout(state: State, gauges: GaugeState, planned: PlannedLayout, warning: string): Response {
  const { job } = planned;
  // One gauge that is to be set says its setting once.
  const said = job.gaugings.length === 1 && planned.resets.length === 1;
  const lines = job.gaugings.map((gauging) => `${gauging.marks}${said ? '' : `, ${saySetting(state, gauging)}`} from the ${gauging.from}, with ${gaugeHolding(gauges, planned, gauging)}`);
  return tell({
    // The warning first: it must not wait for what is told after it.
    say: [warning, sentence(`${job.say}: ${sayResets(state, gauges, planned.resets)}`), ...lines.map(sentence)].filter(Boolean).join(' '),
    ...shown(job.say, job.gaugings.flatMap((gauging) => settingAnswers(`${gauging.marks}, from the ${gauging.from}`, gauging)), warning || 'mark every copy before a gauge is touched'),
  });
}

function order({ state }: Bench, gauges: GaugeState): Response {
  const plan = planGauges(gauges.stages, gauges.standing);
  const [first] = plan;
  if (!first) return refuse('Nothing more is to be gauged.');
  const resets = plan.flatMap(({ resets: set }) => set);
  const fewest = isFewest(gauges, plan);
  const owned = sayList(GAUGE_TOOLS.map((tool) => sayCount(gauges.owned[tool], tool, `${tool}s`)));
  const settings = `With ${owned} the order takes ${sayCount(resets.length, 'setting', 'settings')}${fewest ? ', and no order takes fewer' : ''}.`;
  const items = plan.map(({ job, resets: set }, index) => ({ say: sentence(index === 0 ? `${job.say}: ${sayResets(state, gauges, set)}` : job.say), note: `${job.say}: ${sayResets(state, gauges, set, written)}` }));
  return tellAll({
    say: settings,
    ...shown(`first, ${first.job.say}`, first.resets.flatMap(({ gauge, to }) => settingAnswers(nameOf(gauges, to.tool, gauge), to)),
      [`${resets.length} settings${fewest ? ', the fewest there are' : ''}`, ...plan.slice(1, MOST_SHOWN).map(({ job }, index) => `${index + 2} ${job.say}`)].join(' · ')),
  }, 'layouts', items);
}

/** Sure for as many layouts as are weighed together, and where no setting comes twice. */
function isFewest({ standing }: GaugeState, plan: readonly PlannedLayout[]): boolean {
  const set = plan.flatMap(({ resets }) => resets.map(({ to }) => settingKey(to)));
  const held = GAUGE_TOOLS.flatMap((tool) => standing[tool].flatMap((one) => (one ? [settingKey(one)] : [])));
  return plan.length <= MOST_PLANNED || new Set([...set, ...held]).size === set.length + held.length;
}

/** For the eye, at a step that lays out: which gauge to set to what before it begins. Empty at other steps and when it is laid out already. */
export function gaugesToSet(bench: Bench, step: Step): string {
  if (!GAUGE_TOOLS.some((tool) => step.tools.includes(tool))) return '';
  const gauges = gaugeState(bench);
  const job = gauges ? openLayout(gauges, step) : undefined;
  return gauges && job ? sentence(sayResets(bench.state, gauges, planThis(job, gauges.stages, gauges.standing).resets, written)) : '';
}

/** What to know before that step touches a gauge; empty when nothing is lost by it. */
export function gaugeWarning(bench: Bench, step: Step): string {
  if (!GAUGE_TOOLS.some((tool) => step.tools.includes(tool))) return '';
  const gauges = gaugeState(bench);
  if (!gauges) return '';
  const job = openLayout(gauges, step);
  if (job) return warningFor(gauges, job);
  const needed = new Set(gauges.stages.flat().flatMap(({ gaugings }) => gaugings.map(settingKey)));
  const taken = GAUGE_TOOLS.filter((tool) => step.tools.includes(tool) && gauges.standing[tool].every((setting) => setting && needed.has(settingKey(setting))));
  const layout = gauges.layouts.some(({ step: { id } }) => id === step.id);
  return taken.length === 0 || layout ? '' : `Every ${taken.join(' and ')} is still needed as it stands. Finish the layout first, or it must be set again.`;
}

function openLayout({ layouts, stages }: GaugeState, step: Step | undefined): LayoutJob | undefined {
  const job = layouts.find((layout) => layout.step.id === step?.id)?.job;
  return job && stages.flat().includes(job) ? job : undefined;
}

function warningFor(gauges: GaugeState, job: LayoutJob): string {
  const { settings, resets } = planThis(job, gauges.stages, gauges.standing);
  const more = settings - settingsLeft(gauges.stages, gauges.standing);
  const [first] = planGauges(gauges.stages, gauges.standing);
  if (more > 0 && first) return `Laid out now, this takes ${sayCount(more, 'setting', 'settings')} more in all. Better first: ${first.job.say}.`;
  const lost = resets.filter(({ loses }) => loses).map(({ gauge, to }) => nameOf(gauges, to.tool, gauge));
  return lost.length === 0 ? '' : sentence(`${sayList(lost)} gives up a setting that is needed again later`);
}

/** 'marking gauge two', or plainly 'the mortise gauge' where there is one. */
function nameOf({ owned }: GaugeState, tool: GaugeTool, gauge: number): string {
  return owned[tool] === 1 ? `the ${tool}` : `${tool} ${sayNumber(gauge)}`;
}

function saySetting(state: State, { distance, pins }: Setting, put: TellLength = spoken): string {
  return pins === undefined ? put(state, distance) : `${put(state, distance)} to the near pin, pins ${put(state, pins)} apart`;
}

function sayResets(state: State, gauges: GaugeState, resets: readonly Reset[], put: TellLength = spoken): string {
  if (resets.length === 0) return 'every gauge stands right already';
  return sayList(resets.map(({ gauge, to, from }) => {
    const name = nameOf(gauges, to.tool, gauge);
    return to.pins !== undefined && from?.pins === to.pins ? `move only the stock of ${name}, to ${put(state, to.distance)}` : `set ${name} to ${saySetting(state, to, put)}`;
  }), 'then');
}

/** The gauge that holds a setting in that layout: set for it, or still standing from before. */
function gaugeHolding(gauges: GaugeState, { resets }: PlannedLayout, setting: Setting): string {
  const key = settingKey(setting);
  const set = resets.find(({ to }) => settingKey(to) === key)?.gauge;
  return nameOf(gauges, setting.tool, set ?? gauges.standing[setting.tool].findIndex((one) => one && settingKey(one) === key) + 1);
}

function standingAnswers(gauges: GaugeState, standing: Standing): Answers {
  return GAUGE_TOOLS.flatMap((tool) => standing[tool].flatMap((setting, index) => (setting ? settingAnswers(nameOf(gauges, tool, index + 1), setting) : [])));
}

function settingAnswers(label: string, { distance, pins }: Setting): Answers {
  return [{ label, length: distance }, ...(pins === undefined ? [] : [{ label: 'pins apart', length: pins }])];
}

function shown(question: string, answers: Answers, note: string): Pick<Response['reply'], 'screen' | 'lengths'> {
  return { screen: { name: 'reckoning', result: { question, answers, note } }, lengths: answers.map(({ length }) => length) };
}
