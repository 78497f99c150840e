import { assertNever } from '../result.ts';
import type { InTurnItem, Response } from '../bench/reply.ts';
import type { Screen } from '../bench/screen.ts';
import { onFaces } from '../faces/marksOnFaces.ts';
import { hollowOf, mateOf } from '../joint/mates.ts';
import { marksFor, type Mark, type MarkKind } from '../joint/marks.ts';
import { sayNumber } from '../length/say.ts';
import type { MortiseAndTenon } from '../piece/file.ts';
import type { Jointing } from './jointing.ts';
import { tellAll } from './inTurn.ts';
import { mapOf } from './legMaps.ts';
import { refuse, tell } from './plain.ts';
import { sentence, spoken, written, type TellLength } from './saying.ts';
import { wrongHand } from './wrongHand.ts';

/** More figures than this do not fit large on one screen. */
const MOST_SHOWN = 5;
/** What is taken for one mark of a kind, with what joins the two in a sentence. */
const PAIRS: readonly (readonly [MarkKind, MarkKind, string])[] = [
  ['mortise start', 'mortise end', 'from'], ['mortise near side', 'mortise far side', 'sides'], ['first shoulder', 'second shoulder', 'shoulders'],
  ['outer cheek', 'inner cheek', 'cheeks'], ['tenon top', 'tenon bottom', 'edges'], ['groove top', 'groove bottom', 'groove'],
];

/** Everything that is marked on a part, joint by joint, each from its reference. */
export function tellPartMarks(jointing: Jointing, partId: string, copy: number | undefined): Response {
  const { state, piece, sizes } = jointing;
  const part = piece.file.parts.find(({ id }) => id === partId);
  if (!part) return refuse('This piece has no such part.');
  if (copy !== undefined && (copy < 1 || copy > part.count)) return refuse(`There is no ${part.name} ${sayNumber(copy)}; this piece has ${sayNumber(part.count)}.`);
  // Until the maker has said where a copy goes, nothing is taken for granted: a mortise that it does not need cannot be undone.
  const place = copy === undefined ? null : state.places.get(`${partId}/${copy}`) ?? null;
  const marks = onFaces(marksFor(piece, sizes, partId, copy, place), mapOf(state, partId, copy));
  const hand = wrongHand(state, partId, copy);
  const head = copy === undefined ? part.name : `${part.name} ${sayNumber(copy)}`;
  if (marks.length === 0) return refuse(`No joint is marked on the ${part.name}.`);
  const shown = { ...(hand === '' ? {} : { note: hand, signal: 'wrong' as const }), screen: screenOf(jointing, `marks on ${copy === undefined ? part.name : `${part.name} ${copy}`}`, marks, partId) };
  return tellAll({ say: [hand, sentence(head)].filter(Boolean).join(' '), ...shown }, 'to mark', jointsTold(jointing, part.id, place, marks), sidesToo(marks));
}

/** Which faces of a part are mortised, and for what. */
export function tellMortisedFaces(jointing: Jointing, partId: string, copy: number | undefined): Response {
  const { state, piece, sizes } = jointing;
  const part = piece.file.parts.find(({ id }) => id === partId);
  if (!part) return refuse('This piece has no such part.');
  const place = copy === undefined ? null : state.places.get(`${partId}/${copy}`) ?? null;
  const starts = onFaces(marksFor(piece, sizes, partId, copy, place), mapOf(state, partId, copy)).filter(({ kind }) => kind === 'mortise start');
  if (starts.length === 0) return refuse(`No mortise is chopped in the ${part.name}.`);
  const told = starts.map((mark) => `${nameOf(jointing, partId, mark.joint ?? '')}, in ${mark.on}${onlyIn(jointing, partId, place, mark.joint)}`);
  const head = copy === undefined ? part.name : `${part.name} ${sayNumber(copy)}`;
  return tell({ say: sentence(`${head}: ${[...new Set(told)].join('; ')}`), screen: { name: 'layout', part: partId, ...(copy === undefined ? {} : { copy }), face: 1 } });
}

/** The marks of one face, joint by joint; where there are several mortises, only those along the part: the rest stands before the eye. */
export function marksTold(jointing: Jointing, partId: string, all: readonly Mark[]): readonly InTurnItem[] {
  const several = new Set(all.filter(({ kind }) => kind === 'mortise start' || kind === 'mortise end').map(subjectOf)).size > 1;
  const marks = several ? all.filter(({ from }) => from.kind === 'end') : all;
  return [...new Set(marks.map(subjectOf))].map((subject) => {
    const own = marks.filter((mark) => subjectOf(mark) === subject);
    const joint = own[0]?.joint;
    return toldTogether(jointing, joint === undefined ? subject : nameOf(jointing, partId, joint), own);
  });
}

