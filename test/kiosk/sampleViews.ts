import demo from '../../core/piece/demo/bakers-work-table.json';
import type { Bench, PlanOffer } from '../../core/bench/bench.ts';
import type { Question, Reply } from '../../core/bench/reply.ts';
import type { Screen } from '../../core/bench/screen.ts';
import type { Moment } from '../../core/clock/moment.ts';
import type { Timer } from '../../core/clock/timer.ts';
import type { Entry, JournalRecord } from '../../core/journal/entry.ts';
import { NO_CRAFT } from '../../core/journal/craft.ts';
import { EMPTY_STATE } from '../../core/journal/fold.ts';
import type { Settings } from '../../core/journal/settings.ts';
import type { State } from '../../core/journal/state.ts';
import { nanometres, type Length } from '../../core/length/length.ts';
import { loadPiece } from '../../core/piece/load.ts';
import { problemOf } from '../../core/respond/cuttingState.ts';
import { planFrom } from '../../core/respond/takePlan.ts';
import { stepsOf } from '../../core/respond/views.ts';
import { faceKey, type BoardFace, type FaceReading, type ReadingKind } from '../../core/true/readings.ts';
import type { Board } from '../../core/stock/board.ts';
import { planStock } from '../../core/stock/plan/planStock.ts';
import type { Step } from '../../core/work/step.ts';
import type { HearingView, KioskView, TrialView } from '../../kiosk/hostPort.ts';

const INCH = 25_400_000;
const MINUTE_MS = 60_000;

/** An evening at the bench with the demo piece, invented for the tests. */
export const NOW: Moment = { wallMs: Date.UTC(2026, 10, 25, 19, 42), wallTrusted: true, bootId: 'a', monotonicMs: 3_600_000 };
const at = (minutesAgo: number): Moment => ({ ...NOW, wallMs: NOW.wallMs - minutesAgo * MINUTE_MS, monotonicMs: NOW.monotonicMs - minutesAgo * MINUTE_MS });

export const PIECE_TEXT = JSON.stringify(demo);

function loadDemo(): NonNullable<State['piece']> {
  const loaded = loadPiece(PIECE_TEXT);
  if (!loaded.ok) throw new Error(loaded.fault.map(({ message }) => message).join(' '));
  return loaded.value;
}

export const PIECE = loadDemo();
export const timer = (id: number, name: string, minutes: number, begun: number, kind: Timer['kind'] = 'clamp'): Timer =>
  ({ id, name, kind, durationMs: minutes * MINUTE_MS, basis: 'common practice', startedAt: at(begun) });

export const FRESH: State = { ...EMPTY_STATE, piece: PIECE, pieceText: PIECE_TEXT, pieceName: PIECE.file.name };
export const STEPS: readonly Step[] = stepsOf(FRESH);

const entries: readonly Entry[] = [
  { kind: 'piece loaded', text: PIECE_TEXT, from: 'the demo' },
  ...STEPS.slice(0, 9).map((step): Entry => ({ kind: 'step done', step: step.id })),
  { kind: 'measured', measurement: { size: 'leg.width', copy: 2, length: nanometres((3 + 17 / 32) * INCH) } },
  { kind: 'timer started', timer: { kind: 'clamp', name: 'leg two clamps', durationMs: 45 * MINUTE_MS, basis: 'common practice' } },
  { kind: 'noted', text: 'the third board has a check at the far end' },
];
const records = entries.map((entry, index): JournalRecord => ({ number: index + 1, act: index + 1, at: at(60 - index), entry, before: '', checksum: '' }));

/** Some steps done, one leg measured heavy, two clocks running. */
export const UNDER_WAY: State = {
  ...FRESH, lastNumber: records.length,
  done: new Set(STEPS.slice(0, 9).map(({ id }) => id)),
  measurements: [{ size: 'leg.width', copy: 2, length: nanometres((3 + 17 / 32) * INCH) }],
  places: new Map([['leg/1', 'front left'], ['leg/2', 'front right'], ['leg/3', 'back right'], ['leg/4', 'back left']]),
  timers: [timer(12, 'leg two clamps', 45, 12), timer(13, 'break', 1, 0.5, 'break')],
};

