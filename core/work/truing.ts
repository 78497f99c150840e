import type { Part } from '../piece/file.ts';
import { CAUTIONS } from './cautions.ts';
import { before, idOf, partStep, present, sizeName, type TitleWords } from './draft.ts';
import { TOLERANCES } from './figures.ts';
import type { Ground } from './ground.ts';
import { allOf, its, oneOf, stockOf } from './names.ts';
import { afterRest } from './roughWork.ts';
import type { Before, Operation, SizeMention, Step } from './step.ts';
import { around, words } from './wording.ts';

const TRUED: ReadonlySet<Operation> = new Set(['face', 'edge', 'thickness', 'width', 'true again', 'dry check']);

/** A step at which readings are taken of a board: what to plane, or whether two sides will close. */
export function isTruing({ operation }: Pick<Step, 'operation'>): boolean {
  return TRUED.has(operation);
}

/** From here on every copy is a step of its own: facing one by hand takes long enough to be interrupted. */
export function faceSteps(ground: Ground, part: Part): readonly Step[] {
  return ground.unitsOf(part).map((copy) => (part.made.kind === 'laminated' ? faceLayers(ground, part, copy) : face(part, copy)));
}

const FLATTENING = ['jack plane', 'jointer plane', 'winding sticks', 'straightedge'];
const FLAT = 'No wind in the sticks, and no light under the straightedge along, across and corner to corner.';

function face(part: Part, copy: number | undefined): Step {
  const panel = part.made.kind === 'panel';
  const what = panel ? `one face of ${stockOf(part).ofCopy(copy)}` : `the reference face of ${oneOf(part, copy)}`;
  return partStep(part, copy, {
    operation: 'face',
    say: words(`Flatten ${what}, and mark it.`),
    show: words(`Sight for cup and wind and choose ${faceToChoose(part)}. Traverse the high corners, then plane along the grain until it is flat and out of wind.${panel ? ' The other face can wait until the boards are one.' : ''} Put the face mark on it, its tail to the edge that comes next.`),
    tools: [...FLATTENING, 'pencil'],
    check: { say: words(FLAT), tolerance: TOLERANCES.flat },
    cautions: [CAUTIONS.plane],
    ...afterRest(part),
  }, piecesOf(part));
}

/** 'Face, leg 1 of 4: 3 layers' */
export function piecesOf(part: Part): TitleWords {
  const { pieces } = stockOf(part);
  return pieces === undefined ? {} : { detail: pieces };
}

function faceToChoose(part: Part): string {
  const which = part.made.kind === 'panel' ? 'one face of each board' : 'the reference face';
  return part.referenceFace === undefined ? which : `${which}, which will be the ${part.referenceFace}`;
}

/** One step for both sides of all layers of one copy: a layer for itself is ten minutes' work and means nothing alone. */
function faceLayers(ground: Ground, part: Part, copy: number | undefined): Step {
  const { ofCopy } = stockOf(part);
  const thickness = ground.size(sizeName(part, 'layerThickness'));
  return partStep(part, copy, {
    operation: 'face',
    say: words(`Face both sides of ${ofCopy(copy)}`, around(', each ', thickness, ' thick'), '.'),
    show: words(`Flatten one side of each of ${ofCopy(copy)}, gauge from it all round, and plane the other side to the line`, around(': ', thickness),
      '. Take as much off one side as off the other, or the layer bends again. Plane with the edge just honed: what is to be glued is glued the same day.'),
    tools: [...FLATTENING, 'marking gauge'],
    check: { say: words(`${FLAT} The layers are of one thickness.`), tolerance: TOLERANCES.gluedGap },
    cautions: [CAUTIONS.plane],
    ...afterRest(part),
  }, piecesOf(part));
}

/** Reference edge of a solid part, square to its face. */
export function edgeSteps(ground: Ground, part: Part): readonly Step[] {
  return ground.unitsOf(part).map((copy) => partStep(part, copy, {
    operation: 'edge',
    say: words(`Plane the reference edge of ${oneOf(part, copy)} straight, and square to ${its(part, copy)} face.`),
    show: words(`Choose ${part.referenceEdge === undefined ? 'the straighter edge' : `the reference edge, which will be the ${part.referenceEdge}`}, grain running with the plane. Plane it straight, then square to the reference face. Try the square every hand's breadth. Put the edge mark where the tail of the face mark ends.`),
    tools: ['jack plane', 'jointer plane', 'try square', 'straightedge', 'pencil'],
    check: { say: words('No light under the try square anywhere, stock against the reference face, and the edge is straight.'), tolerance: TOLERANCES.square },
    cautions: [CAUTIONS.plane],
    after: [before(idOf('face', part.id, copy), 'The edge is squared from the reference face.')],
  }));
}

/** Thickness, width and ends are the same work whether the blank is solid, laminated or a panel; only what goes before differs. */
export function sizingSteps(ground: Ground, part: Part): readonly Step[] {
  const copies = ground.unitsOf(part);
  return [
    ...copies.map((copy) => thickness(ground, part, copy)),
    ...copies.map((copy) => width(ground, part, copy)),
    ...copies.map((copy) => ends(ground, part, copy)),
  ];
}

