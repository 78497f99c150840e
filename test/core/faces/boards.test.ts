import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { planArches, type Arch } from '../../../core/faces/boards.ts';

const told = fc.array(fc.tuple(fc.integer({ min: 1, max: 9 }), fc.constantFrom<Arch>('up', 'down'))).map((pairs) => new Map(pairs));

describe('the boards of a glued-up top', () => {
  it('arch by turns when nothing is told (common practice, no source)', () => {
    expect(planArches(6, new Map())).toEqual({ arches: ['up', 'down', 'up', 'down', 'up', 'down'], alike: [] });
    expect(planArches(4, new Map([[2, 'up']])).arches).toEqual(['down', 'up', 'down', 'up']);
  });

  it('keep what was told, with as few neighbours alike as that allows, by trying all ways', () => {
    fc.assert(fc.property(fc.integer({ min: 1, max: 9 }), told, (boards, all) => {
      const { arches, alike } = planArches(boards, all);
      for (const [board, arch] of all) if (board <= boards) expect(arches[board - 1]).toBe(arch);
      let fewest = Infinity;
      for (let way = 0; way < 2 ** boards; way++) {
        const tried = Array.from({ length: boards }, (_, index): Arch => ((way >> index) & 1 ? 'up' : 'down'));
        if ([...all].some(([board, arch]) => board <= boards && tried[board - 1] !== arch)) continue;
        fewest = Math.min(fewest, tried.filter((arch, index) => index > 0 && tried[index - 1] === arch).length);
      }
      expect(alike).toHaveLength(fewest);
    }), { numRuns: 80 });
  });
});