/** All marks of each joint; of several mortises only where they lie along the part, which is as much as the ear keeps. */
function jointsTold(jointing: Jointing, partId: string, place: string | null, marks: readonly Mark[]): readonly InTurnItem[] {
  const short = severalMortises(marks);
  return [...new Set(marks.map(subjectOf))].map((subject) => {
    const own = marks.filter((mark) => subjectOf(mark) === subject && (!short || mark.from.kind === 'end'));
    const joint = own[0]?.joint;
    return toldTogether(jointing, `${joint === undefined ? subject : nameOf(jointing, partId, joint)}${inFace(own)}${onlyIn(jointing, partId, place, joint)}`, own);
  });
}

/** The marks of one joint, for the ear and for the eye. */
function toldTogether(jointing: Jointing, name: string, marks: readonly Mark[]): InTurnItem {
  return { say: sentence(`${name}: ${sayMarks(jointing, marks)}`), note: `${name}: ${sayMarks(jointing, marks, written)}`, lengths: marks.map(({ at }) => at) };
}

function severalMortises(marks: readonly Mark[]): boolean {
  return marks.filter(({ kind }) => kind === 'mortise start').length > 1;
}

function sidesToo(marks: readonly Mark[]): string {
  return severalMortises(marks) ? 'Ask for one mortise to hear its sides and its depth.' : '';
}

/** What a mark belongs to: its joint; a foot bevel or a horn by itself. */
function subjectOf({ joint, kind }: Mark): string {
  return joint ?? kind.replace(/ inwards$/, '');
}

/** ', in face B', once it is known which way the copy stands. */
function inFace([mark]: readonly Mark[]): string {
  const [face = ''] = mark?.on.split(', ') ?? [];
  return /^faces? [A-D]/.test(face) ? `, in ${face}` : '';
}

type Only = 'start' | 'end' | 'depth' | 'haunch' | 'shoulders';

/** The marks of one side of a joint, or the one that was asked for. */
export function tellJointMarks(jointing: Jointing, joint: MortiseAndTenon, side: 'mortise' | 'tenon', only?: Only): Response {
  const { piece, sizes, state } = jointing;
  const partId = side === 'mortise' ? joint.mortiseIn : joint.tenonOn;
  const part = piece.file.parts.find(({ id }) => id === partId);
  const all = marksFor(piece, sizes, partId).filter((mark) => mark.joint === joint.id);
  const marks = only === undefined ? all : all.filter(({ kind }) => wanted(side, only).includes(kind));
  const [first] = marks;
  if (!part || !first) return refuse(`The piece file does not say where the ${joint.name} goes.`);
  const name = nameOf(jointing, partId, joint.id);
  const one = (mark: Mark): string => `${mark.which === undefined ? '' : `${mark.which} one, `}${mark.say.replace(/ of the (?:\w+ )?(?:mortise|slot|tenon)$/, '')}, ${spoken(state, mark.at)} from ${mark.from.say}`;
  const openAbove = only === 'haunch' && marks.every(({ kind }) => kind !== 'haunch start');
  const say = only === undefined ? `${part.name}, ${name}${side === 'mortise' ? `, in ${first.on}` : ''}: ${sayMarks(jointing, marks)}` : `${part.name}, ${name}, ${marks.map(one).join('; ')}${openAbove ? '; it is open at the end' : ''}`;
  return tell({ say: sentence(say), screen: screenOf(jointing, `${name} on the ${part.name}`, marks, partId), lengths: marks.map(({ at }) => at) });
}

function wanted(side: 'mortise' | 'tenon', only: Only): readonly MarkKind[] {
  switch (only) {
    case 'haunch': return ['haunch start', 'haunch depth'];
    case 'depth': return ['mortise depth'];
    case 'shoulders': return ['first shoulder', 'second shoulder'];
    case 'start': return [side === 'mortise' ? 'mortise start' : 'first shoulder'];
    case 'end': return [side === 'mortise' ? 'mortise end' : 'second shoulder'];
    default: return assertNever(only);
  }
}

