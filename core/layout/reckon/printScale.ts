import type { Length } from '../../length/length.ts';
import { reckoning, type Figure } from '../../reckoning/reckoning.ts';
import { telling } from '../../reckoning/telling.ts';
import { failure, success } from '../../result.ts';
import { BARS } from '../paper/furniture.ts';
import { printScale as scaleOf } from '../paper/printScale.ts';

export const printScale = reckoning({
  name: 'print-scale',
  about: 'whether a print is true to size, from what the bars on it measure',
  inputs: {
    across: { kind: 'length', say: 'what the bar across measures' },
    upright: { kind: 'length', say: 'what the upright bar measures', optional: true },
    bar: { kind: 'choice', options: ['100 mm', '4 in'], say: 'which of the bars was measured', default: '100 mm' },
    longest: { kind: 'length', say: 'the longest size on the sheets', default: '36 in' },
  },
  reckon: ({ across, upright, bar, longest }) => {
    if (across <= 0) return failure({ key: 'across', message: 'A bar measures something.' });
    if (upright !== undefined && upright <= 0) return failure({ key: 'upright', message: 'A bar measures something.' });
    const whole = bar === '4 in' ? BARS.inches : BARS.millimetres;
    const figures = (direction: string, measured: Length): readonly Figure[] => {
      const { off, offOverLongest, factor, isTrue } = scaleOf(whole, measured, longest);
      return [
        { key: `${direction}.factor`, number: factor, unit: 'of the print' }, { key: `${direction}.off`, length: off },
        { key: `${direction}.offOverLongest`, length: offOverLongest }, { key: `${direction}.verdict`, text: isTrue ? 'true' : 'not true: print at 100 %, not fitted to the page' },
      ];
    };
    return success({
      result: [...figures('across', across), ...(upright === undefined ? [] : figures('upright', upright))],
      how: [telling`The factor is the bar, ${whole}, over what it measures; the fault grows with the length, over ${longest} as much as is told.`],
      source: ['proportion; a fifth of a millimetre is as near as a rule is read: common practice, no source'],
    });
  },
});
