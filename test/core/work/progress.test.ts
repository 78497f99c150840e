import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Moment } from '../../../core/clock/moment.ts';
import type { Timer } from '../../../core/clock/timer.ts';
import { stepsFor } from '../../../core/work/plan.ts';
import { currentStep, isOpen, mayDo, nextAfter, nextOpen, previous, progressOf, remaining, type Progress } from '../../../core/work/progress.ts';
import { timersStarting, type Step } from '../../../core/work/step.ts';
import { bakersTable, cleatedLid, panelOnly, part, piece, PIECES, slattedEnds } from './pieces.ts';

const steps = stepsFor(bakersTable());

function called(id: string, among: readonly Step[] = steps): Step {
  const step = among.find((each) => each.id === id);
  if (step === undefined) throw new Error(`no step ${id}`);
  return step;
}

function progress(done: readonly string[] = [], skipped: readonly string[] = [], currentStep: string | null = null): Progress {
  return { done: new Set(done), skipped: new Set(skipped), currentStep };
}

/** Done up to, and without, that step. */
function upTo(id: string, among: readonly Step[] = steps): readonly string[] {
  return among.slice(0, among.indexOf(called(id, among))).map((step) => step.id);
}

describe('what the wood does not allow is refused with the reason', () => {
  test.each([
    ['lamination glue-up/leg/1', upTo('dry check/leg/1'), 'dry check/leg/1', 'A gap that shows once the glue is on stays for good. Check it dry first.'],
    ['true again/leg/1', upTo('scrape squeeze-out/leg/1'), 'scrape squeeze-out/leg/1', 'The clamps must be off, and hard glue nicks the plane.'],
    ['chop mortises/leg/1/longRailTenon', upTo('joint layout/leg/longRailTenon'), 'joint layout/leg/longRailTenon', 'There are no mortise lines to chop to.'],
    ['saw tenons/longRail/1/longRailTenon', upTo('joint layout/longRail/longRailTenon'), 'joint layout/longRail/longRailTenon', 'There are no shoulder lines to saw to.'],
    ['glue-up/endFrame.1', upTo('dry assembly/piece'), 'dry assembly/piece', 'Glue gives no time to find out what does not fit. Assemble it dry first.'],
    ['ease edges/longRail', upTo('fit/longRail/1/longRailTenon'), 'fit/longRail/1/longRailTenon', 'An eased edge is no reference: the joints are gauged and fitted from it.'],
    ['thickness/longRail/1', upTo('face/longRail/1'), 'face/longRail/1', 'Thickness is gauged from the reference face.'],
    ['face/longRail/1', upTo('rest/lot.solid'), 'rest/lot.solid', 'Fresh sawn wood goes on moving: what is flat today would not be tomorrow.'],
    ['fit/longRail/2/longRailTenon', [...upTo('chop mortises/leg/1/longRailTenon'), 'saw tenons/longRail/2/longRailTenon'], 'chop mortises/leg/1/longRailTenon', 'Each tenon is pared to its own mortise: chop them first.'],
    ['finish/coat.1', upTo('level/piece'), 'level/piece', 'Levelling afterwards would cut through the finish.'],
  ])('%s', (id, done, first, because) => {
    const may = mayDo(called(id), progress(done), steps);
    expect(may).toEqual({ ok: false, fault: { because, first: called(first), how: 'open' } });
  });

  test('of several steps in the way, the first in the order is named', () => {
    const may = mayDo(called('orient and mark/leg'), progress(), steps);
    expect(!may.ok && may.fault.first.id).toBe('thickness/leg/1');
  });
});

describe('what the wood allows may be done out of order', () => {
  test.each([
    ['the third leg before the first', 'face/leg/3', upTo('face/leg/1')],
    ['width before thickness', 'width/longRail/1', upTo('thickness/longRail/1')],
    ['a tenon sawn before any mortise is chopped', 'saw tenons/longRail/1/longRailTenon', upTo('chop mortises/leg/1/longRailTenon')],
    ['the short rails before the long ones', 'face/shortRail/1', upTo('face/longRail/1')],
    ['the finish before the top is fixed', 'finish/coat.1', upTo('fix top/top')],
    ['the foot bevel before the joints', 'foot bevel/leg', upTo('joint layout/leg/longRailTenon')],
    ['a step that is done already, again', 'face/leg/1', upTo('ends/leg/1')],
  ])('%s', (_, id, done) => {
    expect(mayDo(called(id), progress(done), steps)).toEqual({ ok: true, value: true });
  });
});

