import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { evaluate, sizeOf } from '../../../core/piece/evaluate.ts';
import { stepsFor } from '../../../core/work/plan.ts';
import type { Step } from '../../../core/work/step.ts';
import { renderWording } from '../../../core/work/wording.ts';
import { loadSound } from '../piece/demo.ts';
import { anyPiece, bakersTable, PIECES, saying } from './pieces.ts';

describe.each(Object.entries(PIECES))('the work on %s', (_, make) => {
  const of = make();
  const steps = stepsFor(of);
  const place = new Map(steps.map((step, index) => [step.id, index]));
  const copies = of.file.parts.flatMap(({ id, count }) => Array.from({ length: count }, (_copy, index) => `${id}/${index + 1}`));

  /** All steps that must come before one, through any number of others. */
  function ancestors(step: Step, found = new Set<string>()): Set<string> {
    for (const { step: id } of step.after) {
      if (found.has(id)) continue;
      found.add(id);
      const before = steps[place.get(id) ?? -1];
      if (before !== undefined) ancestors(before, found);
    }
    return found;
  }

  test('no two steps go by the same name', () => {
    expect(place.size).toBe(steps.length);
    expect(new Set(steps.map(({ title }) => title)).size).toBe(steps.length);
  });

  test('every step comes after all that it stands on', () => {
    for (const [index, step] of steps.entries()) {
      for (const { step: before } of [...step.after, ...step.waits]) {
        expect(place.get(before), `${step.id} needs ${before}`).toBeDefined();
        expect(place.get(before), `${step.id} after ${before}`).toBeLessThan(index);
      }
    }
  });

  test('every copy of every part goes from the rough board to the last coat, and the last coat waits for all of it', () => {
    const last = steps.at(-1);
    expect(last?.operation).toBe('finish');
    const before = ancestors(last as Step);
    for (const copy of copies) {
      const its = steps.filter(({ covers }) => covers.some(({ part, copy: number }) => `${part}/${number}` === copy));
      expect(its[0]?.operation).toBe('rough crosscut');
      expect(its.at(-1)).toBe(last);
      for (const step of its) {
        if (step !== last && step.operation !== 'fix top') expect(before.has(step.id), `finish stands on ${step.id}`).toBe(true);
      }
    }
  });

  test('no step covers a copy that the piece does not have', () => {
    for (const { covers, id } of steps) for (const { part, copy } of covers) expect(copies, id).toContain(`${part}/${copy}`);
  });

  test('every size that is mentioned, needed or recorded is in the dimension graph, for that copy', () => {
    const sizes = evaluate(of, []);
    for (const step of steps) {
      for (const mention of [...step.sizes, ...step.record, ...[...step.say, ...step.show].filter((item) => typeof item !== 'string')]) {
        expect(sizeOf(sizes, mention.size, mention.copy), `${step.id}: ${mention.size} ${mention.copy ?? ''}`).toBeDefined();
      }
    }
  });

  test('every size in the text is among the sizes of the step', () => {
    for (const step of steps) {
      const listed = step.sizes.map(({ size, copy }) => `${size} ${copy ?? ''}`);
      for (const item of [...step.say, ...step.show]) if (typeof item !== 'string') expect(listed).toContain(`${item.size} ${item.copy ?? ''}`);
    }
  });

  test('what is said is one short sentence, without figures of its own', () => {
    for (const { say, id } of steps) {
      // A size is said in about five words: 'thirty-one, and five eighths inches'.
      const spoken = say.map((item) => (typeof item === 'string' ? item : 'one two three four five')).join('');
      expect(spoken.split(/\s+/).length, `${id}: ${spoken}`).toBeLessThanOrEqual(22);
      expect(spoken, id).toMatch(/^[A-Z].*[^.]\.$/);
      expect(spoken, id).not.toMatch(/\d|\.\s|\s{2}|\s[,.]|undefined/);
    }
  });

  test('what is shown is fuller, whole sentences, and has no figures but the sizes', () => {
    for (const { show, say, id } of steps) {
      const shown = renderWording(show, () => 'so much');
      expect(shown.length, id).toBeGreaterThan(renderWording(say, () => '').length);
      expect(shown, id).toMatch(/^[A-Z].*\.$/);
      expect(shown, id).not.toMatch(/\d|\s{2}|\s[,.]|\.\.|undefined/);
    }
  });

  test('every step says with which tools, and how to see that it is right', () => {
    for (const step of steps) {
      expect(step.tools.length, step.id).toBeGreaterThan(0);
      expect(renderWording(step.check.say, () => ''), step.id).toMatch(/^[A-Z].*\.$/);
      if (step.check.tolerance !== undefined) expect(step.check.tolerance).toBeGreaterThan(0);
    }
  });

  test('every reason is a sentence, and every caution is short', () => {
    for (const step of steps) {
      for (const { because } of [...step.after, ...step.waits]) expect(because).toMatch(/^[A-Z].*\.$/);
      for (const { say } of step.cautions) expect(say.split(' ').length).toBeLessThanOrEqual(20);
    }
  });

  test('every clock has a length, a name and where its length comes from; only the look at the edge shares its name', () => {
    const clocks = steps.flatMap(({ timer, clampTimer }) => [timer, clampTimer].filter((clock) => clock !== undefined));
    for (const clock of clocks) {
      expect(Number.isInteger(clock.durationMs) && clock.durationMs > 0, clock.name).toBe(true);
      expect(clock.basis).not.toBe('');
    }
    const names = clocks.filter(({ kind }) => kind !== 'break').map(({ name }) => name);
    expect(new Set(names).size).toBe(names.length);
  });

  test('whatever is glued was checked or assembled dry, and skipping that is no way round', () => {
    for (const step of steps.filter(({ operation }) => operation.endsWith('glue-up'))) {
      expect(step.after.some(({ step: before, gate }) => gate === true && /^dry/.test(before)), step.id).toBe(true);
      expect([step.timer?.kind, step.timer?.starts, step.clampTimer?.kind, step.clampTimer?.starts]).toEqual(['open time', 'when asked', 'clamp', 'when done']);
    }
  });
});

