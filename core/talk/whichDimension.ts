import type { Request } from '../bench/request.ts';
import type { SizeMention } from '../work/step.ts';
import type { OwnerMention } from './names.ts';
import type { Built } from './slot.ts';
import { sizeOfOwner } from './subjects.ts';

/** What is usually measured of a part, the most telling first. */
const MEASURED = ['shoulder to shoulder', 'length', 'width', 'thickness', 'depth'];

/** Asks which of the usual dimensions, or of those given, was meant; nothing is done before that. A reason when the owner has none of them. */
export function whichDimension(owner: OwnerMention, build: (size: SizeMention) => Request, dimensions: readonly string[] = MEASURED): Built {
  const choices = dimensions.flatMap((dimension) => {
    const size = sizeOfOwner(owner, [dimension]);
    return size ? [{ say: dimension, request: build(size.value) }] : [];
  });
  const [only, other] = choices;
  if (!only) return { fault: `of ${owner.say}, which size is not clear` };
  return other ? { kind: 'which', choices } : only.request;
}
