import { OVERLAP } from './paperSize.ts';
import { line, mm, spot, words, type Box, type Item, type Spot, type TilePlace } from './sheet.ts';

const ARM = mm(4);

interface Grid { readonly rows: number; readonly columns: number }

/**
 * What joins the sheets: crosses in the middle of every overlap, at the same place of the drawing on both sheets, and on the later sheet the
 * line to trim at, which goes through them. `first` is the number of the group's first sheet.
 */
export function seamItems(place: TilePlace, grid: Grid, window: Box, first: number): readonly Item[] {
  const number = (row: number, column: number): number => first + (row - 1) * grid.columns + column - 1;
  const { row, column } = place;
  const half = OVERLAP / 2;
  const [right, bottom] = [window.x + window.width, window.y + window.height];
  return [
    ...(column > 1 ? [...uprightCrosses(window.x + half, window, `c${column - 1}`), ...trimUpright(window.x + half, window, number(row, column - 1))] : []),
    ...(column < grid.columns ? uprightCrosses(right - half, window, `c${column}`) : []),
    ...(row > 1 ? [...levelCrosses(window.y + half, window, `r${row - 1}`), ...trimLevel(window.y + half, window, number(row - 1, column))] : []),
    ...(row < grid.rows ? levelCrosses(bottom - half, window, `r${row}`) : []),
  ];
}

function uprightCrosses(x: number, { y, height }: Box, seam: string): readonly Item[] {
  return [1, 3].flatMap((quarter) => cross(spot(x, y + Math.round((height * quarter) / 4)), `${seam}/${quarter}`));
}

function levelCrosses(y: number, { x, width }: Box, seam: string): readonly Item[] {
  return [1, 3].flatMap((quarter) => cross(spot(x + Math.round((width * quarter) / 4), y), `${seam}/${quarter}`));
}

function cross({ x, y }: Spot, name: string): readonly Item[] {
  return [
    line('thin', spot(x - ARM, y), spot(x + ARM, y), `cross ${name}`), line('thin', spot(x, y - ARM), spot(x, y + ARM), `cross ${name}`),
    words(name.slice(0, name.indexOf('/')), spot(x + mm(1), y - mm(1)), mm(2.2)),
  ];
}

function trimUpright(x: number, { y, height }: Box, onto: number): readonly Item[] {
  return [line('trim', spot(x, y), spot(x, y + height), 'trim'), words(`trim here, lay on sheet ${onto}, cross on cross`, spot(x - mm(1.2), y + Math.round(height / 2) + mm(26)), mm(2.4), { turned: true })];
}

function trimLevel(y: number, { x, width }: Box, onto: number): readonly Item[] {
  return [line('trim', spot(x, y), spot(x + width, y), 'trim'), words(`trim here, lay on sheet ${onto}, cross on cross`, spot(x + Math.round(width / 2) - mm(26), y - mm(1.2)), mm(2.4))];
}
