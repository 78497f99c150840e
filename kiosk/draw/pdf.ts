import PDFDocument from 'pdfkit';
import type { Item, Page, SheetSet, Stroke, Words } from '../../core/layout/paper/sheet.ts';
import { FRACTION_TYPE, runsOf } from '../../core/layout/paper/sizeText.ts';
import { NANOMETRES_PER_INCH } from '../../core/length/length.ts';
import { PAPER_LOOKS } from './paperLooks.ts';

/** Type for the sheets, as the bytes of the files that the kiosk ships. */
export interface SheetFonts {
  readonly regular: Uint8Array;
  readonly bold: Uint8Array;
}

export interface PdfOptions {
  readonly fonts: SheetFonts;
  /** Of the document: the sheets' name. */
  readonly title: string;
  /** For who reads the file as text. */
  readonly uncompressed?: true;
}

/** Points per inch (ISO 32000-1, 8.3.2.3). */
const POINTS = 72;

/** Nanometres to points: 1 in is 72 pt exactly. */
function points(nanometres: number): number {
  return (nanometres * POINTS) / NANOMETRES_PER_INCH;
}

function millimetrePoints(millimetres: number): number {
  return points(millimetres * 1_000_000);
}

/** The sheets as a PDF, every length true to less than a nanometre's worth of a point: the file keeps six decimals. */
export async function writePdf({ pages }: SheetSet, { fonts, title, uncompressed }: PdfOptions): Promise<Uint8Array> {
  // Without a font at the start: the page's own are embedded, and those of the readers are not looked for.
  const document = new PDFDocument({ font: '', autoFirstPage: false, compress: uncompressed !== true, info: { Title: title }, displayTitle: true, lang: 'en-US' });
  const chunks: Uint8Array[] = [];
  const done = new Promise<void>((resolve, reject) => {
    document.on('data', (chunk: Uint8Array) => chunks.push(chunk));
    document.on('end', resolve);
    document.on('error', reject);
  });
  document.registerFont('regular', fonts.regular);
  document.registerFont('bold', fonts.bold);
  for (const page of pages) drawPage(document, page);
  document.end();
  await done;
  return joined(chunks);
}

function joined(chunks: readonly Uint8Array[]): Uint8Array {
  const whole = new Uint8Array(chunks.reduce((sum, { length }) => sum + length, 0));
  let at = 0;
  for (const chunk of chunks) {
    whole.set(chunk, at);
    at += chunk.length;
  }
  return whole;
}

function drawPage(document: PDFKit.PDFDocument, { width, height, window, drawn, furniture }: Page): void {
  document.addPage({ size: [points(width), points(height)], margin: 0 });
  document.save();
  document.rect(points(window.x), points(window.y), points(window.width), points(window.height)).clip();
  for (const item of drawn) drawItem(document, item);
  document.restore();
  for (const item of furniture) drawItem(document, item);
}

function drawItem(document: PDFKit.PDFDocument, item: Item): void {
  if (item.kind === 'stroke') drawStroke(document, item);
  else drawWords(document, item);
}

function drawStroke(document: PDFKit.PDFDocument, { look, points: [first, ...more] }: Stroke): void {
  if (first === undefined) return;
  const { widthMm, dashesMm } = PAPER_LOOKS[look];
  document.lineWidth(millimetrePoints(widthMm));
  if (dashesMm === undefined) document.undash();
  else document.dash(millimetrePoints(dashesMm[0]), { space: millimetrePoints(dashesMm[1]) });
  document.moveTo(points(first.x), points(first.y));
  for (const { x, y } of more) document.lineTo(points(x), points(y));
  document.stroke('black');
}

function drawWords(document: PDFKit.PDFDocument, { text, at, size, anchor, bold, turned }: Words): void {
  const [x, y] = [points(at.x), points(at.y)];
  const runs = runsOf(text).map((run) => ({ ...run, height: points(size) * (run.as === 'plain' ? 1 : FRACTION_TYPE.size) }));
  const widths = runs.map((run) => document.font(bold ? 'bold' : 'regular', run.height).widthOfString(run.text));
  const whole = widths.reduce((sum, width) => sum + width, 0);
  document.save();
  document.fillColor('black');
  if (turned) document.rotate(-90, { origin: [x, y] });
  let along = x - whole * (anchor === 'start' ? 0 : anchor === 'middle' ? 0.5 : 1);
  runs.forEach((run, index) => {
    const raised = run.as === 'numerator' ? points(size) * FRACTION_TYPE.raised : 0;
    document.fontSize(run.height).text(run.text, along, y - raised, { lineBreak: false, baseline: 'alphabetic' });
    along += widths[index] ?? 0;
  });
  document.restore();
}
