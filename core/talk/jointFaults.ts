import type { Trouble } from '../work/troubles.ts';

/** What is said of half a joint, as an adjective: '(is|came out|I cut the tenon) too short'. */
export type Misfit = 'loose' | 'tight' | 'short' | 'long' | 'narrow' | 'wide' | 'thin' | 'thick' | 'deep' | 'shallow';
export const MISFITS: readonly Misfit[] = ['loose', 'tight', 'short', 'long', 'narrow', 'wide', 'thin', 'thick', 'deep', 'shallow'];
/** By themselves only these are a fault: 'the tenon is short' may go on with a size. */
export const ALONE: readonly Misfit[] = ['loose', 'tight'];

/** What else is said of it: that it is …, and what it does. */
export type Fault = 'open' | 'split' | 'not flat' | 'out of square' | 'stuck' | 'on the bottom';
export const FAULTS: readonly (readonly [string, Fault])[] = [['open', 'open'], ['split', 'split'], ['not flat', 'not flat'], ['not square', 'out of square'], ['out of square', 'out of square']];

export type Half = 'tenon' | 'mortise' | 'shoulder' | 'joint' | 'cheek';
export const HALVES: readonly Half[] = ['tenon', 'mortise', 'shoulder', 'joint', 'cheek'];

const BY_MISFIT: Readonly<Record<'tenon' | 'mortise', Readonly<Record<Misfit, Trouble>>>> = {
  tenon: { loose: 'tenon loose', tight: 'tenon tight', short: 'tenon short', long: 'tenon long', narrow: 'tenon narrow', wide: 'tenon wide', thin: 'tenon loose', thick: 'tenon tight', deep: 'tenon long', shallow: 'tenon short' },
  mortise: { loose: 'mortise wide', tight: 'mortise narrow', short: 'mortise short', long: 'mortise long', narrow: 'mortise narrow', wide: 'mortise wide', thin: 'mortise narrow', thick: 'mortise wide', deep: 'mortise deep', shallow: 'mortise shallow' },
};

/** What the trade calls it; undefined of what cannot be said of that half. */
export function misfitOf(half: Half, misfit: Misfit): Trouble | undefined {
  if (half === 'tenon' || half === 'mortise') return BY_MISFIT[half][misfit];
  return (half === 'joint' || half === 'cheek') && ALONE.includes(misfit) ? BY_MISFIT.tenon[misfit] : undefined;
}

/** The same of a fault. */
export function faultOf(half: Half, fault: Fault): Trouble | undefined {
  switch (fault) {
    case 'open': return half === 'shoulder' || half === 'joint' ? 'shoulder open' : undefined;
    case 'stuck': return half === 'tenon' || half === 'joint' ? 'tenon tight' : half === 'mortise' ? 'mortise narrow' : undefined;
    case 'on the bottom': return half === 'tenon' || half === 'joint' ? 'tenon long' : undefined;
    case 'split': return half === 'mortise' ? 'mortise split' : half === 'tenon' || half === 'cheek' ? 'tenon split' : undefined;
    case 'not flat': return half === 'cheek' ? 'cheek not flat' : undefined;
    case 'out of square': return half === 'shoulder' ? 'shoulder out of square' : undefined;
  }
}
