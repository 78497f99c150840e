import type { SawingSettings } from '../journal/cutting.ts';
import type { Length } from '../length/length.ts';
import { readSpokenNumber } from '../length/parseSpoken.ts';
import { sayNumber } from '../length/sayNumber.ts';
import { OBJECTIVES } from '../stock/objectives.ts';
import { DEFECT_KINDS, type DefectKind } from '../stock/rack.ts';
import { quarterCalled } from '../wood/lumber/quarters.ts';
import { SPECIES_NAMES } from '../wood/species.ts';
import type { LoadedPiece } from '../piece/loadedPiece.ts';
import type { Reading, Slot } from './slot.ts';
import { canonicalWords, nameKey } from './words.ts';

/** Quarters that boards are sold in. */
export const QUARTER_COUNTS = [3, 4, 5, 6, 7, 8, 10, 12, 14, 16] as const;

/** 'eight quarter', 'five quarters' */
export const quarterSlot: Slot<Length> = {
  longest: 2,
  read: (words) => {
    const [count = '', unit = '', ...more] = words;
    if (more.length > 0 || !/^quarters?$/.test(unit)) return [];
    const read = readSpokenNumber([count]);
    const quarter = read.ok ? quarterCalled(`${read.value}/4`) : undefined;
    return quarter === undefined ? [{ fault: `boards are not sold as “${words.join(' ')}”` }] : [{ value: quarter.rough }];
  },
  samples: () => QUARTER_COUNTS.map((count) => `${sayNumber(count)} quarter`),
};

const DEFECT_KEYS: ReadonlyMap<string, DefectKind> = new Map([...DEFECT_KINDS.map((kind) => [canonicalWords(kind).join(' '), kind] as const), ['crack', 'split']]);

/** 'knot', 'check', 'worm holes' */
export const defectSlot: Slot<DefectKind> = {
  longest: 2,
  read: (words) => {
    const kind = DEFECT_KEYS.get(nameKey(words));
    return kind === undefined ? [] : [{ value: kind }];
  },
  samples: () => [...DEFECT_KINDS, 'crack'],
};

/** A wood: of the piece on the bench or of the rack as it is named there, by the end of such a name, or any of the table. */
export const speciesSlot: Slot<string> = {
  longest: 4,
  read: (words, { state: { piece, rack } }) => {
    const said = nameKey(words);
    const atHand = [...woodsOf(piece), ...[...rack.values()].map(({ species }) => species)];
    const whole = atHand.find((name) => canonicalWords(name).join(' ') === said);
    if (whole !== undefined) return [{ value: whole }];
    const short = byLastWord(said, atHand);
    const found = SPECIES_NAMES.find((name) => canonicalWords(name).join(' ') === said);
    return short.length > 0 || found === undefined ? short : [{ value: found }];
  },
  samples: ({ state: { piece } }) => [...new Set([...woodsOf(piece), ...woodsOf(piece).flatMap((wood) => wood.split(' ').slice(-1)), ...COMMON_WOODS])],
};

function woodsOf(piece: LoadedPiece | null): readonly string[] {
  return piece?.file.parts.map(({ species }) => species) ?? [];
}

/** 'Maple', of a piece of hard maple; of one that has soft maple too, it is asked which. */
function byLastWord(said: string, atHand: readonly string[]): readonly Reading<string>[] {
  return [...new Set(atHand)].filter((name) => said !== '' && canonicalWords(name).at(-1) === said).map((name) => ({ value: name, labels: [name, name] }));
}

/** What is listened for beside the wood of the piece, with the short names that can mean no other: every name of the table would be too many to tell apart. */
const COMMON_WOODS = ['cherry', 'walnut', 'ash', 'birch', 'beech', 'poplar', 'pine', 'mahogany', 'hard maple', 'soft maple', 'red oak', 'white oak', 'black cherry', 'black walnut', 'white ash', 'yellow birch'] as const;

const OBJECTIVE_WORDS: ReadonlyMap<string, SawingSettings['first']> = new Map(OBJECTIVES.map((objective) => [canonicalWords(objective).join(' '), objective]));

/** 'fewest boards', 'least sawing' */
export const objectiveSlot: Slot<SawingSettings['first']> = {
  longest: 3,
  read: (words) => {
    const objective = OBJECTIVE_WORDS.get(nameKey(words));
    return objective === undefined ? [] : [{ value: objective }];
  },
  samples: () => [...OBJECTIVES],
};