test('whatever the parts and however they are joined, each step comes after all that it stands on, and every copy gets its last coat', () => {
  fc.assert(fc.property(anyPiece, (of) => {
    const steps = stepsFor(of);
    const place = new Map(steps.map(({ id }, index) => [id, index]));
    expect(place.size).toBe(steps.length);
    const late = steps.flatMap((step, index) => [...step.after, ...step.waits].filter(({ step: id }) => !((place.get(id) ?? Infinity) < index)).map(({ step: id }) => `${step.id} after ${id}`));
    expect(late).toEqual([]);
    const coated = new Set(steps.at(-1)?.covers.map(({ part, copy }) => `${part} ${copy}`));
    expect(coated.size).toBe(of.file.parts.reduce((sum, { count }) => sum + count, 0));
    const sizes = evaluate(of, []);
    expect(steps.flatMap(({ sizes: its }) => its).filter(({ size, copy }) => sizeOf(sizes, size, copy) === undefined)).toEqual([]);
  }), { numRuns: 50 });
}, 30_000);

test('the same piece has the same list, so that what is worked out from it can be kept', () => {
  const of = bakersTable();
  expect(stepsFor(of)).toBe(stepsFor(of));
});

test('the list of the demo table, read as a maker reads it', async () => {
  const titles = stepsFor(bakersTable()).map(({ title }, index) => `${index + 1}. ${title}`).join('\n');
  await expect(`${titles}\n`).toMatchFileSnapshot('bakers-work-table.steps.txt');
});

