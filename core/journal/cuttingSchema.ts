import * as v from 'valibot';
import { nanometres } from '../length/length.ts';
import { GRADE_YIELDS, type Grade } from '../stock/buying.ts';
import { OBJECTIVES } from '../stock/objectives.ts';
import { GRAINS } from '../stock/rack.ts';

/** What may stand in the journal of boards, plans and cuts: every length within 100 m, every list within what the planner takes. */
const MOST_BOARDS = 2_000;
const MOST_BLANKS = 20_000;
const GRADES = Object.keys(GRADE_YIELDS) as [Grade, ...Grade[]];

const whole = (from: number, to: number) => v.pipe(v.number(), v.safeInteger(), v.minValue(from), v.maxValue(to));
const length = v.pipe(whole(0, 100_000_000_000), v.transform(nanometres));
const named = v.pipe(v.string(), v.minLength(1), v.maxLength(200));
const metres = v.pipe(v.number(), v.finite(), v.minValue(0), v.maxValue(1_000_000));
const number = whole(1, 9_999);
const face = v.picklist(['marked face', 'other face']);
const cents = whole(0, 1_000_000_000);

const defect = v.strictObject({ what: named, from: length, to: length, fromEdge: length, toEdge: length, face: v.picklist(['through', 'marked face', 'other face']) });

const board = v.strictObject({
  number, species: named, length, width: length, farWidth: length, thickness: length, defects: v.pipe(v.array(defect), v.maxLength(200)), sapwood: length,
  grain: v.exactOptional(v.picklist(GRAINS)), pithSide: v.exactOptional(face), colour: v.exactOptional(named), cents: v.exactOptional(cents), cutFrom: v.exactOptional(number), sawn: v.exactOptional(v.picklist(['both ends', 'marked end', 'far end'])),
});

const placed = v.strictObject({ blank: named, name: named, from: length, fromEdge: length, length, width: length, nth: v.exactOptional(whole(1, MOST_BLANKS)), layer: v.exactOptional(whole(1, 100)) });
const cut = v.strictObject({ kind: v.picklist(['crosscut', 'rip', 'crosscut again', 'resaw']), section: whole(0, MOST_BLANKS), at: length, from: length, to: length, waste: v.picklist(['beyond', 'before']), fromEdge: v.exactOptional(length), toEdge: v.exactOptional(length) });
const taken = v.strictObject({
  board: number, stood: board, kerf: length, made: whole(0, MOST_BLANKS), placed: v.pipe(v.array(placed), v.maxLength(MOST_BLANKS)), cuts: v.pipe(v.array(cut), v.maxLength(MOST_BLANKS)),
  rest: v.exactOptional(v.strictObject({ from: length, to: length })),
});

const blank = v.strictObject({ id: named, name: named, species: named, length, width: length, thickness: length, count: whole(0, MOST_BLANKS), together: whole(0, MOST_BLANKS), mayHideDefect: v.boolean() });
const plannedWith = v.strictObject({
  saw: v.strictObject({ kerf: length, endTrim: length, cutAgain: v.boolean(), resaw: v.exactOptional(length) }), first: v.picklist(OBJECTIVES), blanks: v.pipe(v.array(blank), v.maxLength(MOST_BLANKS)),
});

/** A plan that was taken: in the journal, and in a piece file. */
export const PlanSchema = v.strictObject({
  boards: v.pipe(v.array(taken), v.maxLength(MOST_BOARDS)),
  missing: v.pipe(v.array(v.strictObject({ blank: named, count: whole(1, MOST_BLANKS), why: v.picklist(['no board left', 'no board of the species', 'no board thick enough', 'no board long or wide enough']) })), v.maxLength(MOST_BLANKS)),
  begun: v.exactOptional(whole(0, MOST_BOARDS)), bound: metres, boundIn: v.picklist(['boards', 'cents']), proven: v.boolean(), cents: metres, crosscutMetres: metres, ripMetres: metres, with: v.exactOptional(plannedWith),
});

const sawing = v.strictObject({
  kerf: v.exactOptional(length), endTrim: v.exactOptional(length), cutAgain: v.exactOptional(v.boolean()), first: v.exactOptional(v.picklist(OBJECTIVES)),
  resaw: v.exactOptional(length), layerExtra: v.exactOptional(length), layerWider: v.exactOptional(length), layerThicker: v.exactOptional(length),
  panelExtra: v.exactOptional(length), panelWider: v.exactOptional(length), panelThicker: v.exactOptional(length), grade: v.exactOptional(v.picklist(GRADES)), centsPerBoardFoot: v.exactOptional(cents), yardWidth: v.exactOptional(length),
});

const rough = v.strictObject({ longer: v.exactOptional(length), wider: v.exactOptional(length), thicker: v.exactOptional(length), mayHideDefect: v.exactOptional(v.boolean()) });

export const CUTTING_SCHEMAS = [
  v.strictObject({ kind: v.literal('board put'), board }),
  v.strictObject({ kind: v.literal('board gone'), board: number }),
  v.strictObject({ kind: v.literal('plan taken'), plan: PlanSchema }),
  v.strictObject({ kind: v.literal('cut made'), board: number }),
  v.strictObject({ kind: v.literal('sawing set'), setting: sawing }),
  v.strictObject({ kind: v.literal('part rough'), part: named, rough }),
] as const;