/** The shop as it is this evening, in degrees Celsius. */
const evening = (tempC: number): State => ({ ...UNDER_WAY, airs: new Map([['shop', { tempC, humidityPercent: 80, at: NOW, by: 'said' }]]) });
const HOUSE: State = { ...UNDER_WAY, stockMoisture: 9, airs: new Map([['house dry', { tempC: 20, humidityPercent: 30, at: NOW, by: 'said' }], ['house damp', { tempC: 22, humidityPercent: 65, at: NOW, by: 'said' }]]) };
const END_FRAME_JOINTS = ['shortRail/1 in leg/1', 'shortRail/1 in leg/3', 'sideStretcher/1 in leg/1', 'sideStretcher/1 in leg/3'];
const GLUING_BEFORE: State = { ...evening(12), currentStep: 'glue-up/endFrame.1' };
/** Legs of which much was told, and which stand. */
const FACED: State = {
  ...UNDER_WAY,
  turns: new Map([['leg/1', { front: 'A', up: 'numbered' }], ['leg/2', { front: 'B', up: 'numbered' }], ['leg/3', { front: 'D', up: 'other' }]]),
  likes: new Map([
    ['leg/1', { faces: { A: { wish: 'best', figure: 'straight', mark: 'face side' }, B: { mark: 'face edge' }, C: { wish: 'hide' } }, arch: 'numbered' }],
    ['leg/2', { faces: { A: { wish: 'show' }, B: { wish: 'show', glueLines: true }, D: { wish: 'hide', glueLines: true } } }],
    ['leg/3', { faces: { D: { wish: 'best', figure: 'straight' }, B: { wish: 'hide' } }, up: 'other' }],
    ['longRail/2', { faces: { C: { wish: 'best' } } }],
  ]),
};

/** A rail read through, in wind and hollow, its thickness hardly enough; and two layers of a leg, which gape. */
const thousandths = (count: number): Length => nanometres((INCH / 1000) * count);
const reading = (what: ReadingKind, inchesFromEnd: number, gap: number): FaceReading => ({ what, fromEnd: nanometres(inchesFromEnd * INCH), gap: thousandths(gap) });
const RAIL_FACE: BoardFace = { part: 'longRail', copy: 1, face: 'face' };
const RAIL_EDGE: BoardFace = { part: 'longRail', copy: 2, face: 'edge' };
const LAYER: BoardFace = { part: 'leg', copy: 1, board: 1, face: 'other face' };
const PLACES_READ = [1, 9, 17, 25.5, 33.5, 41.5, 49.5];
const LAYER_READ = [0, 20, 31, 10, 0].map((gap, index) => reading('along', [1, 9, 16.5, 24.5, 32.25][index] ?? 1, gap));
const READ: State = { ...UNDER_WAY, crafts: new Map([[PIECE.file.name, { ...NO_CRAFT, surfaces: new Map([
  [faceKey(RAIL_FACE), [reading('sticks', 49.5, 190), reading('sticks', 25.5, 120), ...[0, 14, 26, 31, 22, 10, 0].map((gap, index) => reading('along', PLACES_READ[index] ?? 0, gap)), reading('across', 1, -8), reading('across', 25.5, 12), reading('first diagonal', 0, 50_780), reading('second diagonal', 0, 50_710),
    ...[1340, 1335, 1328, 1318, 1322, 1335, 1342].map((thick, index) => reading('thickness', PLACES_READ[index] ?? 0, thick))]],
  [faceKey(RAIL_EDGE), PLACES_READ.flatMap((at, index) => [reading('square', at, 12 - 3 * index), reading('along', at, [0, 5, 9, 10, 8, 4, 0][index] ?? 0)])],
  [faceKey(LAYER), LAYER_READ], [faceKey({ ...LAYER, board: 2, face: 'face' }), LAYER_READ],
]) }]]) };
const askedOf = (of: BoardFace, what: ReadingKind): { readonly question: Question } => ({ question: { kind: 'surface reading', of, what, fromEnd: nanometres(17 * INCH), about: what === 'thickness' ? 'thickness' : of.face, leftOut: [] } });

