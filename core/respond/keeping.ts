import { assertNever } from '../result.ts';
import type { Bench } from '../bench/bench.ts';
import type { Response } from '../bench/reply.ts';
import type { KeepingRequest } from '../bench/request.ts';
import { sayNumber } from '../length/sayNumber.ts';
import { compareBundle, importBundle } from '../journal/bundle.ts';
import { misfits } from '../piece/fits.ts';
import { LARGEST_FILE_BYTES, loadPiece } from '../piece/load.ts';
import type { LoadedPiece } from '../piece/loadedPiece.ts';
import { describeAct } from './describeAct.ts';
import { broughtBy, pieceWithBoards } from './filed.ts';
import { noPiece, refuse, tell, write } from './plain.ts';
import { sayCount, sentence } from './saying.ts';
import { changeSettings } from './settings.ts';

/** More than these are mended first, and the file read again. */
const MOST_FAULTS_SHOWN = 40;

/** Undo, loading a piece, settings: what changes the bench itself. */
export function respondToKeeping(bench: Bench, request: KeepingRequest): Response {
  switch (request.kind) {
    case 'scratch that': {
      const act = bench.acts.standing.at(-1);
      if (act === undefined) return refuse('There is nothing to scratch.');
      return write([{ kind: 'scratched', act }], { say: `Scratched: ${describeAct(bench, act)}.`, signal: 'done' });
    }
    case 'put back': {
      const act = bench.acts.scratched.at(-1);
      if (act === undefined) return refuse('Nothing was scratched that can be put back.');
      return write([{ kind: 'put back', act }], { say: `Put back: ${describeAct(bench, act)}.`, signal: 'done' });
    }
    case 'load piece':
      return load(bench, request.text, request.from);
    case 'save piece':
      return savePiece(bench);
    case 'take in everything':
      return takeIn(bench, request.text, request.sure ?? false);
    case 'set':
      return changeSettings(request.setting, bench.state.settings.rounding.unit);
    default:
      return assertNever(request);
  }
}

/** A sound file goes onto the bench; a faulty one leaves the piece on the bench as it was. */
function load(bench: Bench, text: string, from: string): Response {
  const loaded = loadPiece(text);
  if (!loaded.ok) {
    const [first] = loaded.fault;
    const count = sayCount(loaded.fault.length, 'fault', 'faults');
    const stays = bench.state.piece ? ' The piece on the bench stays as it is.' : '';
    const lines = loaded.fault.slice(0, MOST_FAULTS_SHOWN).map(({ line, column, path, message }) => `line ${line}, column ${column}, ${path}: ${message}`);
    return refuse(`That file has ${count}.${stays} The first is in line ${sayNumber(first?.line ?? 1)}: ${first?.message ?? ''}`, {
      note: lines.join('\n'), screen: { name: 'files' },
    });
  }
  const { name, parts } = loaded.value.file;
  const brought = broughtBy(bench, text, loaded.value);
  if (!brought.ok) return refuse(`What that file has besides the piece cannot be read.${bench.state.piece ? ' The piece on the bench stays as it is.' : ''} The screen tells where.`, { note: brought.fault.slice(0, MOST_FAULTS_SHOWN).join('\n'), screen: { name: 'files' } });
  return write([{ kind: 'piece loaded', text, from }, ...brought.value.entries], {
    say: [`${name} is on the bench: ${sayCount(parts.length, 'kind of part', 'kinds of part')}.`, brought.value.say, sayPlanned(loaded.value)].filter(Boolean).join(' '), screen: { name: 'step' }, signal: 'done',
  });
}

/** With its boards and its plan, as it can be opened again here or on another bench. */
function savePiece({ state }: Bench): Response {
  if (!state.piece) return noPiece();
  const { file } = state.piece;
  const text = pieceWithBoards(state, file);
  if (text.length > LARGEST_FILE_BYTES) return refuse('The piece with its boards and its plan is too large for a piece file. Save everything instead.', { screen: { name: 'files' } });
  return tell({ say: '', file: { name: `${file.name.replaceAll(/[^\p{L}\p{N} -]/gu, '')}.json`, text, say: `${file.name} is` } });
}

/** What does not go together in the plan itself is told before any wood is cut. */
function sayPlanned(piece: LoadedPiece): string {
  const { length } = misfits(piece, []);
  return length === 0 ? '' : `${sentence(`${sayCount(length, 'thing', 'things')} to look at in its plan`)} Ask what no longer fits.`;
}

/** A backup is checked whole before anything is asked, and nothing is replaced before the maker has said yes. */
function takeIn(bench: Bench, text: string, sure: boolean): Response {
  const read = importBundle(text);
  if (!read.ok) return refuse(read.fault.message, { screen: { name: 'files' } });
  const { loses, gains, say } = compareBundle(read.value, bench.records, bench.state);
  if (loses === 0 && gains === 0) return tell({ say, note: say });
  if (!sure) {
    const question = `${say} Take it in?`;
    return tell({ say: question, note: question, question: { kind: 'yes or no', onYes: { kind: 'take in everything', text, sure: true } } });
  }
  return { entries: [], journal: read.value.records, reply: { say: 'The backup is on the bench. What was there before is set aside.', signal: 'done', screen: { name: 'step' } } };
}
