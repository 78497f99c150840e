import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { freeGauges, planGauges, planThis, settingsLeft, type PlannedLayout, type Standing } from '../../../core/layout/gaugePlan.ts';
import { GAUGE_TOOLS, layoutJobs, settingKey, type GaugeTool, type LayoutJob, type Setting } from '../../../core/layout/gaugings.ts';
import { nanometres, type Length } from '../../../core/length/length.ts';
import { evaluate } from '../../../core/piece/evaluate.ts';
import { writePiece } from '../../../core/piece/load.ts';
import { gaugeState } from '../../../core/respond/layoutGaugeState.ts';
import { gaugeWarning } from '../../../core/respond/layoutGauges.ts';
import { stepsFor } from '../../../core/work/plan.ts';
import { Session } from '../respond/session.ts';
import { bakersTable, PIECES } from '../work/pieces.ts';

const mm = (count: number): Length => nanometres(count * 1_000_000);

function jobOf(name: number, settings: readonly (readonly [GaugeTool, number])[]): LayoutJob {
  return { part: `part ${name}`, say: `layout ${name}`, gaugings: settings.map(([tool, distance]) => ({ tool, distance: mm(distance), from: 'face', marks: 'line' })) };
}

const anySettings = fc.uniqueArray(fc.tuple(fc.constantFrom(...GAUGE_TOOLS), fc.integer({ min: 1, max: 4 })), { minLength: 1, maxLength: 3, selector: ([tool, distance]) => `${tool}${distance}` });
const anyStages = fc.array(fc.tuple(anySettings, fc.integer({ min: 0, max: 1 })), { minLength: 1, maxLength: 4 }).map((drawn) => {
  const jobs = drawn.map(([settings], index) => jobOf(index, settings));
  return [0, 1].map((stage) => jobs.filter((_, index) => drawn[index]?.[1] === stage));
});
const anyOwned = fc.record({ 'marking gauge': fc.integer({ min: 1, max: 3 }), 'mortise gauge': fc.integer({ min: 1, max: 2 }) });

/** Every order of layouts, every order of lines in each, every gauge to set for each: the fewest settings among all of them. */
function exhaustively(stages: readonly (readonly LayoutJob[])[], standing: Standing): number {
  let fewest = Infinity;
  const go = (left: readonly (readonly LayoutJob[])[], lines: readonly Setting[], stands: Standing, used: number): void => {
    if (used >= fewest) return;
    if (lines.length === 0) {
      const open = left.find((jobs) => jobs.length > 0);
      if (!open) fewest = used;
      for (const job of open ?? []) go(left.map((jobs) => jobs.filter((one) => one !== job)), job.gaugings, stands, used);
      return;
    }
    for (const line of lines) {
      const others = lines.filter((one) => one !== line);
      const same = (one: Setting | undefined): boolean => one !== undefined && settingKey(one) === settingKey(line);
      if (stands[line.tool].some(same)) go(left, others, stands, used);
      else stands[line.tool].forEach((_, gauge) => { go(left, others, { ...stands, [line.tool]: stands[line.tool].map((one, index) => (index === gauge ? line : one)) }, used + 1); });
    }
  };
  go(stages, [], standing, 0);
  return fewest;
}

/** Follows a plan by hand: every line finds its gauge, before the resets or at one of them; the gauges end as it says. */
function follow(plan: readonly PlannedLayout[], standing: Standing): number {
  let stands = standing;
  for (const { job, resets, leaves } of plan) {
    const seen = new Set(GAUGE_TOOLS.flatMap((tool) => stands[tool].flatMap((one) => (one ? [settingKey(one)] : []))));
    for (const { gauge, to, from } of resets) {
      expect(job.gaugings.map(settingKey)).toContain(settingKey(to));
      expect(stands[to.tool][gauge - 1]).toEqual(from);
      stands = { ...stands, [to.tool]: stands[to.tool].map((one, index) => (index === gauge - 1 ? to : one)) };
      seen.add(settingKey(to));
    }
    for (const gauging of job.gaugings) expect(seen).toContain(settingKey(gauging));
    expect(leaves).toEqual(stands);
  }
  return plan.flatMap(({ resets }) => resets).length;
}