/** Boards as a stack of hard maple has them, numbered from 1. */
const board = (number: number, length: number, width: number, more: Partial<Board> = {}): Board =>
  ({ number, species: 'hard maple', length: nanometres(length * INCH), width: nanometres(width * INCH), farWidth: nanometres(width * INCH), thickness: nanometres(2 * INCH), defects: [], sapwood: nanometres(0), ...more });
const knot = (from: number, to: number, low: number, high: number): Board['defects'][number] => ({ what: 'knot', from: nanometres(from * INCH), to: nanometres(to * INCH), fromEdge: nanometres(low * INCH), toEdge: nanometres(high * INCH), face: 'through' });
const BOARDS = [
  board(1, 96, 8.25, { defects: [knot(30, 34, 2, 3), knot(70, 71.5, 5, 6)], sapwood: nanometres(INCH), grain: 'rift', colour: '2' }), board(2, 120, 10, { defects: [knot(40, 44, 3, 5)] }), board(3, 100, 9.5, { farWidth: nanometres(8 * INCH) }),
  board(4, 96, 10), board(5, 120, 8), board(6, 120, 9), board(7, 143.984375, 9.484375), board(12, 60, 6, { thickness: nanometres(INCH), cutFrom: 2 }), board(13, 120, 10),
];
const STACKED: State = { ...UNDER_WAY, lastBoard: 13, rack: new Map(BOARDS.map((one) => [one.number, one])) };

function offerOn(state: State): PlanOffer {
  const problem = problemOf(state);
  if (problem === undefined) throw new Error('no piece');
  return { problem, plan: planStock(problem, () => false, () => undefined), looking: false };
}

const OFFERED = offerOn(STACKED);
const SHORT: State = { ...STACKED, rack: new Map([...STACKED.rack].slice(0, 2)) };
/** The plan is taken, and three cuts of its first board are made. */
function sawing(): State {
  const plan = OFFERED.plan && planFrom(STACKED, OFFERED.plan);
  if (!plan) throw new Error('no plan');
  return { ...STACKED, plans: new Map([[PIECE.file.name, { ...plan, boards: plan.boards.map((one, index) => (index === 0 ? { ...one, made: 3 } : one)) }]]) };
}
const SAWING = sawing();

export interface Given {
  readonly state?: State;
  readonly settings?: Partial<Settings>;
  readonly reply?: Reply;
  readonly question?: Question;
  readonly offer?: PlanOffer;
  readonly view?: Partial<KioskView>;
}

/** The model that ships, and everything can be heard. */
const HEARING: HearingView = { model: { name: 'built-in', loadMs: 840 }, models: [{ name: 'built-in', chosen: true, usable: true }], cannotHear: [], guessed: [], trial: null };
const TRIAL: TrialView = { peakDb: -14.2, calls: 0, heard: [], faults: [], playableSeconds: 0, playing: false };

/** What the kiosk shows on this screen. */
export function viewOf(screen: Screen, { state = UNDER_WAY, settings = {}, reply, question, offer, view = {} }: Given = {}): KioskView {
  const bench: Bench = {
    state: { ...state, settings: { ...state.settings, ...settings } },
    conversation: { screen, lastReply: reply ?? null, question: question ?? null, ...(offer === undefined ? {} : { offer }), ...(reply?.inTurn === undefined || reply.inTurn === 'over' ? {} : { inTurn: { screen, ...reply.inTurn } }) },
    records, acts: { standing: records.map(({ act }) => act), scratched: [], gone: new Set() },
  };
  return {
    bench, now: NOW, theme: 'light', notices: [], shelf: [{ name: 'Baker\'s work table', from: 'pieces folder', address: 'a' }, { name: 'Seed chest', from: 'stick', address: 'b' }],
    microphones: [{ id: 'm', label: 'USB microphone', chosen: true }], hearing: HEARING,
    ear: { state: 'waiting', sentence: '', levelDb: -32, ambientDb: -58, heard: 'how long is the long rail' },
    mouth: { state: 'silent', sentence: '', words: '' }, keeping: { state: 'kept', sentence: '' }, ...view,
  };
}

