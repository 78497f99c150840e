import { nanometres } from '../../length/length.ts';
import type { MortiseAndTenon } from '../file.ts';
import type { Fitting, Misfit } from './misfit.ts';
import { at, called, copiesOf, FIT_LIMITS, half, lengthOf } from './misfit.ts';

/** The room that a mortise takes up in its part, in nanometres from the outer faces and the top end. */
export interface Cavity {
  readonly joint: MortiseAndTenon;
  /** Which size of the part it goes into. */
  readonly into: 'width' | 'thickness';
  /** Of the part, in the direction of the mortise and across it. */
  readonly deepest: number;
  readonly across: number;
  readonly depth: number;
  /** Across: from the outer face to the near cheek and the far one. */
  readonly near: number;
  readonly far: number;
  readonly top: number;
  readonly bottom: number;
}

/** The mortise of a joint in one copy of the mortised part. Undefined when the part is not there. */
export function cavityOf(fitting: Fitting, joint: MortiseAndTenon, copy: number | undefined): Cavity | undefined {
  const into = joint.mortiseInto ?? 'width';
  const deepest = lengthOf(fitting, `${joint.mortiseIn}.${into}`, copy);
  const across = lengthOf(fitting, `${joint.mortiseIn}.${into === 'width' ? 'thickness' : 'width'}`, copy);
  if (deepest === undefined || across === undefined) return undefined;
  const size = (key: string): number => lengthOf(fitting, `${joint.id}.${key}`) ?? 0;
  const rail = lengthOf(fitting, `${joint.tenonOn}.thickness`) ?? 0;
  const near = size('setback') + (lengthOf(fitting, `${joint.id}.outerShoulder`) ?? half(rail - size('tenonThickness')));
  const top = size('fromTop');
  return { joint, into, deepest, across, depth: size('mortiseDepth'), near, far: near + size('mortiseWidth'), top, bottom: top + size('mortiseLength') };
}

/** Is there wood enough around each mortise? */
export function mortiseMisfits(fitting: Fitting): readonly Misfit[] {
  return fitting.tenons.flatMap((joint) => copiesOf(fitting, joint.mortiseIn).flatMap((copy) => {
    const cavity = takesPart(fitting, joint, copy) ? cavityOf(fitting, joint, copy) : undefined;
    return cavity === undefined ? [] : [...depthMisfits(fitting, cavity, copy), ...wallMisfits(fitting, cavity, copy), ...endMisfits(fitting, cavity, copy)];
  }));
}

/** A joint may be in some places only ('back left'); copies stand in the order of the places. */
export function takesPart(fitting: Fitting, joint: MortiseAndTenon, copy: number | undefined): boolean {
  if (joint.places === undefined || copy === undefined) return true;
  const place = fitting.part(joint.mortiseIn)?.places?.[copy - 1];
  return place === undefined || joint.places.includes(place);
}

function hostName(fitting: Fitting, { joint }: Cavity, copy: number | undefined): string {
  return called(fitting.part(joint.mortiseIn)?.name ?? joint.mortiseIn, copy);
}

function depthMisfits(fitting: Fitting, cavity: Cavity, copy: number | undefined): readonly Misfit[] {
  const { joint, depth, deepest, into } = cavity;
  const { numerator, denominator } = FIT_LIMITS.deepest;
  if (depth * denominator <= deepest * numerator) return [];
  const sizes = [at(`${joint.id}.mortiseDepth`), at(`${joint.mortiseIn}.${into}`, copy)];
  const through = depth >= deepest;
  return [{
    kind: 'mortise too deep', severity: through ? 'will not go' : 'weak', sizes,
    say: [`The mortise for the ${joint.name} is too deep for ${hostName(fitting, cavity, copy)}: `, at(`${joint.id}.mortiseDepth`), ' into ', at(`${joint.mortiseIn}.${into}`, copy),
      through ? ', it would break through. Chop it shallower and shorten the tenon.' : ', it leaves too thin a floor. Chop it shallower and shorten the tenon.'],
  }];
}

function wallMisfits(fitting: Fitting, cavity: Cavity, copy: number | undefined): readonly Misfit[] {
  const { joint, near, far, across, into } = cavity;
  const name = hostName(fitting, cavity, copy);
  const other = at(`${joint.mortiseIn}.${into === 'width' ? 'thickness' : 'width'}`, copy);
  const found: Misfit[] = [];
  const wall = Math.min(near, across - far);
  if (wall < FIT_LIMITS.wall) {
    found.push({
      kind: 'wall too thin', severity: wall <= 0 ? 'will not go' : 'weak', sizes: [at(`${joint.id}.setback`), at(`${joint.id}.mortiseWidth`), other],
      say: wall <= 0 ? [`The mortise for the ${joint.name} breaks out of the side of ${name}. Move it in or make it narrower.`]
        : [`The mortise for the ${joint.name} leaves only `, { length: nanometres(wall) }, ` beside it in ${name}. Move it in or make it narrower.`],
    });
  }
  const proud = (lengthOf(fitting, `${joint.id}.setback`) ?? 0) + (lengthOf(fitting, `${joint.tenonOn}.thickness`) ?? 0) - across;
  if (proud > 0) {
    const rail = fitting.part(joint.tenonOn)?.name ?? joint.tenonOn;
    found.push({
      kind: 'rail proud', severity: 'look at it', sizes: [at(`${joint.tenonOn}.thickness`), at(`${joint.id}.setback`), other],
      say: [`The ${rail} stands `, { length: nanometres(proud) }, ` proud of ${name} on the inside. Set it back less, or make it thinner.`],
    });
  }
  return found;
}

function endMisfits(fitting: Fitting, cavity: Cavity, copy: number | undefined): readonly Misfit[] {
  const { joint, top, bottom } = cavity;
  const name = hostName(fitting, cavity, copy);
  const length = lengthOf(fitting, `${joint.mortiseIn}.length`, copy) ?? 0;
  if (bottom > length) {
    return [{
      kind: 'mortise too near the end', severity: 'will not go', sizes: [at(`${joint.id}.fromTop`), at(`${joint.id}.mortiseLength`), at(`${joint.mortiseIn}.length`, copy)],
      say: [`The mortise for the ${joint.name} runs out of the lower end of ${name}. Move it up.`],
    }];
  }
  if (top >= FIT_LIMITS.end) return [];
  return [{
    kind: 'mortise too near the end', severity: 'weak', sizes: [at(`${joint.id}.fromTop`)],
    say: [`The mortise for the ${joint.name} begins only `, at(`${joint.id}.fromTop`), ` from the top end of ${name}, and may split out. Begin it about an inch down, or leave a horn until it is glued.`],
  }];
}
