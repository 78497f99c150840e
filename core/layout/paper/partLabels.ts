import { nanometres, type Length } from '../../length/length.ts';
import { sizeOf } from '../../piece/evaluate.ts';
import type { Part } from '../../piece/file.ts';
import { roughOf } from './cutList.ts';
import type { Drawing } from './drawing.ts';
import { furniture } from './furniture.ts';
import { pageForm } from './paperSize.ts';
import { edgeMark, faceMark } from './referenceMarks.ts';
import { line, mm, moved, rectangle, spot, words, wrapped, type Item, type Page, type SheetSet } from './sheet.ts';
import { sizesText } from './sizeText.ts';

const LABEL = { width: mm(60), height: mm(44) } as const;
const LETTER = mm(3);

/** One label for each copy of each part, to be cut out and pinned or stuck on its blank. */
export function partLabels(drawing: Drawing): SheetSet {
  const form = pageForm(drawing.paper, 'upright');
  const { window } = form;
  const [across, down] = [Math.floor(window.width / LABEL.width), Math.floor(window.height / LABEL.height)];
  const all = drawing.piece.file.parts.flatMap((part) => Array.from({ length: part.count }, (_, index) => label(drawing, part, index + 1)));
  const count = Math.ceil(all.length / (across * down));
  const pages = Array.from({ length: count }, (_, page): Page => ({
    width: form.width, height: form.height, window,
    drawn: all.slice(page * across * down, (page + 1) * across * down).flatMap((items, index) => {
      const at = spot(window.x + (index % across) * LABEL.width, window.y + Math.floor(index / across) * LABEL.height);
      return items.map((item) => moved(item, at));
    }),
    furniture: furniture(form, { title: drawing.titled('part labels'), sheet: `sheet ${page + 1} of ${count}`, drawn: drawing.drawn }),
  }));
  const lengths = drawing.piece.file.parts.map(({ id }) => sizeOf(drawing.sizes, `${id}.length`)?.length ?? nanometres(0));
  return { name: 'part labels', pages, groups: [], longest: nanometres(Math.max(0, ...lengths)) };
}

function label(drawing: Drawing, part: Part, copy: number): readonly Item[] {
  const place = drawing.places.get(`${part.id}/${copy}`);
  const text = (said: string, y: Length, more: Partial<{ readonly bold: true }> = {}): readonly Item[] => wrapped(said, LETTER, mm(47)).slice(0, 2).map((each, index) => words(each, spot(mm(2.5), y + index * mm(3.8)), LETTER, more));
  const finished = ['length', 'width', 'thickness'].flatMap((key) => sizeOf(drawing.sizes, `${part.id}.${key}`, copy)?.length ?? []);
  const open = part.places === undefined ? '' : 'place: ____________________';
  return [
    rectangle('trim', { x: mm(0), y: mm(0), ...LABEL }, 'label'),
    words(part.count === 1 ? part.name : `${part.name} ${copy} of ${part.count}`, spot(mm(2.5), mm(6)), mm(4.4), { bold: true }),
    ...text(place ?? open, mm(10.8)),
    ...text(sizesText(finished, drawing.rounding), mm(16), { bold: true }),
    ...text(roughOf(drawing, part), mm(25)),
    ...text(part.species, mm(34)),
    ...text(`${part.referenceFace ?? 'face side'}, ${part.referenceEdge ?? 'face edge'}`, mm(38.6)),
    ...arrow(drawing, part),
    ...faceMark(spot(mm(55), mm(33)), mm(6)), ...edgeMark(spot(mm(55), mm(37)), mm(4)),
  ];
}

/** Which end is up: for what stands upright and is mortised, its top end; for the others, their reference edge. */
function arrow({ piece }: Drawing, part: Part): readonly Item[] {
  const upright = piece.file.joints.some((joint) => joint.kind === 'mortise and tenon' && joint.mortiseIn === part.id);
  const [x, top, foot] = [mm(55), mm(4), mm(20)];
  return [
    line('mark', spot(x, foot), spot(x, top), 'up'), { kind: 'stroke', look: 'mark', points: [spot(x - mm(2), top + mm(3)), spot(x, top), spot(x + mm(2), top + mm(3))] },
    words(upright ? 'top end' : part.referenceEdge ?? 'face edge', spot(x - mm(1.5), foot), mm(2.4), { turned: true }),
  ];
}