const longest = [...STEPS].sort((a, b) => JSON.stringify(b.say).length - JSON.stringify(a.say).length)[0];
const mostSizes = [...STEPS].sort((a, b) => b.sizes.length - a.sizes.length)[0];
const mostCautions = [...STEPS].sort((a, b) => JSON.stringify(b.cautions).length - JSON.stringify(a.cautions).length)[0];
const fullest = [...STEPS].sort((a, b) => JSON.stringify([b.show, b.check, b.cautions]).length - JSON.stringify([a.show, a.check, a.cautions]).length)[0];
const step = (one: Step | undefined): Screen => ({ name: 'step', ...(one === undefined ? {} : { step: one.id }) });
const inFull = (one: Step | undefined): Screen => ({ name: 'step', inFull: true, ...(one === undefined ? {} : { step: one.id }) });
const SAID = 'Long rail, shoulder to shoulder, thirty-one, and five eighths inches, full. Two long rails, both the same.';

const MARKED: Screen = { name: 'reckoning', result: { question: 'marks on leg 1: mortises start', answers: ['long rail', 'short rail', 'side stretcher', 'back stretcher'].map((label, index) => ({ label, length: nanometres((index * 7 + 3.75) * INCH) })), note: 'They end: long rail 4 1/2 in, short rail 4 1/2 in, side stretcher 25 3/4 in, back stretcher 21 3/4 in. From the top end.' } };
const toldOf = (note: string, lengths: readonly Length[] = []): Reply => ({ say: 'Side stretcher mortise.', note, inTurn: { items: Array.from({ length: 18 }, () => ({ say: 'Side stretcher mortise.', note, lengths })), at: 4 } });

