import { nanometres } from '../../length/length.ts';
import type { MortiseAndTenon } from '../file.ts';
import type { Fitting, Misfit } from './misfit.ts';
import { at, called, capital, copiesOf, FIT_LIMITS, valueOf } from './misfit.ts';

interface Stretch {
  readonly part: string;
  readonly copy: number | undefined;
  readonly length: number;
  readonly measured: boolean;
}

/** Rails and stretchers between the same legs hold them apart alike, or the legs stand out of plumb. */
export function shoulderMisfits(fitting: Fitting): readonly Misfit[] {
  return fitting.tenons.flatMap((one, index) => fitting.tenons.slice(index + 1).flatMap((other) => compare(fitting, one, other)));
}

function compare(fitting: Fitting, one: MortiseAndTenon, other: MortiseAndTenon): readonly Misfit[] {
  if (one.tenonOn === other.tenonOn || one.mortiseIn !== other.mortiseIn || (one.mortiseInto ?? 'width') !== (other.mortiseInto ?? 'width')) return [];
  const all = [...stretchesOf(fitting, one.tenonOn), ...stretchesOf(fitting, other.tenonOn)].sort((a, b) => b.length - a.length);
  const [longest, shortest] = [all[0], all.at(-1)];
  if (longest === undefined || shortest === undefined || longest.part === shortest.part || !(longest.measured || shortest.measured)) return [];
  const difference = longest.length - shortest.length;
  if (difference <= FIT_LIMITS.shoulders) return [];
  const mentions = [at(`${longest.part}.shoulders`, longest.copy), at(`${shortest.part}.shoulders`, shortest.copy)] as const;
  return [{
    kind: 'shoulders differ', severity: 'weak', sizes: mentions,
    say: [`${capital(nameOf(fitting, longest))} and ${nameOf(fitting, shortest)} hold the same legs `, { length: nanometres(difference) }, ' differently: ', mentions[0], ' and ', mentions[1], ' shoulder to shoulder. Make them agree, or the legs will not stand plumb.'],
  }];
}

/** What is made of a part; its plan only when nothing is. */
function stretchesOf(fitting: Fitting, part: string): readonly Stretch[] {
  const all = copiesOf(fitting, part).flatMap((copy) => {
    const value = valueOf(fitting, `${part}.shoulders`, copy);
    return value === undefined ? [] : [{ part, copy, length: value.length, measured: value.basis === 'measured' }];
  });
  const made = all.filter(({ measured }) => measured);
  return made.length > 0 ? made : all;
}

function nameOf(fitting: Fitting, { part, copy }: Stretch): string {
  return called(fitting.part(part)?.name ?? part, copy);
}
