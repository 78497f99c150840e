import { html, nothing } from 'lit';
import type { TemplateResult } from 'lit';
import { subtract } from '../../core/length/arithmetic.ts';
import { ZERO_LENGTH, type Length } from '../../core/length/length.ts';
import { drawnFace } from '../../core/faces/drawn.ts';
import { oppositeSide, RING } from '../../core/faces/face.ts';
import { facesLiked, NO_LIKES } from '../../core/faces/likes.ts';
import { railSizes, tenonsOf, type ReadSize } from '../../core/piece/cavity.ts';
import type { SizeValue } from '../../core/piece/evaluate.ts';
import { sizeOf } from '../../core/piece/evaluate.ts';
import type { SizeDescription } from '../../core/piece/describe.ts';
import { describeSize, sizeNames } from '../../core/piece/describe.ts';
import type { MortiseAndTenon, Part } from '../../core/piece/file.ts';
import type { SizeName } from '../../core/piece/measurement.ts';
import type { State } from '../../core/journal/state.ts';
import { mapOf } from '../../core/respond/legMaps.ts';
import { sizesOf } from '../../core/respond/views.ts';
import type { SizeMention, Wording } from '../../core/work/step.ts';
import type { JointShape } from '../draw/jointLayout.ts';
import type { PartFaces, PartShape } from '../draw/partLayout.ts';
import '../look/fractionText.ts';

/** What screens read out of the state: sizes with their captions, wordings with their fractions drawn. */
export function valueOf(state: State, { size, copy }: SizeMention): SizeValue | undefined {
  const sizes = sizesOf(state);
  return sizes === null ? undefined : sizeOf(sizes, size, copy);
}

export interface Caption {
  /** 'leg 2', 'long rail'; empty for a parameter, whose own name says it all. */
  readonly owner: string;
  /** 'shoulder to shoulder', 'inside length' */
  readonly say: string;
  /** 'from the top end'; empty when the size's name says it already. */
  readonly from: string;
}

export function captionOf(state: State, { size, copy }: SizeMention): Caption {
  const description = descriptionOf(state, size);
  if (description === undefined) return { owner: '', say: size, from: '' };
  const place = copy === undefined ? undefined : state.places.get(`${description.owner.id}/${copy}`);
  const owner = description.owner.kind === 'parameter' ? '' : `${description.owner.name}${copy === undefined ? '' : ` ${copy}`}${place === undefined ? '' : ` ${place}`}`;
  const from = description.from ?? '';
  return { owner, say: description.say, from: description.say.includes(from) ? '' : from };
}

export function descriptionOf(state: State, size: SizeName): SizeDescription | undefined {
  return state.piece === null ? undefined : describeSize(state.piece, size);
}

export function partOf(state: State, id: string): Part | undefined {
  return state.piece?.file.parts.find((part) => part.id === id);
}

/** Sizes of the part itself, then those of the joints it takes part in. */
export function sizesOfPart(state: State, id: string): readonly SizeName[] {
  if (state.piece === null) return [];
  const { joints } = state.piece.file;
  const mine = new Set([id, ...joints.filter((joint) => (joint.kind === 'fixing' ? [joint.holds, joint.to] : [joint.tenonOn, joint.mortiseIn]).includes(id)).map((joint) => joint.id)]);
  const names = sizeNames(state.piece).filter((name) => mine.has(name.split('.')[0] ?? ''));
  return [...names.filter((name) => name.startsWith(`${id}.`)), ...names.filter((name) => !name.startsWith(`${id}.`))];
}

/** A size drawn as a fraction at the maker's rounding; nothing when the piece does not have it. */
export function sizeText(state: State, mention: SizeMention): TemplateResult | typeof nothing {
  const value = valueOf(state, mention);
  return value === undefined ? nothing : html`<fraction-text .length=${value.length} .rounding=${state.settings.rounding}></fraction-text>`;
}

/** Words with their sizes drawn where they stand. */
export function wordingText(state: State, wording: Wording): TemplateResult {
  return html`${wording.map((item) => (typeof item === 'string' ? item : sizeText(state, item)))}`;
}

