import { sayNumber } from '../length/say.ts';
import type { MortiseAndTenon, Part } from '../piece/file.ts';
import { sizeName } from './draft.ts';
import { copiesOf, coverOf, type Ground } from './ground.ts';
import type { PartCopy } from './step.ts';

/** One glue-up: what goes together, and how many tenons must go home before the open time is out. */
export interface GlueUp {
  /** 'endFrame.1' ('endFrame.rail.1' in an assembly beside the main one), or the assembly's own id. */
  readonly id: string;
  /** 'left end frame', 'end frame 1 of 2', 'frame'. */
  readonly title: string;
  /** For the ear: 'the left end frame', 'end frame one', 'the frame'. */
  readonly name: string;
  readonly covers: readonly PartCopy[];
  /** What was not glued before. */
  readonly adds: readonly PartCopy[];
  readonly tenons: number;
}

/** Parts that joints hold together, and the glue-ups that make them one: sub-assemblies first. */
export interface Assembly {
  /** 'piece', or 'with.' and a part's id for what stands apart from it. */
  readonly id: string;
  readonly parts: readonly Part[];
  readonly joints: readonly MortiseAndTenon[];
  readonly endFrames: readonly GlueUp[];
  readonly whole: GlueUp;
  /** Whether it has feet to be levelled. */
  readonly stands: boolean;
}

/** The parts that mortise and tenon joints connect, largest assembly first. */
export function assembliesOf(ground: Ground): readonly Assembly[] {
  const groups: { readonly parts: Set<string>; readonly joints: MortiseAndTenon[] }[] = [];
  for (const joint of ground.tenonJoints) {
    const met = groups.filter(({ parts }) => parts.has(joint.tenonOn) || parts.has(joint.mortiseIn));
    for (const group of met) groups.splice(groups.indexOf(group), 1);
    groups.push({
      parts: new Set([...met.flatMap(({ parts }) => [...parts]), joint.mortiseIn, joint.tenonOn]),
      joints: [...met.flatMap(({ joints }) => joints), joint],
    });
  }
  return groups
    .sort((one, other) => other.parts.size - one.parts.size)
    .map(({ parts, joints }, index) => assembly(ground, joints, ground.file.parts.flatMap(({ id }) => (parts.has(id) ? ground.part(id) ?? [] : [])), index === 0));
}

function assembly(ground: Ground, joints: readonly MortiseAndTenon[], parts: readonly Part[], main: boolean): Assembly {
  const frames = endFrames(ground, joints, parts, main);
  const framed = new Set(frames.flatMap(({ covers }) => covers.map(({ part, copy }) => `${part}/${copy}`)));
  const covers = parts.flatMap(coverOf);
  const tenons = joints.reduce((sum, { tenonOn }) => sum + 2 * (ground.part(tenonOn)?.count ?? 0), 0);
  return {
    id: main ? 'piece' : `with.${parts[0]?.id ?? ''}`,
    parts, joints, endFrames: frames,
    stands: frames.length > 0 || parts.some(({ id, count, footBevel }) => footBevel !== undefined || (count > 2 && joints.some(({ mortiseIn }) => mortiseIn === id))),
    whole: {
      id: main ? 'piece' : `with.${parts[0]?.id ?? ''}`,
      title: wholeTitle(parts, joints, main),
      name: `the ${wholeTitle(parts, joints, main)}`,
      covers,
      adds: covers.filter(({ part, copy }) => !framed.has(`${part}/${copy}`)),
      tenons: tenons - frames.reduce((sum, frame) => sum + frame.tenons, 0),
    },
  };
}

function wholeTitle(parts: readonly Part[], joints: readonly MortiseAndTenon[], main: boolean): string {
  if (main) return 'frame';
  const mortised = parts.find(({ id }) => joints.some(({ mortiseIn }) => mortiseIn === id));
  return `${mortised?.name ?? 'parts'} assembly`;
}