describe('skipping', () => {
  test('counts as passed: the maker did it elsewhere, or knows why not', () => {
    expect(mayDo(called('rip/longRail'), progress(['rough crosscut/longRail'], ['reference edge/longRail']), steps).ok).toBe(true);
  });

  test('is no way round the dry check before glue', () => {
    const done = upTo('dry check/leg/1');
    const may = mayDo(called('lamination glue-up/leg/1'), progress(done, ['dry check/leg/1']), steps);
    expect(may).toMatchObject({ ok: false, fault: { how: 'skipped', first: { id: 'dry check/leg/1' } } });
    expect(!may.ok && may.fault.because).toMatch(/It was skipped, and this cannot be undone: do it first\.$/);
  });

  test('is no way round the dry assembly before the glue-up', () => {
    expect(mayDo(called('glue-up/endFrame.1'), progress(upTo('dry assembly/piece'), ['dry assembly/piece']), steps).ok).toBe(false);
  });

  test('when only a skipped gate holds everything up, next leads to it', () => {
    const only = stepsFor(panelOnly());
    const next = nextOpen(only, progress(upTo('dry check/lid/1', only), ['dry check/lid/1']));
    expect(next?.id).toBe('dry check/lid/1');
  });
});

describe('clocks', () => {
  const at = (minutes: number): Moment => ({ wallMs: minutes * 60_000, wallTrusted: true, bootId: 'one', monotonicMs: minutes * 60_000 });
  const running = (step: Step, more: Partial<Timer> = {}): readonly Timer[] =>
    timersStarting(step, 'when done').map(({ kind, name, durationMs, basis }) => ({ kind, name, durationMs, basis, id: 1, startedAt: at(0), ...more }));
  const glue = called('lamination glue-up/leg/1');
  const scrape = called('scrape squeeze-out/leg/1');
  const again = called('true again/leg/1');
  const glued = progress([...upTo('scrape squeeze-out/leg/1'), 'lamination glue-up/leg/1']);

  test('clamps stay on until their time is up', () => {
    expect(mayDo(scrape, glued, steps, { timers: running(glue), now: at(59) }))
      .toEqual({ ok: false, fault: { because: 'The clamps stay on leg one until their time is up.', first: glue, how: 'clock' } });
    expect(mayDo(scrape, glued, steps, { timers: running(glue), now: at(60) }).ok).toBe(true);
  });

  test('a joint is not planed while its glue is curing', () => {
    const scraped = progress([...glued.done, scrape.id]);
    expect(mayDo(again, scraped, steps, { timers: running(scrape), now: at(60) })).toMatchObject({ ok: false, fault: { how: 'clock' } });
    expect(mayDo(again, scraped, steps, { timers: running(scrape), now: at(24 * 60) }).ok).toBe(true);
  });

  test('a clock that was acknowledged or stopped is the maker’s word', () => {
    expect(mayDo(scrape, glued, steps, { timers: running(glue, { acknowledgedAt: at(5) }), now: at(6) }).ok).toBe(true);
    expect(mayDo(scrape, glued, steps, { timers: [], now: at(6) }).ok).toBe(true);
  });

  test('a clock that got a number because its name was taken is the same clock; another leg’s is not', () => {
    expect(mayDo(scrape, glued, steps, { timers: running(glue, { name: 'leg one clamps two', askedName: 'leg one clamps' }), now: at(6) }).ok).toBe(false);
    expect(mayDo(scrape, glued, steps, { timers: running(glue, { name: 'leg two clamps' }), now: at(6) }).ok).toBe(true);
  });

  test('while one leg is in its clamps, next is the one after it', () => {
    expect(nextAfter(glue, steps, progress(upTo('face/leg/2')), { timers: running(glue), now: at(1) })?.id).toBe('face/leg/2');
  });

  test('when there is nothing to do but wait, next is what is waited for', () => {
    const only = stepsFor(panelOnly());
    const glueLid = called('panel glue-up/lid/1', only);
    const done = progress([...upTo(glueLid.id, only), glueLid.id]);
    expect(nextOpen(only, done, { timers: running(glueLid), now: at(1) })?.id).toBe('scrape squeeze-out/lid/1');
  });
});

describe('where the maker is', () => {
  test('at the first open step, until they go elsewhere', () => {
    expect(currentStep(steps, progress())?.id).toBe('rough crosscut/leg');
    expect(currentStep(steps, progress(upTo('rest/lot.solid')))?.id).toBe('rest/lot.solid');
    expect(currentStep(steps, progress([], [], 'face/leg/3'))?.id).toBe('face/leg/3');
  });

  test('a step that the piece no longer has is forgotten', () => {
    expect(currentStep(steps, progress([], [], 'face/apron/9'))?.id).toBe('rough crosscut/leg');
  });

  test('nowhere when all is done', () => {
    const all = progress(steps.map(({ id }) => id));
    expect(currentStep(steps, all)).toBeUndefined();
    expect(nextOpen(steps, all)).toBeUndefined();
    expect(previous(steps, all)?.id).toBe('finish/coat.3');
  });

  test('back is the step before, done or not, and there is none before the first', () => {
    expect(previous(steps, progress([], [], 'face/leg/2'))?.id).toBe('lamination glue-up/leg/1');
    expect(previous(steps, progress())).toBeUndefined();
  });

  test('next passes over what may not be done yet, and comes round to what was left', () => {
    const left = upTo('face/longRail/1').filter((id) => id !== 'rest/lot.panel');
    expect(nextOpen(steps, progress(left, [], 'finish/coat.1'))?.id).toBe('rest/lot.panel');
  });
});

