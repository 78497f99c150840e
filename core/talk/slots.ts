import { defectSlot, objectiveSlot, quarterSlot, speciesSlot } from './boardSlots.ts';
import { careSlot, edgeSlot } from './edges.ts';
import { angleSlot, boardSlot, countSlot, loudnessSlot, nthSlot, stageSlot } from './counts.ts';
import { degreesSlot, gramsSlot, moistureSlot, percentSlot, poundsSlot } from './degrees.ts';
import { durationSlot, intervalSlot, spanSlot } from './durationSlots.ts';
import { facesSlot, faceSlot, levelSlot, likingsSlot, qualitySlot } from './faceSlots.ts';
import { alongSlot, eachSlot, fractionSlot, gapSlot, lengthSlot, operandSlot, roundingSlot, smallSlot, unitSlot } from './measures.ts';
import { namesOf } from './names.ts';
import { addressSlot, choiceSlot, kindSlot, placeSlot, screenSlot, stepSlot, timerSlot } from './places.ts';
import { offSlot } from './offSlot.ts';
import { priceSlot } from './priceSlot.ts';
import type { Slot, SlotValues } from './slot.ts';
import { copySlot, jointSlot, ownerSlot, partSlot, sizeSlot } from './subjects.ts';
import { piecesSlot, wholeSlot } from './wholeSlots.ts';
import { deedSlot, faultSlot, halfSlot, misfitSlot, warpSlot } from './troubleSlots.ts';
import { acrossSlot, leanSlot, lightSlot, senseSlot, sideSlot, spotSlot } from './truingSlots.ts';
import { nameKey } from './words.ts';

/** The dimensions that an adjective asks for, the likeliest first; a parameter that is a size by itself has an empty one. */
const ADJECTIVES: ReadonlyMap<string, readonly string[]> = new Map([
  ['long', ['length', '']], ['wide', ['width', '']], ['broad', ['width', '']], ['thick', ['thickness', '']], ['deep', ['depth', '']], ['high', ['height', 'length', '']], ['tall', ['height', 'length', '']],
]);

const adjectiveSlot: Slot<readonly string[]> = {
  longest: 1,
  read: (words) => {
    const dimensions = ADJECTIVES.get(nameKey(words));
    return dimensions ? [{ value: dimensions }] : [];
  },
  samples: () => ['long', 'wide', 'thick', 'deep', 'high'],
};

const dimensionSlot: Slot<string> = {
  longest: 5,
  read: (words, { state }) => {
    const said = nameKey(words);
    return namesOf(state.piece).owners.some(({ dimensions }) => said !== '' && dimensions.has(said)) ? [{ value: said }] : [];
  },
  samples: () => ['length', 'width', 'thickness'],
};

const textSlot: Slot<string> = { longest: 80, read: (words) => [{ value: words.join(' ') }], samples: () => [] };

/** How each slot is read, and examples of it. */
export const slots: { readonly [Name in keyof SlotValues]: Slot<SlotValues[Name]> } = {
  size: sizeSlot, owner: ownerSlot, joint: jointSlot, part: partSlot, parts: partSlot, whole: wholeSlot, pieces: piecesSlot, copy: copySlot, other: copySlot, place: placeSlot, adjective: adjectiveSlot, dimension: dimensionSlot, off: offSlot,
  faces: facesSlot, face: faceSlot, likings: likingsSlot, quality: qualitySlot, level: levelSlot, before: levelSlot,
  length: lengthSlot, small: smallSlot, setback: smallSlot, otherSetback: smallSlot, gap: gapSlot, first: lengthSlot, second: lengthSlot,
  count: countSlot, spaces: countSlot, board: boardSlot, nth: nthSlot, stage: stageSlot, loudness: loudnessSlot, angle: angleSlot, price: priceSlot, fraction: fractionSlot, of: operandSlot, left: operandSlot, right: operandSlot, each: eachSlot,
  unit: unitSlot, rounding: roundingSlot, duration: durationSlot, span: spanSlot, interval: intervalSlot, degrees: degreesSlot, percent: percentSlot, moisture: moistureSlot, grams: gramsSlot, pounds: poundsSlot, kind: kindSlot, timer: timerSlot,
  step: stepSlot, screen: screenSlot, quarter: quarterSlot, defect: defectSlot, species: speciesSlot, objective: objectiveSlot, from: alongSlot, to: alongSlot, edge: edgeSlot, care: careSlot, side: sideSlot, spot: spotSlot, sense: senseSlot, lean: leanSlot, across: acrossSlot, light: lightSlot, warp: warpSlot, half: halfSlot, misfit: misfitSlot, fault: faultSlot, deed: deedSlot, address: addressSlot, choice: choiceSlot, text: textSlot,
};
