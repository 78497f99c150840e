import { reckoning } from '../../reckoning/reckoning.ts';
import { success } from '../../result.ts';
import { EQUILIBRIUM_SOURCE, equilibriumMoisture } from '../equilibrium.ts';
import { correctMeter, METER_CALIBRATED_C, ovenDryMoisture } from '../moisture.ts';
import { CLOSE_POINTS, readiness } from '../ready.ts';
import { celsiusOf } from '../temperature.ts';
import { humidityField, moistureField, SCALE_FIELD, temperatureField } from './inputs.ts';

const HISTORY = 'Real wood is within about a point of this: species, and whether it came from the wet or the dry side, make the difference.';

export const moistureInAir = reckoning({
  name: 'moisture-in-air',
  about: 'the moisture that wood comes to in the air of a room, left long enough',
  inputs: { temperature: temperatureField('temperature of the air, 30 to 210 °F'), humidity: humidityField('relative humidity, 0 to 95 percent'), scale: SCALE_FIELD },
  reckon: ({ temperature, humidity, scale }) => {
    const found = equilibriumMoisture({ tempC: celsiusOf(temperature, scale), humidityPercent: humidity });
    if (!found.ok) return found;
    return success({ result: [{ key: 'moisture', number: found.value, unit: 'percent' }], how: ['Two-hydrate sorption equation, fitted to the printed table.', HISTORY], source: [EQUILIBRIUM_SOURCE] });
  },
});

export const stockReady = reckoning({
  name: 'stock-ready',
  about: 'whether stock is dry enough to work: its moisture against the house it is for, and the shop',
  inputs: {
    moisture: moistureField('moisture of the stock'),
    houseTemperature: temperatureField('temperature of the house'), houseHumidity: humidityField('humidity of the house'),
    shopTemperature: temperatureField('temperature of the shop'), shopHumidity: humidityField('humidity of the shop'), scale: SCALE_FIELD,
  },
  reckon: ({ moisture, houseTemperature, houseHumidity, shopTemperature, shopHumidity, scale }) => {
    const house = equilibriumMoisture({ tempC: celsiusOf(houseTemperature, scale), humidityPercent: houseHumidity });
    if (!house.ok) return { ok: false, fault: { ...house.fault, key: house.fault.key === 'humidity' ? 'houseHumidity' : 'houseTemperature' } };
    const shop = equilibriumMoisture({ tempC: celsiusOf(shopTemperature, scale), humidityPercent: shopHumidity });
    if (!shop.ok) return { ok: false, fault: { ...shop.fault, key: shop.fault.key === 'humidity' ? 'shopHumidity' : 'shopTemperature' } };
    const found = readiness(moisture, house.value, shop.value);
    return success({
      result: [
        { key: 'verdict', text: found.verdict }, { key: 'house', number: house.value, unit: 'percent' }, { key: 'shop', number: shop.value, unit: 'percent' },
        { key: 'overHouse', number: found.overHouse, unit: 'points' }, { key: 'overShop', number: found.overShop, unit: 'points' },
      ],
      how: [`Ready within ${CLOSE_POINTS} points of what it comes to in the house.`, HISTORY],
      source: [EQUILIBRIUM_SOURCE, `within ${CLOSE_POINTS} points: a meter maker's advice; furniture lumber 6 to 8 percent: Wood Handbook, chapter 13`],
      warnings: found.movesInShop ? ['It is more than two points off what it comes to in the shop: it goes on moving while you work it. Keep the parts together, stickered or wrapped, between sessions.'] : [],
    });
  },
});

export const ovenDry = reckoning({
  name: 'oven-dry',
  about: 'moisture of a sample by weighing it, drying it in an oven until it loses no more, and weighing it again',
  inputs: {
    wet: { kind: 'number', unit: 'grams, or any other, the same for both', least: 0.001, most: 1_000_000, say: 'weight as cut' },
    dry: { kind: 'number', unit: 'grams, or any other, the same for both', least: 0.001, most: 1_000_000, say: 'weight when it loses no more' },
  },
  reckon: ({ wet, dry }) => {
    const found = ovenDryMoisture(wet, dry);
    if (!found.ok) return found;
    return success({ result: [{ key: 'moisture', number: found.value, unit: 'percent' }], how: ['Water over dry wood: (wet − dry) / dry.', 'Cut the sample well in from the end of the board, and weigh it at once.'], source: ['definition of the moisture of wood, Wood Handbook, chapter 4'] });
  },
});

export const meter = reckoning({
  name: 'meter',
  about: 'the reading of a resistance meter corrected for the temperature of the wood',
  inputs: {
    reading: { kind: 'number', unit: 'percent', least: 0, most: 60, say: 'what the meter shows' }, temperature: temperatureField('temperature of the wood'),
    calibrated: { kind: 'number', unit: 'degrees Celsius', least: 0, most: 40, say: 'what the meter is calibrated for; its manual says', default: String(METER_CALIBRATED_C) }, scale: SCALE_FIELD,
  },
  reckon: ({ reading, temperature, calibrated, scale }) => {
    const found = correctMeter(reading, celsiusOf(temperature, scale), calibrated);
    return success({
      result: [{ key: 'moisture', number: found.percent, unit: 'percent' }],
      how: ['Half a percent for every 5.6 °C (10 °F): added when the wood is colder than the calibration, taken off when warmer.', 'The average of many corrected readings comes within a point; leave out the ends and knots.'],
      source: ['USDA Wood Handbook (GTR-190), chapter 13; 21 °C calibration: common practice, the manual of the meter rules'],
      warnings: found.reliable ? [] : ['Outside 6 to 30 percent a resistance meter only guesses.'],
    });
  },
});
