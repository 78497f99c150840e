import { NANOMETRES_PER_MILLIMETRE, type Length } from '../length/length.ts';
import type { InputFault } from '../reckoning/reckoning.ts';
import { failure, success, type Result } from '../result.ts';

/**
 * Heat that still air and radiation bring to a board in a room, W/(m² K): 8 to 10 in building practice, the low end taken. An estimate.
 */
const FILM = 8;
/** Wood, dry weight: 1.6 kJ/(kg K) at 12 percent moisture and 10 °C (Wood Handbook, chapter 4: about 1.6 to 1.7). Glue is taken as water. */
const WOOD_HEAT = 1_600;
const GLUE_HEAT = 4_186;
/** Across the grain, W/(m K), by gravity and moisture of 12 percent: k = G (B + C M) + A with A 0.01864, B 0.1941, C 0.004064 (Wood Handbook, chapter 4). */
function conductivity(gravity: number): number {
  return gravity * (0.1941 + 0.004064 * 12) + 0.01864;
}

export interface Warming {
  readonly minutes: number;
  /** Over about a tenth the middle lags behind the skin, and the estimate is short: half as long again is added. */
  readonly biot: number;
}

export interface ColdBoard {
  readonly thickness: Length;
  readonly gravity: number;
  readonly fromC: number;
  readonly toC: number;
  readonly roomC: number;
}

/**
 * How long a board takes to warm through in a room, both faces open: all of it at one temperature, t = ρ c d / (2 h) · ln((room − from) / (room − to)). An
 * estimate. Faults: a room that is not warmer than what is wanted; nothing to warm.
 */
export function warmBoard({ thickness, gravity, fromC, toC, roomC }: ColdBoard): Result<Warming, InputFault> {
  if (thickness <= 0) return failure({ key: 'thickness', message: 'A board has some thickness: more than nothing.' });
  const metres = thickness / NANOMETRES_PER_MILLIMETRE / 1000;
  const biot = (FILM * (metres / 2)) / conductivity(gravity);
  const lag = biot > 0.1 ? 1.5 : 1;
  return warmed({ fromC, toC, roomC }, (gravity * 1000 * 1.12 * WOOD_HEAT * metres) / (2 * FILM), lag, biot);
}

/** A bottle or jar of glue, taken as a cylinder of water: t = ρ c D / (4 h) · ln(…). */
export function warmBottle({ diameter, fromC, toC, roomC }: { readonly diameter: Length; readonly fromC: number; readonly toC: number; readonly roomC: number }): Result<Warming, InputFault> {
  if (diameter <= 0) return failure({ key: 'diameter', message: 'A bottle has some width: more than nothing.' });
  const metres = diameter / NANOMETRES_PER_MILLIMETRE / 1000;
  return warmed({ fromC, toC, roomC }, (1000 * GLUE_HEAT * metres) / (4 * FILM), 1.5, (FILM * metres) / 4 / 0.6);
}

function warmed({ fromC, toC, roomC }: { readonly fromC: number; readonly toC: number; readonly roomC: number }, secondsConstant: number, lag: number, biot: number): Result<Warming, InputFault> {
  if (toC <= fromC) return success({ minutes: 0, biot });
  if (roomC <= toC) return failure({ key: 'room', message: 'The room must be warmer than what is wanted of the wood, or it never gets there.' });
  return success({ minutes: Math.ceil((lag * secondsConstant * Math.log((roomC - fromC) / (roomC - toC))) / 60), biot });
}
