import type { Length } from '../../length/length.ts';
import { reckoning } from '../../reckoning/reckoning.ts';
import { telling } from '../../reckoning/telling.ts';
import { failure, success } from '../../result.ts';
import { PART_KINDS, roughFor } from '../lumber/allowance.ts';
import { boardFeetUnrounded, costOf, LUMBER_SOURCE, tally, wholeFeet, type BoughtBoard } from '../lumber/measure.ts';
import { QUARTER_NAMES, quarterCalled, QUARTERS_SOURCE } from '../lumber/quarters.ts';
import { coefficientsOf } from '../movement.ts';
import { densityOf, SPECIES_SOURCE, speciesCalled } from '../species.ts';
import { SPECIES_FIELD } from './inputs.ts';

export const lumber = reckoning({
  name: 'lumber',
  about: 'surface measure, board feet by the trade\'s rounding and unrounded, and cost of boards of one size',
  inputs: {
    thickness: { kind: 'choice', options: QUARTER_NAMES, say: 'rough thickness as sold', default: '4/4' },
    width: { kind: 'length', say: 'full width' }, length: { kind: 'length', say: 'length' },
    count: { kind: 'number', unit: 'boards', least: 1, most: 1000, whole: true, say: 'how many alike', default: '1' },
    price: { kind: 'number', unit: 'money for a board foot', least: 0, most: 100_000, say: 'price of a board foot', optional: true },
  },
  reckon: ({ thickness, width, length, count, price }) => {
    const quarter = quarterCalled(thickness);
    if (!quarter) return failure({ key: 'thickness', message: `No thickness is sold as ${thickness}.` });
    if (wholeFeet(length) < 1) return failure({ key: 'length', message: 'Lumber is measured by whole feet of length: a board under a foot is an offcut, not measured.' });
    const board: BoughtBoard = { thickness: quarter.rough, width, length };
    const measured = tally(Array.from({ length: count }, () => board));
    const first = measured.boards[0];
    return success({
      result: [
        { key: 'surfaceMeasure', number: first?.surfaceMeasure ?? 0, unit: 'square feet, the first board' }, { key: 'boardFeet', number: measured.boardFeet, unit: 'board feet' },
        { key: 'unrounded', number: measured.unroundedBoardFeet, unit: 'board feet' }, { key: 'surfacedBothFaces', length: quarter.bothFaces },
        ...(quarter.oneFace === undefined ? [] : [{ key: 'surfacedOneFace', length: quarter.oneFace }]),
        ...(price === undefined ? [] : [{ key: 'cost', number: costOf(measured.boardFeet, price), unit: 'money' }]),
      ],
      how: [`Width with its fraction × ${wholeFeet(length)} whole feet / 12, to the nearest whole number, exact halves by turns up and down; × thickness in inches, under an inch counted as one.`],
      source: [LUMBER_SOURCE, QUARTERS_SOURCE],
      warnings: quarter.fromMemory ? [`The surfaced thickness of ${quarter.name} is from memory.`] : [],
    });
  },
});

export const roughSize = reckoning({
  name: 'rough-size',
  about: 'what to cut and buy for a part: rough length and width, and the quarter that has its thickness',
  inputs: {
    length: { kind: 'length', say: 'finished length' }, width: { kind: 'length', say: 'finished width' }, thickness: { kind: 'length', say: 'finished thickness' },
    made: { kind: 'choice', options: PART_KINDS, say: 'how it is made', default: 'solid' },
  },
  reckon: ({ length, width, thickness, made }) => {
    const rough = roughFor({ length, width, thickness }, made);
    return success({
      result: [{ key: 'length', length: rough.length }, { key: 'width', length: rough.width }, ...(rough.quarter ? [
        { key: 'quarter', text: rough.quarter.name }, { key: 'surfacedBothFaces', length: rough.quarter.bothFaces }, { key: 'boardFeet', number: boardFeetOf(rough.quarter.rough, rough.width, rough.length), unit: 'board feet, unrounded' },
      ] : [{ key: 'quarter', text: 'none is thick enough: laminate it' }])],
      how: ['Allowances over the finished size by the kind of part; the thinnest quarter that still has the thickness in it once both faces are surfaced.',
        'A board with wind or cup gives less: choose a quarter more for long or wide parts.'],
      source: ['allowances: common practice, no source', QUARTERS_SOURCE],
    });
  },
});

function boardFeetOf(thickness: Length, width: Length, length: Length): number {
  return boardFeetUnrounded({ thickness, width, length });
}

export const wood = reckoning({
  name: 'wood',
  about: 'what is known of a wood: shrinkage, movement, gravity and strength, each with where it comes from',
  inputs: { species: SPECIES_FIELD },
  reckon: ({ species: name }) => {
    const species = speciesCalled(name);
    const across = species && coefficientsOf(species);
    if (!species || !across) return failure({ key: 'species', message: `The table has no ${name}.` });
    const { shrinkage, strength } = species;
    return success({
      result: [
        { key: 'name', text: species.name },
        ...(shrinkage ? [{ key: 'shrinkage.radial', number: shrinkage.radial, unit: 'percent, green to oven-dry' }, { key: 'shrinkage.tangential', number: shrinkage.tangential, unit: 'percent, green to oven-dry' }] : []),
        { key: 'coefficient.radial', number: across.radial, unit: 'of the size for one percent' }, { key: 'coefficient.tangential', number: across.tangential, unit: 'of the size for one percent' },
        { key: 'gravity', number: species.gravity, unit: 'at 12 percent' }, { key: 'gluesAs', text: `${densityOf(species.gravity)} density` },
        ...(strength ? [
          { key: 'rupture', number: strength.rupturePsi, unit: 'psi' }, { key: 'shear', number: strength.shearPsi, unit: 'psi' },
          { key: 'stiffness', number: strength.stiffnessMpsi, unit: 'million psi' }, { key: 'hardness', number: strength.hardnessLbf, unit: 'lbf' },
        ] : []),
      ],
      how: [telling`Coefficients ${across.by === 'table' ? 'from the table' : 'computed from the shrinkage'}${species.coefficient ? `, ${species.coefficient.ground}` : ''}.`,
        `Shrinkage ${shrinkage?.ground ?? 'not found'}; gravity ${species.gravityGround}; strength ${strength?.ground ?? 'not found'}.`],
      source: [SPECIES_SOURCE],
      warnings: species.remark === undefined ? [] : [`${species.remark}.`],
    });
  },
});
