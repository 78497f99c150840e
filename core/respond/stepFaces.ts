import { nameCopies, type PartNames } from '../faces/explain.ts';
import { listFaces } from '../faces/likes.ts';
import type { LegMap } from '../faces/map.ts';
import { standOf } from '../faces/stand.ts';
import type { State } from '../journal/state.ts';
import type { MortiseAndTenon, Part } from '../piece/file.ts';
import { pluralOf } from '../work/names.ts';
import type { Step } from '../work/step.ts';
import { copyAtStep, mapOf } from './legMaps.ts';
import { sentence } from './saying.ts';

/**
 * At a step that marks or chops mortises: in which face of each copy, by its own map. Of copies that have none yet, that it is so. Empty at any
 * other step, and where the piece file names no places.
 */
export function facesAtStep(state: State, step: Step): string {
  const part = state.piece?.file.parts.find(({ id }) => id === step.part);
  const joint = state.piece?.file.joints.find(({ id }) => id === step.joint);
  if (!state.piece || !part || joint?.kind !== 'mortise and tenon' || joint.mortiseIn !== part.id) return '';
  if (!standOf(state.piece.file, part, true).ok) return '';
  const copies = copiesAt(state, step, part, joint);
  const mapped = copies.flatMap((copy) => {
    const map = mapOf(state, part.id, copy);
    return map === undefined ? [] : [{ copy, map }];
  });
  const names: PartNames = { one: part.name, many: pluralOf(part) };
  const open = copies.filter((copy) => mapped.every((one) => one.copy !== copy));
  return [sayFaces(names, joint, mapped), sayOpen(names, open, mapped.length === 0)].filter(Boolean).join(' ');
}

/** The copies that have the joint where they stand; those that stand nowhere yet may have it. */
function copiesAt(state: State, step: Step, part: Part, joint: MortiseAndTenon): readonly number[] {
  const one = copyAtStep(state, step);
  if (one !== undefined) return [one];
  if (step.operation === 'chop mortises') return [];
  return Array.from({ length: part.count }, (_, index) => index + 1).filter((copy) => {
    const place = state.places.get(`${part.id}/${copy}`);
    return joint.places === undefined || place === undefined || joint.places.includes(place);
  });
}

function sayFaces(names: PartNames, joint: MortiseAndTenon, mapped: readonly { readonly copy: number; readonly map: LegMap }[]): string {
  const groups = new Map<string, number[]>();
  for (const { copy, map } of mapped) {
    const own = map.mortises.filter((mortise) => mortise.joint === joint.id);
    const gauged = [...new Set(own.flatMap(({ gaugeFrom }) => gaugeFrom ?? []))];
    if (own.length === 0) continue;
    const key = `face ${listFaces([...new Set(own.map(({ face }) => face))].sort())}${gauged.length === 0 ? '' : `, gauged from ${listFaces(gauged)}`}`;
    groups.set(key, [...(groups.get(key) ?? []), copy]);
  }
  return groups.size === 0 ? '' : sentence([...groups].map(([face, copies]) => `${nameCopies(names, copies)} in ${face}`).join('; '));
}

function sayOpen(names: PartNames, open: readonly number[], all: boolean): string {
  if (open.length === 0) return '';
  if (all && open.length > 1) return `Which ${names.one} goes where, and which way it faces, is not settled yet: have me place the ${names.many}.`;
  return sentence(`which way ${nameCopies(names, open)} ${open.length === 1 ? 'faces' : 'face'} is not settled yet`);
}
