import { createCanvas } from '@napi-rs/canvas';
import { getDocument, OPS } from 'pdfjs-dist/legacy/build/pdf.mjs';
import type { PDFDocumentProxy, PDFPageProxy } from 'pdfjs-dist/legacy/build/pdf.mjs';

const MM_PER_POINT = 25.4 / 72;

/** A straight line as another program reads it out of the file, in millimetres from the upper left corner of the sheet. */
export interface ReadLine { readonly x1: number; readonly y1: number; readonly x2: number; readonly y2: number }

/** A sheet as pixels, 0 black to 255 white. */
export interface Raster { readonly width: number; readonly height: number; readonly grey: (x: number, y: number) => number; readonly png: () => Buffer }

export async function openPdf(bytes: Uint8Array): Promise<PDFDocumentProxy> {
  return getDocument({ data: bytes.slice(), verbosity: 0, isEvalSupported: false }).promise;
}

/** Width and height in millimetres. */
export function sheetSize(page: PDFPageProxy): readonly [number, number] {
  const [left = 0, bottom = 0, right = 0, top = 0] = page.view;
  return [(right - left) * MM_PER_POINT, (top - bottom) * MM_PER_POINT];
}

export async function textOf(page: PDFPageProxy): Promise<readonly string[]> {
  const { items } = await page.getTextContent();
  return items.flatMap((item) => ('str' in item && item.str.trim() !== '' ? [item.str] : []));
}

/** Every stroked line of the sheet, with all transforms applied. */
export async function linesOf(page: PDFPageProxy): Promise<readonly ReadLine[]> {
  const { fnArray, argsArray } = await page.getOperatorList();
  const [, height] = sheetSize(page);
  const stack: Matrix[] = [];
  let matrix: Matrix = [1, 0, 0, 1, 0, 0];
  const lines: ReadLine[] = [];
  fnArray.forEach((operation, index) => {
    const given = argsArray[index] as readonly unknown[];
    if (operation === OPS.save) stack.push(matrix);
    else if (operation === OPS.restore) matrix = stack.pop() ?? matrix;
    else if (operation === OPS.transform) matrix = times(matrix, given as unknown as Matrix);
    else if (operation === OPS.constructPath && given[0] === OPS.stroke) lines.push(...pathLines((given[1] as readonly [ArrayLike<number>])[0], matrix, height));
  });
  return lines;
}

type Matrix = readonly [number, number, number, number, number, number];

function times([a, b, c, d, e, f]: Matrix, [g, h, i, j, k, l]: Matrix): Matrix {
  return [a * g + c * h, b * g + d * h, a * i + c * j, b * i + d * j, a * k + c * l + e, b * k + d * l + f];
}

/** Path data of the reader: 0 moves, 1 draws a line; both with x and y. */
function pathLines(data: ArrayLike<number>, [a, b, c, d, e, f]: Matrix, heightMm: number): readonly ReadLine[] {
  const lines: ReadLine[] = [];
  let last: readonly [number, number] | undefined;
  for (let at = 0; at + 2 < data.length; at += 3) {
    const [kind, x = 0, y = 0] = [data[at], data[at + 1], data[at + 2]];
    if (kind !== 0 && kind !== 1) throw new Error(`a path of the sheet is no straight line: ${kind}`);
    const point = [(a * x + c * y + e) * MM_PER_POINT, heightMm - (b * x + d * y + f) * MM_PER_POINT] as const;
    if (kind === 1 && last) lines.push({ x1: last[0], y1: last[1], x2: point[0], y2: point[1] });
    last = point;
  }
  return lines;
}

/** Prints the sheet into pixels, so many to the millimetre. */
export async function rasterise(page: PDFPageProxy, perMm: number): Promise<Raster> {
  const viewport = page.getViewport({ scale: (perMm * 25.4) / 72 });
  const canvas = createCanvas(Math.round(viewport.width), Math.round(viewport.height));
  const context = canvas.getContext('2d');
  context.fillStyle = 'white';
  context.fillRect(0, 0, canvas.width, canvas.height);
  // The reader draws into whatever has a canvas's methods; this one is not the browser's.
  await page.render({ canvas: canvas as unknown as HTMLCanvasElement, canvasContext: context as unknown as CanvasRenderingContext2D, viewport }).promise;
  const { data } = context.getImageData(0, 0, canvas.width, canvas.height);
  return { width: canvas.width, height: canvas.height, grey: (x, y) => data[4 * (y * canvas.width + x)] ?? 255, png: () => canvas.toBuffer('image/png') };
}
