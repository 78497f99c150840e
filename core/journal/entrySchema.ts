import * as v from 'valibot';
import { nanometres } from '../length/length.ts';
import { TIMER_KINDS } from '../clock/timer.ts';
import { LONGEST_TIMER_MS, SHORTEST_TIMER_MS } from '../clock/sayDuration.ts';
import type { Moment } from '../clock/moment.ts';
import { FACES, type Turn } from '../faces/face.ts';
import { LEVELS } from '../faces/levels.ts';
import { QUALITIES } from '../faces/likes.ts';
import { LARGEST_FILE_BYTES } from '../piece/load.ts';
import { AIR_PLACES } from './craft.ts';
import { CUTTING_SCHEMAS } from './cuttingSchema.ts';
import type { Entry } from './entry.ts';
import { CARES } from '../edge/upkeep.ts';
import { EDGES } from './edges.ts';
import { READING_KINDS, TRUED_FACES } from '../true/readings.ts';
import { ADDRESS_WORDS, STANDINGS, type Settings } from './settings.ts';

/**
 * What may stand in the journal, field by field. Whatever is stored is read through these and never believed:
 * unknown fields and kinds are refused, texts are limited, and what comes out is made anew.
 */
const LONGEST_NOTE = 10_000;
const MOST_ASSIGNED = 100;

const text = (longest: number) => v.pipe(v.string(), v.maxLength(longest));
const named = (longest: number) => v.pipe(v.string(), v.minLength(1), v.maxLength(longest));
const whole = (from: number, to: number) => v.pipe(v.number(), v.safeInteger(), v.minValue(from), v.maxValue(to));
const finite = (from: number, to: number) => v.pipe(v.number(), v.finite(), v.minValue(from), v.maxValue(to));

const recordNumber = whole(1, Number.MAX_SAFE_INTEGER);
const copy = v.exactOptional(whole(1, 10_000));
const sizeName = named(200);
const step = named(300);
const length = v.pipe(v.number(), v.safeInteger(), v.transform(nanometres));

/** Wall time within what a Date can hold (±100 million days, ECMA-262 21.4.1.1). */
const MomentSchema = v.strictObject({
  wallMs: finite(-8.64e15, 8.64e15),
  wallTrusted: v.boolean(),
  bootId: named(100),
  monotonicMs: finite(0, Number.MAX_SAFE_INTEGER),
}) satisfies v.GenericSchema<unknown, Moment>;

const rounding = v.variant('unit', [
  v.strictObject({ unit: v.literal('inch'), denominator: v.picklist([8, 16, 32, 64]) }),
  v.strictObject({ unit: v.literal('millimetre'), step: v.pipe(v.number(), v.safeInteger(), v.minValue(1), v.maxValue(100_000_000), v.transform(nanometres)) }),
]);

/** Of a honing guide: up to 100 mm. */
const guideSize = v.pipe(v.number(), v.safeInteger(), v.minValue(0), v.maxValue(100_000_000), v.transform(nanometres));

export const SettingSchema = v.strictObject({
  rounding: v.exactOptional(rounding),
  volume: v.exactOptional(whole(0, 10)),
  speech: v.exactOptional(v.picklist(['normal', 'slow'])),
  theme: v.exactOptional(v.picklist(['light', 'dark', 'by daylight'])),
  textPercent: v.exactOptional(v.picklist([100, 125])),
  addressWord: v.exactOptional(v.picklist(ADDRESS_WORDS)),
  listening: v.exactOptional(v.boolean()),
  speakUp: v.exactOptional(v.boolean()),
  waitForLull: v.exactOptional(v.boolean()),
  standing: v.exactOptional(v.picklist(STANDINGS)),
  microphone: v.exactOptional(text(300)),
  breakSeconds: v.exactOptional(whole(1, 24 * 3600)),
  paper: v.exactOptional(v.picklist(['a4', 'letter'])),
  instrumentUnit: v.exactOptional(v.picklist(['inch', 'millimetre'])),
  guideRoller: v.exactOptional(guideSize),
  guideAxis: v.exactOptional(guideSize),
  clampLbf: v.exactOptional(whole(20, 20_000)),
  shaving: v.exactOptional(v.pipe(v.number(), v.safeInteger(), v.minValue(5_000), v.maxValue(2_000_000), v.transform(nanometres))),
  stick: v.exactOptional(v.pipe(v.number(), v.safeInteger(), v.minValue(50_000_000), v.maxValue(3_000_000_000), v.transform(nanometres))),
  temperature: v.exactOptional(v.picklist(['celsius', 'fahrenheit'])),
}) satisfies v.GenericSchema<unknown, Partial<Settings>>;

const timerRequest = v.strictObject({
  kind: v.picklist(TIMER_KINDS),
  name: named(100),
  durationMs: whole(SHORTEST_TIMER_MS, LONGEST_TIMER_MS),
  basis: text(300),
});

const someLength = v.exactOptional(v.pipe(whole(0, 10_000_000_000), v.transform(nanometres)));
const jointIds = v.pipe(v.array(named(300)), v.maxLength(200));

