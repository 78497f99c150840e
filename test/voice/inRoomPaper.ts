import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import type { Request } from '../../core/bench/request.ts';
import { linesOf, openPdf, sheetSize, textOf } from '../deploy/pdfPages.ts';
import { answerTo } from './inRoom.ts';
import { untilSaid, type WholeKiosk } from './wholeKiosk.ts';

async function ask(kiosk: WholeKiosk, request: Request): Promise<void> {
  await kiosk.page.evaluate((detail) => document.querySelector('bench-kiosk')?.dispatchEvent(new CustomEvent('bench-request', { detail })), request);
}

/** The upright and level lines of a sheet that are so long, in millimetres. */
async function barsOf(bytes: Uint8Array, longMm: number): Promise<readonly [across: number, upright: number]> {
  const lines = await linesOf(await (await openPdf(bytes)).getPage(1));
  const long = lines.filter(({ x1, y1, x2, y2 }) => Math.abs(Math.hypot(x2 - x1, y2 - y1) - longMm) < 0.01);
  return [long.filter(({ y1, y2 }) => Math.abs(y1 - y2) < 0.001).length, long.filter(({ x1, x2 }) => Math.abs(x1 - x2) < 0.001).length];
}

export function sheetsOfPaper(kiosk: () => WholeKiosk): void {
  describe('sheets from the whole kiosk', () => {
    test('saved, they lie in the pieces folder, true to size', async () => {
      await ask(kiosk(), { kind: 'save sheets', sheet: { what: 'layout', part: 'leg' } });
      await untilSaid(kiosk().page, /layout of the leg is saved in the pieces folder/);
      const bytes = new Uint8Array(readFileSync(join(kiosk().folder, 'pieces', 'layout of the leg.pdf')));
      expect(sheetSize(await (await openPdf(bytes)).getPage(1)).map((side) => side.toFixed(1))).toEqual(['215.9', '279.4']);
      for (const long of [100, 101.6]) expect(await barsOf(bytes, long)).toEqual([1, 1]);
    });

    test('printed through the browser, they are as large as their paper and their bars are true', async () => {
      await kiosk().page.evaluate(() => { window.print = () => { document.body.dataset['printed'] = 'yes'; }; });
      await ask(kiosk(), { kind: 'print sheets', sheet: { what: 'cut list' } });
      await kiosk().page.waitForFunction(() => document.body.dataset['printed'] === 'yes');
      const bytes = new Uint8Array(await kiosk().page.pdf({ preferCSSPageSize: true }));
      const pdf = await openPdf(bytes);
      expect(pdf.numPages).toBe(1);
      const page = await pdf.getPage(1);
      expect(sheetSize(page).map((side) => Math.round(side))).toEqual([216, 279]);
      expect(await barsOf(bytes, 100)).toEqual([1, 1]);
      expect((await textOf(page)).join(' ')).toContain('Baker');
    });

    test('"bench, how many sheets for the rod" is answered with how many', async () => {
      expect(await answerTo(kiosk().page, 'bench, how many sheets for the rod', /^The rod takes \w+ sheets of letter/)).toMatch(/joined/);
    });
  });
}
