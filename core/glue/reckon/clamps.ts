import { nanometres } from '../../length/length.ts';
import { reckoning } from '../../reckoning/reckoning.ts';
import { failure, success } from '../../result.ts';
import { densityOf, speciesCalled, SPECIES_NAMES } from '../../wood/species.ts';
import { ADHESIVE_NAMES, adhesiveCalled, GLUE_SOURCES } from '../adhesive.ts';
import { clampsFor, gramsFor, MPA_PER_PSI, PRESSURE_PSI, PRESSURE_SOURCE, squareInches } from '../clamping.ts';
import { warmBoard } from '../warming.ts';
import { celsiusOf } from '../../wood/temperature.ts';

const SPECIES = { kind: 'choice', options: SPECIES_NAMES, say: 'wood', default: 'hard maple' } as const;
const ADHESIVE = { kind: 'choice', options: ADHESIVE_NAMES, say: 'class of the adhesive', default: 'yellow glue' } as const;

export const clamps = reckoning({
  name: 'clamps',
  about: 'how many clamps a glue line wants, how far apart, and what each presses',
  inputs: {
    length: { kind: 'length', say: 'length of the glue line' }, width: { kind: 'length', say: 'width of the glue line: thickness of the boards' },
    behind: { kind: 'length', say: 'wood and caul between the clamps and the glue line: width of the outer board, or depth of the caul' },
    species: SPECIES, adhesive: ADHESIVE,
    force: { kind: 'number', unit: 'pounds-force', least: 1, most: 20_000, say: 'what one of your clamps presses', default: '800' },
    lines: { kind: 'number', unit: 'glue lines', least: 1, most: 100, whole: true, say: 'glue lines that the same clamps press', default: '1' },
  },
  reckon: ({ length, width, behind, species, adhesive, force, lines }) => {
    const wood = speciesCalled(species);
    if (!wood) return failure({ key: 'species', message: `The table has no ${species}.` });
    const { pressure, spreadGm2 } = adhesiveCalled(adhesive);
    const psi = pressure === 'by density' ? PRESSURE_PSI[densityOf(wood.gravity)] : pressure === 'contact' ? [5, 15] as const : [pressure.fromMpa / MPA_PER_PSI, pressure.toMpa / MPA_PER_PSI] as const;
    const found = clampsFor({ length, width, behind }, psi, force);
    if (!found.ok) return found;
    const { value } = found;
    const grams = gramsFor(squareInches(length, width) * lines, spreadGm2);
    return success({
      result: [
        { key: 'clamps', number: value.wanted, unit: 'clamps' }, { key: 'forForce', number: value.forForce, unit: 'clamps' }, { key: 'forSpread', number: value.forSpread, unit: 'clamps' },
        { key: 'spacing', length: value.spacing }, { key: 'firstFromEnd', length: nanometres(Math.round(value.spacing / 2)) }, { key: 'total', number: value.totalLbf, unit: 'lbf' }, { key: 'each', number: value.eachLbf, unit: 'lbf' },
        { key: 'pressureFrom', number: psi[0], unit: 'psi' }, { key: 'pressureTo', number: psi[1], unit: 'psi' }, { key: 'glueFrom', number: grams[0], unit: 'grams' }, { key: 'glueTo', number: grams[1], unit: 'grams' },
      ],
      how: ['Force: low end of the pressure × area. Spread: pressure reaches out at 45 degrees, so clamps stand no farther apart than twice the wood behind.',
        'More wood behind, or a stiff caul, lets clamps stand wider; half of the spacing goes to each end.',
        ...(pressure === 'contact' ? ['This glue wants contact, not pressure: 5 to 15 psi is taken for that (common practice, no source).'] : [])],
      source: [PRESSURE_SOURCE, 'spread at 45 degrees: from memory', 'force of a clamp: common practice, no source; yours may differ', ...GLUE_SOURCES.slice(1, 2)],
    });
  },
});

export const warmUp = reckoning({
  name: 'warm-up',
  about: 'how long cold wood takes to warm through in a room, an estimate',
  inputs: {
    thickness: { kind: 'length', say: 'thickness, both faces open to the air' }, species: SPECIES,
    from: { kind: 'number', unit: 'degrees', least: -50, most: 150, say: 'temperature of the wood now' }, to: { kind: 'number', unit: 'degrees', least: -50, most: 150, say: 'temperature wanted' },
    room: { kind: 'number', unit: 'degrees', least: -50, most: 150, say: 'temperature of the room' },
    scale: { kind: 'choice', options: ['celsius', 'fahrenheit'], say: 'scale of the temperatures', default: 'celsius' },
  },
  reckon: ({ thickness, species, from, to, room, scale }) => {
    const wood = speciesCalled(species);
    if (!wood) return failure({ key: 'species', message: `The table has no ${species}.` });
    const found = warmBoard({ thickness, gravity: wood.gravity, fromC: celsiusOf(from, scale), toC: celsiusOf(to, scale), roomC: celsiusOf(room, scale) });
    if (!found.ok) return found;
    return success({
      result: [{ key: 'minutes', number: found.value.minutes, unit: 'minutes, an estimate' }, { key: 'biot', number: found.value.biot, unit: 'film over conduction; over 0.1 the middle lags' }],
      how: ['All of the board at one temperature (lumped capacity): ρ c d / (2 h) · ln((room − from) / (room − to)), h 8 W/(m² K); half as long again where the middle lags.', 'Sticker the parts so that air reaches both faces. An estimate: put a thermometer to the wood before you glue.'],
      source: ['Newton\'s law of cooling; heat capacity and conductivity of wood: USDA Wood Handbook, chapter 4; film of still air 8 W/(m² K): building practice, no source'],
    });
  },
});
