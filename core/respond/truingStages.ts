import type { Length } from '../length/length.ts';
import type { SideAsRead, SideToTrue } from '../true/asRead.ts';
import type { PlaningStage } from '../true/planing.ts';
import { isEdge, type TruedFace } from '../true/readings.ts';
import { PLACES, type Place } from '../true/surface.ts';
import { sentence } from './saying.ts';
import { spotWords, type Telling } from './truingWords.ts';

/** What to plane first, then next. */
export function stageWords(side: SideToTrue, found: SideAsRead, telling: Telling): readonly string[] {
  const { stages } = found.board.plan;
  return stages.map((stage, index) => {
    const count = telling.count(stage.shavings, 'shaving', 'shavings');
    return sentence(`${index === 0 && stages.length > 1 ? 'first ' : index === 0 ? '' : 'then '}${count} ${placesWords(side, stage, found, telling)}`);
  });
}

interface Run { readonly from: Length; readonly to: Length; readonly rows: readonly Place[]; readonly places: number }

/** So many stretches are kept in mind. */
const MOST_RUNS = 3;

/** Neighbouring places that are alike run together, and, of many, those that are the most alike: the drawing is exact, the words are what one can keep. */
function placesWords(side: SideToTrue, { places }: PlaningStage, { surface }: SideAsRead, telling: Telling): string {
  const stations = [...new Set(surface.points.map(({ fromEnd }) => fromEnd))];
  const rowsAt = (at: Length): readonly Place[] => PLACES.filter((row) => places.some(({ place, from, to }) => place === row && from <= at && at <= to));
  const alike = stations.map((at): Run => ({ from: at, to: at, rows: rowsAt(at), places: 1 })).reduce<readonly Run[]>((done, run) => {
    const before = done.at(-1);
    return before && excess(before, run) === 0 ? [...done.slice(0, -1), joined(before, run)] : [...done, run];
  }, []);
  const runs = fewer(alike);
  return runs.filter(({ rows }) => rows.length > 0).map(({ from, to, rows }) => {
    const whole = from === stations[0] && to === stations.at(-1);
    const stretch = whole ? (rows.length === PLACES.length ? 'all over' : 'from end to end') : from === to ? spotWords(side, from, telling) : `from ${endWords(side, from, telling)} to ${endWords(side, to, telling)}`;
    return rows.length === PLACES.length ? stretch : `${stretch}, ${rowWords(side.face, new Set(rows))}`;
  }).join('; and ');
}

/** Joins the neighbours that are the most alike, until there are few enough to be kept in mind. */
function fewer(runs: readonly Run[]): readonly Run[] {
  if (runs.filter(({ rows }) => rows.length > 0).length <= MOST_RUNS) return runs;
  const costs = runs.slice(1).map((run, index) => excess(runs[index] ?? run, run));
  const least = Math.min(...costs);
  if (!Number.isFinite(least)) return runs;
  const at = costs.indexOf(least);
  const [one, other] = [runs[at], runs[at + 1]];
  return one && other ? fewer([...runs.slice(0, at), joined(one, other), ...runs.slice(at + 2)]) : runs;
}

/** How many places more than want planing are named when two neighbours are told as one; what wants none is never joined. */
function excess(one: Run, other: Run): number {
  if (one.rows.length === 0 || other.rows.length === 0) return one.rows.length + other.rows.length === 0 ? 0 : Infinity;
  const { rows } = joined(one, other);
  return one.places * (rows.length - one.rows.length) + other.places * (rows.length - other.rows.length);
}

function joined(one: Run, other: Run): Run {
  return { from: one.from, to: other.to, rows: PLACES.filter((row) => one.rows.includes(row) || other.rows.includes(row)), places: one.places + other.places };
}

function rowWords(face: TruedFace, rows: ReadonlySet<Place>): string {
  const [left, right] = isEdge(face) ? ['the arris at the face', 'the far arris'] : ['the left side', 'the right side'];
  if (rows.has('left') && rows.has('right')) return isEdge(face) ? 'both arrises' : 'both sides';
  return rows.has('left') ? left : rows.has('right') ? right : 'the middle';
}

function endWords(side: SideToTrue, at: Length, telling: Telling): string {
  return spotWords(side, at, telling).replace(/^(?:near|in|at) /, '');
}
