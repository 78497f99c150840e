import { fractionOf } from '../../length/arithmetic.ts';
import { nanometres } from '../../length/length.ts';
import { reckoning } from '../../reckoning/reckoning.ts';
import { telling } from '../../reckoning/telling.ts';
import { failure, success } from '../../result.ts';
import { EQUILIBRIUM_SOURCE } from '../equilibrium.ts';
import { atRingAngle, COEFFICIENT_RANGE, inCoefficientRange, MOVEMENT_SOURCE, movement, movementFromGreen } from '../movement.ts';
import { breadBoardFor, buttonFor, HOLD, panelGrooveFor, roomAt, slotFor, SPARE } from '../room.ts';
import { SPECIES_SOURCE, speciesCalled } from '../species.ts';
import { MOVING_FIELDS, moistureField, perPointOf, YEAR_FIELDS, yearOf } from './inputs.ts';

const ROUGH = `The coefficients hold from ${COEFFICIENT_RANGE.from} to ${COEFFICIENT_RANGE.to} percent; outside, take this as rough.`;
const COMMERCIAL = 'Boards as sold are of mixed grain: their width moves less than flat-sawn, and their thickness more than quarter-sawn.';

export const woodMovement = reckoning({
  name: 'wood-movement',
  about: 'how much a width or thickness changes between two moistures',
  inputs: { size: { kind: 'length', say: 'size across the grain' }, ...MOVING_FIELDS, from: moistureField('moisture now'), to: moistureField('moisture then') },
  reckon: ({ size, species, grain, rings, from, to }) => {
    const perPoint = perPointOf({ species, grain, rings });
    if (!perPoint.ok) return perPoint;
    const moved = movement(size, perPoint.value.coefficient, from, to);
    if (!moved.ok) return moved;
    const shrinkage = speciesCalled(species)?.shrinkage;
    const green = shrinkage && movementFromGreen(size, atRingAngle(shrinkage, perPoint.value.ringDegrees), from, to);
    return success({
      result: [
        { key: 'change', length: moved.value }, { key: 'then', length: nanometres(size + moved.value) }, { key: 'coefficient', number: perPoint.value.coefficient, unit: 'of the size for one percent' },
        ...(green?.ok ? [{ key: 'changeFromGreen', length: green.value }] : []),
      ],
      how: [perPoint.value.how, 'Size × coefficient × points of moisture; from green: size × points / (3000 / shrinkage − 30 + moisture now), within five percent.', COMMERCIAL],
      source: [MOVEMENT_SOURCE, SPECIES_SOURCE],
      warnings: [...(inCoefficientRange(from, to) ? [] : [ROUGH]), ...perPoint.value.remarks],
    });
  },
});

export const topInAYear = reckoning({
  name: 'top-in-a-year',
  about: 'what a top does between the driest and the dampest month of the house it is for',
  inputs: { width: { kind: 'length', say: 'width of the top, across the grain, as it is made' }, ...MOVING_FIELDS, ...YEAR_FIELDS },
  reckon: ({ width, species, grain, rings, ...year }) => {
    const perPoint = perPointOf({ species, grain, rings });
    if (!perPoint.ok) return perPoint;
    const found = yearOf(width, perPoint.value.coefficient, year);
    if (!found.ok) return found;
    const { driest, dampest, seasons } = found.value;
    return success({
      result: [
        { key: 'driest', number: driest, unit: 'percent' }, { key: 'dampest', number: dampest, unit: 'percent' },
        { key: 'shrinks', length: seasons.shrinks }, { key: 'swells', length: seasons.swells }, { key: 'travel', length: seasons.travel },
        { key: 'narrowest', length: seasons.narrowest }, { key: 'widest', length: seasons.widest },
      ],
      how: [perPoint.value.how, telling`Left long enough in the driest air it is ${seasons.narrowest} wide, in the dampest ${seasons.widest}; a finish only slows it down.`],
      source: [MOVEMENT_SOURCE, SPECIES_SOURCE, EQUILIBRIUM_SOURCE],
      warnings: [...(inCoefficientRange(year.moistureNow, driest, dampest) ? [] : [ROUGH]), ...perPoint.value.remarks],
    });
  },
});

export const roomForMovement = reckoning({
  name: 'room-for-movement',
  about: 'slot, button gap, bread-board end and panel groove, so that a top or panel can move through the year',
  inputs: {
    width: { kind: 'length', say: 'width of the top or panel, across the grain' }, ...MOVING_FIELDS, ...YEAR_FIELDS,
    distance: { kind: 'length', say: 'from the line held fast to the fixing; half of the width when not given', optional: true },
    shank: { kind: 'length', say: 'diameter of the screw or peg', default: '3/16 in' },
  },
  reckon: ({ width, species, grain, rings, distance: given, shank, ...year }) => {
    const perPoint = perPointOf({ species, grain, rings });
    if (!perPoint.ok) return perPoint;
    const found = yearOf(width, perPoint.value.coefficient, year);
    if (!found.ok) return found;
    const distance = given ?? fractionOf(width, 1, 2);
    if (distance > width) return failure({ key: 'distance', message: telling`The fixing stands ${distance} from the line held fast, and the part is only ${width} wide.` });
    const room = roomAt(found.value.seasons, distance, width);
    const [slot, button, groove, breadBoard] = [slotFor(room, shank), buttonFor(room), panelGrooveFor(found.value.seasons), breadBoardFor(found.value.seasons, width, distance, shank)];
    return success({
      result: [
        { key: 'movesInwards', length: room.inwards }, { key: 'movesOutwards', length: room.outwards },
        { key: 'slot.length', length: slot.length }, { key: 'slot.shankFromInnerEnd', length: slot.shankFromInnerEnd },
        { key: 'button.gapNow', length: button.gapNow }, { key: 'button.tongue', length: button.tongue }, { key: 'button.groove', length: button.groove },
        { key: 'panelGroove.gapNow', length: groove.gapNow }, { key: 'panelGroove.tongueNow', length: groove.tongueNow }, { key: 'panelGroove.depth', length: groove.depth },
        { key: 'breadBoard.slot', length: breadBoard.slot.length }, { key: 'breadBoard.proudWhenDry', length: breadBoard.proudWhenDry }, { key: 'breadBoard.topProudWhenDamp', length: breadBoard.topProudWhenDamp },
      ],
      how: [perPoint.value.how, 'A fixing moves by its share of the whole: its distance from the line held fast over the width.',
        telling`Each side has ${SPARE} in hand, and a tongue keeps ${HOLD} in its groove in the driest month.`, 'A panel and a bread-board end are held fast at the middle: half of the movement goes to each side.'],
      source: [MOVEMENT_SOURCE, SPECIES_SOURCE, 'room in hand and hold of a tongue: common practice, no source'],
      warnings: perPoint.value.remarks,
    });
  },
});
