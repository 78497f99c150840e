import type { Bench } from '../bench/bench.ts';
import type { Response } from '../bench/reply.ts';
import type { FaceRequest } from '../bench/request.ts';
import { arrangedWith, changedOver } from '../faces/changeOver.ts';
import { listed, nameCopies, sayLoss, sayPlaced } from '../faces/explain.ts';
import type { Placed } from '../faces/facts.ts';
import { legMap, type LegMap } from '../faces/map.ts';
import { sayMap } from '../faces/sayLikes.ts';
import { mateOf } from '../joint/mates.ts';
import type { AssignedLeg } from '../journal/entry.ts';
import { placeKey } from '../journal/progress.ts';
import type { State } from '../journal/state.ts';
import { sayNumber } from '../length/sayNumber.ts';
import { hasJoint } from '../piece/cavity.ts';
import { facedPart, type FacedPart } from './facesState.ts';
import { markedCopies, sayUndone, undoneBy } from './facesUndo.ts';
import { noPiece, refuse, tell, write } from './plain.ts';
import { sentence } from './saying.ts';
import { toSay } from './toSay.ts';

type ChangeOver = Extract<FaceRequest, { kind: 'change over' }>;

/** Two copies of a part change places, with what follows from it; asked first where wood was marked or cut for the old ones. */
export function changeOver({ state }: Bench, request: ChangeOver): Response {
  const part = state.piece?.file.parts.find(({ id }) => id === request.part);
  if (!state.piece) return noPiece();
  if (!part) return refuse('This piece has no such part.');
  const faced = facedPart(state, part);
  if (!faced.ok) return refuse(sentence(faced.fault));
  const { copy, with: other } = request;
  const lost = [copy, other].find((each) => each < 1 || each > part.count);
  if (lost !== undefined) return refuse(`There is no ${part.name} ${sayNumber(lost)}: this piece has ${sayNumber(part.count)}.`);
  if (copy === other) return refuse(`Two different ${faced.value.names.many} change over. ${toSay('Tell me which two.', `Say, for one: change over ${part.name} one and ${part.name} two.`)}`);
  const homeless = [copy, other].find((each) => !state.places.has(placeKey(part.id, each)));
  if (homeless !== undefined) return refuse(sentence(`${nameCopies(faced.value.names, [homeless])} has no place yet, so there is nothing to change over`));
  const [one, two] = [copy, other].map((each) => faced.value.problem.now?.find((placed) => placed.copy === each));
  return one && two ? turned(state, faced.value, request, [one, two]) : placesOnly(state, faced.value, request);
}

/** While nobody has said how they face, only the places change. */
function placesOnly(state: State, { part, names }: FacedPart, { copy, with: other }: ChangeOver): Response {
  const legs = ([[copy, other], [other, copy]] as const).flatMap(([each, from]): readonly AssignedLeg[] => {
    const place = state.places.get(placeKey(part.id, from));
    return place === undefined ? [] : [{ copy: each, place }];
  });
  const say = legs.map((leg) => `${nameCopies(names, [leg.copy])} goes ${leg.place}`).join('; ');
  return write([{ kind: 'legs assigned', part: part.id, legs }], { say: `${sentence(say)} Which way they face is not settled.`, signal: 'done', screen: { name: 'faces', part: part.id } });
}

function turned(state: State, faced: FacedPart, request: ChangeOver, [one, other]: readonly [Placed, Placed]): Response {
  const { part, names, problem } = faced;
  if (!state.piece) return noPiece();
  const marked = new Set(markedCopies(state, part));
  const moved = changedOver({ file: state.piece.file, part, problem, one, other, marked });
  const undone = undoneBy(state, faced, moved);
  const follows = consequences(state, faced, [one, other], moved);
  if (undone.length > 0 && request.sure !== true) {
    const say = [sayUndone(faced, undone), ...follows, 'Change them over all the same?'].join(' ');
    return tell({ say, note: say, signal: 'wrong', question: { kind: 'yes or no', onYes: { ...request, sure: true } } });
  }
  const legs = moved.map(({ copy, place, turn }): AssignedLeg => ({ copy, place: place.name, turn }));
  const placed = sentence(`changed over: ${moved.map((leg) => sayPlaced(names, leg, problem.stand.kind)).join('; ')}`);
  return write([{ kind: 'legs assigned', part: part.id, legs }], { say: [placed, ...follows].join(' '), note: follows.join(' '), signal: 'done', screen: { name: 'faces', part: part.id } });
}

/** Where the mortises are now, which joints a copy gains or loses, and whether what was told of the faces is kept worse. */
function consequences(state: State, { part, names, problem }: FacedPart, before: readonly [Placed, Placed], moved: readonly [Placed, Placed]): readonly string[] {
  const [was, is] = [arrangedWith(problem, []), arrangedWith(problem, moved)];
  const worse = is.value < was.value ? [sentence(`by what was told it is worse: ${sayLoss(names, problem.order, was, is)}`)] : is.value > was.value ? ['By what was told it is better so.'] : [];
  return [...(problem.stand.kind === 'upright' ? mortisesAfter(state, { part, names }, before, moved) : []), ...worse];
}

function mortisesAfter(state: State, { part, names }: Pick<FacedPart, 'part' | 'names'>, before: readonly [Placed, Placed], moved: readonly [Placed, Placed]): readonly string[] {
  const file = state.piece?.file;
  if (file === undefined) return [];
  const joints = file.joints.filter((joint) => joint.kind === 'mortise and tenon').filter(({ mortiseIn }) => mortiseIn === part.id);
  const gained = moved.flatMap((leg, index) => {
    const from = before[index];
    const mates = (there: Placed, gone: Placed | undefined): readonly string[] => joints.filter((joint) => hasJoint(joint, part, there.copy, there.place.name) && gone !== undefined && !hasJoint(joint, part, there.copy, gone.place.name)).map((joint) => `the ${mateOf(file, joint)}`);
    const [takes, loses] = [mates(leg, from), from === undefined ? [] : mates(from, leg)];
    return [...(takes.length > 0 ? [`${nameCopies(names, [leg.copy])} takes ${listed(takes)} now`] : []), ...(loses.length > 0 ? [`${nameCopies(names, [leg.copy])} no longer takes ${listed(loses)}`] : [])];
  });
  const maps = moved.map((leg, index) => ({ leg, map: legMap(file, part, leg.place.name, leg.turn), from: before[index] }));
  const stay = maps.filter(({ map, from }) => from !== undefined && staysIn(legMap(file, part, from.place.name, from.turn), map));
  const said = stay.length === maps.length ? ['Their mortises stay in the same faces.'] : maps.map(({ leg, map }) => sentence(`${nameCopies(names, [leg.copy])}: ${sayMap(map)}`));
  return [...said, ...(gained.length > 0 ? [sentence(gained.join('; '))] : [])];
}

/** Whether every mortise that it has in both places is in the same face, gauged from the same. */
function staysIn(before: LegMap, after: LegMap): boolean {
  return before.mortises.every((one) => after.mortises.every((other) => other.joint !== one.joint || (other.face === one.face && other.gaugeFrom === one.gaugeFrom)));
}