/**
 * End frames: two posts (legs) and what runs between them the short way. Glued first, they leave only the long rails for the last
 * glue-up, and so few tenons to one open time. Common practice, no source. None when the posts do not come in pairs.
 */
function endFrames(ground: Ground, joints: readonly MortiseAndTenon[], parts: readonly Part[], main: boolean): readonly GlueUp[] {
  const post = parts.find(({ id, count }) => count >= 4 && count % 2 === 0 && joints.some(({ mortiseIn }) => mortiseIn === id));
  if (post === undefined) return [];
  const frames = post.count / 2;
  const railsOf = (id: string): readonly Part[] => parts.filter((part) => joints.some((joint) => joint.mortiseIn === id && joint.tenonOn === part.id));
  const ends = shortWay(ground, railsOf(post.id)).filter(({ count }) => count >= frames && count % frames === 0);
  if (ends.length === 0) return [];
  const of = main ? '' : `, ${post.name}`;
  const members = [...ends, ...uprights(joints, parts, ends)].filter(({ count }) => count % frames === 0);
  return copiesOf({ ...post, count: frames }).map((number) => {
    const place = ends[0]?.count === frames ? ends[0].places?.[number - 1] : undefined;
    const rails = members.flatMap((part) => share(part, number, isOnlyRail(part) ? 2 * frames : frames));
    const covers = [...postsAt(post, place, number, frames), ...rails];
    return {
      id: main ? `endFrame.${number}` : `endFrame.${post.id}.${number}`,
      title: `${place === undefined ? `end frame ${number} of ${frames}` : `${place} end frame`}${of}`,
      name: `${place === undefined ? `end frame ${sayNumber(number)}` : `the ${place} end frame`}${of}`,
      covers,
      adds: covers,
      tenons: 2 * rails.length,
    };
  });

  /** A square table may have one kind of rail all round: half of its copies go into the end frames. */
  function isOnlyRail(part: Part): boolean {
    return railsOf(post?.id ?? '').length === 1 && part.count === 2 * frames;
  }
}

/** The rails that run the short way: those nearer in length to the shortest than to the longest. */
function shortWay(ground: Ground, rails: readonly Part[]): readonly Part[] {
  const spans = rails.map((rail) => Number(ground.planned(sizeName(rail, 'shoulders')) ?? ground.planned(sizeName(rail, 'length')) ?? 0));
  const [shortest, longest] = [Math.min(...spans), Math.max(...spans)];
  if (shortest < longest) return rails.filter((_, index) => (spans[index] ?? 0) - shortest < longest - (spans[index] ?? 0));
  // All of one length: by their places, else the rails of the last joint in the file, as the shorter are usually named after the longer.
  const atTheSides = rails.filter(({ places }) => places?.some((place) => /\b(?:left|right|end)\b/.test(place)) ?? false);
  return atTheSides.length > 0 && atTheSides.length < rails.length ? atTheSides : rails.slice(-1);
}

/** Slats and the like, tenoned into two different end rails: they can only go in while the end frame goes together. */
function uprights(joints: readonly MortiseAndTenon[], parts: readonly Part[], ends: readonly Part[]): readonly Part[] {
  const endIds = new Set(ends.map(({ id }) => id));
  return parts.filter(({ id }) => {
    const into = new Set(joints.filter(({ tenonOn }) => tenonOn === id).map(({ mortiseIn }) => mortiseIn));
    return !endIds.has(id) && into.size > 1 && [...into].every((mortised) => endIds.has(mortised));
  });
}

/** The posts of an end frame: those whose place has its name in it ('front left' is at the left), else by number. */
function postsAt(post: Part, place: string | undefined, number: number, frames: number): readonly PartCopy[] {
  const there = coverOf(post).filter((_, index) => place !== undefined && post.places?.[index]?.split(' ').includes(place) === true);
  return there.length === post.count / frames ? there : share(post, number, frames);
}

/** The nth share of a part's copies, of so many. */
function share(part: Part, number: number, of: number): readonly PartCopy[] {
  const each = part.count / of;
  return coverOf(part).slice((number - 1) * each, number * each);
}