/** Every screen in the states that fill it most: for looking at, and for proving that nothing overflows. */
export const SAMPLES: Readonly<Record<string, KioskView>> = {
  'air, not told': viewOf({ name: 'air' }),
  'air, too cold': viewOf({ name: 'air' }, { state: evening(5) }),
  'air, with care': viewOf({ name: 'air' }, { state: evening(12) }),
  'wood, house not told': viewOf({ name: 'wood' }),
  'wood, the year': viewOf({ name: 'wood' }, { state: HOUSE }),
  'glue-up, before': viewOf({ name: 'gluing' }, { state: GLUING_BEFORE }),
  'glue-up, going on': viewOf({ name: 'gluing' }, { state: { ...GLUING_BEFORE, gluing: { step: 'glue-up/endFrame.1', mode: 'rehearsal', joints: END_FRAME_JOINTS, begunAt: NOW, doneAt: [NOW, NOW] } } }),
  'step': viewOf({ name: 'step' }),
  'step, refused': viewOf({ name: 'step' }, { reply: { say: 'Not yet.', note: 'Not yet. Glue on faces that do not meet dry will not hold. First: dry check, leg 1 of 4.' }, view: { mouth: { state: 'speaking', sentence: '', words: SAID } } }),
  'step, longest sentence': viewOf(step(longest)),
  'step, most sizes': viewOf(step(mostSizes)),
  'step, most cautions': viewOf(step(mostCautions)),
  'step in full': viewOf(inFull(fullest)),
  'step in full, most sizes': viewOf(inFull(mostSizes)),
  'step, no piece': viewOf({ name: 'step' }, { state: EMPTY_STATE }),
  'steps': viewOf({ name: 'steps' }),
  'parts': viewOf({ name: 'parts' }),
  'part, long rail': viewOf({ name: 'part', part: 'longRail' }),
  'part, leg 2': viewOf({ name: 'part', part: 'leg', copy: 2 }),
  'part, leg 1 with its letters': viewOf({ name: 'part', part: 'leg', copy: 1 }, { state: FACED }),
  'size, leg with its letters': viewOf({ name: 'size', size: 'leg.thickness', copy: 3 }, { state: FACED }),
  'part, top': viewOf({ name: 'part', part: 'top' }),
  'part, button': viewOf({ name: 'part', part: 'button' }),
  'size, shoulders': viewOf({ name: 'size', size: 'longRail.shoulders' }),
  'size, measured leg': viewOf({ name: 'size', size: 'leg.width', copy: 2 }),
  'size, parameter': viewOf({ name: 'size', size: Object.keys(PIECE.file.parameters)[0] ?? '' }),
  'size, tenon length': viewOf({ name: 'size', size: 'longRailTenon.tenonLength' }),
  'size, mortise from the top': viewOf({ name: 'size', size: 'longRailTenon.fromTop' }),
  'size, mortise far down': viewOf({ name: 'size', size: 'backStretcherTenon.fromTop' }),
  'size, setback': viewOf({ name: 'size', size: 'shortRailTenon.setback' }),
  'size, shoulder': viewOf({ name: 'size', size: 'longRailTenon.outerShoulder' }),
  'size, full and scant': viewOf({ name: 'size', size: 'longRail.shoulders' }, { settings: { rounding: { unit: 'inch', denominator: 8 } } }),
  'size, millimetres': viewOf({ name: 'size', size: 'longRail.length' }, { settings: { rounding: { unit: 'millimetre', step: nanometres(500_000) } } }),
  'why': viewOf({ name: 'why', size: 'longRail.length' }),
  'moved': viewOf({ name: 'moved' }),
  'moved, nothing': viewOf({ name: 'moved' }, { state: FRESH }),
  'size, haunch': viewOf({ name: 'size', size: 'longRailTenon.haunchLength' }),
  'question, of a caliper': viewOf({ name: 'step' }, { reply: { say: '', note: 'The instrument reads 3 17/64 in.' }, question: { kind: 'which', choices: ['leg three thickness', 'leg one width', 'leg two width', 'leg one thickness'].map((say) => ({ say, request: { kind: 'where am I' } })) } }),
  'record': viewOf({ name: 'record', size: 'longRail.shoulders', copy: 2 }, { view: { ear: { state: 'listening', sentence: '', levelDb: -12, ambientDb: -58, heard: '' } } }),
  'reckoning': viewOf({ name: 'reckoning', result: { question: '31 5/8 in into 7 equal spaces', answers: [{ label: 'each', length: nanometres(Math.round((31.625 * INCH) / 7)) }], note: 'Three a hair more, to add up.' } }),
  'reckoning, many': viewOf({ name: 'reckoning', result: { question: '49 63/64 in ÷ 40 spaces', answers: [{ label: 'each', length: nanometres(1.25 * INCH) }, ...Array.from({ length: 39 }, (_, index) => ({ label: `mark ${index + 1}`, length: nanometres((index + 10 + 61 / 64) * INCH) }))] } }),
  'reckoning, empty': viewOf({ name: 'reckoning' }),
  'reckoning, told in turn': viewOf(MARKED, { reply: toldOf('5 of 18: side stretcher mortise, only back left and back right: from 23 3/4 in to 25 3/4 in, from the top end', [nanometres(23.75 * INCH), nanometres(25.75 * INCH)]) }),
  'cutting, told in turn': viewOf({ name: 'cutting' }, { state: SAWING, reply: toldOf('5 of 18: leg layer: 17 9/16 in to 50 13/16 in from the marked end, 5 3/16 in to 8 13/16 in from the reference edge, resawn, number 2 from the marked face') }),
  'step, chopping': viewOf({ name: 'step', step: 'chop mortises/leg/1/longRailTenon' }),
  'chopping, marking': viewOf({ name: 'chopping', joint: 'longRailTenon', stage: 1 }),
  'chopping, flag': viewOf({ name: 'chopping', joint: 'longRailTenon', stage: 2 }),
  'chopping, first pass': viewOf({ name: 'chopping', joint: 'longRailTenon', stage: 3 }),
  'chopping, levering': viewOf({ name: 'chopping', joint: 'backStretcherTenon', stage: 4 }),
  'layout, a leg of which nothing is settled': viewOf({ name: 'layout', part: 'leg', face: 1 }, { state: FRESH }),
  'layout, leg 3': viewOf({ name: 'layout', part: 'leg', copy: 3, face: 2 }, { state: FACED, reply: { say: '', note: 'That mark is for the other hand: leg four, at hand, takes the long rail in B and the short rail in C; leg three takes the long rail in C and the short rail in B.' } }),
  'layout, leg without letters': viewOf({ name: 'layout', part: 'leg', copy: 4, face: 1 }, { state: FACED, settings: { rounding: { unit: 'millimetre', step: nanometres(500_000) } } }),
  'layout, long rail': viewOf({ name: 'layout', part: 'longRail', copy: 1, face: 1 }),
  'layout, groove': viewOf({ name: 'layout', part: 'longRail', face: 3 }),
  'layout, nothing marked': viewOf({ name: 'layout', part: 'top', face: 1 }),
  'step, laying out': viewOf({ name: 'step', step: 'joint layout/leg/longRailTenon' }, { state: FACED }),
  'paper': viewOf({ name: 'paper' }),
  'paper, no piece': viewOf({ name: 'paper' }, { state: EMPTY_STATE }),
  'paper, layout of the leg': viewOf({ name: 'paper', sheet: { what: 'layout', part: 'leg' } }),
  'paper, nothing to lay out': viewOf({ name: 'paper', sheet: { what: 'layout', part: 'top' } }),
  'paper, cut list': viewOf({ name: 'paper', sheet: { what: 'cut list' } }),
  'truing, nothing read': viewOf({ name: 'truing', of: { part: 'leg', copy: 2, board: 3, face: 'face' } }),
  'truing, a rail': viewOf({ name: 'truing', of: RAIL_FACE }, { state: READ }),
  'truing, how a rail is': viewOf({ name: 'truing', of: RAIL_FACE, shows: 'shape' }, { state: READ }),
  'truing, how an edge is': viewOf({ name: 'truing', of: RAIL_EDGE, shows: 'shape' }, { state: READ }),
  'truing, an edge': viewOf({ name: 'truing', of: RAIL_EDGE }, { state: READ }),
  'truing, a layer that gapes': viewOf({ name: 'truing', of: LAYER, shows: 'shape' }, { state: READ }),
  'truing, in millimetres': viewOf({ name: 'truing', of: RAIL_FACE }, { state: READ, settings: { rounding: { unit: 'millimetre', step: nanometres(500_000) } } }),
  'truing, which board': viewOf({ name: 'truing' }, { state: { ...READ, done: new Set(STEPS.map(({ id }) => id)), currentStep: null } }),
  'truing, sticks asked': viewOf({ name: 'truing', of: RAIL_FACE }, { state: READ, ...askedOf(RAIL_FACE, 'sticks') }),
  'truing, a gap asked': viewOf({ name: 'truing', of: RAIL_FACE }, { state: READ, ...askedOf(RAIL_FACE, 'along') }),
  'truing, the square asked': viewOf({ name: 'truing', of: RAIL_EDGE }, { state: READ, ...askedOf(RAIL_EDGE, 'square') }),
  'truing, thickness asked': viewOf({ name: 'truing', of: RAIL_FACE }, { state: READ, ...askedOf(RAIL_FACE, 'thickness') }),
  'truing, a diagonal asked': viewOf({ name: 'truing', of: RAIL_FACE }, { state: READ, ...askedOf(RAIL_FACE, 'first diagonal') }),
  'truing, refused': viewOf({ name: 'truing', of: RAIL_FACE }, { state: READ, reply: { say: '', note: 'There is no such place: long rail one, reference face is fifty, and a half inches long.', signal: 'wrong' } }),
  'faces, nothing told': viewOf({ name: 'faces', part: 'leg' }, { state: FRESH }),
  'faces, as they stand': viewOf({ name: 'faces', part: 'leg' }, { state: FACED }),
  'faces, proposed': viewOf({ name: 'faces', part: 'leg', shows: 'best' }, { state: FACED, reply: { say: '', note: 'As good with legs two and four changed over. Legs two and three may be turned in their places without loss.' } }),
  'faces, second best': viewOf({ name: 'faces', part: 'leg', shows: 'second' }, { state: FACED, reply: { say: '', note: 'Second best: legs one and three changed over; the front faces of legs one and three do not match.' } }),
  'faces of leg 1': viewOf({ name: 'faces', part: 'leg', copy: 1 }, { state: FACED }),
  'faces of leg 1, face A': viewOf({ name: 'faces', part: 'leg', copy: 1, face: 'A' }, { state: FACED }),
  'faces of the long rails': viewOf({ name: 'faces', part: 'longRail', shows: 'best' }, { state: FACED }),
  'clocks': viewOf({ name: 'clocks' }, { state: { ...UNDER_WAY, timers: [timer(1, 'leg one clamps', 45, 12), timer(2, 'leg two clamps', 45, 2), timer(3, 'the rails rest', 3 * 24 * 60, 60, 'rest'), timer(4, 'break', 1, 0.5, 'break')] } }),
  'clocks, one': viewOf({ name: 'clocks' }, { state: { ...UNDER_WAY, timers: [timer(1, 'leg one clamps', 45, 12)] } }),
  'clocks, none': viewOf({ name: 'clocks' }, { state: FRESH }),
  'journal': viewOf({ name: 'journal' }),
  'settings': viewOf({ name: 'settings' }),
  'files': viewOf({ name: 'files' }),
  'help': viewOf({ name: 'help' }),
  'microphone': viewOf({ name: 'microphone' }, { view: { hearing: { ...HEARING, trial: TRIAL } } }),
  'microphone, at its fullest': viewOf({ name: 'microphone' }, { view: {
    microphones: [{ id: 'm', label: 'USB audio device with a rather long name (0d8c:0014)', chosen: true }, { id: 'n', label: 'Built-in', chosen: false }],
    hearing: {
      model: { name: 'a-large-general-model-of-my-own-0.22.zip', loadMs: 12_345 }, cannotHear: ['kumiko', 'stretcher', 'stretchers', 'dovetail', 'rabbet', 'tenon', 'mortise', 'chisel'], guessed: ['yakumono'],
      models: [{ name: 'built-in', chosen: false, usable: true }, { name: 'a-large-general-model-of-my-own-0.22.zip', chosen: true, usable: true }, { name: 'bad.zip', chosen: false, usable: false }],
      trial: { ...TRIAL, calls: 3, playableSeconds: 4.2, heard: [
        { words: 'bench record leg two width three and five sixteenths', addressed: true, would: 'would write down leg two, width, three, and five sixteenths inches; would say “Leg two, width, three, and five sixteenths inches, noted. One sixteenth of an inch over the plan.”' },
        { words: 'how long … the rail', addressed: false, would: '“bench” did not come first, so nothing; else: not understood: I do not know “… the rail”' },
        { words: 'bench', addressed: true, would: 'my word: I would listen for what follows' },
      ] },
    },
  } }),
  'microphone, faults': viewOf({ name: 'microphone' }, { view: { ear: { state: 'waiting', sentence: '', levelDb: -3, ambientDb: -31, heard: '' }, hearing: { ...HEARING, trial: { ...TRIAL, peakDb: 0, faults: ['Loud sounds are cut off: turn the microphone’s input level down in the system’s sound settings, or move it away.'] } } } }),
  'microphone, none': viewOf({ name: 'microphone' }, { view: { microphones: [], ear: { state: 'fault', sentence: 'I cannot hear: there is no microphone. Plug it in; I go on by myself. The keys do everything.', levelDb: null, ambientDb: null, heard: '' }, hearing: { ...HEARING, model: null, trial: TRIAL } } }),
  'menu': viewOf({ name: 'menu' }),
  'menu, faults': viewOf({ name: 'menu' }, { view: { ear: { state: 'fault', sentence: 'No microphone is plugged in. Plug one in; keys work meanwhile.', levelDb: null, ambientDb: null, heard: '' }, notices: ['No microphone is plugged in. Plug one in; keys work meanwhile.', 'The second copy could not be written: the disk is full. Free some space.'] } }),
  'sharpening': viewOf({ name: 'edges' }, { state: { ...UNDER_WAY, cutting: { edge: 'mortise chisel', since: at(3) }, edges: new Map([['mortise chisel', { minutesSinceStrop: 0, minutesSinceHoning: 7, stropsSinceHoning: 6, honingsSinceGrinding: 2 }], ['jack plane', { minutesSinceStrop: 22, minutesSinceHoning: 22, stropsSinceHoning: 0, honingsSinceGrinding: 1 }]]) } }),
  'rack': viewOf({ name: 'boards' }, { state: STACKED }),
  'rack, empty': viewOf({ name: 'boards' }),
  'a board of the rack': viewOf({ name: 'boards', board: 1 }, { state: STACKED }),
  'cutting, no plan': viewOf({ name: 'cutting' }, { state: STACKED }),
  'cutting, rough sizes': viewOf({ name: 'cutting', sizes: true }, { state: SAWING }),
  'cutting, looking': viewOf({ name: 'cutting' }, { state: STACKED, offer: { ...OFFERED, looking: true } }),
  'cutting, not enough': viewOf({ name: 'cutting' }, { state: SHORT, offer: offerOn(SHORT) }),
  'cutting, taken': viewOf({ name: 'cutting' }, { state: SAWING }),
  'rough, a leg': viewOf({ name: 'rough', part: 'leg' }, { state: SAWING }),
  'rough, a part that hides a knot': viewOf({ name: 'rough', part: 'longRail' }, { state: { ...SAWING, rough: new Map([[SAWING.pieceName ?? '', new Map([['longRail', { longer: nanometres(INCH / 2), wider: nanometres(INCH / 4), thicker: nanometres(INCH / 8), mayHideDefect: true }]])]]) } }),
  'buying': viewOf({ name: 'buying' }, { state: { ...SHORT, sawing: { ...SHORT.sawing, centsPerBoardFoot: 900 } }, offer: offerOn(SHORT) }),
  'buying, a board helps': viewOf({ name: 'buying', board: board(14, 72, 8) }, { state: SHORT, offer: offerOn(SHORT), reply: { say: 'Yes: seventy-two inches by eight inches, eight quarter gives two long rails and one top board, seventy-one percent of it used, eight board feet. Say bought when you take it.' } }),
  'due': viewOf({ name: 'step' }, { state: { ...UNDER_WAY, timers: [timer(1, 'leg two clamps', 45, 49), timer(2, 'open time', 8, 9, 'open time')] } }),
  'question, yes or no': viewOf({ name: 'step' }, { reply: { say: '', note: 'That is nine thirty-seconds of an inch over the plan. Is leg two, width really three, and twenty-five thirty-seconds inches?' }, question: { kind: 'yes or no', onYes: { kind: 'step done' } } }),
  'question, which': viewOf({ name: 'step' }, { reply: { say: 'Long rail, or short rail?' }, question: { kind: 'which', choices: ['long rail', 'short rail', 'side stretcher', 'back stretcher'].map((say) => ({ say, request: { kind: 'where am I' } })) } }),
};
