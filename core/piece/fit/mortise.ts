import { nanometres, type Length } from '../../length/length.ts';
import { cavitiesOf, hasJoint, railSizes, type Cavity } from '../cavity.ts';
import type { MortiseAndTenon } from '../file.ts';
import type { Fitting, Misfit } from './misfit.ts';
import { at, called, copiesOf, FIT_LIMITS, lengthOf } from './misfit.ts';

/** The mortises of a joint in one copy of the mortised part; none in a copy that stands where the joint is not. */
export function cavitiesIn(fitting: Fitting, joint: MortiseAndTenon, copy: number | undefined): readonly Cavity[] {
  const host = fitting.part(joint.mortiseIn);
  const place = host && copy !== undefined ? fitting.placeOf(host, copy) : undefined;
  if (host === undefined || !hasJoint(joint, host, copy, place)) return [];
  return cavitiesOf(joint, (size, one) => lengthOf(fitting, size, one), copy);
}

/** Is there wood enough around each mortise? */
export function mortiseMisfits(fitting: Fitting): readonly Misfit[] {
  return fitting.tenons.flatMap((joint) => copiesOf(fitting, joint.mortiseIn).flatMap((copy) => {
    const cavities = cavitiesIn(fitting, joint, copy).filter(({ kind }) => kind === 'mortise');
    const [first] = cavities;
    const last = cavities.at(-1);
    if (first === undefined || last === undefined) return [];
    return [
      ...depthMisfits(fitting, first, copy), ...wallMisfits(fitting, first, last, copy), ...proudMisfits(fitting, first, copy),
      ...endMisfits(fitting, first, last, copy), ...twinMisfits(fitting, first, last),
    ];
  }));
}

function hostName(fitting: Fitting, { joint }: Cavity, copy: number | undefined): string {
  return called(fitting.part(joint.mortiseIn)?.name ?? joint.mortiseIn, copy);
}

function depthMisfits(fitting: Fitting, cavity: Cavity, copy: number | undefined): readonly Misfit[] {
  const { joint, depth, deepest, into } = cavity;
  const sizes = [at(`${joint.id}.mortiseDepth`), at(`${joint.mortiseIn}.${into}`, copy)];
  const through = depth >= deepest;
  if (joint.shape === 'through' || joint.shape === 'bridle') {
    return through ? [] : [{
      kind: 'mortise too shallow', severity: 'look at it', sizes,
      say: [`The mortise for the ${joint.name} is to go through ${hostName(fitting, cavity, copy)}, and is only `, at(`${joint.id}.mortiseDepth`), ' deep of ', at(`${joint.mortiseIn}.${into}`, copy), '. Chop it right through.'],
    }];
  }
  const { numerator, denominator } = FIT_LIMITS.deepest;
  if (depth * denominator <= deepest * numerator) return [];
  return [{
    kind: 'mortise too deep', severity: through ? 'will not go' : 'weak', sizes,
    say: [`The mortise for the ${joint.name} is too deep for ${hostName(fitting, cavity, copy)}: `, at(`${joint.id}.mortiseDepth`), ' into ', at(`${joint.mortiseIn}.${into}`, copy),
      through ? ', it would break through. Chop it shallower and shorten the tenon.' : ', it leaves too thin a floor. Chop it shallower and shorten the tenon.'],
  }];
}

function acrossOf({ joint, into }: Cavity, copy: number | undefined): Misfit['sizes'][number] {
  return at(`${joint.mortiseIn}.${into === 'width' ? 'thickness' : 'width'}`, copy);
}

function wallMisfits(fitting: Fitting, first: Cavity, last: Cavity, copy: number | undefined): readonly Misfit[] {
  const { joint, near, across } = first;
  const name = hostName(fitting, first, copy);
  const wall = Math.min(near, across - last.far);
  if (wall >= FIT_LIMITS.wall) return [];
  return [{
    kind: 'wall too thin', severity: wall <= 0 ? 'will not go' : 'weak', sizes: [at(`${joint.id}.setback`), at(`${joint.id}.mortiseWidth`), acrossOf(first, copy)],
    say: wall <= 0 ? [`The mortise for the ${joint.name} breaks out of the side of ${name}. Move it in or make it narrower.`]
      : [`The mortise for the ${joint.name} leaves only `, { length: nanometres(wall) }, ` beside it in ${name}. Move it in or make it narrower.`],
  }];
}