/** What the part's drawing is made from; undefined when the piece does not have the part. */
export function shapeOf(state: State, id: string, copy?: number): PartShape | undefined {
  const part = partOf(state, id);
  if (part === undefined) return undefined;
  const value = (size: SizeName): PartShape['length'] | undefined => valueOf(state, { size, ...(copy === undefined ? {} : { copy }) })?.length;
  const [length, width, thickness] = [value(`${id}.length`), value(`${id}.width`), value(`${id}.thickness`)];
  if (length === undefined || width === undefined || thickness === undefined) return undefined;
  const joint = state.piece?.file.joints.find((each) => each.kind === 'mortise and tenon' && each.tenonOn === id);
  const shoulders = value(`${id}.shoulders`);
  const tenonWidth = joint === undefined ? undefined : value(`${joint.id}.tenonWidth`);
  const tenonFromEdge = joint === undefined ? undefined : value(`${joint.id}.topShoulder`);
  return {
    length, width, thickness, layers: part.made.kind === 'laminated' ? part.made.layers : 1, boards: part.made.kind === 'panel' ? part.made.boards : 1,
    ...facesOfCopy(state, id, copy), ...(shoulders === undefined ? {} : { shoulders }), ...(tenonWidth === undefined ? {} : { tenonWidth }), ...(tenonFromEdge === undefined ? {} : { tenonFromEdge }),
  };
}

/** The letters of a copy that stands, drawn with its face side towards the eye, or while none was told with the face to the front. */
function facesOfCopy(state: State, id: string, copy: number | undefined): { readonly faces?: PartFaces } {
  const map = mapOf(state, id, copy);
  if (map === undefined) return {};
  const likes = state.likes.get(`${id}/${copy ?? 0}`) ?? NO_LIKES;
  const [drawn = map.towards.front] = facesLiked(likes, 'face side');
  const side = RING.find((one) => map.towards[one] === drawn) ?? 'front';
  const { upper, lower } = drawnFace(map, side);
  return { faces: {
    drawn, upper: map.towards[upper.side], lower: map.towards[lower.side], behind: map.towards[oppositeSide(side)], outer: map.shows, mortised: map.mortised,
    edge: facesLiked(likes, 'face edge').includes(map.towards[lower.side]) ? 'lower' : 'upper',
  } };
}

const JOINT_SIZES = ['tenonLength', 'tenonWidth', 'tenonThickness', 'mortiseLength', 'mortiseWidth', 'mortiseDepth', 'setback', 'fromTop'] as const;

/** What the joint's drawing is made from; undefined when it is no mortise and tenon, or a size that the drawing needs is not given. */
export function jointShapeOf(state: State, id: string): JointShape | undefined {
  const joint = state.piece?.file.joints.find((each) => each.id === id);
  if (joint?.kind !== 'mortise and tenon') return undefined;
  const into = joint.mortiseInto ?? 'width';
  const { across, along } = railSizes(joint);
  const names = {
    railWidth: `${joint.tenonOn}.${along}`, railThickness: `${joint.tenonOn}.${across}`,
    legInto: `${joint.mortiseIn}.${into}`, legAcross: `${joint.mortiseIn}.${into === 'width' ? 'thickness' : 'width'}`,
    ...Object.fromEntries(JOINT_SIZES.map((key) => [key, `${id}.${key}`])),
  };
  const lengths = Object.entries(names).map(([key, size]) => [key, valueOf(state, { size })?.length] as const);
  if (lengths.some(([, length]) => length === undefined)) return undefined;
  return { ...(Object.fromEntries(lengths) as unknown as Omit<JointShape, keyof ReturnType<typeof tenonsShape>>), ...tenonsShape(state, joint) };
}

/** Where the tenons stand in the rail, how far apart, and the haunch over them. */
function tenonsShape(state: State, joint: MortiseAndTenon): Pick<JointShape, 'topShoulder' | 'outerShoulder' | 'open' | 'pitchDown' | 'pitchAcross' | 'gap' | 'haunch'> {
  const read: ReadSize = (size, copy) => valueOf(state, { size, ...(copy === undefined ? {} : { copy }) })?.length;
  const [first, second] = tenonsOf(joint, read);
  const size = (key: string): Length => read(`${joint.id}.${key}`) ?? ZERO_LENGTH;
  return {
    topShoulder: first?.top ?? ZERO_LENGTH, outerShoulder: first?.outer ?? ZERO_LENGTH, gap: size('gap'),
    ...(joint.shape === 'bridle' ? { open: size('fromTop') > 0 ? 'bottom' as const : 'top' as const } : {}),
    pitchDown: first && second ? subtract(second.top, first.top) : ZERO_LENGTH, pitchAcross: first && second ? subtract(second.outer, first.outer) : ZERO_LENGTH,
    ...(joint.haunch === undefined ? {} : { haunch: { width: size('haunchWidth'), length: size('haunchLength'), sloped: joint.haunch === 'sloped' } }),
  };
}
