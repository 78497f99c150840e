import { line, mm, rectangle, spot, type Box, type Item } from './sheet.ts';

const APART = mm(4);

/** Waste: thin lines from lower left to upper right, and a thin outline. */
export function hatching(box: Box): readonly Item[] {
  const { x, y, width, height } = box;
  const lines: Item[] = [];
  for (let offset: number = APART; offset < width + height; offset += APART) {
    const start = offset < height ? spot(x, y + offset) : spot(x + offset - height, y + height);
    const end = offset < width ? spot(x + offset, y) : spot(x + width, y + offset - width);
    lines.push(line('hatch', start, end));
  }
  return [rectangle('thin', box, 'waste'), ...lines];
}
