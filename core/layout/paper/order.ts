import { marksFor } from '../../joint/marks.ts';
import { nanometres } from '../../length/length.ts';
import { divisionOf } from '../../length/round.ts';
import type { Rounding } from '../../length/rounding.ts';
import type { Part } from '../../piece/file.ts';
import type { LoadedPiece } from '../../piece/loadedPiece.ts';
import { assertNever, failure, success, type Result } from '../../result.ts';
import type { SheetChoice } from './choice.ts';
import { cutList } from './cutList.ts';
import type { Drawing } from './drawing.ts';
import { facesOf, type Laid } from './faces.ts';
import { gaugeCard } from './gaugeCard.ts';
import type { PaperName } from './paperSize.ts';
import { faceBand, longestOf } from './partSheet.ts';
import { partLabels } from './partLabels.ts';
import { rodBand } from './rod.ts';
import { rodOf, spanOf } from './rodMarks.ts';
import type { SheetSet } from './sheet.ts';
import { tile } from './tile.ts';

export interface SheetOrder extends Laid {
  readonly rounding: Rounding;
  readonly paper: PaperName;
  /** As it is to stand on the sheets: '25 November 2026'; empty when nobody knows. */
  readonly date: string;
  /** The sheets of the cutting plan, which is made above this; absent where none was taken. */
  readonly planned?: PlannedSheets;
}

export interface PlannedSheets {
  /** What they are made from: other sheets when it is another. */
  readonly of: unknown;
  readonly make: (heading: { readonly title: string; readonly drawn: string }) => SheetSet;
}

/** The sheets for a choice, or why there are none: a sentence for the maker. */
export function sheetsFor(order: SheetOrder, choice: SheetChoice): Result<SheetSet, string> {
  const drawing = drawingOf(order);
  switch (choice.what) {
    case 'layout': return partLayout(drawing, choice.part, choice.copy);
    case 'rod': return rod(drawing);
    case 'labels': return success(partLabels(drawing));
    case 'cut list': return success(cutList(drawing));
    case 'gauge card': return gaugeCard(drawing);
    case 'cutting plan': return order.planned === undefined ? failure('No cutting plan is taken yet: there is nothing to print of it.') : success(order.planned.make({ title: drawing.titled('cutting plan'), drawn: drawing.drawn }));
    default: return assertNever(choice);
  }
}

/** 'layout of the long rail', 'rod', 'cut list' */
export function nameOfSheets(piece: LoadedPiece, choice: SheetChoice): string {
  if (choice.what === 'labels') return 'part labels';
  if (choice.what !== 'layout') return choice.what;
  const name = piece.file.parts.find(({ id }) => id === choice.part)?.name ?? choice.part;
  return choice.copy === undefined ? `layout of the ${name}` : `layout of ${name} ${choice.copy}`;
}

/** Every sheet that a piece has: the layout of each part that bears marks, of each copy of it that is turned its own way, and the others. */
export function everySheet({ piece, sizes, places, turns, planned }: Laid & Pick<SheetOrder, 'planned'>): readonly SheetChoice[] {
  const marked = piece.file.parts.filter(({ id }) => marksFor(piece, sizes, id).length > 0);
  const ownWay = ({ id, count }: Part): readonly SheetChoice[] => Array.from({ length: count }, (_, index): SheetChoice => ({ what: 'layout', part: id, copy: index + 1 }))
    .filter((choice) => choice.what === 'layout' && places.has(`${id}/${choice.copy ?? 0}`) && turns.has(`${id}/${choice.copy ?? 0}`));
  return [...marked.flatMap((part): readonly SheetChoice[] => [{ what: 'layout', part: part.id }, ...ownWay(part)]), { what: 'rod' }, { what: 'labels' }, { what: 'cut list' }, { what: 'gauge card' }, ...(planned === undefined ? [] : [{ what: 'cutting plan' } as const])];
}

function drawingOf(order: SheetOrder): Drawing {
  const { rounding, piece, date } = order;
  const to = rounding.unit === 'inch' ? `1/${rounding.denominator} in` : `${divisionOf(rounding) / 1_000_000} mm`;
  return { ...order, titled: (sheet) => `${piece.file.name} · ${sheet}`, drawn: [date, `figures to ${to}`].filter(Boolean).join(' · ') };
}

function partLayout(drawing: Drawing, partId: string, copy: number | undefined): Result<SheetSet, string> {
  const views = facesOf(drawing, partId, copy);
  if (!views.ok) return views;
  const part = drawing.piece.file.parts.find(({ id }) => id === partId);
  const which = part === undefined ? partId : copy === undefined ? `${part.name}${part.count > 1 ? `, all ${part.count} copies` : ''}` : `${part.name} ${copy}${placed(drawing, partId, copy)}`;
  const name = nameOfSheets(drawing.piece, { what: 'layout', part: partId, ...(copy === undefined ? {} : { copy }) });
  return tile({ name, title: drawing.titled(name), drawn: drawing.drawn, longest: longestOf(views.value), bands: views.value.map((view) => faceBand(view, which, drawing.rounding)) }, drawing.paper);
}

function placed({ places }: Drawing, part: string, copy: number): string {
  const place = places.get(`${part}/${copy}`);
  return place === undefined ? '' : `, ${place}`;
}

function rod(drawing: Drawing): Result<SheetSet, string> {
  const strips = rodOf(drawing.piece, drawing.sizes);
  if (!strips.ok) return strips;
  const longest = nanometres(Math.max(...strips.value.map(spanOf)));
  return tile({ name: 'rod', title: drawing.titled('rod'), drawn: drawing.drawn, longest, bands: strips.value.map((strip) => rodBand(strip, drawing.rounding)) }, drawing.paper);
}
