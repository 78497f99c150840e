import type { Bench } from '../bench/bench.ts';
import type { Response } from '../bench/reply.ts';
import { between } from '../clock/between.ts';
import type { Moment } from '../clock/moment.ts';
import { sayDuration } from '../clock/sayDuration.ts';
import { sayDegrees } from '../glue/telling.ts';
import type { AirPlace } from '../journal/craft.ts';
import { refuse, tell } from './plain.ts';
import { sayList, sentence } from './saying.ts';
import { sayPercent } from './sayPercent.ts';

const PLACES = ['shop', 'wood', 'glue'] as const satisfies readonly AirPlace[];
const FRESH_MS = 120_000;

/** What was told of shop, wood and glue, each with how long ago that was, and the moisture of the stock: the bench measures nothing itself. */
export function tellAir({ state }: Bench, now: Moment): Response {
  const told = PLACES.flatMap((place) => {
    const air = state.airs.get(place);
    const values = [...(air?.tempC === undefined ? [] : [sayDegrees(air.tempC, state.settings.temperature)]), ...(air?.humidityPercent === undefined ? [] : [`${sayPercent(air.humidityPercent)} humidity`])];
    return air && values.length > 0 ? [sentence(`the ${place} was at ${sayList(values)}, ${air.by === 'sensor' ? 'by its sensor' : 'as you said'}${since(air.at, now)}`)] : [];
  });
  const stock = state.stockMoisture === null ? [] : [`The stock was at ${sayPercent(state.stockMoisture)} moisture, as you said.`];
  if (told.length + stock.length > 0) return tell({ say: [...told, ...stock].join(' '), screen: { name: 'air' } });
  // What to say stands on that screen already.
  return refuse('Nobody has told me yet. Tell me the degrees of the shop and its humidity.', { screen: { name: 'air' }, note: '' });
}

function since(at: Moment, now: Moment): string {
  const past = between(at, now);
  if (past.by === 'unknown') return ', before the power was off';
  return past.ms < FRESH_MS ? '' : ` ${sayDuration(Math.floor(past.ms / 60_000) * 60_000)} ago`;
}
