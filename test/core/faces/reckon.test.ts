import { describe, expect, it } from 'vitest';
import { faces } from '../../../core/faces/reckon/faces.ts';
import { readInputs } from '../../../core/reckoning/readInputs.ts';
import { writeOutcome } from '../../../core/reckoning/writeOutcome.ts';

function reckoned(given: Readonly<Record<string, string>>): unknown {
  const values = readInputs(faces.inputs, given);
  if (!values.ok) return values.fault;
  const outcome = faces.reckon(values.value);
  return outcome.ok ? writeOutcome('faces', outcome.value, 'in').result : outcome.fault;
}

describe('legs placed from the command line', () => {
  it('with their faces told as wishes', () => {
    expect(reckoned({ leg2: 'best A, hide C', leg4: 'best D' })).toMatchObject({ 'front left': 'leg two front left, face A to the front', 'front right': 'leg four front right, face D to the front', whySecond: expect.stringMatching(/^face|^it/) as unknown });
  });

  it('with nothing told, any way is as good', () => {
    expect(reckoned({})).toMatchObject({ asGood: { value: 24 * 8 ** 4 - 1 } });
  });

  it.each([
    [{ leg1: 'show A B C D' }, { key: 'leg1', message: expect.stringMatching(/^only two faces/) as unknown }],
    [{ leg3: 'paint A' }, { key: 'leg3', message: expect.stringMatching(/^“paint A” is no wish/) as unknown }],
    [{ leg5: 'show A' }, [{ key: 'leg5', message: expect.stringMatching(/nothing here is called leg5/) as unknown }]],
  ])('%j is refused with what was expected', (given, fault) => {
    expect(reckoned(given as Readonly<Record<string, string>>)).toMatchObject(fault);
  });
});
