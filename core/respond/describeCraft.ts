import { assertNever } from '../result.ts';
import { sayDegrees } from '../glue/telling.ts';
import type { CraftEntry } from '../journal/craft.ts';
import type { State } from '../journal/state.ts';
import { sayPercent } from './sayPercent.ts';
import { sayOwner, spoken } from './saying.ts';
import { sayReading, saySide } from './truingWords.ts';

/** One entry of wood, air or glue in words. */
export function describeCraft(state: State, entry: Exclude<CraftEntry, { kind: 'gluing move done' }>): string {
  switch (entry.kind) {
    case 'air told':
      return [entry.place, ...(entry.tempC === undefined ? [] : [sayDegrees(entry.tempC, state.settings.temperature)]), ...(entry.humidityPercent === undefined ? [] : [`${sayPercent(entry.humidityPercent)} humidity`])].join(', ');
    case 'moisture told': return `stock at ${sayPercent(entry.percent)} moisture`;
    case 'label told': return 'figures of the label';
    case 'rest seen': {
      const { part, copy, bow, wind, grams } = entry;
      return [`${sayOwner(state, `${part}.length`, copy)} at rest`, ...(bow === undefined ? [] : [`bow ${spoken(state, bow)}`]), ...(wind === undefined ? [] : [`wind ${spoken(state, wind)}`]), ...(grams === undefined ? [] : [`${grams} grams`])].join(', ');
    }
    case 'surface read': return sayReading(state, entry.of, entry.reading);
    case 'surface planed': return `${saySide(state, entry.of)}, planed`;
    case 'gluing begun': return entry.mode === 'glue' ? 'a glue-up, begun' : 'a rehearsal, begun';
    case 'gluing ended': return entry.finished ? 'a glue-up, ended' : 'a glue-up, left';
    case 'gluing divided': return `a glue-up divided in ${entry.stages.length}`;
    default: return assertNever(entry);
  }
}
