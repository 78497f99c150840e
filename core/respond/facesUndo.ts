import { nameCopies } from '../faces/explain.ts';
import { legMap, likeness } from '../faces/map.ts';
import type { Turn } from '../faces/face.ts';
import type { State } from '../journal/state.ts';
import type { Step } from '../work/step.ts';
import { copyAtStep, mapOf } from './legMaps.ts';
import type { FacedPart } from './facesState.ts';
import { sentence } from './saying.ts';
import { stepsOf } from './views.ts';

interface Goes {
  readonly copy: number;
  readonly place: { readonly name: string };
  readonly turn: Turn;
}

/** Copies that mortises are laid out on already, or chopped in. */
export function markedCopies(state: State, part: FacedPart['part']): readonly number[] {
  const cut = cutSteps(state, part);
  return Array.from({ length: part.count }, (_, index) => index + 1).filter((copy) => cut.some((step) => (copyAtStep(state, step) ?? copy) === copy));
}

function cutSteps(state: State, part: FacedPart['part']): readonly Step[] {
  return stepsOf(state).filter((step) => step.part === part.id && state.done.has(step.id) && (step.operation === 'chop mortises' || step.operation === 'joint layout')
    && (state.piece?.file.joints.some((joint) => joint.kind === 'mortise and tenon' && joint.id === step.joint && joint.mortiseIn === part.id) ?? false));
}

/** Copies whose mortises are laid out or chopped already, on faces that would be others from now on. */
export function undoneBy(state: State, { part }: Pick<FacedPart, 'part'>, legs: readonly Goes[]): readonly number[] {
  const { piece } = state;
  if (!piece) return [];
  const cut = cutSteps(state, part);
  return legs.filter(({ copy, place, turn }) => {
    const before = mapOf(state, part.id, copy);
    const worked = cut.some((step) => (copyAtStep(state, step) ?? copy) === copy);
    return before !== undefined && worked && likeness(before, legMap(piece.file, part, place.name, turn)) !== 'the same';
  }).map(({ copy }) => copy);
}

export function sayUndone({ names }: Pick<FacedPart, 'names'>, copies: readonly number[]): string {
  return sentence(`${nameCopies(names, copies)} ${copies.length === 1 ? 'has' : 'have'} mortises marked or chopped already, and would take them in other faces`);
}
