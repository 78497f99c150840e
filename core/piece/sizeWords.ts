import type { Owner } from './declared.ts';
import type { Part } from './file.ts';

/** What sizes are called in the trade, where the file does not say otherwise; others are said as their name reads. */
const WORDS: ReadonlyMap<string, string> = new Map(Object.entries({
  shoulders: 'shoulder to shoulder',
  stock: 'stock thickness',
  fromTop: 'mortise from the top',
  setback: 'setback',
  boardWidth: 'width of each board',
  layerThickness: 'layer thickness',
  blankThickness: 'thickness of the glued blank',
  roughLength: 'rough length',
  roughWidth: 'rough width',
  roughThickness: 'rough thickness',
  ripWidth: 'width off the rip',
  gap: 'gap between the tenons',
  lowerHorn: 'lower horn',
}));

const ALLOWANCE_WORDS: ReadonlyMap<string, string> = new Map(Object.entries({
  roughLength: 'rough length allowance',
  roughWidth: 'rough width allowance',
  roughThickness: 'rough thickness allowance',
  afterRest: 'allowance left for after the rest',
}));

/** What a joint's sizes are measured from; common practice, no source. */
const JOINT_FROM: ReadonlyMap<string, string> = new Map(Object.entries({
  tenonLength: 'from the shoulder',
  mortiseDepth: 'from the inside face',
  setback: 'from the outer face of the leg',
  fromTop: 'from the top end',
  outerShoulder: 'from the outer face of the rail',
  topShoulder: 'from the top edge',
  grooveFromTop: 'from the top edge',
  haunchLength: 'from the shoulder',
  haunchWidth: 'above the tenon',
  step: 'from the top face of the button',
}));

/** 'inside.length' → 'inside length', 'tenonThickness' → 'tenon thickness'. */
export function usualWords(kind: Owner['kind'], key: string): string {
  const known = kind === 'allowance' ? ALLOWANCE_WORDS.get(key) : kind === 'parameter' ? undefined : WORDS.get(key);
  return known ?? key.replace(/\./gu, ' ').replace(/([a-z0-9])([A-Z])/gu, '$1 $2').toLowerCase();
}

/** Widths and thicknesses are measured from the reference edge and face, lengths end to end. */
export function usualFrom(kind: Owner['kind'], key: string, part: Part | undefined): string | undefined {
  if (kind === 'joint') return JOINT_FROM.get(key);
  if (kind !== 'part') return undefined;
  if (key === 'length') return 'end to end';
  if (key === 'width') return `from the ${part?.referenceEdge ?? 'face edge'}`;
  if (key === 'thickness') return `from the ${part?.referenceFace ?? 'face side'}`;
  if (key === 'horn') return 'over the finished top end';
  if (key === 'lowerHorn') return 'over the finished lower end';
  if (key === 'footBevelInwards') return 'from each side, on the end';
  return key === 'footBevel' ? 'from the foot' : undefined;
}
