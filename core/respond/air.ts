import { assertNever } from '../result.ts';
import type { Bench } from '../bench/bench.ts';
import type { Response } from '../bench/reply.ts';
import type { AirRequest } from '../bench/request.ts';
import { sayDuration } from '../clock/sayDuration.ts';
import type { Moment } from '../clock/moment.ts';
import { sayDegrees, sayReasons, sayRemedy, sayVerdict } from '../glue/telling.ts';
import { LABEL_KEYS, type Label } from '../glue/adhesive.ts';
import type { AirPlace } from '../journal/craft.ts';
import { adhesiveOf, tonightOf } from './evening.ts';
import { clampsForStep, howLongToWarm } from './clampsAsked.ts';
import { refuse, tell, write } from './plain.ts';
import { sayList, sentence } from './saying.ts';
import { sayPercent } from './sayPercent.ts';
import { tellAir } from './whatAir.ts';
import { tellGlueTime } from './glueTime.ts';
import { toSay } from './toSay.ts';
import { isItSettled, restSeen, topInAYear, woodInThisAir } from './woodAsked.ts';
import { howDry, howLongToRest, readyToWork } from './woodReady.ts';

/** What was told of air, wood and label, and what follows from it. */
export function respondToAir(bench: Bench, request: AirRequest, now: Moment): Response {
  switch (request.kind) {
    case 'air': return airTold(bench, request, now);
    case 'stock moisture':
      return request.percent >= 0 && request.percent <= 200
        ? write([{ kind: 'moisture told', percent: request.percent }], { say: `The stock is at ${sayPercent(request.percent)} moisture.`, signal: 'done' })
        : refuse('Moisture goes from zero to two hundred percent.');
    case 'what air': return tellAir(bench, now);
    case 'wood in this air': return woodInThisAir(bench, now);
    case 'is the stock ready': return readyToWork(bench, request.percent, now);
    case 'how dry must it be': return howDry(bench);
    case 'how long to rest': return howLongToRest(bench, now);
    case 'top in a year': return topInAYear(bench, request.part);
    case 'rest seen': return restSeen(bench, request, now);
    case 'is it settled': return isItSettled(bench, request);
    case 'glue tonight': return glueTonight(bench, now);
    case 'glue time': return tellGlueTime(bench.state, request.which, now);
    case 'label': return labelTold(bench, request.label);
    case 'how many clamps': return clampsForStep(bench);
    case 'how long to warm': return howLongToWarm(bench, now);
    default: return assertNever(request);
  }
}

const PLACE_NAMES: Readonly<Record<AirPlace, string>> = { shop: 'The shop', wood: 'The wood', glue: 'The glue', 'house dry': 'The house in its driest month', 'house damp': 'The house in its dampest month' };

/** Written down and read back; of the shop the verdict on gluing follows in the same breath. A sensor is silent. */
function airTold(bench: Bench, told: Extract<AirRequest, { kind: 'air' }>, now: Moment): Response {
  const { place, tempC, humidityPercent, by } = told;
  if (tempC === undefined && humidityPercent === undefined) return refuse(`How warm, and how damp? ${toSay('Tell me its degrees and its humidity.', 'Say, for one: the shop is twelve degrees, sixty percent.')}`);
  if (tempC !== undefined && !(tempC >= -40 && tempC <= 60)) return refuse(`A shop or a house is between minus forty and sixty degrees Celsius, not ${sayDegrees(tempC, 'celsius')}.`);
  if (humidityPercent !== undefined && !(humidityPercent >= 0 && humidityPercent <= 100)) return refuse('Humidity goes from zero to one hundred percent.');
  const entry = { kind: 'air told', place, by, ...(tempC === undefined ? {} : { tempC }), ...(humidityPercent === undefined ? {} : { humidityPercent }) } as const;
  if (by === 'sensor') return write([entry], { say: '' });
  const scale = bench.state.settings.temperature;
  const said = sayList([...(tempC === undefined ? [] : [sayDegrees(tempC, scale)]), ...(humidityPercent === undefined ? [] : [`${sayPercent(humidityPercent)} humidity`])]);
  const airs = new Map([...bench.state.airs, [place, { ...bench.state.airs.get(place), at: now, by, ...(tempC === undefined ? {} : { tempC }), ...(humidityPercent === undefined ? {} : { humidityPercent }) }] as const]);
  const verdict = place === 'house dry' || place === 'house damp' ? undefined : tonightOf({ ...bench.state, airs }, now);
  return write([entry], { say: [`${PLACE_NAMES[place]}: ${said}.`, ...(verdict ? [`${sayVerdict(verdict)}.`] : [])].join(' '), screen: place.startsWith('house') ? { name: 'wood' } : { name: 'air' }, signal: 'done' });
}

/** The verdict with its reasons, what would make it a go, and the times at this temperature. */
function glueTonight(bench: Bench, now: Moment): Response {
  const { state } = bench;
  const found = tonightOf(state, now);
  // What to say stands on that screen already.
  if (!found) return refuse('I do not know how warm the shop is tonight. Tell me its degrees and its humidity.', { screen: { name: 'air' }, note: '' });
  const scale = state.settings.temperature;
  const { label, basis } = adhesiveOf(state);
  const remedy = sayRemedy(found, scale);
  const times = found.verdict === 'do not' ? [] : [`open time ${sayDuration(found.times.openMs)}, clamps ${sayDuration(found.times.clampMs)}, safe to work in ${sayDuration(found.times.workMs)}`];
  const said = [sayVerdict(found), ...sayReasons(found.reasons, scale), ...(remedy === '' ? [] : [remedy]), ...times];
  const own = LABEL_KEYS.some((key) => basis[key] === 'common practice' && label[key] > 0) ? ['Figures that your label did not give are common practice: the label rules.'] : [];
  return tell({ say: [...said.map(sentence), ...own].join(' '), screen: { name: 'air' } });
}

const LABEL_NAMES: Readonly<Record<keyof Label, string>> = {
  openMinutes: 'open time', closedMinutes: 'closed time', clampMinutes: 'clamp time', workHours: 'safe to work', fullCureHours: 'full cure', lowestC: 'lowest temperature',
};

function labelTold(bench: Bench, label: Partial<Label>): Response {
  const scale = bench.state.settings.temperature;
  const said = LABEL_KEYS.flatMap((key) => {
    const value = label[key];
    if (value === undefined) return [];
    return [`${LABEL_NAMES[key]} ${key === 'lowestC' ? sayDegrees(value, scale) : sayDuration(value * (key.endsWith('Hours') ? 3_600_000 : 60_000))}`];
  });
  if (said.length === 0) return refuse('What does the label say? For one: the label says open time eight minutes.');
  if ((label.openMinutes ?? 1) <= 0 || (label.clampMinutes ?? 1) <= 0) return refuse('A time on a label is more than nothing.');
  return write([{ kind: 'label told', label }], { say: `From your label: ${sayList(said)}. Kept with this piece.`, screen: { name: 'air' }, signal: 'done' });
}
