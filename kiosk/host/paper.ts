import type { Bench } from '../../core/bench/bench.ts';
import type { Reply } from '../../core/bench/reply.ts';
import type { Moment } from '../../core/clock/moment.ts';
import { nameOfSheets, sheetsFor } from '../../core/layout/paper/order.ts';
import { sheetOrder } from '../../core/respond/paper.ts';
import { printSheets } from '../draw/paperSheets.ts';
import type { SheetFonts } from '../draw/pdf.ts';
import { download, reason, saveOnShelf } from './shelf.ts';

type Wanted = NonNullable<Reply['paper']>;

export interface PaperHost {
  readonly bench: Bench;
  readonly now: Moment;
  /** A sentence for the screen. */
  readonly notice: (sentence: string) => void;
  /** An answer that is said and shown. */
  readonly tell: (reply: Reply) => void;
}

/** Prints sheets through the browser, or writes them as a PDF into the pieces folder; where that cannot be written, hands the file to the browser. */
export async function putOnPaper({ to, sheet }: Wanted, { bench, now, notice, tell }: PaperHost): Promise<void> {
  const order = sheetOrder(bench.state, now);
  const sheets = order ? sheetsFor(order, sheet) : undefined;
  if (!order || !sheets?.ok) return;
  if (to === 'printer') {
    printSheets(sheets.value);
    return;
  }
  const name = `${nameOfSheets(order.piece, sheet)}.pdf`;
  try {
    const { writePdf } = await import('../draw/pdf.ts');
    const pdf = await writePdf(sheets.value, { fonts: await loadFonts(), title: `${order.piece.file.name}, ${name.replace(/\.pdf$/, '')}` });
    const blob = new Blob([pdf as BlobPart], { type: 'application/pdf' });
    try {
      const saved = await saveOnShelf(name, blob, 'application/pdf');
      tell({ say: `The ${nameOfSheets(order.piece, sheet)} is saved in the pieces folder.`, note: `“${saved.name}” is saved in ${saved.folder}.`, signal: 'done' });
    } catch (error) {
      download(name, blob);
      notice(`The pieces folder could not be written (${reason(error)}), so “${name}” was handed to the browser’s downloads.`);
    }
  } catch (error) {
    notice(`“${name}” could not be made (${reason(error)}). Print it instead.`);
  }
}

async function loadFonts(): Promise<SheetFonts> {
  const load = async (file: string): Promise<Uint8Array> => {
    const response = await fetch(`/fonts/${file}`);
    if (!response.ok) throw new Error(`the type ${file} is missing`);
    return new Uint8Array(await response.arrayBuffer());
  };
  const [regular, bold] = await Promise.all([load('atkinson-400.woff'), load('atkinson-700.woff')]);
  return { regular, bold };
}
