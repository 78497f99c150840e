import { nanometres } from '../../length/length.ts';
import type { SizeValue } from '../evaluate.ts';
import type { Part } from '../file.ts';
import type { Fitting, Misfit } from './misfit.ts';
import { at, called, capital, copiesOf, FIT_LIMITS, lengthOf, valueOf } from './misfit.ts';

/** Does a part come out of its wood, and do its copies agree? */
export function partMisfits(fitting: Fitting): readonly Misfit[] {
  return fitting.piece.file.parts.flatMap((part) => [
    ...copiesOf(fitting, part.id).flatMap((copy) => [...layerMisfits(fitting, part, copy), ...stockMisfits(fitting, part, copy)]),
    ...['shoulders', 'length', 'width', 'thickness'].flatMap((key) => setMisfits(fitting, part, key)),
  ]);
}

function layerMisfits(fitting: Fitting, part: Part, copy: number | undefined): readonly Misfit[] {
  if (part.made.kind !== 'laminated') return [];
  const blank = lengthOf(fitting, `${part.id}.blankThickness`, copy) ?? 0;
  const thickness = lengthOf(fitting, `${part.id}.thickness`, copy) ?? 0;
  if (blank >= thickness) return [];
  return [{
    kind: 'layers too thin', severity: 'will not go', sizes: [at(`${part.id}.layerThickness`, copy), at(`${part.id}.blankThickness`, copy), at(`${part.id}.thickness`, copy)],
    say: [`The ${part.made.layers} layers of ${called(part.name, copy)} make only `, at(`${part.id}.blankThickness`, copy), ', and it is to be ', at(`${part.id}.thickness`, copy), ' thick. Add a layer, or make the whole set thinner.'],
  }];
}

function stockMisfits(fitting: Fitting, part: Part, copy: number | undefined): readonly Misfit[] {
  const stock = valueOf(fitting, `${part.id}.stock`, copy);
  const key = part.made.kind === 'laminated' ? 'layerThickness' : 'thickness';
  const finished = valueOf(fitting, `${part.id}.${key}`, copy);
  const rough = lengthOf(fitting, `${part.id}.roughThickness`, copy);
  // Once the part itself was measured, what it was cut from no longer matters.
  if (stock === undefined || finished === undefined || rough === undefined || finished.basis === 'measured' || rough <= stock.length) return [];
  const mentions = [at(`${part.id}.stock`, copy), at(`${part.id}.${key}`, copy), at(`${part.id}.roughThickness`, copy)];
  const what = key === 'thickness' ? called(part.name, copy) : `a layer of ${called(part.name, copy)}`;
  if (finished.length > stock.length) {
    return [{
      kind: 'stock too thin', severity: 'will not go', sizes: mentions,
      say: [`${capital(what)} is to be `, at(`${part.id}.${key}`, copy), ' thick, and its boards are ', at(`${part.id}.stock`, copy), '. Take thicker boards, or make the set thinner.'],
    }];
  }
  return [{
    kind: 'stock too thin', severity: 'look at it', sizes: mentions,
    say: [`The boards for ${called(part.name, copy)} leave only `, { length: nanometres(stock.length - finished.length) }, ' to true off. Choose flat ones.'],
  }];
}

/** Only what was measured is compared: what is not made yet can still be made to match. */
function setMisfits(fitting: Fitting, part: Part, key: string): readonly Misfit[] {
  const name = `${part.id}.${key}`;
  const made = copiesOf(fitting, part.id).flatMap((copy) => {
    const value = copy === undefined ? undefined : valueOf(fitting, name, copy);
    return value?.basis === 'measured' ? [{ copy, value }] : [];
  });
  const [largest, smallest] = [furthest(made, 1), furthest(made, -1)];
  if (largest === undefined || smallest === undefined) return [];
  const difference = largest.value.length - smallest.value.length;
  if (difference <= (key === 'shoulders' ? FIT_LIMITS.shoulders : FIT_LIMITS.copies)) return [];
  const critical = key === 'shoulders' || key === 'length';
  return [{
    kind: key === 'shoulders' ? 'shoulders differ' : 'copies differ', severity: critical ? 'weak' : 'look at it', sizes: [at(name, largest.copy), at(name, smallest.copy)],
    say: [`${capital(part.name)} ${largest.copy ?? ''} and ${smallest.copy ?? ''} differ by `, { length: nanometres(difference) }, `: ${wordFor(key)} `, at(name, largest.copy), ' and ', at(name, smallest.copy), `. ${adviceFor(key)}`],
  }];
}

function furthest<Item extends { readonly value: SizeValue }>(made: readonly Item[], sign: 1 | -1): Item | undefined {
  return made.reduce<Item | undefined>((best, item) => (best === undefined || sign * (item.value.length - best.value.length) > 0 ? item : best), undefined);
}

function wordFor(key: string): string {
  return key === 'shoulders' ? 'shoulder to shoulder' : key;
}

function adviceFor(key: string): string {
  switch (key) {
    case 'shoulders': return 'Trim the longer to the shorter, or the frame will not be square.';
    case 'length': return 'Trim the longer to the shorter.';
    default: return 'Plane the larger to the smaller, or lay out each from its own faces.';
  }
}
