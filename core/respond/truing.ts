import { assertNever } from '../result.ts';
import type { Bench } from '../bench/bench.ts';
import type { Response } from '../bench/reply.ts';
import type { SideMeant, TruingRequest } from '../bench/request.ts';
import type { Moment } from '../clock/moment.ts';
import { subtract } from '../length/arithmetic.ts';
import type { State } from '../journal/state.ts';
import { renderTelling } from '../reckoning/telling.ts';
import type { SideAsRead, SideToTrue } from '../true/asRead.ts';
import { nextSide, turnedTo, type BoardFace } from '../true/readings.ts';
import { refuse, tell, write } from './plain.ts';
import { sentence, spoken } from './saying.ts';
import { toSay } from './toSay.ts';
import { willTheyClose } from './truingMating.ts';
import { askNext, takeReading } from './truingReading.ts';
import { readingsCome, sideMeant, sideToTrue, takenOf } from './truingSide.ts';
import { stageWords } from './truingStages.ts';
import { aloud, saySide, verdictWords } from './truingWords.ts';

/** More than this many stages are on the screen, not in the ear. */
const MOST_SAID = 3;

/** Readings of a face, and what follows from them. */
export function respondToTruing(bench: Bench, request: TruingRequest, now: Moment): Response {
  const { state } = bench;
  switch (request.kind) {
    case 'surface reading': return takeReading(bench, request, now);
    case 'leave out reading': return leaveOut(bench);
    case 'other side': return withSide(bench, request.of, (of) => tell({ say: sentence(saySide(state, nextSide(of))), screen: { name: 'truing', of: nextSide(of) } }));
    case 'read side': return withSide(bench, request.of, (of) => readSide(state, of, request.about));
    case 'surface planed': return withSide(bench, request.of, (of) => planed(state, of));
    case 'what to plane': return withReadings(bench, request.of, (side, found, of) => tell({ say: whatToPlane(state, side, found), screen: { name: 'truing', of } }));
    case 'is it flat': return withReadings(bench, request.of, (side, found, of) => tell({ say: `${sentence(saySide(state, of))} ${verdictWords(side, found, aloud(state)).join(' ')}`, screen: { name: 'truing', of, shows: 'shape' } }));
    case 'thickness left': return withReadings(bench, thickSide(bench, request.of), (side, found, of) => tell({ say: thicknessWords(state, side, found), screen: { name: 'truing', of, shows: 'shape' } }));
    case 'will they close': return withSide(bench, request.of, (of) => willTheyClose(state, of));
    default: return assertNever(request);
  }
}

function withSide(bench: Bench, meant: SideMeant, act: (of: BoardFace) => Response): Response {
  const side = sideMeant(bench, meant);
  return side.ok ? act(side.value) : refuse(side.fault);
}

function withReadings(bench: Bench, meant: SideMeant, act: (side: SideToTrue, found: SideAsRead, of: BoardFace) => Response): Response {
  const { state } = bench;
  return withSide(bench, meant, (of) => {
    const side = sideToTrue(state, of);
    const found = readingsCome(state, of);
    if (!side || !found) return refuse('The piece on the bench has no such board.');
    const screen = { name: 'truing', of } as const;
    if (side.taken.length === 0) return refuse(`Nothing was read of ${saySide(state, of)} yet. ${toSay('Have its readings taken first.', 'Say: take the readings.')}`, { screen });
    if (!found.ok) return refuse(renderTelling(found.fault.message, (length) => spoken(state, length)), { screen });
    return act(side, found.value, of);
  });
}

/** Thickness is asked of the board, not of its edge. */
function thickSide(bench: Bench, meant: SideMeant): SideMeant {
  const side = sideMeant(bench, meant);
  return side.ok && side.value.face !== 'other face' ? turnedTo(side.value, 'face') : meant;
}

function readSide(state: State, of: BoardFace, whole?: 'thickness' | 'diagonals'): Response {
  const next = askNext(state, of, { about: whole ?? of.face, leftOut: [] });
  if (next) return tell({ ...next, say: `${sentence(saySide(state, of))} ${next.say}` });
  return tell({ say: `All of ${saySide(state, of)} is read. ${toSay('Ask what to plane, or tell me when you have planed it.', 'Say what do I plane; or, when you have planed it: I planed it.')}`, screen: { name: 'truing', of } });
}

function leaveOut({ state, conversation: { question } }: Bench): Response {
  if (question?.kind !== 'surface reading') return refuse('I have asked for no reading.');
  const { of, about, what, fromEnd, leftOut } = question;
  const next = askNext(state, of, { about, leftOut: [...leftOut, { what, fromEnd }] });
  return tell(next ?? { say: 'That was the last one.', screen: { name: 'truing', of } });
}

function planed(state: State, of: BoardFace): Response {
  if (takenOf(state, of).length === 0) return refuse(`Nothing was read of ${saySide(state, of)}, so there is nothing to forget.`, { screen: { name: 'truing', of } });
  return write([{ kind: 'surface planed', of }], { say: `${sentence(`${saySide(state, of)} is planed`)} Take the readings again, and see.`, signal: 'done', screen: { name: 'truing', of } });
}

function whatToPlane(state: State, side: SideToTrue, found: SideAsRead): string {
  const telling = aloud(state);
  if (found.trueEnough) return verdictWords(side, found, telling).slice(0, 1).concat('Nothing more to plane.').join(' ');
  const stages = stageWords(side, found, telling);
  const most = sentence(`${telling.count(found.board.plan.most, 'shaving', 'shavings')} of ${telling.gap(side.shaving)} at the highest place`);
  return [most, ...stages.slice(0, MOST_SAID), ...(stages.length > MOST_SAID ? ['The rest is on the screen.'] : [])].join(' ');
}

/** What both faces true leave, and whether it is what was planned. */
export function thicknessWords(state: State, side: SideToTrue, found: SideAsRead, telling = aloud(state)): string {
  const { thickness, laidForThickness } = found.board;
  const { planned } = side;
  if (!thickness) return 'I do not know how thick it is. Have its thickness taken first.';
  const most = `Both faces true leave ${telling.size(thickness.most)} at the most`;
  if (planned === undefined) return sentence(most);
  if (thickness.most < planned) return `${most}: ${telling.gap(subtract(planned, thickness.most))} less than the ${telling.size(planned)} planned. What gives: record it as made, and what stands on it follows; or a shorter piece of this board, or another board.`;
  if (laidForThickness) return `The ${telling.size(planned)} planned can be had, if this face is laid for it: plane what the screen shows. The least cut alone would leave ${telling.size(thickness.afterLeastCut)}.`;
  return `The ${telling.size(planned)} planned can be had: ${telling.size(thickness.afterLeastCut)} are left when this face is true, ${telling.gap(subtract(thickness.afterLeastCut, planned))} to come off the other.`;
}
