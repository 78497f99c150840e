import type { Bench } from '../bench/bench.ts';
import type { Response } from '../bench/reply.ts';
import type { LayoutRequest } from '../bench/request.ts';
import { respondToDiagonals } from './layoutDiagonals.ts';

/** What is asked of layout and trueness. */
export function respondToLayout(bench: Bench, request: LayoutRequest): Response {
  return respondToDiagonals(bench, request);
}
