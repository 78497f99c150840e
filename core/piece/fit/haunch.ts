import type { Fitting, Misfit } from './misfit.ts';
import { at, lengthOf } from './misfit.ts';

/** A haunch is shorter than its tenon, and does not stand out over the end of the leg. */
export function haunchMisfits(fitting: Fitting): readonly Misfit[] {
  return fitting.tenons.filter(({ haunch }) => haunch !== undefined).flatMap(({ id, name }): readonly Misfit[] => {
    const size = (key: string): number => lengthOf(fitting, `${id}.${key}`) ?? 0;
    return [
      ...(size('haunchLength') < size('tenonLength') ? [] : [{
        kind: 'haunch too long' as const, severity: 'weak' as const, sizes: [at(`${id}.haunchLength`), at(`${id}.tenonLength`)],
        say: [`The haunch of the ${name} is as long as the tenon, and leaves no wood above the mortise: `, at(`${id}.haunchLength`), ' against ', at(`${id}.tenonLength`), '. As long as the tenon is thick is enough.'],
      }]),
      ...(size('haunchWidth') <= size('fromTop') ? [] : [{
        kind: 'haunch too wide' as const, severity: 'look at it' as const, sizes: [at(`${id}.haunchWidth`), at(`${id}.fromTop`)],
        say: [`The haunch of the ${name} is wider than there is leg above the mortise: `, at(`${id}.haunchWidth`), ' against ', at(`${id}.fromTop`), '. Make it as wide as that, so that it ends level.'],
      }]),
    ];
  });
}
