import type { Air } from '../wood/temperature.ts';
import type { AdhesiveInUse } from './adhesive.ts';
import { LABEL_C, timesAt, type TimesNow } from './stretch.ts';

/** What is known of the evening. The wood and the glue are as cold as the shop unless they were brought in. */
export interface Evening {
  readonly air: Air;
  readonly woodC?: number;
  readonly glueC?: number;
  readonly woodMoisturePercent?: number;
}

/** Why not, or why with care; each is told by the screen and the voice in its own words. */
export type Reason =
  | { readonly kind: 'too cold'; readonly what: 'wood' | 'glue' | 'air'; readonly isC: number; readonly lowestC: number }
  | { readonly kind: 'stretched'; readonly times: number; readonly by: 'reacting rule' | 'cold shop' }
  | { readonly kind: 'near the limit'; readonly lowestC: number }
  | { readonly kind: 'warm'; readonly openShare: number }
  | { readonly kind: 'damp air'; readonly humidityPercent: number }
  | { readonly kind: 'dry air'; readonly humidityPercent: number }
  | { readonly kind: 'wood too dry' | 'wood too wet'; readonly percent: number };

export interface Tonight {
  readonly verdict: 'go' | 'with care' | 'do not';
  /** The weightiest first. */
  readonly reasons: readonly Reason[];
  /** What would make it a go: bring these to this temperature, and keep the shop there through the clamp time. */
  readonly warm?: { readonly what: readonly ('wood' | 'glue' | 'air')[]; readonly toC: number };
  /** At the coldest of wood, glue and air; of a go or with care. */
  readonly times: TimesNow;
}

/** A shop cools down while one works: aim so much over the lowest temperature. Common practice, no source. */
const IN_HAND_C = 2;
const NEAR_C = 2;
/** Above this the water leaves slowly, below the other it leaves at once. Common practice, no source. */
const DAMP_PERCENT = 70;
const DRY_PERCENT = 30;
/** Wood that is glued is at 6 to 12 percent; polyurethane asks for 8 to 16 (label range, from memory). */
const MOIST: Readonly<Record<'usual' | 'reacts with water', readonly [number, number]>> = { usual: [5, 14], 'reacts with water': [8, 16] };

/** Whether this glue will work this evening. */
export function tonight({ glue, label }: AdhesiveInUse, evening: Evening): Tonight {
  const parts = { wood: evening.woodC ?? evening.air.tempC, glue: evening.glueC ?? evening.air.tempC, air: evening.air.tempC };
  const checked = glue.sets === 'by cooling' ? { wood: parts.wood, air: parts.air } : parts;
  const cold = (Object.entries(checked) as ['wood' | 'glue' | 'air', number][]).filter(([, isC]) => isC < label.lowestC);
  const coldestC = Math.min(...Object.values(checked));
  const times = timesAt(label, glue.sets, Math.max(coldestC, label.lowestC));
  const warmest = timesAt(label, glue.sets, Math.max(...Object.values(checked)));
  const tooCold = cold.map(([what, isC]): Reason => ({ kind: 'too cold', what, isC, lowestC: label.lowestC }));
  const care = careOf(glue.sets, label.lowestC, coldestC, times, warmest, evening.air.humidityPercent);
  const moisture = moistureReason(glue.name, evening.woodMoisturePercent);
  const verdict = cold.length > 0 || moisture?.kind === 'wood too wet' ? 'do not' : care.length > 0 || moisture ? 'with care' : 'go';
  return {
    verdict, reasons: [...tooCold, ...(moisture ? [moisture] : []), ...(cold.length > 0 ? [] : care)],
    ...(cold.length > 0 ? { warm: { what: cold.map(([what]) => what), toC: label.lowestC + IN_HAND_C } } : {}),
    times: { ...times, openMs: warmest.openMs, assemblyMs: warmest.assemblyMs, openShare: warmest.openShare },
  };
}

function careOf(sets: AdhesiveInUse['glue']['sets'], lowestC: number, coldestC: number, times: TimesNow, warmest: TimesNow, humidityPercent: number): readonly Reason[] {
  const reasons: Reason[] = [];
  if (times.stretch > 1.1) reasons.push({ kind: 'stretched', times: times.stretch, by: sets === 'by reacting' ? 'reacting rule' : 'cold shop' });
  if (coldestC < lowestC + NEAR_C && lowestC < LABEL_C) reasons.push({ kind: 'near the limit', lowestC });
  if (warmest.openShare < 0.9) reasons.push({ kind: 'warm', openShare: warmest.openShare });
  if (sets !== 'by reacting' && humidityPercent > DAMP_PERCENT) reasons.push({ kind: 'damp air', humidityPercent });
  if (sets !== 'by reacting' && humidityPercent < DRY_PERCENT) reasons.push({ kind: 'dry air', humidityPercent });
  return reasons;
}

function moistureReason(name: string, percent: number | undefined): Reason | undefined {
  if (percent === undefined) return undefined;
  const [least, most] = MOIST[name === 'polyurethane' ? 'reacts with water' : 'usual'];
  return percent > most ? { kind: 'wood too wet', percent } : percent < least ? { kind: 'wood too dry', percent } : undefined;
}
