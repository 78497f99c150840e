import { nanometres } from '../../length/length.ts';
import { add } from '../../length/arithmetic.ts';
import { railSizes, tenonsOf } from '../cavity.ts';
import type { MortiseAndTenon } from '../file.ts';
import type { Fitting, Misfit } from './misfit.ts';
import { at, called, capital, copiesOf, FIT_LIMITS, lengthOf } from './misfit.ts';

/** Does each tenon go into its mortise, and is there wood for it on its own part? */
export function tenonMisfits(fitting: Fitting): readonly Misfit[] {
  return fitting.tenons.flatMap((joint) => [
    ...copiesOf(fitting, joint.id).flatMap((copy) => intoMortise(fitting, joint, copy)),
    ...copiesOf(fitting, joint.tenonOn).flatMap((copy) => onPart(fitting, joint, copy)),
  ]);
}

function intoMortise(fitting: Fitting, joint: MortiseAndTenon, copy: number | undefined): readonly Misfit[] {
  const size = (key: string): number => lengthOf(fitting, `${joint.id}.${key}`, copy) ?? 0;
  const mention = (key: string): { readonly size: string; readonly copy?: number } => at(`${joint.id}.${key}`, copy);
  const name = called(joint.name, copy);
  const over = size('tenonThickness') - size('mortiseWidth');
  const found: Misfit[] = [];
  if (over > 0) {
    found.push({
      kind: 'tenon too thick', severity: 'will not go', sizes: [mention('tenonThickness'), mention('mortiseWidth')],
      say: [`${capital(name)} is `, { length: nanometres(over) }, ' thicker than its mortise is wide: ', mention('tenonThickness'), ' against ', mention('mortiseWidth'), '. Pare its cheeks.'],
    });
  }
  if (-over > FIT_LIMITS.loose) {
    found.push({
      kind: 'tenon too loose', severity: 'weak', sizes: [mention('tenonThickness'), mention('mortiseWidth')],
      say: [`${capital(name)} is `, { length: nanometres(-over) }, ' thinner than its mortise is wide, too loose for glue. Glue a shaving to its cheek and fit it again.'],
    });
  }
  if (size('tenonLength') > size('mortiseDepth') && (joint.shape ?? 'blind') === 'blind') {
    found.push({
      kind: 'tenon too long', severity: 'will not go', sizes: [mention('tenonLength'), mention('mortiseDepth')],
      say: [`${capital(name)} meets the bottom of its mortise before its shoulder closes: `, mention('tenonLength'), ' long, ', mention('mortiseDepth'), ' deep. Shorten the tenon or deepen the mortise.'],
    });
  }
  if (size('tenonWidth') > size('mortiseLength')) {
    found.push({
      kind: 'tenon too wide', severity: 'will not go', sizes: [mention('tenonWidth'), mention('mortiseLength')],
      say: [`${capital(name)} is wider than its mortise is long: `, mention('tenonWidth'), ' against ', mention('mortiseLength'), '. Trim its edge or lengthen the mortise.'],
    });
  }
  return found;
}

function onPart(fitting: Fitting, joint: MortiseAndTenon, copy: number | undefined): readonly Misfit[] {
  const ofJoint = (key: string): number | undefined => lengthOf(fitting, `${joint.id}.${key}`);
  const { across, along } = railSizes(joint);
  const last = tenonsOf(joint, (one, of) => lengthOf(fitting, one, of), copy).at(-1);
  const ofPart = (key: string): number | undefined => lengthOf(fitting, `${joint.tenonOn}.${key}`, copy);
  const mention = (key: string): { readonly size: string; readonly copy?: number } => at(`${joint.tenonOn}.${key}`, copy);
  const name = called(fitting.part(joint.tenonOn)?.name ?? joint.tenonOn, copy);
  const [thickness = 0, width = 0, length = 0, shoulders] = [across, along, 'length', 'shoulders'].map(ofPart);
  const tenonLength = ofJoint('tenonLength') ?? 0;
  const found: Misfit[] = [];
  if (last !== undefined && add(last.outer, last.thickness) > thickness) {
    found.push({
      kind: 'tenon thicker than its part', severity: 'will not go', sizes: [mention(across), at(`${joint.id}.tenonThickness`)],
      say: [`${capital(name)} is too ${across === 'width' ? 'narrow' : 'thin'} for its ${joint.tenons === 'side by side' ? 'tenons' : 'tenon'}: `, mention(across), ` ${across === 'width' ? 'wide' : 'thick'}, and the tenon `, at(`${joint.id}.tenonThickness`), '. Make a thinner tenon, or the part again.'],
    });
  }
  if (last !== undefined && add(last.top, last.width) > width) {
    found.push({
      kind: 'tenon wider than its part', severity: 'will not go', sizes: [mention(along), at(`${joint.id}.tenonWidth`)],
      say: [`${capital(name)} is too ${along === 'width' ? 'narrow' : 'thin'} for its ${joint.tenons === 'one above the other' ? 'tenons' : 'tenon'}: `, mention(along), ` ${along === 'width' ? 'wide' : 'thick'}, and the tenon `, at(`${joint.id}.tenonWidth`), '. Make a narrower tenon.'],
    });
  }
  if (shoulders !== undefined && length < shoulders + 2 * tenonLength) {
    found.push({
      kind: 'part too short', severity: 'will not go', sizes: [mention('length'), mention('shoulders'), at(`${joint.id}.tenonLength`)],
      say: [`${capital(name)} is `, { length: nanometres(shoulders + 2 * tenonLength - length) }, ' too short for its shoulders and both tenons. Shorten the tenons alike, and keep the shoulders.'],
    });
  }
  return found;
}
