import { USUAL_UPKEEP, type UpkeepRule } from '../edge/upkeep.ts';
import type { State } from '../journal/state.ts';

/** When an edge wants what: the strop by the maker's own setting, the rest by common practice. Used to say it and to draw it. */
export function upkeepOf({ settings }: Pick<State, 'settings'>): UpkeepRule {
  return { ...USUAL_UPKEEP, stropEveryMinutes: settings.breakSeconds / 60 };
}