describe('on the demo table', () => {
  const of = bakersTable();
  const steps = stepsFor(of);
  const say = saying(of);
  const called = (id: string): Step => {
    const step = steps.find((each) => each.id === id);
    if (step === undefined) throw new Error(`no step ${id}`);
    return step;
  };
  const at = (id: string): number => steps.indexOf(called(id));

  test('the layers of a leg are one step, both sides', () => {
    expect(renderWording(called('face/leg/2').say, say)).toBe('Face both sides of the three layers of leg two, each one, and one eighth inches thick.');
  });

  test('a leg is glued on the day that it is faced, and is in its clamps while the next one is faced', () => {
    expect(steps.slice(at('face/leg/1'), at('face/leg/1') + 5).map(({ id }) => id)).toEqual([
      'face/leg/1', 'dry check/leg/1', 'lamination glue-up/leg/1', 'face/leg/2', 'scrape squeeze-out/leg/1',
    ]);
  });

  test('the legs cure while the rails are made', () => {
    expect(at('face/longRail/1')).toBeLessThan(at('true again/leg/1'));
    expect(at('ends/backStretcher/1')).toBeLessThan(at('true again/leg/1'));
  });

  test('one gauge setting runs through all copies', () => {
    expect([1, 2, 3, 4].map((copy) => at(`thickness/leg/${copy}`) - at('thickness/leg/1'))).toEqual([0, 1, 2, 3]);
  });

  test('everything is ripped before anything is faced', () => {
    expect(Math.max(...steps.filter(({ operation }) => operation === 'rip').map(({ id }) => at(id)))).toBeLessThan(at('face/leg/1'));
  });

  test('the shoulders of a pair are knifed as one', () => {
    const layout = called('joint layout/longRail/longRailTenon');
    expect(layout.covers).toEqual([{ part: 'longRail', copy: 1 }, { part: 'longRail', copy: 2 }]);
    expect(renderWording(layout.say, say)).toBe('Knife the shoulders of the two long rails together, forty-six inches apart.');
  });

  test('mortises that only the back legs have are named by their place', () => {
    expect(steps.filter(({ joint, operation }) => joint === 'backStretcherTenon' && operation === 'chop mortises').map(({ title }) => title))
      .toEqual(['Chop mortises, back left leg: back stretcher', 'Chop mortises, back right leg: back stretcher']);
  });

  test('the mortise is chopped with the maker’s own chisel, the widest that goes in', () => {
    expect(called('chop mortises/leg/1/longRailTenon').tools[0]).toBe('1/2 in chisel');
  });

  test('chopping has a break that is asked for, and it repeats', () => {
    expect(called('chop mortises/leg/1/longRailTenon').timer).toMatchObject({ kind: 'break', starts: 'when asked' });
  });

  test('thickness, width, length and shoulders are recorded for each copy', () => {
    expect(called('thickness/leg/3').record).toEqual([{ size: 'leg.thickness', copy: 3 }]);
    expect(called('width/leg/3').record).toEqual([{ size: 'leg.width', copy: 3 }]);
    expect(called('ends/longRail/2').record).toEqual([{ size: 'longRail.length', copy: 2 }]);
    expect(called('saw tenons/longRail/2/longRailTenon').record).toEqual([{ size: 'longRail.shoulders', copy: 2 }]);
    expect(called('thickness/top/1').record).toEqual([{ size: 'top.thickness' }]);
  });

  test('buttons are made in a row, with no step for each, and their tongues are cut', () => {
    const ids = steps.filter(({ part }) => part === 'button').map(({ id }) => id);
    expect(ids).toEqual(['rough crosscut/button', 'reference edge/button', 'rip/button', 'face/button', 'edge/button', 'thickness/button', 'width/button', 'ends/button', 'cut fixings/button', 'ease edges/button']);
  });

  test('the top is fixed once, with all its buttons', () => {
    expect(steps.filter(({ operation }) => operation === 'fix top').map(({ title }) => title)).toEqual(['Fix top, with 12 buttons']);
  });
});

test('two assemblies that both have end frames have steps of their own for each', () => {
  const part = (id: string, count: number) => ({ id, name: id, count, species: 'ash', made: { kind: 'solid' }, sizes: { length: '10 in', width: '3 in', thickness: '1 in' } });
  const joint = (tenonOn: string, mortiseIn: string) => ({
    kind: 'mortise and tenon', id: `${tenonOn}Into${mortiseIn}`, name: `${tenonOn} tenon`, tenonOn, mortiseIn,
    sizes: { tenonLength: '1 in', tenonThickness: '3/8 in', tenonWidth: '2 in', mortiseDepth: '1 1/16 in', mortiseWidth: '3/8 in', mortiseLength: '2 in', setback: '1/4 in', fromTop: '1/2 in' },
  });
  const steps = stepsFor(loadSound(JSON.stringify({
    format: 'benchcall piece', version: 2, name: 'two frames', parameters: {}, parts: [part('rail', 4), part('slat', 3), part('post', 6), part('cleat', 4)], joints: [joint('cleat', 'rail'), joint('slat', 'post')],
    allowances: { roughLength: '1 in', roughWidth: '1/4 in', roughThickness: '1/8 in' }, tools: { chisels: ['1/4 in', '3/8 in'], clamps: [] }, adhesive: { kind: 'PVA' }, finish: { kind: 'shellac', coats: 2, recoatHours: 2 },
  })));
  expect(steps.filter(({ id }) => id.startsWith('glue-up/endFrame')).length).toBeGreaterThan(2);
  expect(new Set(steps.map(({ id }) => id)).size).toBe(steps.length);
});
