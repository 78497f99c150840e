import * as v from 'valibot';
import { between } from '../../core/clock/between.ts';
import type { Moment } from '../../core/clock/moment.ts';
import type { AirTold } from '../../core/journal/craft.ts';
import type { BenchKeeper } from './bench.ts';

const LOOK_EVERY_MS = 5 * 60_000;
/** What a sensor said longer ago is no reading of this evening's air. */
const OLDEST_MS = 15 * 60_000;
/** What the maker said holds for so long against a sensor, and a reading that is the same is written down again after it. */
const HOLDS_MS = 60 * 60_000;
/** Smaller changes decide nothing. */
const WORTH_C = 0.5;
const WORTH_PERCENT = 3;

const AirAnswer = v.object({
  nowMs: v.number(),
  sensors: v.array(v.object({ sensor: v.string(), tempC: v.optional(v.number()), humidityPercent: v.optional(v.number()), atMs: v.number(), fault: v.optional(v.string()) })),
});

interface Air {
  readonly tempC?: number;
  readonly humidityPercent?: number;
}

export interface AirWatchOptions {
  readonly keeper: Pick<BenchKeeper, 'bench' | 'note'>;
  readonly now: () => Moment;
  readonly notice: (sentence: string) => void;
  /** Asks the local server; rejects when it does not answer. */
  readonly ask?: () => Promise<unknown>;
}

/** Looks at the shop's sensors, where there are any, and writes down silently what is new. */
export class AirWatch {
  readonly #options: AirWatchOptions;

  constructor(options: AirWatchOptions) {
    this.#options = options;
  }

  /** Runs for as long as the page does. */
  start(): void {
    void this.look();
    setInterval(() => void this.look(), LOOK_EVERY_MS);
  }

  async look(): Promise<void> {
    const { keeper, now, notice, ask = askServer } = this.#options;
    const read = v.safeParse(AirAnswer, await ask().catch(() => undefined));
    if (!read.success) return;
    const { nowMs, sensors } = read.output;
    for (const { fault } of sensors) if (fault !== undefined) notice(`The shop’s sensor ${fault}`);
    const fresh = sensors.filter(({ fault, atMs }) => fault === undefined && nowMs - atMs <= OLDEST_MS);
    const tempC = fresh.find((sensor) => sensor.tempC !== undefined)?.tempC;
    const humidityPercent = fresh.find((sensor) => sensor.humidityPercent !== undefined)?.humidityPercent;
    const air: Air = { ...(tempC === undefined ? {} : { tempC }), ...(humidityPercent === undefined ? {} : { humidityPercent }) };
    if (worthWriting(air, keeper.bench.state.airs.get('shop'), now())) await keeper.note([{ kind: 'air told', place: 'shop', by: 'sensor', ...air }]);
  }
}

function worthWriting(air: Air, before: AirTold | undefined, now: Moment): boolean {
  if (air.tempC === undefined && air.humidityPercent === undefined) return false;
  if (before === undefined) return true;
  const age = between(before.at, now);
  if (age.by === 'unknown' || age.ms > HOLDS_MS) return true;
  return before.by === 'sensor' && (changed(air.tempC, before.tempC, WORTH_C) || changed(air.humidityPercent, before.humidityPercent, WORTH_PERCENT));
}

function changed(value: number | undefined, before: number | undefined, worth: number): boolean {
  return value !== undefined && (before === undefined || Math.abs(value - before) >= worth);
}

async function askServer(): Promise<unknown> {
  const response = await fetch('/api/air', { cache: 'no-store', signal: AbortSignal.timeout(5_000) });
  return response.json();
}
