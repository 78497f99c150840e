import { arranged, turnsFor, type Arrangement, type Placing } from './assign.ts';
import type { Placed } from './facts.ts';
import { sameTurn, type Turn } from './face.ts';
import { legMap, type LegMap } from './map.ts';
import type { Part, PieceFile } from '../piece/file.ts';

/** Two copies that change places, and what each of them has been cut for. */
export interface ChangingOver {
  readonly file: PieceFile;
  readonly part: Part;
  readonly problem: Placing;
  readonly one: Placed;
  readonly other: Placed;
  /** Copies whose mortises are marked or cut: of them, what keeps those in their faces comes first. */
  readonly marked: ReadonlySet<number>;
}

/**
 * How two copies stand after they have changed places: neither turned end for end; of the turns that are left the ones that keep the most marked mortises
 * where they are, then those that are best by what was told, then those that keep the most mortises in their faces, and turn the least.
 */
export function changedOver(changing: ChangingOver): readonly [Placed, Placed] {
  const { problem, one, other } = changing;
  const ways = turnsOf(problem, one).flatMap((turn) => turnsOf(problem, other).map((second) => [{ ...one, place: other.place, turn }, { ...other, place: one.place, turn: second }] as const));
  const weighed = ways.map((way) => ({ way, worth: worthOf(changing, way) })).sort((a, b) => compare(b.worth, a.worth));
  return weighed[0]?.way ?? [{ ...one, place: other.place }, { ...other, place: one.place }];
}

function turnsOf(problem: Placing, { copy, turn }: Placed): readonly Turn[] {
  return turnsFor(problem, problem.likes[copy - 1] ?? { faces: {} }).filter(({ up }) => up === turn.up);
}

/** All copies as they stand, the two in their new places. */
export function arrangedWith({ now = [], ...problem }: Placing, moved: readonly Placed[]): Arrangement {
  const at = (place: string): Placed | undefined => moved.find((each) => each.place.name === place);
  return arranged(problem, now.map((each) => at(each.place.name) ?? each));
}

type Worth = readonly [marked: number, told: number, kept: number, unturned: number];

function worthOf({ file, part, problem, one, other, marked }: ChangingOver, way: readonly [Placed, Placed]): Worth {
  const kept = ([one, other] as const).map((before, index) => (problem.stand.kind === 'upright' ? keptBy(mapOf(file, part, before), mapOf(file, part, way[index] ?? before)) : 0));
  const sum = (numbers: readonly number[]): number => numbers.reduce((total, each) => total + each, 0);
  return [
    sum(kept.filter((_, index) => marked.has(way[index]?.copy ?? 0))), arrangedWith(problem, way).value, sum(kept),
    way.filter((each, index) => sameTurn(each.turn, [one, other][index]?.turn)).length,
  ];
}

function mapOf(file: PieceFile, part: Part, { place, turn }: Placed): LegMap {
  return legMap(file, part, place.name, turn);
}

/** How many mortises stay in their faces, gauged from the same. */
function keptBy(before: LegMap, after: LegMap): number {
  return before.mortises.filter((mortise) => after.mortises.some(({ joint, face, gaugeFrom }) => joint === mortise.joint && face === mortise.face && gaugeFrom === mortise.gaugeFrom)).length;
}

function compare(one: Worth, other: Worth): number {
  return one.map((worth, index) => worth - (other[index] ?? 0)).find((difference) => difference !== 0) ?? 0;
}
