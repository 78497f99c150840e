import type { Length } from '../../length/length.ts';
import { reckoning } from '../../reckoning/reckoning.ts';
import { failure, success } from '../../result.ts';
import { planBridle, planDrawerRail } from '../otherJoints.ts';
import { BOOKS } from '../proportion.ts';
import { planJoint } from '../railInLeg.ts';
import { figuresOfPlan, howOfPlan, RAIL_FIELDS, railOf, sourcesOfPlan } from './rail.ts';

export const mortiseAndTenon = reckoning({
  name: 'mortise-and-tenon',
  about: 'all sizes of the joint of a rail and a leg, from the wood and the chisels that there are',
  inputs: RAIL_FIELDS,
  reckon: (values) => {
    const plan = planJoint(railOf(values));
    if (!plan.ok) return plan;
    return success({ result: figuresOfPlan(plan.value), how: howOfPlan(plan.value), source: sourcesOfPlan(plan.value), warnings: plan.value.warnings });
  },
});

const CHISELS = RAIL_FIELDS.chisels;

export const bridle = reckoning({
  name: 'bridle-joint',
  about: 'the open mortise and tenon at the corner of a frame',
  inputs: {
    'rail.width': { kind: 'length', say: 'width of the rail' },
    'rail.thickness': { kind: 'length', say: 'thickness of the rail' },
    'stile.width': { kind: 'length', say: 'width of the stile; as the rail when not given', optional: true },
    'stile.thickness': { kind: 'length', say: 'thickness of the stile; as the rail when not given', optional: true },
    proud: { kind: 'length', say: 'left on both ends to be planed off', default: '1/32 in' },
    chisels: CHISELS,
  },
  reckon: (values) => {
    const rail = { width: values['rail.width'], thickness: values['rail.thickness'] };
    const stile = { width: values['stile.width'] ?? rail.width, thickness: values['stile.thickness'] ?? rail.thickness };
    const plan = planBridle({ rail, stile, chisels: values.chisels, proud: values.proud });
    if (!plan.ok) return failure(plan.fault);
    return success({
      result: figures({ ...plan.value }),
      how: ['The chisel nearest to a third of the thickness sets the slot; the shoulders share what is left. Saw the cheeks of the slot, and chop only its bottom.'],
      source: [BOOKS.noyes, BOOKS.practice],
    });
  },
});

export const drawerRail = reckoning({
  name: 'drawer-rail',
  about: 'the two tenons side by side of a drawer rail that lies flat between the legs',
  inputs: {
    'rail.width': { kind: 'length', say: 'rail at the leg, front to back' },
    'rail.thickness': { kind: 'length', say: 'rail, top to bottom as it lies' },
    'leg.into': RAIL_FIELDS['leg.into'], 'leg.across': RAIL_FIELDS['leg.across'],
    setback: { ...RAIL_FIELDS.setback, default: '0 in' },
    clearance: RAIL_FIELDS.clearance, step: RAIL_FIELDS.step, chisels: CHISELS,
  },
  reckon: (values) => {
    const plan = planDrawerRail({
      rail: { width: values['rail.width'], thickness: values['rail.thickness'] }, legInto: values['leg.into'], legAcross: values['leg.across'] ?? values['leg.into'],
      setback: values.setback, chisels: values.chisels, clearance: values.clearance, step: values.step,
    });
    if (!plan.ok) return failure(plan.fault);
    const { tenons, ...sizes } = plan.value;
    return success({
      result: [...figures(sizes), { key: 'tenonsFromFront', lengths: tenons.map(({ fromFront }) => fromFront) }],
      how: ['Two tenons and three spaces share the width; the chisel nearest to a fifth sets the tenons. They stand side by side, so that there is long grain against long grain.'],
      source: [BOOKS.fairham, BOOKS.practice],
    });
  },
});

function figures(sizes: Readonly<Record<string, Length>>): readonly { readonly key: string; readonly length: Length }[] {
  return Object.entries(sizes).map(([key, length]) => ({ key, length }));
}
