import type { Mark } from '../../joint/marks.ts';
import type { Length } from '../../length/length.ts';
import { nanometres } from '../../length/length.ts';
import type { Rounding } from '../../length/rounding.ts';
import type { FaceView, ViewLine } from './faceView.ts';
import { hatching } from './hatch.ts';
import { laneBase, lanes, lanesDepth, spread } from './labels.ts';
import { edgeMark, faceMark } from './referenceMarks.ts';
import { line, mm, rectangle, spot, words, type Band, type Item } from './sheet.ts';
import { sizeText } from './sizeText.ts';

/** Room beside the face, for its ends to be seen. */
const BESIDE = mm(12);
const HEAD = mm(9);
const NOTE = mm(4.5);
const LETTER = mm(3.6);
const SMALL = mm(2.8);

/** One face of a part at full size: its outline, its marks with their figures, and the waste hatched. */
export function faceBand(view: FaceView, of: string, rounding: Rounding): Band {
  const { along, across } = view;
  const head = nanometres(HEAD + (view.note === undefined ? 0 : NOTE));
  const face = { x: BESIDE, y: head, width: along, height: across };
  const write = (mark: Mark): string => `${sizeText(mark.at, rounding)} ${mark.say}, from ${mark.from.say}`;
  const below = lanes(eachPlace(view).map((each) => ({ x: nanometres(BESIDE + each.at), text: write(each.mark) })), LETTER);
  const bottom = head + across;
  const items: readonly Item[] = [
    words(`${of}, ${view.name}`, spot(BESIDE, mm(4)), LETTER, { bold: true }),
    ...(view.note === undefined ? [] : [words(view.note, spot(BESIDE, mm(8.5)), SMALL)]),
    words(`${view.topIs} this side`, spot(BESIDE, head - mm(1)), SMALL),
    ...(view.bottomIs === undefined ? [] : [words(`${view.bottomIs} this side`, spot(BESIDE + mm(1.5), bottom - mm(1)), SMALL)]),
    words(view.leftIs, spot(BESIDE - mm(1.5), head + across / 2), SMALL, { turned: true, anchor: 'middle' }),
    ...view.waste.flatMap(({ from, to, top, bottom: low }) => hatching({ x: nanometres(BESIDE + from), y: nanometres(head + top), width: nanometres(to - from), height: nanometres(low - top) })),
    rectangle('outline', face, 'outline'),
    ...view.lines.map((each) => lineOf(each, head)),
    ...below.flatMap(({ label, lane }): readonly Item[] => {
      const base = bottom + mm(1) + laneBase(lane);
      return [line('thin', spot(label.x, bottom), spot(label.x, base)), words(label.text, spot(label.x + mm(1), base), LETTER)];
    }),
    ...alongLabels(view, head, write, rounding),
    ...(view.isReference === true ? faceMark(spot(BESIDE + along - mm(26), head + across / 2), mm(Math.min(10, across / 2_000_000))) : []),
    ...edgeMark(spot(BESIDE + along - mm(14), view.gaugeFrom === 'top' ? head : bottom), mm(Math.min(7, across / 2_500_000) * (view.gaugeFrom === 'top' ? 1 : -1))),
  ];
  return { title: `${of}, ${view.name}`, length: nanometres(along + 2 * BESIDE), depth: nanometres(bottom + mm(2) + lanesDepth(below)), items };
}

/** Where knife lines lie, each place of a mark once: beside the tenon of a bridle a shoulder has two lines in one place. */
function eachPlace({ lines }: FaceView): readonly ViewLine[] {
  return lines.filter(({ lies, mark, at }, index) => lies === 'across' && lines.findIndex((other) => other.lies === lies && other.mark === mark && other.at === at) === index);
}

function lineOf({ mark, lies, at, from, to }: ViewLine, head: Length): Item {
  const name = `${mark.joint ?? ''}/${mark.kind}`;
  return lies === 'across'
    ? line('mark', spot(BESIDE + at, head + from), spot(BESIDE + at, head + to), name)
    : line('gauge', spot(BESIDE + from, head + at), spot(BESIDE + to, head + at), name);
}

/** Beside where the lines end, at the first of the places that one mark is drawn in; the depth of the same joint below them. */
function alongLabels(view: FaceView, head: Length, write: (mark: Mark) => string, rounding: Rounding): readonly Item[] {
  const first = view.lines.filter(({ lies, mark }, index) => lies === 'along' && view.lines.findIndex((other) => other.mark === mark) === index);
  const joints = [...new Set(first.map(({ mark }) => mark.joint))];
  return joints.flatMap((joint) => {
    const own = first.filter(({ mark }) => mark.joint === joint).sort((one, other) => one.at - other.at);
    const end = nanometres(Math.max(...own.map(({ to }) => to)));
    const inside = end + mm(60) > view.along && own.every(({ from }) => from === 0);
    const x = BESIDE + (inside ? mm(40) : end + mm(3));
    const depth = view.depths.filter((mark) => mark.joint === joint).map((mark) => `${sizeText(mark.at, rounding)} ${mark.say}`);
    const texts = [...own.map(({ mark, at }) => ({ at, text: write(mark) })), ...depth.map((text) => ({ at: own.at(-1)?.at ?? view.across, text }))];
    const places = spread(texts.map(({ at }) => nanometres(head + at + mm(1))), mm(4.6));
    const over = Math.max(0, (places.at(-1) ?? 0) - (head + view.across - mm(1)));
    return texts.map(({ text }, index) => words(text, spot(x, (places[index] ?? head) - over), LETTER));
  });
}

/** The longest that a view is drawn. */
export function longestOf(views: readonly FaceView[]): Length {
  return nanometres(Math.max(0, ...views.map(({ along }) => along)));
}
