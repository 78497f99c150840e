import { between } from '../clock/between.ts';
import type { Moment } from '../clock/moment.ts';
import { adhesiveInUse, type AdhesiveInUse } from '../glue/adhesive.ts';
import { tonight, type Evening, type Tonight } from '../glue/tonight.ts';
import { craftCalled, type AirPlace, type Craft } from '../journal/craft.ts';
import type { State } from '../journal/state.ts';

/** After so long a shop may be quite another place, and is asked about anew. */
const AIR_HOLDS_MS = 6 * 60 * 60 * 1000;

/** What belongs to the piece on the bench beside its steps. */
export function craftOf(state: State): Craft {
  return craftCalled(state, state.pieceName ?? '');
}

/** The adhesive of the piece with what the maker's label says; yellow glue without a piece. */
export function adhesiveOf(state: State): AdhesiveInUse {
  return adhesiveInUse(state.piece?.file.adhesive ?? { kind: 'yellow glue' }, craftOf(state).label);
}

/** What is known of this evening: absent when the shop's temperature was not told within six hours, as far as the clocks can vouch. */
export function eveningOf(state: State, now: Moment): Evening | undefined {
  const shop = fresh(state, 'shop', now);
  if (shop?.tempC === undefined) return undefined;
  const [wood, glue] = [fresh(state, 'wood', now)?.tempC, fresh(state, 'glue', now)?.tempC];
  return {
    air: { tempC: shop.tempC, humidityPercent: shop.humidityPercent ?? USUAL_HUMIDITY },
    ...(wood === undefined ? {} : { woodC: wood }), ...(glue === undefined ? {} : { glueC: glue }),
    ...(state.stockMoisture === null ? {} : { woodMoisturePercent: state.stockMoisture }),
  };
}

/** Taken when only the temperature was told: neither damp nor dry. */
const USUAL_HUMIDITY = 50;

function fresh(state: State, place: AirPlace, now: Moment) {
  const told = state.airs.get(place);
  if (!told) return undefined;
  const since = between(told.at, now);
  return since.by !== 'unknown' && since.ms <= AIR_HOLDS_MS ? told : undefined;
}

/** The verdict on this evening; undefined when the shop was not told of. */
export function tonightOf(state: State, now: Moment): Tonight | undefined {
  const evening = eveningOf(state, now);
  return evening && tonight(adhesiveOf(state), evening);
}