/** The step that gave the blank its reference face or edge. */
function trued(part: Part, by: 'face' | 'edge', copy: number | undefined, because: string): readonly Before[] {
  return [before(idOf(part.made.kind === 'solid' ? by : 'true again', part.id, copy), because)];
}

function gaugeOnce(part: Part): string {
  return part.count === 1 ? '' : ` Set the gauge once and leave it for ${allOf(part)}.`;
}

function thickness(ground: Ground, part: Part, copy: number | undefined): Step {
  const size = ground.size(sizeName(part, 'thickness'), copy);
  const panel = part.made.kind === 'panel';
  return partStep(part, copy, {
    operation: 'thickness',
    say: words(`Gauge ${oneOf(part, copy)} from ${its(part, copy)} reference face, and plane to `, size ?? 'thickness', '.'),
    show: words(`Gauge from the reference face all round`, around(': ', size), '. Chamfer the far edge to the line, plane across the high places, then along.', gaugeOnce(part),
      panel ? ' The face that shows is planed clean all over; the underside only has to be flat where it bears on something.' : ' If one comes out thinner, say so: what stands on it follows.'),
    tools: ['marking gauge', 'jack plane', 'smoothing plane', 'winding sticks', 'calipers'],
    check: { say: words(part.count === 1 ? 'Down to the gauge line all round, and flat.' : 'Down to the gauge line all round, flat, and the same as the others.'), tolerance: TOLERANCES.thickness },
    cautions: panel ? [CAUTIONS.plane, CAUTIONS.lift] : [CAUTIONS.plane],
    record: present(size),
    after: trued(part, 'face', copy, 'Thickness is gauged from the reference face.'),
  });
}

function width(ground: Ground, part: Part, copy: number | undefined): Step {
  const size = ground.size(sizeName(part, 'width'), copy);
  return partStep(part, copy, {
    operation: 'width',
    say: words(`Gauge ${oneOf(part, copy)} from ${its(part, copy)} reference edge, and plane to `, size ?? 'width', '.'),
    show: words('Gauge from the reference edge, on both faces', around(': ', size), '. Saw off what is much, then plane to the line, square to the reference face.', gaugeOnce(part)),
    tools: [part.made.kind === 'panel' ? 'panel gauge' : 'marking gauge', 'rip saw', 'jack plane', 'try square'],
    check: { say: words(part.count === 1 ? 'Down to the line, square to the reference face.' : 'Down to the line, square to the reference face, and the same as the others.'), tolerance: TOLERANCES.thickness },
    cautions: [CAUTIONS.plane],
    record: present(size),
    after: trued(part, 'edge', copy, 'Width is gauged from the reference edge.'),
  });
}

function ends(ground: Ground, part: Part, copy: number | undefined): Step {
  const size = ground.size(sizeName(part, 'length'), copy);
  return partStep(part, copy, {
    operation: 'ends',
    ...(ground.inOneGo(part) ? sawApart(part, size) : squareEnds(ground, part, copy, size)),
    cautions: [CAUTIONS.saw],
    record: present(size),
    after: [
      ...trued(part, 'edge', copy, 'The ends are squared from the reference face and edge.'),
      ...(ground.inOneGo(part) ? (['thickness', 'width'] as const).map((other) => before(idOf(other, part.id, copy), 'Once they are apart they are too small to plane.')) : []),
    ],
  });
}

type HowTo = Pick<Step, 'say' | 'show' | 'tools' | 'check'>;

function squareEnds(ground: Ground, part: Part, copy: number | undefined, size: SizeMention | undefined): HowTo {
  const panel = part.made.kind === 'panel';
  const horns = (['horn', 'lowerHorn'] as const).flatMap((key) => ground.size(sizeName(part, key)) ?? []);
  return {
    say: words(`Square the ends of ${oneOf(part, copy)}`, around(', ', size, ' long'), '.'),
    show: words('Square one end: knife a line right round from the reference face and edge, saw just outside it, and shoot to the line. Measure from that end',
      around(': ', size), ', and knife, saw and shoot the other.',
      part.count > 1 ? ` Take the length of the others from the first of ${allOf(part)}, not from the rule.` : '',
      panel ? ' Back up the far corner, or plane from both sides to the middle.' : '',
      horns.length === 0 ? undefined : words(' Leave the ', horns.length === 1 ? 'horn' : 'horns', ' on', ...horns.map((horn) => around(', ', horn)), ': there, only knife the finished end right round.')),
    tools: ['marking knife', 'try square', 'crosscut saw', ...(panel ? ['low-angle plane'] : ['shooting board', 'bench hook', 'jack plane'])],
    check: { say: words(part.count === 1 ? 'Both ends square from face and edge.' : 'Both ends square from face and edge, and all of one length.'), tolerance: TOLERANCES.length },
  };
}

/** Small parts come off their strip, against a stop. */
function sawApart(part: Part, size: SizeMention | undefined): HowTo {
  return {
    say: words(`Saw ${allOf(part)} from their strips`, around(', ', size, ' long'), '.'),
    show: words(`Fix a stop to the bench hook, square the end of the strip, and saw ${allOf(part)} off one after the other`, around(': ', size), '. Two passes on the shooting board clean each end.'),
    tools: ['bench hook', 'tenon saw', 'try square', 'shooting board', 'jack plane'],
    check: { say: words('Ends square, and all of one length.'), tolerance: TOLERANCES.length },
  };
}
