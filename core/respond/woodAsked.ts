import type { Bench } from '../bench/bench.ts';
import type { Response } from '../bench/reply.ts';
import type { AirRequest } from '../bench/request.ts';
import { between } from '../clock/between.ts';
import type { Moment } from '../clock/moment.ts';
import { nanometres } from '../length/length.ts';
import { restOf } from '../journal/craft.ts';
import type { State } from '../journal/state.ts';
import { sizeOf } from '../piece/evaluate.ts';
import type { Part } from '../piece/file.ts';
import { equilibriumMoisture } from '../wood/equilibrium.ts';
import { atRingAngle, coefficientsOf, RING_DEGREES } from '../wood/movement.ts';
import { restVerdict, type RestReading, type RestVerdict } from '../wood/rest.ts';
import { buttonFor, roomAt } from '../wood/room.ts';
import { seasonsOf, type Seasons } from '../wood/seasons.ts';
import { speciesCalled } from '../wood/species.ts';
import { sayPercent } from './sayPercent.ts';
import { craftOf, eveningOf } from './evening.ts';
import { refuse, tell, write } from './plain.ts';
import { sayOwner, sentence, spoken } from './saying.ts';
import { toSay } from './toSay.ts';
import { sizesOf } from './views.ts';

const ASK_SHOP = `I do not know the air of the shop. ${toSay('Tell me its degrees and its humidity.', 'Say, for one: the shop is twelve degrees, sixty percent.')}`;
/** What of the house is asked for, and why. */
export const TELL_HOUSE = toSay('Tell me the degrees and the humidity of its driest month, and then of its dampest.', 'Say, for one: the driest month is twenty degrees, thirty percent; then: the dampest month is twenty two degrees, sixty five percent.');
const ASK_HOUSE = `I do not know the house where it will stand: its air decides how far the wood moves. ${TELL_HOUSE}`;

/** The moisture that wood comes to where its air was told; undefined when it was not, or lies outside the table. */
export function moistureAt(state: State, place: 'house dry' | 'house damp'): number | undefined {
  const air = state.airs.get(place);
  if (air?.tempC === undefined || air.humidityPercent === undefined) return undefined;
  const found = equilibriumMoisture({ tempC: air.tempC, humidityPercent: air.humidityPercent });
  return found.ok ? found.value : undefined;
}

/** The moisture that wood comes to in the shop as it is now. */
export function shopMoisture(state: State, now: Moment): number | undefined {
  const evening = state.airs.get('shop')?.humidityPercent === undefined ? undefined : eveningOf(state, now);
  const found = evening && equilibriumMoisture(evening.air);
  return found?.ok ? found.value : undefined;
}

export function woodInThisAir({ state }: Bench, now: Moment): Response {
  const moisture = shopMoisture(state, now);
  return moisture === undefined ? refuse(ASK_SHOP, { screen: { name: 'air' } })
    : tell({ say: `Left in this air, wood comes to ${sayPercent(moisture)} moisture, give or take a point.`, screen: { name: 'wood' } });
}

/** The part that moves most: the one asked for, else the widest panel, else the widest part. */
export function movingPart(state: State, asked?: string): Part | undefined {
  const parts = state.piece?.file.parts ?? [];
  const width = (part: Part): number => widthOf(state, part) ?? 0;
  const panels = parts.filter(({ made }) => made.kind === 'panel');
  return parts.find(({ id }) => id === asked) ?? [...(panels.length > 0 ? panels : parts)].sort((a, b) => width(b) - width(a))[0];
}

function widthOf(state: State, part: Part) {
  const sizes = sizesOf(state);
  return sizes ? sizeOf(sizes, `${part.id}.width`)?.length : undefined;
}

/** What a part does between the driest and the dampest month, taken as flat-sawn, which is the most that it may move. */
export function yearOfPart(state: State, part: Part): Seasons | 'house' | 'wood' {
  const [driest, dampest] = [moistureAt(state, 'house dry'), moistureAt(state, 'house damp')];
  if (driest === undefined || dampest === undefined) return 'house';
  const species = speciesCalled(part.species);
  const across = species && coefficientsOf(species);
  const width = widthOf(state, part);
  if (!across || width === undefined) return 'wood';
  const found = seasonsOf(width, atRingAngle(across, RING_DEGREES['flat-sawn']), { now: state.stockMoisture ?? (driest + dampest) / 2, driest: Math.min(driest, dampest), dampest: Math.max(driest, dampest) });
  return found.ok ? found.value : 'wood';
}

