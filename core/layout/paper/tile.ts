import { nanometres, type Length } from '../../length/length.ts';
import { failure, success, type Result } from '../../result.ts';
import { furniture } from './furniture.ts';
import { OVERLAP, pageForm, PAPERS, type PageForm, type PaperName, type Way } from './paperSize.ts';
import { seamItems } from './seams.ts';
import { mm, moved, spot, textWidth, type Band, type Box, type Item, type Page, type SheetSet, type TilePlace } from './sheet.ts';

/** More sheets than this are not joined true by hand (common practice, no source). */
export const MOST_SHEETS = 48;
const BETWEEN_BANDS = mm(4);

/** What is to be drawn at full size, before it is cut into sheets. */
export interface FullSize {
  readonly name: string;
  readonly title: string;
  readonly drawn: string;
  readonly bands: readonly Band[];
  /** The longest size drawn. */
  readonly longest: Length;
}

/** Bands drawn one below the other on sheets that are joined. */
interface Group {
  readonly items: readonly Item[];
  readonly length: Length;
  readonly depth: Length;
}

/** How many windows, each overlapping the one before, it takes to show a size; 1 at least. */
export function tilesAlong(size: Length, window: Length): number {
  return size <= window ? 1 : Math.ceil((size - OVERLAP) / (window - OVERLAP));
}

/** Cuts a drawing into sheets, upright or lying, whichever takes fewer; a face is cut along its length only where it is deeper than the sheet. */
export function tile(drawing: FullSize, paper: PaperName): Result<SheetSet, string> {
  const [upright, lying] = [plan(drawing, paper, 'upright'), plan(drawing, paper, 'lying')];
  const best = lying.count < upright.count ? lying : upright;
  if (best.count > MOST_SHEETS) {
    return failure(`At full size, the ${drawing.name} takes ${best.count} sheets of ${PAPERS[paper].say}; more than ${MOST_SHEETS} cannot be joined true by hand. Lay it out on the wood from the figures instead.`);
  }
  return success({
    name: drawing.name, longest: drawing.longest,
    groups: best.groups.map((group) => gridOf(group, best.form)),
    pages: pagesOf(drawing, best.groups, best.form, best.count),
  });
}

function plan({ bands }: FullSize, paper: PaperName, way: Way): { readonly form: PageForm; readonly groups: readonly Group[]; readonly count: number } {
  const form = pageForm(paper, way);
  const groups = grouped(bands, form.window.height);
  return { form, groups, count: groups.reduce((sum, group) => sum + gridOf(group, form).rows * gridOf(group, form).columns, 0) };
}

/** As many bands together as a sheet is high for. */
function grouped(bands: readonly Band[], height: Length): readonly Group[] {
  const groups: Group[] = [];
  for (const band of bands) {
    const last = groups.at(-1);
    const top = last === undefined ? 0 : last.depth + BETWEEN_BANDS;
    const fits = last !== undefined && top + band.depth <= height;
    const items = band.items.map((item) => moved(item, spot(0, fits ? top : 0)));
    if (fits) groups[groups.length - 1] = { items: [...last.items, ...items], length: nanometres(Math.max(last.length, band.length)), depth: nanometres(top + band.depth) };
    else groups.push({ items, length: band.length, depth: band.depth });
  }
  return groups;
}

function gridOf({ length, depth }: Group, { window }: PageForm): { readonly rows: number; readonly columns: number } {
  return { rows: tilesAlong(depth, window.height), columns: tilesAlong(length, window.width) };
}

function pagesOf(drawing: FullSize, groups: readonly Group[], form: PageForm, count: number): readonly Page[] {
  const { window } = form;
  const pages: Page[] = [];
  groups.forEach((group, index) => {
    const grid = gridOf(group, form);
    const first = pages.length + 1;
    for (let row = 1; row <= grid.rows; row++) {
      for (let column = 1; column <= grid.columns; column++) {
        const place: TilePlace = { group: index + 1, row, column, from: spot((column - 1) * (window.width - OVERLAP), (row - 1) * (window.height - OVERLAP)) };
        const sheet = `sheet ${pages.length + 1} of ${count} · row ${row} of ${grid.rows}, column ${column} of ${grid.columns}`;
        pages.push({
          width: form.width, height: form.height, window, place,
          drawn: group.items.map((item) => moved(item, spot(window.x - place.from.x, window.y - place.from.y))).filter((item) => isSeen(item, window)),
          furniture: [...furniture(form, { title: drawing.title, sheet, drawn: drawing.drawn }), ...seamItems(place, grid, window, first)],
        });
      }
    }
  });
  return pages;
}

/** Whether anything of it may lie in the window; a text may be half as long again as it is reckoned. */
function isSeen(item: Item, { x, y, width, height }: Box): boolean {
  if (item.kind === 'words') {
    const long = textWidth(item.text, item.size) * 1.5;
    const [right, up] = item.turned ? [item.size, long] : [long, item.size];
    return item.at.y + up >= y && item.at.y - up <= y + height && item.at.x + right >= x && item.at.x - (item.anchor === 'start' ? item.size : right) <= x + width;
  }
  const [xs, ys] = [item.points.map((point) => point.x), item.points.map((point) => point.y)];
  return Math.min(...xs) <= x + width && Math.max(...xs) >= x && Math.min(...ys) <= y + height && Math.max(...ys) >= y;
}
