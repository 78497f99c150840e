import type { Length } from '../../length/length.ts';
import { reckoning } from '../../reckoning/reckoning.ts';
import { telling } from '../../reckoning/telling.ts';
import { failure, success } from '../../result.ts';
import { OVERLAP, pageForm, type PaperName, type Way } from '../paper/paperSize.ts';
import type { Box } from '../paper/sheet.ts';
import { MOST_SHEETS, tilesAlong } from '../paper/tile.ts';

export const sheets = reckoning({
  name: 'sheets',
  about: 'how many sheets of paper a drawing at full size takes',
  inputs: {
    length: { kind: 'length', say: 'how long the drawing is' },
    depth: { kind: 'length', say: 'how deep it is', default: '1 in' },
    paper: { kind: 'choice', options: ['letter', 'a4'], say: 'paper', default: 'letter' },
  },
  reckon: ({ length, depth, paper }) => {
    if (length <= 0 || depth <= 0) return failure({ key: length <= 0 ? 'length' : 'depth', message: 'A drawing has some size in both directions.' });
    const [upright, lying] = [gridOf('upright', paper, length, depth), gridOf('lying', paper, length, depth)];
    const { way, rows, columns, window } = lying.rows * lying.columns < upright.rows * upright.columns ? lying : upright;
    return success({
      result: [
        { key: 'sheets', number: rows * columns, unit: 'sheets' }, { key: 'rows', number: rows, unit: 'rows' }, { key: 'columns', number: columns, unit: 'columns' },
        { key: 'way', text: way }, { key: 'window', lengths: [window.width, window.height] }, { key: 'overlap', length: OVERLAP },
      ],
      how: [telling`A sheet shows ${window.width} by ${window.height}; each next one begins ${OVERLAP} before the last one ends.`],
      source: ['A4: ISO 216; letter: ANSI/ASME Y14.1; edges and overlap: common practice, no source'],
      ...(rows * columns > MOST_SHEETS ? { warnings: [telling`More than ${{ count: MOST_SHEETS }} sheets are not joined true by hand.`] } : {}),
    });
  },
});

function gridOf(way: Way, paper: PaperName, length: Length, depth: Length): { readonly way: Way; readonly rows: number; readonly columns: number; readonly window: Box } {
  const { window } = pageForm(paper, way);
  return { way, window, rows: tilesAlong(depth, window.height), columns: tilesAlong(length, window.width) };
}
