import type { GlueJoint, GlueUpPlan } from '../glue/glueUp.ts';
import { sayNumber } from '../length/say.ts';
import { sizeNames } from '../piece/describe.ts';
import { evaluate, sizeOf } from '../piece/evaluate.ts';
import type { Part } from '../piece/file.ts';
import type { LoadedPiece } from '../piece/loadedPiece.ts';
import { assembliesOf, type Assembly, type GlueUp } from './assembly.ts';
import { copiesOf, groundOf, type Ground } from './ground.ts';
import { oneOf, stockOf } from './names.ts';
import type { PartCopy, Step } from './step.ts';

/** What goes together in a step that glues, joint by joint; undefined for any other step. */
export function glueUpPlanOf(piece: LoadedPiece, step: Step): GlueUpPlan | undefined {
  const planned = evaluate(piece, []);
  const ground = groundOf(piece.file, sizeNames(piece), (name) => sizeOf(planned, name)?.planned);
  if (step.operation === 'panel glue-up' || step.operation === 'lamination glue-up') return boardsPlan(ground, step);
  if (step.operation !== 'glue-up') return undefined;
  for (const assembly of assembliesOf(ground)) {
    const what = [...assembly.endFrames, assembly.whole].find(({ id }) => step.id === `glue-up/${id}`);
    if (what) return framePlan(ground, assembly, what, step);
  }
  return undefined;
}

/** Boards or layers of one part, each glued to the next. */
function boardsPlan(ground: Ground, step: Step): GlueUpPlan | undefined {
  const part = ground.part(step.part ?? '');
  if (part === undefined || part.made.kind === 'solid') return undefined;
  const [count, one] = part.made.kind === 'panel' ? [part.made.boards, 'board'] : [part.made.layers, 'layer'];
  const joints = Array.from({ length: count - 1 }, (_, index): GlueJoint => ({
    id: `${one} ${index + 1} to ${index + 2}`, say: `${one} ${sayNumber(index + 1)}, towards ${one} ${sayNumber(index + 2)}`, joins: [`${one} ${index + 1}`, `${one} ${index + 2}`],
  }));
  const name = stockOf(part).ofCopy(step.copy);
  return { step: step.id, name, joints, kind: part.made.kind === 'panel' ? 'panel' : 'stack', clampings: [{ say: 'the middle first, then out to both ends by turns', joints: joints.map(({ id }) => id) }] };
}

/** Every tenon into its mortise; each rail is clamped across its shoulders. */
function framePlan(ground: Ground, assembly: Assembly, what: GlueUp, step: Step): GlueUpPlan {
  const groupOf = blocksOf(assembly, what);
  const rails = what.adds.filter(({ part }) => assembly.joints.some(({ tenonOn }) => tenonOn === part));
  const railJoints = rails.map((rail) => ({ rail, joints: tenonsOf(ground, assembly, what, rail, groupOf) })).filter(({ joints }) => joints.length > 0);
  return {
    step: step.id, name: what.name, kind: 'frame', joints: railJoints.flatMap(({ joints }) => joints),
    clampings: railJoints.map(({ rail, joints }) => ({ say: sayCopy(ground, rail), joints: joints.map(({ id }) => id) })),
  };
}

/** Which block of wood a part copy is in when this glue-up begins: an end frame that is glued already counts as one. */
function blocksOf(assembly: Assembly, what: GlueUp): (copy: PartCopy) => { readonly id: string; readonly say: string | undefined } {
  const frames = what === assembly.whole ? assembly.endFrames : [];
  return (copy) => {
    const frame = frames.find(({ covers }) => covers.some(({ part, copy: number }) => part === copy.part && number === copy.copy));
    return { id: frame?.id ?? `${copy.part}/${copy.copy}`, say: frame?.name };
  };
}

/** The two ends of a rail (or of whatever carries tenons), by the mortised copies that this glue-up has for them. */
function tenonsOf(ground: Ground, assembly: Assembly, what: GlueUp, rail: PartCopy, blockOf: ReturnType<typeof blocksOf>): readonly GlueJoint[] {
  const joints = assembly.joints.filter(({ tenonOn }) => tenonOn === rail.part);
  const mortised = joints.flatMap(({ mortiseIn, places }) => placedCopies(ground.part(mortiseIn), places).map((copy): PartCopy => ({ part: mortiseIn, copy })))
    .filter(({ part, copy }) => what.covers.some((cover) => cover.part === part && cover.copy === copy));
  const ends = endsFor(mortised, rail, blockOf);
  return ends.map(({ part, copy }): GlueJoint => {
    const block = blockOf({ part, copy });
    return { id: `${rail.part}/${rail.copy} in ${part}/${copy}`, say: `${sayCopy(ground, rail)} into ${block.say ?? sayCopy(ground, { part, copy })}`, joins: [`${rail.part}/${rail.copy}`, block.id] };
  });
}

/** The copies that may have the joint: those in its places, in order of place, or all. */
function placedCopies(part: Part | undefined, places: readonly string[] | undefined): readonly number[] {
  if (part === undefined) return [];
  const placed = places?.map((place) => (part.places?.indexOf(place) ?? -1) + 1).filter((copy) => copy > 0) ?? [];
  return placed.length > 0 ? placed : copiesOf(part);
}

/** Two mortised copies in different blocks; between end frames, the one of each frame that stands in the row of the rail. */
function endsFor(mortised: readonly PartCopy[], rail: PartCopy, blockOf: ReturnType<typeof blocksOf>): readonly PartCopy[] {
  const byBlock = new Map<string, PartCopy[]>();
  for (const copy of mortised) byBlock.set(blockOf(copy).id, [...(byBlock.get(blockOf(copy).id) ?? []), copy]);
  const blocks = [...byBlock.values()];
  const pair = blocks.length > 2 ? [blocks[(2 * (rail.copy - 1)) % blocks.length], blocks[(2 * rail.copy - 1) % blocks.length]] : blocks;
  return pair.flatMap((copies) => copies?.[(rail.copy - 1) % copies.length] ?? []);
}

function sayCopy(ground: Ground, { part: id, copy }: PartCopy): string {
  const part = ground.part(id);
  if (part === undefined) return id;
  const place = part.places?.[copy - 1];
  return place === undefined ? oneOf(part, copy) : `the ${place} ${part.name}`;
}
