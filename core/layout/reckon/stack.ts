import { nanometres } from '../../length/length.ts';
import { reckoning } from '../../reckoning/reckoning.ts';
import { telling } from '../../reckoning/telling.ts';
import { failure, success } from '../../result.ts';
import { stackOf, tightened } from '../stack.ts';

export const toleranceStack = reckoning({
  name: 'tolerance-stack',
  about: 'what sizes in a row add up to, at worst and most likely, and how true each must be for a target',
  inputs: {
    tolerances: { kind: 'lengths', say: 'how far each size may be off, either way, one for every piece in the row' },
    target: { kind: 'length', say: 'how far off all together may be', optional: true },
  },
  reckon: ({ tolerances, target }) => {
    if (tolerances.length === 0) return failure({ key: 'tolerances', message: 'Give one tolerance for every piece in the row.' });
    if (target !== undefined && target <= 0) return failure({ key: 'target', message: 'Nothing can be held to nothing: give a target above it.' });
    const { worst, rootSumSquare, parts } = stackOf(tolerances.map((tolerance) => ({ tolerance, pieces: 1, factor: { numerator: 1, denominator: 1 } })));
    const most = parts.indexOf(Math.max(...parts));
    const each = (together: typeof worst): typeof tolerances => tolerances.map((tolerance) => (target === undefined ? undefined : tightened(tolerance, together, target)) ?? nanometres(0));
    return success({
      result: [
        { key: 'worst', length: worst }, { key: 'rootSumSquare', length: rootSumSquare },
        { key: 'largest', number: most + 1, unit: 'place in the row' }, { key: 'largestShare', number: (parts[most] ?? 0) * 100, unit: 'per cent of the square' },
        ...(target === undefined || worst === 0 ? [] : [{ key: 'eachForWorst', lengths: each(worst) }, { key: 'eachForRootSumSquare', lengths: each(rootSumSquare) }]),
      ],
      how: [
        telling`Worst: the sum, ${worst}, all off the same way at once.`,
        telling`Root sum square: √(sum of squares), ${rootSumSquare}, each off its own way by chance.`,
        ...(target === undefined ? [] : ['For the target every tolerance is taken down, or up, in the same proportion.']),
      ],
      source: ['addition; propagation of independent uncertainties: JCGM 100:2008 (GUM), 5.1.2 (from memory)'],
    });
  },
});
