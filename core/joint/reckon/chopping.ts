import { reckoning } from '../../reckoning/reckoning.ts';
import { failure, success } from '../../result.ts';
import { planChopping } from '../chopping.ts';
import { BOOKS } from '../proportion.ts';

export const chopping = reckoning({
  name: 'chopping',
  about: 'the order of chopping a mortise: marks, passes, where to lever, when to turn the bevel and when to strop',
  inputs: {
    from: { kind: 'length', say: 'end of the part to the mortise', default: '1 in' },
    length: { kind: 'length', say: 'mortise length, along the grain' },
    width: { kind: 'length', say: 'mortise width, which is the chisel\'s' },
    depth: { kind: 'length', say: 'mortise depth' },
    wood: { kind: 'length', say: 'thickness of the wood in that direction; a mortise that deep goes through' },
    hardness: { kind: 'choice', options: ['hard', 'soft'], say: 'the wood', default: 'hard' },
  },
  reckon: (values) => {
    const plan = planChopping(values);
    if (!plan.ok) return failure(plan.fault);
    const { startMark, endMark, stayOff, middle, advance, flags, cutsToFarEnd, cutsToNearEnd, stropAfter, stages } = plan.value;
    return success({
      result: [
        { key: 'startMark', length: startMark }, { key: 'endMark', length: endMark }, { key: 'start', length: middle }, { key: 'stayOff', length: stayOff }, { key: 'advance', length: advance },
        { key: 'passes', number: flags.length, unit: 'passes' }, { key: 'flags', lengths: flags }, { key: 'cutsInPass', number: cutsToFarEnd.length + cutsToNearEnd.length, unit: 'cuts' },
        { key: 'stropAfter', text: stropAfter.length === 0 ? 'only before the ends are pared' : `pass ${stropAfter.join(', ')}, and before the ends are pared` },
        { key: 'stages', data: stages.map(({ kind, pass, drawing }) => ({ kind, ...(pass === undefined ? {} : { pass }), drawing })), unit: 'nanometres' },
      ],
      how: stages.map(({ show }) => show),
      source: [`order, pass depth, stepping and breaks: ${BOOKS.practice}`],
      warnings: ['Keep both hands behind the edge, clamp the part, and wear eye protection when striking.'],
    });
  },
});
