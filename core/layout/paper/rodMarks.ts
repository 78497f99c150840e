import { mateOf } from '../../joint/mates.ts';
import { marksFor } from '../../joint/marks.ts';
import { add, fractionOf, subtract, timesWhole } from '../../length/arithmetic.ts';
import { ZERO_LENGTH, type Length } from '../../length/length.ts';
import { sizeOf, type Sizes } from '../../piece/evaluate.ts';
import type { MortiseAndTenon, Part } from '../../piece/file.ts';
import type { LoadedPiece } from '../../piece/loadedPiece.ts';
import { failure, success, type Result } from '../../result.ts';

/** One direction of the piece at full size: what lies where along it. */
export interface RodStrip {
  readonly direction: 'height' | 'length' | 'width';
  /** What nothing stands for: 'the top end of the leg', 'the outer face of one leg'. */
  readonly zero: string;
  readonly marks: readonly RodMark[];
  readonly parts: readonly RodPart[];
}

export interface RodMark {
  readonly at: Length;
  readonly say: string;
}

/** A part as it lies along the strip: its thickness, its width or its length. */
export interface RodPart {
  readonly say: string;
  readonly from: Length;
  readonly to: Length;
}

interface Standing {
  readonly piece: LoadedPiece;
  readonly sizes: Sizes;
  readonly upright: Part;
  readonly joints: readonly MortiseAndTenon[];
}

/** The strips of a piece of uprights and rails. The uprights are the parts that most joints are mortised in. */
export function rodOf(piece: LoadedPiece, sizes: Sizes): Result<readonly RodStrip[], string> {
  const joints = piece.file.joints.filter((joint) => joint.kind === 'mortise and tenon');
  const hosts = [...new Set(joints.map(({ mortiseIn }) => mortiseIn))];
  const many = (id: string): number => joints.filter(({ mortiseIn }) => mortiseIn === id).length;
  const [host] = [...hosts].sort((one, other) => many(other) - many(one));
  const upright = piece.file.parts.find(({ id }) => id === host);
  if (!upright) return failure('A rod shows legs and the rails between them; this piece has no mortise and tenon to go by.');
  const standing: Standing = { piece, sizes, upright, joints: joints.filter(({ mortiseIn }) => mortiseIn === upright.id) };
  const across = (['width', 'thickness'] as const).flatMap((into) => acrossStrip(standing, into)).sort((one, other) => spanOf(other) - spanOf(one));
  const named = across.map((strip, index): RodStrip => ({ ...strip, direction: index === 0 ? 'length' : 'width' }));
  return success([heightStrip(standing), ...named]);
}

export function spanOf({ marks }: Pick<RodStrip, 'marks'>): Length {
  const places = marks.map(({ at }) => at);
  return places.length === 0 ? ZERO_LENGTH : subtract(places.reduce((most, at) => (at > most ? at : most)), places.reduce((least, at) => (at < least ? at : least)));
}

function heightStrip({ piece, sizes, upright, joints }: Standing): RodStrip {
  const read = (name: string): Length => sizeOf(sizes, name)?.length ?? ZERO_LENGTH;
  const length = read(`${upright.id}.length`);
  // The rod is of the finished piece: horns are no part of it.
  const along = marksFor(piece, sizes, upright.id).filter(({ from }) => from.kind === 'end' && !from.say.includes('rough'));
  const nameOf = (joint: string | undefined): string => { const found = joints.find(({ id }) => id === joint); return found ? `, ${mateOf(piece.file, found)}` : ''; };
  const rails = joints.flatMap((joint): readonly RodPart[] => {
    const top = subtract(read(`${joint.id}.fromTop`), topShoulder(sizes, joint));
    return [{ say: mateOf(piece.file, joint), from: top, to: add(top, read(`${joint.tenonOn}.width`)) }];
  });
  const held = heldOn(piece, joints).map(({ id, name }): RodPart => ({ say: name, from: subtract(ZERO_LENGTH, read(`${id}.thickness`)), to: ZERO_LENGTH }));
  return {
    direction: 'height', zero: `top end of the ${upright.name}`,
    parts: [{ say: upright.name, from: ZERO_LENGTH, to: length }, ...rails, ...held],
    marks: [
      { at: ZERO_LENGTH, say: `top end of the ${upright.name}` }, { at: length, say: `bottom end of the ${upright.name}` },
      ...along.map(({ at, from, say, joint }) => ({ at: /bottom/.test(from.say) ? subtract(length, at) : at, say: `${say}${nameOf(joint)}` })),
      ...rails.flatMap(({ say, from, to }) => [{ at: from, say: `top edge of the ${say}` }, { at: to, say: `bottom edge of the ${say}` }]),
      ...held.map(({ say, from }) => ({ at: from, say: `upper face of the ${say}` })),
    ],
  };
}

