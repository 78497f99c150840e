import type { Bench } from '../bench/bench.ts';
import type { Response } from '../bench/reply.ts';
import type { PaperRequest } from '../bench/request.ts';
import type { State } from '../journal/state.ts';
import { BARS } from '../layout/paper/furniture.ts';
import { sheetsFor, type SheetOrder } from '../layout/paper/order.ts';
import { barMeant, printScale, stillUnseen, type PrintScale } from '../layout/paper/printScale.ts';
import { absolute } from '../length/arithmetic.ts';
import { nanometres, NANOMETRES_PER_INCH, type Length } from '../length/length.ts';
import { writeLength } from '../length/write.ts';
import { sayNumber } from '../length/say.ts';
import { sizeOf } from '../piece/evaluate.ts';
import { refuse, tell } from './plain.ts';
import { sayList, spoken, written } from './saying.ts';
import { toSay } from './toSay.ts';

type Measured = Extract<PaperRequest, { kind: 'print scale' }>;
type Direction = 'across' | 'upright';

const TENTHS = { unit: 'millimetre', step: nanometres(100_000) } as const;

/** Whether the print is true to size, each way, and how far off it is over the longest size on the sheets. */
export function tellPrintScale({ state, conversation: { screen } }: Bench, order: SheetOrder, { across, upright }: Measured): Response {
  const longest = longestOn(order, screen.name === 'paper' ? screen.sheet : undefined);
  const found: { readonly direction: Direction; readonly scale: PrintScale }[] = [];
  for (const [direction, measured] of [['across', across], ['upright', upright]] as const) {
    if (measured === undefined) continue;
    const bar = barMeant(measured, unitOf(measured));
    if (bar === undefined) return refuse(`Neither bar is near ${spoken(state, measured)}. Measure the bar of one hundred millimetres or that of four inches, from end to end, and say the unit.`);
    found.push({ direction, scale: printScale(bar, measured, longest) });
  }
  if (found.length === 0) return tell({ say: toSay('Tell me what a bar of the print measures, across or upright.', 'Say what a bar of the print measures, across or upright: the bar across measures ninety-nine point two millimetres.') });
  const off = found.filter(({ scale }) => !scale.isTrue);
  const other = found.length === 2 ? '' : ` Measure the one ${across === undefined ? 'across' : 'upright'} as well: paper may stretch one way only.`;
  const answers = found.map(({ direction, scale }) => ({ label: direction, length: absolute(scale.offOverLongest) }));
  return tell({
    say: off.length === 0 ? `${barsOf(found.map(({ scale }) => scale))}, true to size, as near as a rule is read. ${unseen(state, longest)}${other}` : `${barsOf(off.map(({ scale }) => scale))}. ${off.map(({ direction, scale }) => sayOff(state, direction, scale, longest)).join(' ')} Not true: print again at 100 percent, not fitted to the page.${found.length > off.length ? ' The other way it is true.' : ''}${other}`,
    note: `${off.length === 0 ? 'True' : 'Not true'}. ${sayList(found.map(({ direction, scale }) => `${direction}: ${writeLength(scale.measured, TENTHS)} for ${writeLength(scale.bar, TENTHS)}, factor ${factor(scale)}`))}`,
    screen: { name: 'reckoning', result: { question: `${found.map(({ direction }) => direction).join(' and ')}, off over ${written(state, longest)}: ${off.length === 0 ? 'true' : 'not true, print at 100 %, not fitted to the page'}`, answers } },
    ...(off.length === 0 ? {} : { signal: 'wrong' as const }), lengths: answers.map(({ length }) => length),
  });
}

function sayOff(state: State, direction: Direction, { off, offOverLongest, factor: by }: PrintScale, longest: Length): string {
  return `${direction === 'across' ? 'Across' : 'Upright'}, the print is ${off > 0 ? 'too large' : 'too small'} by ${spoken(state, absolute(offOverLongest))} over ${spoken(state, longest)}; the factor is ${sayFactor(by)}.`;
}

/** Which bar each measure was taken for: it must be told, for the two are nearly as long. */
function barsOf(scales: readonly PrintScale[]): string {
  return `By the bar of ${sayList([...new Set(scales.map(({ bar }) => (bar === BARS.inches ? 'four inches' : 'one hundred millimetres')))])}`;
}

function unseen(state: State, longest: Length): string {
  return `Over ${spoken(state, longest)} it may still be ${spoken(state, stillUnseen(longest))} off: knife by the figures.`;
}

function factor({ factor: by }: PrintScale): string {
  return by.toFixed(4);
}

/** 'one point oh oh eight one' */
function sayFactor(by: number): string {
  const [whole = '', decimals = ''] = by.toFixed(4).split('.');
  return `${sayNumber(Number(whole))} point ${Array.from(decimals.replace(/0+$/, '') || '0', (digit) => sayNumber(Number(digit))).join(' ')}`;
}

/** Both bars are about as long; which was meant is told by which of them is nearer. */
function unitOf(measured: Length): 'inch' | 'millimetre' {
  return measured % (NANOMETRES_PER_INCH / 64) === 0 || measured % (NANOMETRES_PER_INCH / 1000) === 0 ? 'inch' : 'millimetre';
}

/** The longest size on the sheets on the screen, else the longest part of the piece. */
function longestOn(order: SheetOrder, sheet: Parameters<typeof sheetsFor>[1] | undefined): Length {
  const sheets = sheet === undefined ? undefined : sheetsFor(order, sheet);
  if (sheets?.ok) return sheets.value.longest;
  return nanometres(Math.max(...order.piece.file.parts.map(({ id }) => sizeOf(order.sizes, `${id}.length`)?.length ?? 0)));
}
