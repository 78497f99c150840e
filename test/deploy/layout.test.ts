import { chmod, mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { marksFor } from '../../core/joint/marks.ts';
import { facesOf } from '../../core/layout/paper/faces.ts';
import { everySheet, sheetsFor } from '../../core/layout/paper/order.ts';
import type { Page, SheetSet, Stroke } from '../../core/layout/paper/sheet.ts';
import { layOut, sheetFonts } from '../../deploy/layout.ts';
import { writePdf } from '../../kiosk/draw/pdf.ts';
import { DEMO, orderFor } from '../core/layout/paper/shop.ts';
import { linesOf, openPdf, rasterise, sheetSize, textOf, type Raster, type ReadLine } from './pdfPages.ts';

const ROOT = resolve(import.meta.dirname, '../..');
/** A hundredth of a millimetre. */
const TRUE_MM = 0.01;

async function pdfOf(set: SheetSet): Promise<Uint8Array> {
  return writePdf(set, { fonts: await sheetFonts(), title: set.name });
}

function made(choice: Parameters<typeof sheetsFor>[1], paper: 'a4' | 'letter' = 'a4'): SheetSet {
  const sheets = sheetsFor(orderFor(DEMO, paper), choice);
  if (!sheets.ok) throw new Error(sheets.fault);
  return sheets.value;
}

function strokesOf({ drawn, furniture }: Page): readonly Stroke[] {
  return [...drawn, ...furniture].filter((item) => item.kind === 'stroke');
}

/** The line of the file that is nearest to a line of the drawing, and by how much its ends are off, in millimetres. */
function nearest(lines: readonly ReadLine[], { points: [from, to] }: Stroke): number {
  if (!from || !to) throw new Error('a line has two ends');
  const [x1, y1, x2, y2] = [from.x, from.y, to.x, to.y].map((nanometres) => nanometres / 1e6) as [number, number, number, number];
  return Math.min(...lines.map((line) => Math.max(Math.hypot(line.x1 - x1, line.y1 - y1), Math.hypot(line.x2 - x2, line.y2 - y2))));
}

describe('the PDF, read back by another program', () => {
  it.each(everySheet(orderFor(DEMO)).map((choice) => [choice.what === 'layout' ? `layout of ${choice.part}` : choice.what, choice] as const))('%s has every line within a hundredth of a millimetre', async (_, choice) => {
    const set = made(choice);
    const pdf = await openPdf(await pdfOf(set));
    expect(pdf.numPages).toBe(set.pages.length);
    for (const [index, page] of set.pages.entries()) {
      const read = await pdf.getPage(index + 1);
      expect(sheetSize(read).map((side) => Math.round(side * 1000))).toEqual([page.width / 1000, page.height / 1000].map(Math.round));
      const lines = await linesOf(read);
      for (const stroke of strokesOf(page).filter(({ look, points }) => look !== 'hatch' && points.length === 2)) expect(nearest(lines, stroke), stroke.of).toBeLessThan(TRUE_MM);
    }
  }, 60_000);

  it('a mark of a leg is as far from the top end as the leg has it, on the sheet that shows both', async () => {
    const order = orderFor(DEMO);
    const set = made({ what: 'layout', part: 'leg' });
    const read = await (await openPdf(await pdfOf(set))).getPage(1);
    const lines = await linesOf(read);
    const start = marksFor(DEMO, order.sizes, 'leg').find(({ kind, joint }) => kind === 'mortise start' && joint === 'longRailTenon');
    const faces = facesOf(order, 'leg');
    const across = faces.ok ? (faces.value[0]?.across ?? 0) / 1e6 : 0;
    // Upright lines as long as the face is wide, from the left: the top end, and the lines of the mortise.
    const upright = lines.filter(({ x1, x2, y1, y2 }) => Math.abs(x1 - x2) < 1e-6 && Math.abs(Math.abs(y2 - y1) - across) < TRUE_MM).map(({ x1 }) => x1).sort((a, b) => a - b);
    expect(Math.min(...upright.slice(1).map((x) => Math.abs(x - (upright[0] ?? 0) - (start?.at ?? 0) / 1e6)))).toBeLessThan(TRUE_MM);
    const text = (await textOf(read)).join('');
    for (const said of ['leg, all 4 copies', 'face towards the long rail and the back stretcher', 'start of the mortise, from the top end', '25 November 2026', 'sheet 1 of']) expect(text.replaceAll('\u00a0', ' ')).toContain(said);
  }, 60_000);
});

const PER_MM = 12;

/** Where the first run of dark pixels along a row or column begins after `from`, to a part of a pixel: its middle. */
function darkMiddles({ grey }: Raster, at: (step: number) => readonly [number, number], from: number, to: number): readonly number[] {
  const middles: number[] = [];
  let [weight, sum] = [0, 0];
  for (let step = from; step <= to; step++) {
    const dark = (255 - grey(...at(step))) / 255;
    if (dark > 0.12) {
      weight += dark;
      sum += dark * (step + 0.5);
    } else if (weight > 0) {
      middles.push(sum / weight / PER_MM);
      [weight, sum] = [0, 0];
    }
  }
  return middles;
}

describe('the print, as pixels', () => {
  it('measures true: the bars across and upright, and where a mortise starts and ends', async () => {
    const set = made({ what: 'layout', part: 'leg' });
    const [page] = set.pages;
    if (!page) throw new Error('there is a first sheet');
    const raster = await rasterise(await (await openPdf(await pdfOf(set))).getPage(1), PER_MM);
    const bar = (of: string): Stroke => { const found = page.furniture.find((item) => item.kind === 'stroke' && item.of === of); if (found?.kind !== 'stroke') throw new Error(of); return found; };
    const pixel = (nanometres: number): number => Math.floor((nanometres / 1e6) * PER_MM);
    // Along the high end ticks of a bar, half way up them: the first and the last are the ends.
    for (const [name, long] of [['millimetres', 100], ['inches', 101.6]] as const) {
      const [level] = bar(`bar across, ${name}`).points;
      const [upright] = bar(`bar upright, ${name}`).points;
      if (!level || !upright) throw new Error('a bar has its ends');
      const ends = darkMiddles(raster, (x) => [x, pixel(level.y - 2_300_000)], pixel(level.x) - PER_MM, pixel(level.x) + Math.round((long + 1) * PER_MM));
      expect((ends.at(-1) ?? 0) - (ends[0] ?? 0), `across, ${name}`).toBeCloseTo(long, 1);
      const tops = darkMiddles(raster, (y) => [pixel(upright.x - 2_300_000), y], pixel(upright.y) - Math.round((long + 1) * PER_MM), pixel(upright.y) + PER_MM);
      expect((tops.at(-1) ?? 0) - (tops[0] ?? 0), `upright, ${name}`).toBeCloseTo(long, 1);
    }
    // Across the face clear of hatching and words: the top end, the start at 1 in and the end at 4 1/2 in.
    const outline = page.drawn.find((item) => item.kind === 'stroke' && item.of === 'outline');
    const [corner] = outline?.kind === 'stroke' ? outline.points : [];
    if (!corner) throw new Error('the face has an outline');
    const lines = darkMiddles(raster, (x) => [x, pixel(corner.y + 70_000_000)], pixel(corner.x) - PER_MM, pixel(corner.x) + 118 * PER_MM);
    expect(lines.map((line) => line - (lines[0] ?? 0)).map((line) => Math.round(line * 20) / 20)).toEqual([0, 25.4, 114.3].map((line) => Math.round(line * 20) / 20));
  }, 60_000);
});

describe('npm run layout', () => {
  let folder = '';
  const DEMO_FILE = join(ROOT, 'core/piece/demo/bakers-work-table.json');
  beforeAll(async () => { folder = await mkdtemp(join(tmpdir(), 'benchcall-layout-')); });
  afterAll(() => rm(folder, { recursive: true, force: true }));

  const run = async (...words: readonly string[]): Promise<{ readonly status: number; readonly out: string; readonly err: string }> => {
    const [out, err]: [string[], string[]] = [[], []];
    const status = await layOut(words, { tell: (sentence) => out.push(sentence), complain: (sentence) => err.push(sentence) });
    return { status, out: out.join('\n'), err: err.join('\n') };
  };

  it('writes all sheets without a browser, and nothing over another', async () => {
    const out = join(folder, 'sheets');
    const first = await run(DEMO_FILE, '--out', out, '--paper', 'a4');
    expect(first).toMatchObject({ status: 0, err: '' });
    expect((await readdir(out)).sort()).toEqual(['cut list.pdf', 'gauge card.pdf', 'layout of the back stretcher.pdf', 'layout of the leg.pdf', 'layout of the long rail.pdf', 'layout of the short rail.pdf', 'layout of the side stretcher.pdf', 'part labels.pdf', 'rod.pdf']);
    expect((await readFile(join(out, 'rod.pdf'))).subarray(0, 5).toString()).toBe('%PDF-');
    const again = await run(DEMO_FILE, '--out', out, '--paper', 'a4', '--part', 'leg');
    expect(again.out).toContain('layout of the leg 2.pdf');
    const placed = await run(DEMO_FILE, '--out', out, '--part', 'leg', '--place', 'back left');
    expect(placed).toMatchObject({ status: 0, err: '' });
    expect(placed.out).toContain('layout of leg 3.pdf');
  }, 120_000);

  it('says what is wrong, and what to do', async () => {
    const bad = join(folder, 'bad.json');
    await writeFile(bad, '{ "format": "benchcall piece" ');
    const locked = join(folder, 'file');
    await writeFile(locked, '');
    await chmod(locked, 0o400);
    expect((await run()).err).toContain('npm run layout -- PIECE.json --out FOLDER');
    expect((await run(DEMO_FILE)).err).toContain('Expected --out FOLDER');
    expect((await run('nowhere.json', '--out', folder)).err).toMatch(/nowhere\.json cannot be read/);
    expect((await run(bad, '--out', folder)).err).toMatch(/is not taken:\n.*line 1/);
    expect((await run(DEMO_FILE, '--out', folder, '--part', 'drawer')).err).toMatch(/has no part “drawer”\. Expected one of: leg, long rail/);
    expect((await run(DEMO_FILE, '--out', folder, '--part', 'top')).err).toMatch(/Nothing is marked on the top/);
    expect((await run(DEMO_FILE, '--out', folder, '--part', 'leg', '--place', 'middle')).err).toBe('The leg has no place “middle”. Expected one of: front left, front right, back left, back right.');
    expect((await run(DEMO_FILE, '--out', folder, '--place', 'middle')).err).toBe('Expected --part with --place: whose place it is.');
    expect((await run(DEMO_FILE, '--out', folder, '--paper', 'a3')).err).toMatch(/Expected --paper a4 or --paper letter, found “a3”/);
    expect((await run(DEMO_FILE, '--out', locked)).err).toMatch(/cannot be made: .*Choose another with --out/);
  }, 120_000);
});
