import { listed, nameCopies, type PartNames } from '../faces/explain.ts';
import { likeness, type LegMap } from '../faces/map.ts';
import { listFaces } from '../faces/likes.ts';
import { mateOf } from '../joint/mates.ts';
import type { State } from '../journal/state.ts';
import type { PieceFile } from '../piece/file.ts';
import { pluralOf } from '../work/names.ts';
import { currentStep } from '../work/progress.ts';
import { copyAtStep, mapOf } from './legMaps.ts';
import { sentence } from './saying.ts';
import { stepsOf } from './views.ts';

/**
 * What is wrong with asking about or writing down that copy while another is at hand to be mortised: a sentence, when their mortises are in other faces; empty
 * when both have the same map, when either has none yet, and when no mortise is being cut.
 */
export function wrongHand(state: State, partId: string, copy: number | undefined): string {
  const step = currentStep(stepsOf(state), state);
  const part = state.piece?.file.parts.find(({ id }) => id === partId);
  if (!state.piece || !part || copy === undefined || step?.part !== partId || step.joint === undefined) return '';
  const atHand = copyAtStep(state, step);
  const [asked, here] = [mapOf(state, partId, copy), mapOf(state, partId, atHand)];
  if (atHand === undefined || atHand === copy || !asked || !here) return '';
  const names: PartNames = { one: part.name, many: pluralOf(part) };
  const like = likeness(asked, here);
  if (like === 'the same') return '';
  const what = like === 'the other hand' ? 'that mark is for the other hand' : `${nameCopies(names, [copy])} is turned another way`;
  const alike = asked.mortised.join() === here.mortised.join();
  const tell = (map: LegMap): string => (alike ? sayByJoint(state.piece?.file, map) : listFaces(map.mortised));
  return sentence(`${what}: ${nameCopies(names, [atHand])}, at hand, takes ${alike ? '' : 'its mortises in '}${tell(here)}; ${nameCopies(names, [copy])} ${alike ? 'takes ' : 'in '}${tell(asked)}`);
}

/** 'the long rail in B and the short rail in C' */
function sayByJoint(file: PieceFile | undefined, { mortises }: LegMap): string {
  return listed(mortises.flatMap(({ joint: id, face }) => {
    const joint = file?.joints.find((one) => one.id === id);
    return file && joint?.kind === 'mortise and tenon' ? [`the ${mateOf(file, joint)} in ${face}`] : [];
  }));
}
