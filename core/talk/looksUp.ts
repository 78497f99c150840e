import type { Request } from '../bench/request.ts';

/** Requests that only look something up: nothing is written down by them, no clock starts, nothing is planned. */
const LOOKS_UP: ReadonlySet<Request['kind']> = new Set([
  'where am I', 'what goes wrong', 'trouble', 'reference sides', 'easing', 'what diagonals', 'off somehow', 'what is left', 'tell the step', 'size', 'sizes of part', 'what wood', 'which is which', 'glue time', 'what air', 'what time', 'why', 'how many', 'the piece', 'what moved', 'what no longer fits', 'marks', 'marks of joint', 'layout face', 'how deep', 'which chisel', 'how to chop', 'longest tenon',
  'how strong', 'joint by the book', 'chop stage', 'faces of', 'second best', 'board arches', 'fraction of', 'times', 'plus', 'less', 'equal spaces', 'equal gaps', 'in other unit', 'in fractions', 'coats', 'time left', 'tolerance', 'gauges', 'sheets',
  'how many boards', 'boards came', 'board feet', 'defect without ends', 'tell board', 'how good is the plan', 'next cut', 'where on board', 'read cuts', 'which boards', 'rough size', 'allowances', 'what to buy', 'board thickness', 'does it help', 'wood in this air', 'is the stock ready', 'how dry must it be', 'how long to rest', 'top in a year', 'is it settled', 'glue tonight', 'ready to glue',
  'how many clamps', 'how long to warm', 'what to plane', 'is it flat', 'thickness left', 'will they close', 'how is the edge', 'does honing pay', 'what was done', 'what was measured', 'guide projection', 'guide angle', 'say again', 'tell in turn', 'what can I say',
]);

export function looksUp({ kind }: Request): boolean {
  return LOOKS_UP.has(kind);
}