/** 'long rail mortise' on the leg, 'long rail tenon' on the rail, 'groove for the button'. */
function nameOf({ piece }: Jointing, partId: string, jointId: string | undefined): string {
  const joint = piece.file.joints.find(({ id }) => id === jointId);
  if (!joint) return 'foot bevel';
  if (joint.kind === 'fixing') return `groove for the ${joint.name}`;
  return joint.mortiseIn === partId ? `${mateOf(piece.file, joint)} ${hollowOf(joint)}` : joint.name;
}

/** While it is not known where the copy stands: ', only back left and back right'. */
function onlyIn({ piece }: Jointing, partId: string, place: string | null, jointId: string | undefined): string {
  const joint = piece.file.joints.find(({ id }) => id === jointId);
  return place === null && joint?.kind === 'mortise and tenon' && joint.mortiseIn === partId && joint.places ? `, only ${joint.places.join(' and ')}` : '';
}

/** Pairs are said together with their reference once: 'from one inch to four and a half, from the top end'. */
function sayMarks(jointing: Jointing, marks: readonly Mark[], put: TellLength = spoken): string {
  return [...new Set(marks.map(({ which }) => which))].map((which) => {
    const own = sayOne(jointing, marks.filter((mark) => mark.which === which), put);
    return which === undefined ? own : `${which} one, ${own}`;
  }).join('; ');
}

/** Lines that are said by their own name, for nothing else tells what they are. */
const NAMED: ReadonlySet<MarkKind> = new Set<MarkKind>(['haunch start', 'haunch depth', 'haunch end', 'haunch top', 'mitre', 'step', 'short end', 'foot bevel inwards']);

function sayOne({ state }: Jointing, marks: readonly Mark[], put: TellLength): string {
  const of = (kind: MarkKind): Mark | undefined => marks.find((mark) => mark.kind === kind);
  const paired = PAIRS.flatMap(([first, second, word]) => {
    const [one, other] = [of(first), of(second)];
    return one && other ? [`${word} ${put(state, one.at)} ${word === 'from' ? 'to' : 'and'} ${put(state, other.at)}, from ${one.from.say}`] : [];
  });
  const inPairs = new Set(PAIRS.flatMap(([first, second]) => [first, second]));
  // A line whose fellow is the edge of the part itself stands alone.
  const lone = marks.filter((mark) => !inPairs.has(mark.kind) || PAIRS.some(([first, second]) => (mark.kind === first && !of(second)) || (mark.kind === second && !of(first))));
  return [...paired, ...lone.map((mark) => `${NAMED.has(mark.kind) || inPairs.has(mark.kind) ? `${mark.say}, ` : ''}${put(state, mark.at)} ${mark.tool === 'depth flag' ? 'deep' : `from ${mark.from.say}`}`)].join('; ');
}

/** As many figures large as fit: of several mortises their starts, else the distances along the part when there are more; the rest in a line below. */
function screenOf(jointing: Jointing, question: string, marks: readonly Mark[], partId: string): Extract<Screen, { name: 'reckoning' }> {
  const starts = marks.filter(({ kind }) => kind === 'mortise start');
  if (starts.length > 1) return mortisesScreen(jointing, question, starts, marks, partId);
  const shown = marks.length <= MOST_SHOWN ? marks : marks.filter(({ from }) => from.kind === 'end').slice(0, MOST_SHOWN);
  const rest = [...new Set(marks.filter((mark) => !shown.includes(mark)).map((mark) => `${mark.kind} ${written(jointing.state, mark.at)}`))];
  const references = [...new Set(marks.map(({ from }) => `from ${from.say}`))];
  return { name: 'reckoning', result: { question, answers: shown.map(({ kind, at }) => ({ label: kind, length: at })), note: (rest.length > 0 ? rest : references).join(', ') } };
}

function mortisesScreen(jointing: Jointing, question: string, starts: readonly Mark[], marks: readonly Mark[], partId: string): Extract<Screen, { name: 'reckoning' }> {
  const name = (mark: Mark): string => `${nameOf(jointing, partId, mark.joint).replace(/ (?:mortise|slot)$/, '')}${mark.which === undefined ? '' : `, ${mark.which}`}`;
  const ends = marks.filter(({ kind }) => kind === 'mortise end').map((mark) => `${name(mark)} ${written(jointing.state, mark.at)}`);
  return {
    name: 'reckoning',
    result: { question: `${question}: mortises start`, answers: starts.slice(0, MOST_SHOWN).map((mark) => ({ label: `${name(mark)}${inFace([mark])}`, length: mark.at })), note: `They end: ${ends.join(', ')}. From ${starts[0]?.from.say ?? 'the end'}.` },
  };
}
