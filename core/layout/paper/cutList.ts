import { nanometres, type Length } from '../../length/length.ts';
import { sizeOf } from '../../piece/evaluate.ts';
import type { Part } from '../../piece/file.ts';
import { pluralOf } from '../../piece/describe.ts';
import { listSheets, type Row } from './listing.ts';
import { pageForm } from './paperSize.ts';
import type { Drawing } from './drawing.ts';
import { mm, type SheetSet } from './sheet.ts';
import { sizesText, sizeText } from './sizeText.ts';

/** Shares of the width: part, count, length, width, thickness, wood and how it is made. */
const COLUMNS = [0, 0.2, 0.27, 0.42, 0.55, 0.68, 1] as const;

/** Every part with its finished sizes, its wood, and how it is made with the rough sizes that it is cut to first. */
export function cutList(drawing: Drawing): SheetSet {
  const { piece, titled, drawn, paper } = drawing;
  const lengths = piece.file.parts.map(({ id }) => size(drawing, `${id}.length`) ?? nanometres(0));
  return listSheets({
    name: 'cut list', title: titled('cut list'), drawn, paper, longest: nanometres(Math.max(0, ...lengths)),
    head: [row(drawing, ['part', 'count', 'length', 'width', 'thickness', 'wood, and how it is made'], { bold: true })],
    rows: piece.file.parts.flatMap((part) => partRows(drawing, part)),
  });
}

function partRows(drawing: Drawing, part: Part): readonly Row[] {
  const write = (key: string): string => { const length = size(drawing, `${part.id}.${key}`); return length === undefined ? '' : sizeText(length, drawing.rounding); };
  const name = part.count === 1 ? part.name : part.plural ?? pluralOf(part.name);
  return [row(drawing, [name, String(part.count), write('length'), write('width'), write('thickness'), [part.species, madeOf(drawing, part), roughOf(drawing, part)].filter(Boolean).join('; ')], { ruled: true })];
}

function madeOf(drawing: Drawing, { id, made }: Part): string {
  if (made.kind === 'laminated') return `${made.layers} layers of ${written(drawing, `${id}.layerThickness`)} glued face to face`;
  return made.kind === 'panel' ? `${made.boards} boards about ${written(drawing, `${id}.boardWidth`)} wide glued edge to edge` : '';
}

/** What is cut from the board first: of a lamination each layer, of a panel each board. */
export function roughOf(drawing: Drawing, { id, made }: Part): string {
  const each = made.kind === 'laminated' ? 'each layer ' : made.kind === 'panel' ? 'each board ' : '';
  const rough = ['roughLength', 'roughWidth', 'roughThickness'].flatMap((key) => size(drawing, `${id}.${key}`) ?? []);
  return `rough: ${each}${sizesText(rough, drawing.rounding)}`;
}

function written(drawing: Drawing, name: string): string {
  const length = size(drawing, name);
  return length === undefined ? '?' : sizeText(length, drawing.rounding);
}

function size({ sizes }: Drawing, name: string): Length | undefined {
  return sizeOf(sizes, name)?.length;
}

function row({ paper }: Drawing, texts: readonly string[], { bold, ruled }: { readonly bold?: true; readonly ruled?: true }): Row {
  const { width } = pageForm(paper, 'upright').window;
  const at = (share: number): Length => nanometres(Math.round(width * share));
  return {
    ...(ruled ? { ruled } : {}),
    cells: texts.map((text, index) => ({ text, x: at(COLUMNS[index] ?? 1), width: nanometres(at(COLUMNS[index + 1] ?? 1) - at(COLUMNS[index] ?? 1) - mm(2)), ...(bold ? { bold } : {}) })),
  };
}