/** Trying everything takes its time on a busy machine. */
describe('the plan for the gauges', { timeout: 120_000 }, () => {
  it('takes as few settings as the best of all plans, found by trying each', () => {
    fc.assert(fc.property(anyStages, anyOwned, (stages, owned) => {
      const free = freeGauges(owned);
      const plan = planGauges(stages, free);
      expect(follow(plan, free)).toBe(exhaustively(stages, free));
      expect(plan.map(({ job }) => job.say).sort()).toEqual(stages.flat().map(({ say }) => say).sort());
      expect(settingsLeft(stages, free)).toBe(exhaustively(stages, free));
    }), { numRuns: 200 });
  });

  it('goes on as well from gauges that stand already', () => {
    fc.assert(fc.property(anyStages, anyOwned, anySettings, (stages, owned, before) => {
      const { leaves } = planThis(jobOf(99, before), stages, freeGauges(owned));
      expect(follow(planGauges(stages, leaves), leaves)).toBe(exhaustively(stages, leaves));
    }), { numRuns: 150 });
  });

  it('with what is done next given, takes the fewest that are then left', () => {
    fc.assert(fc.property(anyStages, anyOwned, (stages, owned) => {
      const free = freeGauges(owned);
      for (const job of stages.flat()) {
        const { settings } = planThis(job, stages, free);
        expect(settings).toBe(exhaustively([[job], ...stages.map((jobs) => jobs.filter((one) => one !== job))], free));
        expect(settings).toBeGreaterThanOrEqual(settingsLeft(stages.length > 1 ? [stages.flat()] : stages, free));
      }
    }), { numRuns: 60 });
  });

  it('with as many gauges as settings sets each once, and loses none', () => {
    const stages = [[jobOf(0, [['marking gauge', 1], ['marking gauge', 2]]), jobOf(1, [['marking gauge', 2], ['marking gauge', 3]]), jobOf(2, [['marking gauge', 1], ['marking gauge', 3]])]];
    const plan = planGauges(stages, freeGauges({ 'marking gauge': 3, 'mortise gauge': 1 }));
    expect(plan.flatMap(({ resets }) => resets.map(({ loses }) => loses))).toEqual([false, false, false]);
  });

  it('says which setting it gives up although it is needed again', () => {
    const stages = [[jobOf(0, [['marking gauge', 1]])], [jobOf(1, [['marking gauge', 2]])], [jobOf(2, [['marking gauge', 1]])]];
    const plan = planGauges(stages, freeGauges({ 'marking gauge': 1, 'mortise gauge': 1 }));
    expect(plan.map(({ resets }) => resets.map(({ loses }) => loses))).toEqual([[false], [true], [false]]);
  });
});

describe('the layouts of the demo piece', () => {
  const jobs = layoutJobs(bakersTable().file, evaluate(bakersTable(), []));

  it('set the mortise gauge by the setback and the shoulder: 1/4 and 3/8 from the outer face, pins 1/2 apart', () => {
    const [first] = jobs;
    expect(first).toMatchObject({ part: 'leg', joint: 'longRailTenon', gaugings: [{ tool: 'mortise gauge', distance: 15_875_000, pins: 12_700_000, from: 'outer face' }] });
  });

  it('gauge a tenon from the reference edge only: 1 in to its top, 4 1/2 in to its bottom', () => {
    const tenons = jobs.find(({ part }) => part === 'longRail');
    expect(tenons?.gaugings.map(({ distance, from }) => [distance / 25_400_000, from])).toEqual([[0.375, 'outside face'], [1, 'top edge'], [4.5, 'top edge']]);
  });

  it('follow the rails as made', () => {
    const thick = evaluate(bakersTable(), [{ size: 'longRail.thickness', length: nanometres(33_337_500) }]);
    // 1 5/16 in thick: the shoulder is 13/32 in, and the mortise 21/32 in from the outer face of the leg.
    expect(layoutJobs(bakersTable().file, thick)[0]?.gaugings[0]?.distance).toBe(nanometres((25_400_000 * 21) / 32));
  });
});