function topShoulder(sizes: Sizes, { id, tenonOn }: MortiseAndTenon): Length {
  const read = (name: string): Length => sizeOf(sizes, name)?.length ?? ZERO_LENGTH;
  return sizeOf(sizes, `${id}.topShoulder`)?.length ?? fractionOf(subtract(read(`${tenonOn}.width`), read(`${id}.tenonWidth`)), 1, 2);
}

/** What is held on top of the rails: a table top. */
function heldOn({ file }: LoadedPiece, joints: readonly MortiseAndTenon[]): readonly Part[] {
  const rails = new Set(joints.map(({ tenonOn }) => tenonOn));
  const held = new Set(file.joints.flatMap((joint) => (joint.kind === 'fixing' && rails.has(joint.to) ? [joint.holds] : [])));
  return file.parts.filter(({ id }) => held.has(id));
}

/** From the outer face of one upright to that of the other, with what lies between; none where no rail runs that way. */
function acrossStrip({ piece, sizes, upright, joints }: Standing, into: 'width' | 'thickness'): readonly RodStrip[] {
  const read = (name: string): Length => sizeOf(sizes, name)?.length ?? ZERO_LENGTH;
  const along = joints.filter((joint) => (joint.mortiseInto ?? 'width') === into);
  const side = joints.filter((joint) => (joint.mortiseInto ?? 'width') !== into);
  const [first] = along;
  if (!first) return [];
  const leg = read(`${upright.id}.${into}`);
  const inside = betweenShoulders(sizes, first);
  const whole = add(timesWhole(leg, 2), inside);
  const bothEnds = (at: Length, say: string): readonly RodMark[] => [{ at, say }, { at: subtract(whole, at), say }];
  const held = heldOn(piece, joints).map((part) => topAlong(read, part, whole));
  return [{
    direction: 'length', zero: `outer face of one ${upright.name}`,
    parts: [
      { say: upright.name, from: ZERO_LENGTH, to: leg }, { say: upright.name, from: subtract(whole, leg), to: whole },
      ...along.map((joint) => { const tenon = read(`${joint.id}.tenonLength`); return { say: mateOf(piece.file, joint), from: subtract(leg, tenon), to: add(leg, inside, tenon) }; }),
      ...side.flatMap((joint) => { const from = read(`${joint.id}.setback`); const to = add(from, read(`${joint.tenonOn}.thickness`)); const say = mateOf(piece.file, joint); return [{ say, from, to }, { say, from: subtract(whole, to), to: subtract(whole, from) }]; }),
      ...held,
    ],
    marks: [
      ...bothEnds(ZERO_LENGTH, `outer face of the ${upright.name}`),
      ...along.flatMap((joint) => { const say = mateOf(piece.file, joint); return [
        ...bothEnds(leg, `shoulder of the ${say}`), ...bothEnds(subtract(leg, read(`${joint.id}.tenonLength`)), `end of the tenon, ${say}`), ...bothEnds(subtract(leg, read(`${joint.id}.mortiseDepth`)), `bottom of the mortise, ${say}`),
      ]; }),
      ...side.flatMap((joint) => sideMarks(piece, sizes, joint).flatMap(({ at, say }) => bothEnds(at, say))),
      ...held.flatMap(({ say, from, to }) => [{ at: from, say: `end of the ${say}` }, { at: to, say: `end of the ${say}` }]),
    ],
  }];
}

function betweenShoulders(sizes: Sizes, { id, tenonOn }: MortiseAndTenon): Length {
  const read = (name: string): Length | undefined => sizeOf(sizes, name)?.length;
  return read(`${tenonOn}.shoulders`) ?? subtract(read(`${tenonOn}.length`) ?? ZERO_LENGTH, timesWhole(read(`${id}.tenonLength`) ?? ZERO_LENGTH, 2));
}

/** A rail that runs the other way is seen by its thickness, and its mortise by its sides. */
function sideMarks(piece: LoadedPiece, sizes: Sizes, joint: MortiseAndTenon): readonly RodMark[] {
  const read = (name: string): Length => sizeOf(sizes, name)?.length ?? ZERO_LENGTH;
  const say = mateOf(piece.file, joint);
  const setback = read(`${joint.id}.setback`);
  const sides = marksFor(piece, sizes, joint.mortiseIn).filter((mark) => mark.joint === joint.id && mark.from.kind === 'face' && mark.tool !== 'depth flag');
  return [
    { at: setback, say: `outer face of the ${say}` }, { at: add(setback, read(`${joint.tenonOn}.thickness`)), say: `inner face of the ${say}` },
    ...sides.map((mark) => ({ at: mark.at, say: `${mark.say}, ${say}` })),
  ];
}

/** A top stands over both ends alike, by that of its sizes which reaches over them least. */
function topAlong(read: (name: string) => Length, { id, name }: Part, whole: Length): RodPart {
  const [length, width] = [read(`${id}.length`), read(`${id}.width`)];
  const size = width >= whole && width < length ? width : length;
  const over = fractionOf(subtract(size, whole), 1, 2);
  return { say: name, from: subtract(ZERO_LENGTH, over), to: subtract(size, over) };
}