/** What a label may say: minutes and hours, and a temperature in degrees Celsius. */
const label = v.strictObject({
  openMinutes: v.exactOptional(finite(0.1, 1_000)), closedMinutes: v.exactOptional(finite(0, 1_000)), clampMinutes: v.exactOptional(finite(0.1, 20_000)),
  workHours: v.exactOptional(finite(0, 1_000)), fullCureHours: v.exactOptional(finite(0, 2_000)), lowestC: v.exactOptional(finite(-30, 80)),
});
/** Up to 10 m from the end of a board, and as much from corner to corner; a gap may go either way. */
const gap = v.pipe(whole(-500_000_000, 12_000_000_000), v.transform(nanometres));
const boardFace = v.strictObject({ part: named(200), copy, board: v.exactOptional(whole(1, 1_000)), face: v.picklist(TRUED_FACES) });
const faceReading = v.strictObject({ what: v.picklist(READING_KINDS), fromEnd: v.pipe(whole(0, 10_000_000_000), v.transform(nanometres)), gap });
const ofPart = { part: named(200) };
const ofCopy = { ...ofPart, copy: whole(1, 10_000) };
const end = v.picklist(['numbered', 'other']);
const turn = v.strictObject({ front: v.picklist(FACES), up: end }) satisfies v.GenericSchema<unknown, Turn>;
const assigned = v.strictObject({ copy: whole(1, 10_000), place: named(200), turn: v.exactOptional(turn) });

const ofTimer = { timer: recordNumber };

export const EntrySchema = v.variant('kind', [
  v.strictObject({ kind: v.literal('piece loaded'), text: text(LARGEST_FILE_BYTES), from: text(1_000), afresh: v.exactOptional(v.boolean()) }),
  v.strictObject({ kind: v.literal('measured'), measurement: v.strictObject({ size: sizeName, copy, length }) }),
  v.strictObject({ kind: v.literal('measurement withdrawn'), size: sizeName, copy }),
  v.strictObject({ kind: v.literal('step done'), step }),
  v.strictObject({ kind: v.literal('step skipped'), step }),
  v.strictObject({ kind: v.literal('step reopened'), step }),
  v.strictObject({ kind: v.literal('went to step'), step }),
  v.strictObject({ kind: v.literal('faces liked'), ...ofCopy, faces: v.pipe(v.array(v.picklist(FACES)), v.maxLength(FACES.length)), as: v.picklist(QUALITIES) }),
  v.strictObject({ kind: v.literal('end liked'), ...ofCopy, what: v.picklist(['up', 'arch']), end: v.picklist(['numbered', 'other', 'either']) }),
  v.strictObject({ kind: v.literal('faces ordered'), ...ofPart, order: v.pipe(v.array(v.picklist(LEVELS)), v.check((order) => new Set(order).size === LEVELS.length && order.length === LEVELS.length, 'each level once')) }),
  v.strictObject({ kind: v.literal('board liked'), ...ofPart, board: whole(1, 10_000), arch: v.picklist(['up', 'down', 'either']) }),
  v.strictObject({ kind: v.literal('legs assigned'), ...ofPart, legs: v.pipe(v.array(assigned), v.minLength(1), v.maxLength(MOST_ASSIGNED)) }),
  v.strictObject({ kind: v.literal('timer started'), timer: timerRequest }),
  v.strictObject({ kind: v.literal('timer changed'), ...ofTimer, addMs: whole(-LONGEST_TIMER_MS, LONGEST_TIMER_MS) }),
  v.strictObject({ kind: v.literal('timer held'), ...ofTimer }),
  v.strictObject({ kind: v.literal('timer resumed'), ...ofTimer }),
  v.strictObject({ kind: v.literal('timer acknowledged'), ...ofTimer }),
  v.strictObject({ kind: v.literal('timer stopped'), ...ofTimer }),
  v.strictObject({ kind: v.literal('clock seen'), note: v.picklist(['heartbeat', 'restarted', 'jumped']) }),
  v.strictObject({ kind: v.literal('cutting begun'), edge: v.picklist(EDGES) }),
  v.strictObject({ kind: v.literal('cutting ended') }),
  v.strictObject({ kind: v.literal('edge cared for'), edge: v.picklist(EDGES), care: v.picklist(CARES) }),
  v.strictObject({ kind: v.literal('setting changed'), setting: SettingSchema }),
  v.strictObject({ kind: v.literal('air told'), place: v.picklist(AIR_PLACES), tempC: v.exactOptional(finite(-60, 150)), humidityPercent: v.exactOptional(finite(0, 100)), by: v.picklist(['said', 'sensor']) }),
  v.strictObject({ kind: v.literal('moisture told'), percent: finite(0, 200) }),
  v.strictObject({ kind: v.literal('label told'), label }),
  v.strictObject({ kind: v.literal('rest seen'), part: named(200), copy, bow: someLength, wind: someLength, grams: v.exactOptional(finite(0, 1_000_000)) }),
  v.strictObject({ kind: v.literal('surface read'), of: boardFace, reading: faceReading }),
  v.strictObject({ kind: v.literal('surface planed'), of: boardFace }),
  v.strictObject({ kind: v.literal('gluing begun'), step, mode: v.picklist(['rehearsal', 'glue']), joints: jointIds }),
  v.strictObject({ kind: v.literal('gluing move done') }),
  v.strictObject({ kind: v.literal('gluing ended'), finished: v.boolean() }),
  v.strictObject({ kind: v.literal('gluing divided'), step, stages: v.pipe(v.array(jointIds), v.minLength(1), v.maxLength(50)) }),
  ...CUTTING_SCHEMAS,
  v.strictObject({ kind: v.literal('noted'), text: text(LONGEST_NOTE) }),
  v.strictObject({ kind: v.literal('caution said'), caution: named(200) }),
  v.strictObject({ kind: v.literal('scratched'), act: recordNumber }),
  v.strictObject({ kind: v.literal('put back'), act: recordNumber }),
]) satisfies v.GenericSchema<unknown, Entry>;

const checksum = v.pipe(v.string(), v.regex(/^[0-9a-f]{8}$/));

export const RecordSchema = v.strictObject({
  number: recordNumber,
  act: recordNumber,
  at: MomentSchema,
  entry: EntrySchema,
  before: v.union([v.literal(''), checksum]),
  checksum,
});