describe('gauges at the bench', () => {
  const MORTISES = 'joint layout/leg/longRailTenon';
  const TENONS = 'joint layout/longRail/longRailTenon';

  function laidOut(...steps: readonly string[]): Session {
    const session = Session.withDemo();
    for (const step of steps) session.note({ kind: 'step done', step });
    return session;
  }

  it('are free at first, and the bench says what to set', () => {
    expect(Session.withDemo().say('which gauge is set to what')).toBe('No gauge is set. Then mortises for the long rail in the legs: set the mortise gauge to five eighths of an inch to the near pin, pins half an inch apart.');
  });

  it('stand as the layouts that were done left them, in the order in which they were done', () => {
    expect(laidOut(MORTISES).hearOut('how are the gauges set')).toMatch(/^The mortise gauge five eighths of an inch to the near pin, pins half an inch apart\. Then mortises for the short rail in the legs: every gauge stands right already\./);
    expect(laidOut(MORTISES, TENONS).hearOut('how are the gauges set')).toMatch(/Marking gauge two four, and a half inches\. The mortise gauge three eighths of an inch to the near pin/);
    expect(laidOut(TENONS, MORTISES).hearOut('how are the gauges set')).toMatch(/The mortise gauge five eighths of an inch/);
  });

  it('are planned in ten settings with three marking gauges and one mortise gauge, and shown with their lengths', () => {
    const session = Session.withDemo();
    expect(session.say('what order do I mark')).toMatch(/With three marking gauges and one mortise gauge the order takes ten settings, and no order takes fewer\./);
    const { screen } = session.bench.conversation;
    expect(screen).toMatchObject({ name: 'reckoning', result: { answers: expect.arrayContaining([{ label: 'the mortise gauge', length: 15_875_000 }, { label: 'pins apart', length: 12_700_000 }]) as unknown } });
  });

  it('move only the stock when the pins stand right', () => {
    const session = laidOut(MORTISES, 'joint layout/leg/shortRailTenon', 'joint layout/leg/backStretcherTenon');
    expect(session.say('which gauge is set to what')).toMatch(/move only the stock of the mortise gauge, to three eighths of an inch/);
  });

  it.each(Object.entries(PIECES))('need no more settings than the plan says when the steps of %s are done in their order', (_, make) => {
    const session = new Session();
    session.request({ kind: 'load piece', text: writePiece(make().file), from: 'the shelf' });
    const first = gaugeState(session.bench);
    if (!first) throw new Error('no piece on the bench');
    let used = 0;
    for (const { job, step } of first.layouts) {
      const now = gaugeState(session.bench);
      const open = now?.stages.flat().find(({ part, joint }) => part === job.part && joint === job.joint);
      if (!now || !open) throw new Error(`${job.say} is not to be laid out any more`);
      used += planThis(open, now.stages, now.standing).resets.length;
      expect(gaugeWarning(session.bench, step), step.title).not.toMatch(/more in all/);
      session.note({ kind: 'step done', step: step.id });
    }
    expect(used).toBe(planGauges(first.stages, first.standing).flatMap(({ resets }) => resets).length);
  });

  it('warn before a step that would lose a setting still needed, with what to do first', () => {
    const session = laidOut(...stepsFor(bakersTable()).map(({ id }) => id).slice(0, stepsFor(bakersTable()).findIndex(({ id }) => id === MORTISES) + 1));
    const { say, note } = session.request({ kind: 'go to step', step: TENONS });
    expect(say).toMatch(/^Joint layout, .*Laid out now, this takes one setting more in all\. Better first: mortises for the short rail in the legs\.$/);
    expect(note).toMatch(/^Laid out now/);
    expect(session.say('gauges for this step')).toMatch(/^Laid out now, this takes one setting more in all\. Better first: mortises for the short rail in the legs\. /);
  });

  it('are not asked without a piece', () => {
    expect(new Session().request({ kind: 'gauges', what: 'order' }).signal).toBe('wrong');
  });
});
