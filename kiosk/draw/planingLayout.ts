import type { Length } from '../../core/length/length.ts';
import type { Surface } from '../../core/true/surface.ts';
import type { Box, Point } from './partLayout.ts';

/** One side of a board as it is to be planed: what comes off where. */
export interface PlaningDrawing {
  readonly surface: Surface;
  /** Of the surface's points, in their order: what is to come off, and in how many shavings. */
  readonly depths: readonly Length[];
  readonly shavings: readonly number[];
  /** A contour is drawn at each of these depths, the deepest first: where one stage of the planing ends and the next begins. */
  readonly levels: readonly Length[];
}

/** That side laid out: the marked end to the left, the left edge above. Across it is drawn wider than it is. */
export interface PlaningLayout {
  readonly board: Box;
  /** Of each level, the outlines of what stands over it, and the contour itself. */
  readonly bands: readonly { readonly area: string; readonly contour: string }[];
  readonly counts: readonly (Point & { readonly count: number; readonly highest: boolean })[];
  readonly stations: readonly { readonly at: Length; readonly x: number }[];
  /** Height of the counts' figures. */
  readonly letter: number;
}

interface Spot extends Point { readonly depth: number }

const FOOT = 30;
const LARGEST = 40;
const SMALLEST = 12;
/** How much of the height the rows of figures keep from the edges. */
const IN = 0.17;

/** Lays the side out within `width` × `height` drawing units. */
export function layPlaning({ surface, depths, shavings, levels }: PlaningDrawing, width: number, height: number): PlaningLayout {
  const board: Box = { x: 2, y: 2, width: width - 4, height: height - FOOT - 4 };
  const along = (at: number): number => board.x + (board.width * at) / surface.length;
  const columns = columnsOf(surface, depths, board, along);
  const patches = patchesOf(columns);
  const stations = [...new Set(surface.points.map(({ fromEnd }) => fromEnd))].map((at) => ({ at, x: along(at) }));
  const most = Math.max(0, ...shavings);
  const letter = letterFor(stations.map(({ x }) => x), String(most).length, board);
  return {
    board, stations, letter, bands: levels.map((level) => bandOver(patches, level)),
    counts: surface.points.map((point, index) => {
      const row = point.fromLeft / surface.width;
      return { x: inside(along(point.fromEnd), halfOf(String(shavings[index] ?? 0).length, letter), board), y: board.y + board.height * (IN + (1 - 2 * IN) * row), count: shavings[index] ?? 0, highest: most > 0 && shavings[index] === most };
    }),
  };
}

/** Half the width of so many figures, and a little room. */
function halfOf(figures: number, letter: number): number {
  return (figures * 0.32 + 0.15) * letter;
}

function inside(x: number, half: number, { x: left, width }: Box): number {
  return Math.min(Math.max(x, left + half), left + width - half);
}

/** As large as figures of that many digits may be without running into their neighbours. */
function letterFor(places: readonly number[], figures: number, board: Box): number {
  for (let letter = LARGEST; letter > SMALLEST; letter -= 1) {
    const half = halfOf(figures, letter);
    if (places.every((x, index) => index === 0 || inside(x, half, board) - inside(places[index - 1] ?? x, half, board) >= 2 * half)) return letter;
  }
  return SMALLEST;
}

/** At each place left, middle and right; the ends of the board are as its first and last place. */
function columnsOf({ points, width, length }: Surface, depths: readonly Length[], board: Box, along: (at: number) => number): readonly (readonly Spot[])[] {
  const stations = [...new Set(points.map(({ station }) => station))];
  const column = (station: number, x?: number): Spot[] => points.flatMap((point, index) => (point.station === station
    ? [{ x: x ?? along(point.fromEnd), y: board.y + (board.height * point.fromLeft) / width, depth: depths[index] ?? 0 }] : []));
  return [column(stations[0] ?? 0, along(0)), ...stations.map((station) => column(station)), column(stations.at(-1) ?? 0, along(length))];
}

/** Every four neighbours as four triangles around their middle. */
function patchesOf(columns: readonly (readonly Spot[])[]): readonly (readonly [Spot, Spot, Spot])[] {
  return columns.slice(1).flatMap((right, index) => right.slice(1).flatMap((lower, row): (readonly [Spot, Spot, Spot])[] => {
    const [a, b, c, d] = [columns[index]?.[row], right[row], lower, columns[index]?.[row + 1]];
    if (!a || !b || !d) return [];
    const round = [a, b, c, d] as const;
    const middle: Spot = { x: (a.x + b.x) / 2, y: (a.y + d.y) / 2, depth: round.reduce((sum, { depth }) => sum + depth, 0) / 4 };
    return round.map((one, at) => [one, round[(at + 1) % 4] ?? a, middle] as const);
  }));
}

function bandOver(patches: readonly (readonly [Spot, Spot, Spot])[], level: number): PlaningLayout['bands'][number] {
  const areas: string[] = [];
  const lines: string[] = [];
  for (const patch of patches) {
    const over: Point[] = [];
    const crossings: Point[] = [];
    patch.forEach((one, index) => {
      const next = patch[(index + 1) % 3] ?? one;
      if (one.depth > level) over.push(one);
      if (one.depth > level === next.depth > level) return;
      const crossing = between(one, next, (level - one.depth) / (next.depth - one.depth));
      over.push(crossing);
      crossings.push(crossing);
    });
    if (over.length > 2) areas.push(`M${over.map(written).join(' L')} Z`);
    if (crossings.length === 2) lines.push(`M${crossings.map(written).join(' L')}`);
  }
  return { area: areas.join(' '), contour: lines.join(' ') };
}

function between(one: Point, other: Point, part: number): Point {
  return { x: one.x + (other.x - one.x) * part, y: one.y + (other.y - one.y) * part };
}

function written({ x, y }: Point): string {
  return `${x.toFixed(1)} ${y.toFixed(1)}`;
}
