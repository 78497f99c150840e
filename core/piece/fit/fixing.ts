import type { Fixing } from '../file.ts';
import type { Fitting, Misfit } from './misfit.ts';
import { at, FIT_LIMITS, lengthOf } from './misfit.ts';

/** Do buttons enter their grooves, and draw the top down? */
export function fixingMisfits(fitting: Fitting): readonly Misfit[] {
  const fixings = fitting.piece.file.joints.filter((joint) => joint.kind === 'fixing');
  return [...fixings.flatMap((fixing) => buttonMisfits(fitting, fixing)), ...countMisfits(fitting, fixings)];
}

function buttonMisfits(fitting: Fitting, { id, name }: Fixing): readonly Misfit[] {
  const more = (one: string, other: string): boolean => (lengthOf(fitting, `${id}.${one}`) ?? 0) > (lengthOf(fitting, `${id}.${other}`) ?? Infinity);
  const both = (one: string, other: string): Pick<Misfit, 'sizes'> => ({ sizes: [at(`${id}.${one}`), at(`${id}.${other}`)] });
  const found: Misfit[] = [];
  if (more('tongueThickness', 'grooveWidth')) {
    found.push({ kind: 'tongue too thick', severity: 'will not go', ...both('tongueThickness', 'grooveWidth'),
      say: [`The tongue of the ${name} is thicker than its groove is wide: `, at(`${id}.tongueThickness`), ' against ', at(`${id}.grooveWidth`), '. Thin the tongues.'] });
  }
  if (more('tongueLength', 'grooveDepth')) {
    found.push({ kind: 'tongue too long', severity: 'will not go', ...both('tongueLength', 'grooveDepth'),
      say: [`The tongue of the ${name} meets the bottom of its groove: `, at(`${id}.tongueLength`), ' long, ', at(`${id}.grooveDepth`), ' deep. Shorten the tongues, so that the top can move.'] });
  }
  const [step, groove] = [lengthOf(fitting, `${id}.step`), lengthOf(fitting, `${id}.grooveFromTop`)];
  if (step !== undefined && groove !== undefined && step >= groove) {
    found.push({ kind: 'button does not draw', severity: 'weak', ...both('step', 'grooveFromTop'),
      say: [`The ${name} does not draw the top down: its step is `, at(`${id}.step`), ', and the groove stands ', at(`${id}.grooveFromTop`), ' below the edge. Leave the step a little less.'] });
  }
  return found;
}

function countMisfits(fitting: Fitting, fixings: readonly Fixing[]): readonly Misfit[] {
  return fitting.piece.file.parts.flatMap((part) => {
    const needed = fixings.filter((fixing) => fixing.with === part.id).reduce((count, fixing) => count + fixing.count, 0);
    if (needed <= part.count) return [];
    return [{ kind: 'too few buttons' as const, severity: 'look at it' as const, sizes: [at(`${part.id}.length`)], say: [`${needed} of the ${part.name} are needed, and only ${part.count} are made. Make ${needed - part.count} more.`] }];
  });
}

/** Mortises are as wide as a chisel that is there (Joyce, The Technique of Furniture Making: the width is set by the nearest chisel). */
export function chiselMisfits(fitting: Fitting): readonly Misfit[] {
  const chisels = fitting.piece.file.tools.chisels.map((_, index) => lengthOf(fitting, `tools.chisel${index + 1}`) ?? 0);
  if (chisels.length === 0) return [];
  return fitting.tenons.flatMap((joint) => {
    const width = lengthOf(fitting, `${joint.id}.mortiseWidth`) ?? 0;
    if (chisels.some((chisel) => Math.abs(chisel - width) <= FIT_LIMITS.chisel)) return [];
    return [{
      kind: 'no chisel' as const, severity: 'look at it' as const, sizes: [at(`${joint.id}.mortiseWidth`)],
      say: [`No chisel of yours is `, at(`${joint.id}.mortiseWidth`), ` wide for the mortise of the ${joint.name}. Make it as wide as a chisel that you have.`],
    }];
  });
}
