import type { Bench } from '../bench/bench.ts';
import type { Joint } from '../piece/file.ts';
import { lastPart, stepNow } from './context.ts';

/** The joints that are being worked on, by their names in the file: the one on the screen or of the step, else those of the part last spoken of or of the step's. Empty when nothing tells. */
export function jointsAtHand(bench: Bench): readonly string[] {
  const { conversation: { screen }, state: { piece } } = bench;
  if (!piece) return [];
  if (screen.name === 'chopping') return [screen.joint];
  const step = stepNow(bench);
  if (step?.joint !== undefined) return [step.joint];
  return [lastPart(bench)?.owner, step?.part].map((part) => piece.file.joints.filter((joint) => joins(joint, part)).map(({ id }) => id)).find((joints) => joints.length > 0) ?? [];
}

function joins(joint: Joint, part: string | undefined): boolean {
  return joint.id === part || (joint.kind === 'mortise and tenon' && (joint.mortiseIn === part || joint.tenonOn === part));
}