describe('what is left', () => {
  test('is counted in all, by operation and by part', () => {
    const some = progress(upTo('face/longRail/1'), ['face/longRail/1']);
    const left = remaining(steps, some);
    expect(left).toMatchObject({ of: steps.length, done: upTo('face/longRail/1').length, skipped: 1, left: steps.length - upTo('face/longRail/1').length - 1 });
    expect(left.byOperation.find(({ operation }) => operation === 'chop mortises')).toEqual({ operation: 'chop mortises', left: 14, of: 14 });
    expect(left.byOperation.find(({ operation }) => operation === 'rip')).toMatchObject({ left: 0 });
    expect(left.byPart.map(({ part }) => part)).toEqual(['leg', 'longRail', 'shortRail', 'sideStretcher', 'backStretcher', 'button', 'top']);
    expect(left.byOperation.reduce((sum, { left: open }) => sum + open, 0)).toBe(left.left);
  });

  test('is told for each copy of a part, with what comes next for it', () => {
    const rails = progressOf('longRail', steps, progress([...upTo('edge/longRail/1'), 'edge/longRail/1']));
    expect(rails.map(({ copy, next }) => [copy, next?.id])).toEqual([[1, 'thickness/longRail/1'], [2, 'edge/longRail/2']]);
    expect((rails[1]?.left ?? 0) - (rails[0]?.left ?? 0)).toBe(1);
    expect(progressOf('apron', steps, progress())).toEqual([]);
  });

  test('is nothing when every step is done', () => {
    const all = progress(steps.map(({ id }) => id));
    expect(remaining(steps, all).left).toBe(0);
    expect(progressOf('leg', steps, all).every(({ left, next }) => left === 0 && next === undefined)).toBe(true);
  });
});

describe('whatever the maker does, in whatever order', () => {
  const acts = fc.array(fc.record({ at: fc.nat(), act: fc.constantFrom('done' as const, 'done' as const, 'skip' as const, 'next' as const, 'reopen' as const) }), { maxLength: 400 });

  test.each([['only a panel', panelOnly], ['ends with slats', slattedEnds], ['a lid with cleats and a tray', cleatedLid], ['the demo table', bakersTable]])(
    '%s: nothing is done before what it depends on, and there is always something to do until all is', (_, make) => {
      const all = stepsFor(make());
      fc.assert(fc.property(acts, (tried) => {
        const done = new Set<string>();
        const skipped = new Set<string>();
        const state: Progress = { done, skipped, currentStep: null };
        for (const { at, act } of tried) {
          const step = act === 'next' ? nextOpen(all, state) : all[at % all.length];
          if (step === undefined) { expect(all.some((each) => isOpen(each, state))).toBe(false); continue; }
          if (act === 'skip') { if (isOpen(step, state)) skipped.add(step.id); continue; }
          if (act === 'reopen') { skipped.delete(step.id); continue; }
          const may = mayDo(step, state, all);
          if (!may.ok) {
            expect(all.indexOf(may.fault.first)).toBeLessThan(all.indexOf(step));
            expect(done.has(may.fault.first.id)).toBe(false);
            expect(act, `next led to ${step.id}, which may not be done`).not.toBe('next');
            continue;
          }
          for (const { step: before, gate } of step.after) expect(done.has(before) || (gate !== true && skipped.has(before))).toBe(true);
          skipped.delete(step.id);
          done.add(step.id);
        }
        // From here, doing what comes next finishes the piece.
        for (let left = all.length * 2; left > 0; left--) {
          const step = nextOpen(all, state);
          if (step === undefined) break;
          expect(mayDo(step, state, all).ok, step.id).toBe(true);
          skipped.delete(step.id);
          done.add(step.id);
        }
        expect(all.filter((each) => isOpen(each, state))).toEqual([]);
      }), { numRuns: 25 });
    }, 30_000);

  test.each(Object.entries(PIECES))('%s: done from first to last, no step is refused', (_, make) => {
    const done = new Set<string>();
    const all = stepsFor(make());
    for (const step of all) {
      expect(mayDo(step, { done, skipped: new Set(), currentStep: null }, all)).toEqual({ ok: true, value: true });
      done.add(step.id);
    }
  });
});

test('steps keep their names when another copy is added, so that what was done to the others stands', () => {
  const one = new Set(stepsFor(piece([part('stick', 'stick', 1), part('block', 'block', 2)])).map(({ id }) => id));
  const more = new Set(stepsFor(piece([part('stick', 'stick', 3), part('block', 'block', 2)])).map(({ id }) => id));
  expect([...one].filter((id) => !more.has(id))).toEqual([]);
  expect(more.size).toBeGreaterThan(one.size);
});
