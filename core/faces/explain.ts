import { sayNumber } from '../length/sayNumber.ts';
import { FACES, sameTurn, type Turn } from './face.ts';
import type { Arrangement } from './assign.ts';
import type { Fact, Placed } from './facts.ts';
import { LEVEL_WORDS, type Level } from './levels.ts';

/** How the copies are called: 'leg', 'legs'. */
export interface PartNames {
  readonly one: string;
  readonly many: string;
}

const MOST_REASONS = 2;

/** 'leg one', 'legs one and three', 'legs one, two and four'. */
export function nameCopies({ one, many }: PartNames, copies: readonly number[]): string {
  return `${copies.length === 1 ? one : many} ${listed(copies.map((copy) => sayNumber(copy)))}`;
}

export function listed(items: readonly string[]): string {
  return items.length < 2 ? items.join('') : `${items.slice(0, -1).join(', ')} and ${items.at(-1) ?? ''}`;
}

/** What another placing changes: 'legs one and three changed over', 'leg two turned end for end'. */
export function sayChange(names: PartNames, from: Arrangement, to: Arrangement): string {
  const before = (copy: number): Placed | undefined => from.legs.find((leg) => leg.copy === copy);
  const byCopy = [...to.legs].sort((one, other) => one.copy - other.copy);
  const moved = byCopy.filter(({ copy, place }) => before(copy)?.place.name !== place.name);
  const turned = byCopy.filter((leg) => !moved.includes(leg) && !sameTurn(before(leg.copy)?.turn, leg.turn));
  const changedOver = moved.length === 2 ? [`${nameCopies(names, moved.map(({ copy }) => copy))} changed over`] : moved.map(({ copy, place }) => `${nameCopies(names, [copy])} ${place.name}`);
  return listed([...changedOver, ...sayTurned(names, turned, before)]);
}

function sayTurned(names: PartNames, turned: readonly Placed[], before: (copy: number) => Placed | undefined): readonly string[] {
  const groups = new Map<string, number[]>();
  for (const { copy, turn } of turned) {
    const how = turnBetween(before(copy)?.turn ?? turn, turn);
    groups.set(how, [...(groups.get(how) ?? []), copy]);
  }
  return [...groups].map(([how, copies]) => `${nameCopies(names, copies)} turned ${how}`);
}

function turnBetween(from: Turn, to: Turn): string {
  const steps = (FACES.indexOf(to.front) - FACES.indexOf(from.front) + FACES.length) % FACES.length;
  if (from.up !== to.up) return 'end for end';
  return steps === 2 ? 'half round' : 'a quarter round';
}

/** The first of what counts in which the other placing is worse, and what it loses there, in words. */
export function sayLoss(names: PartNames, order: readonly Level[], best: Arrangement, other: Arrangement): string {
  const level = order.find((one) => best.score[one] !== other.score[one]);
  if (level === undefined) return 'it is as good';
  const lost = lostFacts(best, other, level);
  const told = [...new Set(lost.map((fact) => sayLost(names, fact, lost)).filter((text) => text !== ''))];
  return told.length === 0 ? `it is worse at this: ${LEVEL_WORDS[level]}` : listed(told.slice(0, MOST_REASONS));
}

/** Good that the other lacks, and bad that only the other has. */
function lostFacts(best: Arrangement, other: Arrangement, level: Level): readonly Fact[] {
  const key = ({ what, copies, face, side }: Fact): string => [what, copies.join(' '), face, side].join('/');
  const has = ({ facts }: Arrangement, fact: Fact): boolean => facts.some((one) => key(one) === key(fact));
  return [
    ...best.facts.filter((fact) => fact.level === level && fact.worth > 0 && !has(other, fact)),
    ...other.facts.filter((fact) => fact.level === level && fact.worth < 0 && !has(best, fact)),
  ];
}

function sayLost(names: PartNames, fact: Fact, all: readonly Fact[]): string {
  const face = `face ${fact.face ?? ''} of ${nameCopies(names, fact.copies)}`;
  switch (fact.what) {
    case 'shows though hidden': return `it shows ${face}, which is to be hidden`;
    // Of a face that does not show at all, that is said once.
    case 'best to the front': return all.some(({ what, copies, face: same }) => what === 'best shows' && copies[0] === fact.copies[0] && same === fact.face) ? '' : `${face}, its best, does not come to the front`;
    case 'best shows': return `it hides ${face}, its best`;
    case 'shown': return `it hides ${face}`;
    case 'glue lines to the front': return `it turns the glue lines of ${face} to the front`;
    case 'match': return `the ${fact.side ?? ''} faces of ${nameCopies(names, fact.copies)} do not match`;
    case 'arch up': return `the arches of ${nameCopies(names, fact.copies)} point down`;
    case 'face mark outside': return `${face}, which is marked, comes inside`;
  }
}

/** 'leg three goes back left, face A to the front', and which end is up where that is not the numbered one. */
export function sayPlaced(names: PartNames, { copy, place, turn }: Placed, kind: 'upright' | 'lying'): string {
  return `${nameCopies(names, [copy])} ${place.name}, face ${turn.front} ${kind === 'upright' ? 'to the front' : 'outside'}${sayEnd(turn, kind)}`;
}

/** Only what is out of the ordinary is said. */
export function sayEnd({ up }: Turn, kind: 'upright' | 'lying'): string {
  if (up === 'numbered') return '';
  return kind === 'upright' ? ', numbered end down' : ', numbered end to the right';
}