export function topInAYear({ state }: Bench, asked?: string): Response {
  const part = movingPart(state, asked);
  if (!part) return refuse('No piece is on the bench. Load one first.', { screen: { name: 'files' } });
  const year = yearOfPart(state, part);
  if (year === 'house') return refuse(ASK_HOUSE, { screen: { name: 'wood' } });
  if (year === 'wood') return refuse(`The table of woods has no ${part.species}.`, { screen: { name: 'wood' } });
  const button = buttonFor(roomAt(year, nanometres(Math.round(year.widest / 2)), year.widest));
  return tell({
    say: `${sentence(`The ${part.name} gets ${spoken(state, year.shrinks)} narrower in the driest month, and ${spoken(state, year.swells)} wider in the dampest`)} Held in the middle, half of it goes each way: leave buttons a gap of ${spoken(state, button.gapNow)}. ${state.stockMoisture === null ? 'The moisture it is made at was taken as the middle of the year. ' : ''}Flat-sawn, the most that it may move.`,
    screen: { name: 'wood', part: part.id }, lengths: [year.travel, year.shrinks, year.swells, button.gapNow],
  });
}

/** Readings of a part (and copy) that rests, by the hours between them; those across a time nobody knows of begin anew. */
export function restReadings(state: State, part: string, copy: number | undefined): readonly RestReading[] {
  const seen = craftOf(state).rests.filter((one) => one.part === part && (one.copy ?? 1) === (copy ?? 1));
  let hours = 0;
  return seen.flatMap((one, index): RestReading[] => {
    const before = seen[index - 1];
    const passed = before ? between(before.at, one.at) : undefined;
    if (passed && passed.by !== 'unknown') hours += passed.ms / 3_600_000;
    return [{ hours, ...(one.bow === undefined ? {} : { bow: one.bow }), ...(one.wind === undefined ? {} : { wind: one.wind }), ...(one.grams === undefined ? {} : { grams: one.grams }) }];
  });
}

/** Copies rest each in its own way; without a number nobody knows which was measured. */
function isOneOfSeveral(state: State, part: string, copy: number | undefined): boolean {
  return copy === undefined && (state.piece?.file.parts.find(({ id }) => id === part)?.count ?? 1) > 1;
}

const LOOK_AGAIN_MS = 24 * 3_600_000;

/** A reading of a part that rests, and a clock to look again in a day while it is not settled. */
export function restSeen({ state }: Bench, told: Extract<AirRequest, { kind: 'rest seen' }>, now: Moment): Response {
  const seen = restOf(told);
  if (isOneOfSeveral(state, seen.part, seen.copy)) return refuse(`Which one? ${toSay('Tell me its number with it.', 'Say its number: the bow of leg two is one sixteenth.')}`);
  if (seen.bow === undefined && seen.wind === undefined && seen.grams === undefined) return refuse('What was seen of it: bow, wind or weight?');
  const piece = state.pieceName ?? '';
  const readings = restReadings({ ...state, crafts: new Map([...state.crafts, [piece, { ...craftOf(state), rests: [...craftOf(state).rests, { ...seen, at: now }] }]]) }, seen.part, seen.copy);
  const verdict = restVerdict(readings);
  const name = `look at ${sayOwner(state, `${seen.part}.length`, seen.copy)}`;
  const again = verdict.verdict !== 'settled' && !state.timers.some((timer) => timer.name === name);
  return write([{ kind: 'rest seen', ...seen }, ...(again ? [{ kind: 'timer started', timer: { kind: 'rest', name, durationMs: LOOK_AGAIN_MS, basis: 'common practice' } } as const] : [])],
    { say: `Written down. ${sayRest(verdict)}${again ? ' I will call you to look again in a day.' : ''}`, signal: 'done', note: sayRest(verdict) });
}

export function isItSettled({ state }: Bench, { part, copy }: Extract<AirRequest, { kind: 'is it settled' }>): Response {
  if (isOneOfSeveral(state, part, copy)) return refuse('Which one? Say its number.');
  return tell({ say: sayRest(restVerdict(restReadings(state, part, copy))) });
}

export function sayRest(verdict: RestVerdict): string {
  switch (verdict.verdict) {
    case 'settled': return 'Settled: nothing that was measured changes any more.';
    case 'still moving': return `Still moving: ${verdict.changes.filter(({ moving }) => moving).map(({ what }) => what).join(' and ')}. Leave it stickered, both faces open.`;
    case 'too early': return verdict.because === 'no reading' ? 'Nothing was measured of it yet: bow, wind or weight.'
      : verdict.because === 'not the same thing twice' ? 'Measure the same thing twice, a day apart.' : 'Too early to tell: measure again a day after the first time.';
  }
}
