import type { Bench } from '../bench/bench.ts';
import type { Response } from '../bench/reply.ts';
import type { Moment } from '../clock/moment.ts';
import type { State } from '../journal/state.ts';
import { sayNumber } from '../length/sayNumber.ts';
import { CLOSE_POINTS, FURNITURE_PERCENT, readiness } from '../wood/ready.ts';
import { refuse, tell } from './plain.ts';
import { sayPercent } from './sayPercent.ts';
import { sayList, sentence } from './saying.ts';
import { sayTimeLeft } from './timeLeft.ts';
import { toSay } from './toSay.ts';
import { stepsOf } from './views.ts';
import { moistureAt, shopMoisture, TELL_HOUSE } from './woodAsked.ts';

const { from: LEAST, to: MOST } = FURNITURE_PERCENT;
const USUAL = `${sayNumber(LEAST)} to ${sayPercent(MOST)}`;
const FOR_SURE = `To tell for the house it is for I need its air: wood dries or swells until it agrees with that. ${TELL_HOUSE}`;

/** What wood comes to in the house over the year; undefined until its air was told. */
function houseMoisture(state: State): number | undefined {
  const [dry, damp] = [moistureAt(state, 'house dry'), moistureAt(state, 'house damp')];
  return dry === undefined || damp === undefined ? undefined : (dry + damp) / 2;
}

/** Whether the wood is dry enough, at what was told of it or at what is asked about: by the house, else by what is usual. */
export function readyToWork({ state }: Bench, asked: number | undefined, now: Moment): Response {
  const [stock, house] = [asked ?? state.stockMoisture, houseMoisture(state)];
  if (stock === null) return refuse(`I do not know the moisture of the stock: wood that is too wet shrinks and warps once it is made up. ${toSay('Read it with a meter, and tell me the percent that it is at.', 'Read it with a meter, and say, for one: the stock is at nine percent.')}${house === undefined ? ` As a rule it should be at ${USUAL}.` : ''}`, { screen: { name: 'wood' } });
  if (house === undefined) return tell({ say: `${byTheRule(stock)} ${FOR_SURE}`, screen: { name: 'wood' } });
  const found = readiness(stock, house, shopMoisture(state, now) ?? stock);
  const because = `it is at ${sayPercent(stock)}, and in the house it comes to ${sayPercent(house)} over the year`;
  const say = found.verdict === 'ready' ? `The stock is ready: ${because}` : found.verdict === 'too wet' ? `Not ready, too wet: ${because}. Sticker it indoors` : `Drier than the house: ${because}. It will swell`;
  return tell({ say: `${sentence(say)}${found.movesInShop ? ' The shop pulls it another way: keep parts wrapped between evenings.' : ''}`, screen: { name: 'wood' } });
}

function byTheRule(stock: number): string {
  const at = `${sayPercent(stock)}, and furniture is made of wood at ${USUAL} as a rule`;
  if (stock > MOST + CLOSE_POINTS) return `Too wet by the rule: ${at}. Sticker it indoors.`;
  if (stock < LEAST - CLOSE_POINTS) return `Very dry by the rule: ${at}. It will swell.`;
  return `${stock >= LEAST && stock <= MOST ? 'Dry enough' : 'Near enough'} by the rule: ${at}.`;
}

/** What the moisture should be: by the house, else by what is usual. */
export function howDry({ state }: Bench): Response {
  const house = houseMoisture(state);
  const screen = { name: 'wood' } as const;
  if (house === undefined) return tell({ say: `As a rule ${USUAL} for furniture. ${FOR_SURE}`, screen });
  return tell({ say: `Within ${sayNumber(CLOSE_POINTS)} points of ${sayPercent(house)}: that is what wood comes to in the house over the year.`, screen });
}

/** How long sawn parts rest, and why; while they do, what is left of it. */
export function howLongToRest({ state }: Bench, now: Moment): Response {
  const resting = new Set(stepsOf(state).flatMap(({ operation, timer }) => (operation === 'rest' && timer ? [timer.name] : [])));
  const running = state.timers.filter(({ name }) => resting.has(name));
  const timer = stepsOf(state).find(({ operation }) => operation === 'rest')?.timer;
  const left = running.length === 0 ? sentence(`${timer?.basis ?? 'until it is still'}, once it is sawn`) : sentence(sayList(running.map((one) => sayTimeLeft(one, now))));
  const say = `${left} Fresh sawn wood goes on moving: go by the wood more than the clock. It has rested when bow, cup and wind no longer change from one day to the next. Boards from the yard wait until their moisture agrees with the house.`;
  return tell({ say, note: say, screen: { name: 'wood' } });
}
