import { add, subtract } from '../../length/arithmetic.ts';
import { ZERO_LENGTH, type Length } from '../../length/length.ts';
import { cavitiesOf, railSizes, tenonsOf, type ReadSize } from '../cavity.ts';
import type { Fixing, MortiseAndTenon } from '../file.ts';
import type { Fitting, Misfit } from './misfit.ts';
import { at, FIT_LIMITS, lengthOf } from './misfit.ts';

/** A groove along the whole of the inside face, from the part's top edge and from that face. */
interface Groove {
  readonly fixing: Fixing;
  readonly top: Length;
  readonly bottom: Length;
  readonly depth: Length;
}

/** Does each groove run clear of tenons, haunches, mortises and other grooves in its part, and is there wood left around it? */
export function grooveMisfits(fitting: Fitting): readonly Misfit[] {
  const grooves = fitting.piece.file.joints.flatMap((joint) => (joint.kind === 'fixing' ? grooveOf(fitting, joint) : []));
  return grooves.flatMap((groove, index) => [
    ...leftAround(fitting, groove),
    ...fitting.tenons.filter(({ tenonOn }) => tenonOn === groove.fixing.to).flatMap((joint) => throughTenon(fitting, groove, joint)),
    ...fitting.tenons.filter(({ mortiseIn }) => mortiseIn === groove.fixing.to).flatMap((joint) => intoMortise(fitting, groove, joint)),
    ...grooves.slice(index + 1).filter((other) => other.fixing.to === groove.fixing.to).flatMap((other) => grooveBeside(groove, other)),
  ]);
}

function grooveOf(fitting: Fitting, fixing: Fixing): readonly Groove[] {
  const [top, width, depth] = ['grooveFromTop', 'grooveWidth', 'grooveDepth'].map((key) => lengthOf(fitting, `${fixing.id}.${key}`));
  return top === undefined || width === undefined || depth === undefined ? [] : [{ fixing, top, bottom: add(top, width), depth }];
}

function meet(groove: Groove, top: Length, bottom: Length): boolean {
  return groove.top < bottom && groove.bottom > top;
}

function leftAround(fitting: Fitting, { fixing, bottom, depth }: Groove): readonly Misfit[] {
  const [width, thickness] = ['width', 'thickness'].map((key) => lengthOf(fitting, `${fixing.to}.${key}`));
  const part = fitting.part(fixing.to)?.name ?? fixing.to;
  const found: Misfit[] = [];
  if (width !== undefined && bottom > width) {
    found.push({ kind: 'groove off its part', severity: 'will not go', sizes: [at(`${fixing.id}.grooveFromTop`), at(`${fixing.to}.width`)], say: [`The groove for the ${fixing.name} runs out over the edge of the ${part}: it ends `, { length: bottom }, ' down, and the part is ', { length: width }, ' wide. Raise it.'] });
  }
  if (thickness !== undefined && subtract(thickness, depth) < FIT_LIMITS.web) {
    const through = depth >= thickness;
    found.push({
      kind: 'groove off its part', severity: through ? 'will not go' : 'weak', sizes: [at(`${fixing.id}.grooveDepth`), at(`${fixing.to}.thickness`)],
      say: through ? [`The groove for the ${fixing.name} comes out on the face of the ${part}: `, { length: depth }, ' deep in ', { length: thickness }, '. Make it shallower.']
        : [`The groove for the ${fixing.name} leaves only `, { length: subtract(thickness, depth) }, ` to the face of the ${part}. Make it shallower.`],
    });
  }
  return found;
}

/** As it is ploughed it runs out at the ends of the rail, through whatever stands behind the inside face there. */
function throughTenon(fitting: Fitting, groove: Groove, joint: MortiseAndTenon): readonly Misfit[] {
  const { fixing } = groove;
  const read: ReadSize = (name, copy) => lengthOf(fitting, name, copy);
  const thickness = read(`${joint.tenonOn}.${railSizes(joint).across}`);
  const tenons = tenonsOf(joint, read);
  const [first] = tenons;
  if (joint.lies === 'flat' || thickness === undefined || first === undefined) return [];
  const behind = subtract(thickness, add(first.outer, first.thickness));
  if (subtract(groove.depth, behind) <= FIT_LIMITS.graze) return [];
  const sizes = [at(`${fixing.id}.grooveFromTop`), at(`${fixing.id}.grooveDepth`)];
  const cure = behind > 0 ? ['Stop the groove short of the shoulders, or make it no deeper than ', { length: behind }, '.'] : ['Stop the groove short of the shoulders.'];
  if (tenons.some(({ top, width }) => meet(groove, top, add(top, width)))) {
    return [{ kind: 'groove cuts the tenon', severity: 'look at it', sizes: [...sizes, at(`${joint.id}.tenonWidth`)], say: [`The groove for the ${fixing.name} cuts into the ${joint.name}. `, ...cure] }];
  }
  const haunch = joint.haunch === undefined ? ZERO_LENGTH : read(`${joint.id}.haunchWidth`) ?? ZERO_LENGTH;
  if (haunch <= 0 || !meet(groove, subtract(first.top, haunch), first.top)) return [];
  return [{ kind: 'groove cuts the haunch', severity: 'look at it', sizes: [...sizes, at(`${joint.id}.haunchWidth`)], say: [`The groove for the ${fixing.name} runs through the haunch of the ${joint.name}, which then does not fill its socket. `, ...cure] }];
}

/** A mortise in the same part, from the inside face or from elsewhere: across the part it is as far from the top edge as from the outer face. */
function intoMortise(fitting: Fitting, groove: Groove, joint: MortiseAndTenon): readonly Misfit[] {
  if ((joint.mortiseInto ?? 'width') !== 'thickness') return [];
  const met = cavitiesOf(joint, (name, copy) => lengthOf(fitting, name, copy)).filter(({ near, far }) => meet(groove, near, far));
  return met.length === 0 ? [] : [{
    kind: 'groove meets a mortise', severity: 'look at it', sizes: [at(`${groove.fixing.id}.grooveFromTop`), at(`${joint.id}.setback`)],
    say: [`The groove for the ${groove.fixing.name} runs into the mortise for the ${joint.name}. Stop it on both sides of the mortise, or set one above the other.`],
  }];
}

/** One groove for two kinds of holders is no fault; two that run into each other are. */
function grooveBeside(one: Groove, other: Groove): readonly Misfit[] {
  const same = one.top === other.top && one.bottom === other.bottom && one.depth === other.depth;
  if (same || !meet(one, other.top, other.bottom)) return [];
  return [{
    kind: 'grooves meet', severity: 'look at it', sizes: [at(`${one.fixing.id}.grooveFromTop`), at(`${other.fixing.id}.grooveFromTop`)],
    say: [`The grooves for the ${one.fixing.name} and the ${other.fixing.name} run into each other. Make them one, or set one above the other.`],
  }];
}