function proudMisfits(fitting: Fitting, cavity: Cavity, copy: number | undefined): readonly Misfit[] {
  const { joint, across } = cavity;
  const size = `${joint.tenonOn}.${railSizes(joint).across}`;
  const proud = (lengthOf(fitting, `${joint.id}.setback`) ?? 0) + (lengthOf(fitting, size) ?? 0) - across;
  // The rest of a rail that lies flat may run behind the leg.
  if (proud <= 0 || joint.lies === 'flat') return [];
  const rail = fitting.part(joint.tenonOn)?.name ?? joint.tenonOn;
  return [{
    kind: 'rail proud', severity: 'look at it', sizes: [at(size), at(`${joint.id}.setback`), acrossOf(cavity, copy)],
    say: [`The ${rail} stands `, { length: nanometres(proud) }, ` proud of ${hostName(fitting, cavity, copy)} on the inside. Set it back less, or make it thinner.`],
  }];
}

/** Open at the end only at a bridle; a horn counts, for it is there as long as the wood can split. */
function endMisfits(fitting: Fitting, first: Cavity, last: Cavity, copy: number | undefined): readonly Misfit[] {
  const { joint, top } = first;
  const host = (key: string): number => lengthOf(fitting, `${joint.mortiseIn}.${key}`, copy) ?? 0;
  const below = host('length') - last.bottom;
  const said = `The mortise for the ${joint.name}`;
  const name = hostName(fitting, first, copy);
  if (below < 0) {
    return [{
      kind: 'mortise too near the end', severity: 'will not go', sizes: [at(`${joint.id}.fromTop`), at(`${joint.id}.mortiseLength`), at(`${joint.mortiseIn}.length`, copy)],
      say: [`${said} runs out of the lower end of ${name}. Move it up.`],
    }];
  }
  if (joint.shape === 'bridle') return top === 0 || below === 0 ? [] : [notOpen(joint, name)];
  const near = (say: readonly (string | { readonly length: Length })[], size: string): Misfit => ({ kind: 'mortise too near the end', severity: 'weak', sizes: [at(size)], say: [`${said} `, ...say] });
  return [
    ...(top + host('horn') >= FIT_LIMITS.end ? [] : [near(['begins only ', { length: top }, ` from the top end of ${name}, and may split out. Begin it about an inch down, or leave a horn until it is glued.`], `${joint.id}.fromTop`)]),
    ...(below + host('lowerHorn') >= FIT_LIMITS.end ? [] : [near(['ends only ', { length: nanometres(below) }, ` from the lower end of ${name}, and may split out. Leave a horn there until it is glued.`], `${joint.id}.mortiseLength`)]),
  ];
}

function notOpen({ id, name }: MortiseAndTenon, host: string): Misfit {
  return {
    kind: 'bridle not open', severity: 'look at it', sizes: [at(`${id}.fromTop`), at(`${id}.mortiseLength`)],
    say: [`The slot for the ${name} is open at neither end of ${host}. A bridle begins at the end: make its distance from the top nothing, or so that it reaches the lower end.`],
  };
}

/** The wood between twins carries the load of both. */
function twinMisfits(fitting: Fitting, first: Cavity, last: Cavity): readonly Misfit[] {
  const { id, name } = first.joint;
  const between = Math.max(last.near - first.far, last.top - first.bottom);
  if (first === last || between >= FIT_LIMITS.web) return [];
  return [{
    kind: 'web too thin', severity: between <= 0 ? 'will not go' : 'weak', sizes: [at(`${id}.gap`), at(`${id}.mortiseLength`)],
    say: between <= 0 ? [`The two mortises for the ${name} run into each other in ${hostName(fitting, first, undefined)}. Widen the gap, or make one tenon of them.`]
      : [`The two mortises for the ${name} leave only `, { length: nanometres(between) }, ' between them. Widen the gap between the tenons.'],
  }];
}
