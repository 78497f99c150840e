import type { SizeName } from '../piece/measurement.ts';
import type { Part } from '../piece/file.ts';
import { coverOf, type Ground } from './ground.ts';
import { capital, titleSubject } from './names.ts';
import type { Before, Operation, PartCopy, SizeMention, Step, StepId } from './step.ts';
import { mentionsIn } from './wording.ts';

/** Joins what is known of a step into its id: 'face/leg/3', 'joint layout/leg/longRailJoint'. */
export function idOf(operation: Operation, ...subject: readonly (string | number | undefined)[]): StepId {
  return [operation, ...subject.filter((item) => item !== undefined)].join('/');
}

/** A step as the trade describes it; the rest (id, title, lists that are empty) follows from it. */
export type Draft = Pick<Step, 'operation' | 'say' | 'show' | 'tools' | 'check'>
  & Partial<Pick<Step, 'joint' | 'cautions' | 'timer' | 'clampTimer' | 'record' | 'after' | 'waits'>>
  /** Sizes needed beside those that the text mentions. */
  & { readonly sizes?: readonly SizeMention[] };

export interface TitleWords {
  /** Instead of the part's own name and copy. */
  readonly subject?: string;
  /** Added to the title. */
  readonly detail?: string;
  /** The copy is known by its place, not by its number: 'back left'. */
  readonly place?: string;
}

/** A step on one copy of a part, or on all of its copies. */
export function partStep(part: Part, copy: number | undefined, draft: Draft, { subject, detail, place }: TitleWords = {}): Step {
  const about = subject ?? (place === undefined ? titleSubject(part, copy) : `${place} ${part.name}`);
  return finished(draft, {
    id: idOf(draft.operation, part.id, place ?? copy, draft.joint),
    part: part.id,
    ...(copy !== undefined && place === undefined && part.count > 1 ? { copy } : {}),
    covers: copy === undefined ? coverOf(part) : [{ part: part.id, copy }],
    title: `${capital(draft.operation)}, ${about}${detail === undefined ? '' : `: ${detail}`}`,
  });
}

/** A step on several parts, or on the piece as a whole; `operation` stands in the title for the operation's own name. */
export function wholeStep(name: { readonly id: string; readonly title: string; readonly operation?: string }, covers: readonly PartCopy[], draft: Draft): Step {
  return finished(draft, { id: idOf(draft.operation, name.id), covers, title: `${capital(name.operation ?? draft.operation)}, ${name.title}` });
}

function finished(draft: Draft, about: Pick<Step, 'id' | 'covers' | 'title'> & Partial<Pick<Step, 'part' | 'copy'>>): Step {
  const { sizes = [], after = [], ...given } = draft;
  return {
    cautions: [], record: [], waits: [],
    ...given,
    ...about,
    after: [...new Map(after.map((one) => [one.step, one])).values()],
    sizes: mentionsIn(draft.say, draft.show, draft.check.say, sizes),
  };
}

export function before(step: StepId, because: string): Before {
  return { step, because };
}

/** Skipping it is not passing it: what comes next cannot be undone. */
export function gate(step: StepId, because: string): Before {
  return { step, because, gate: true };
}

/** Parts made in one go are all alike and are not oriented. */
export function oriented(ground: Ground, part: Part, because: string): readonly Before[] {
  return ground.inOneGo(part) ? [] : [before(idOf('orient and mark', part.id), because)];
}

/** All ends of a part squared: it has its finished size. */
export function shaped(ground: Ground, part: Part, because: string): readonly Before[] {
  return ground.unitsOf(part).map((copy) => before(idOf('ends', part.id, copy), because));
}

/** The mentions that there are. */
export function present(...mentions: readonly (SizeMention | undefined)[]): readonly SizeMention[] {
  return mentions.filter((mention) => mention !== undefined);
}

/** The name of a part's size: `leg.thickness`. */
export function sizeName(owner: { readonly id: string }, size: string): SizeName {
  return `${owner.id}.${size}`;
}
