import type { Bench } from '../bench/bench.ts';
import type { Response } from '../bench/reply.ts';
import type { LayoutRequest } from '../bench/request.ts';
import { assertNever } from '../result.ts';
import { respondToDiagonals, tellDiagonals } from './layoutDiagonals.ts';
import { respondToGauges } from './layoutGauges.ts';
import { respondToTolerance } from './layoutTolerance.ts';

/** What is asked of layout and trueness. */
export function respondToLayout(bench: Bench, request: LayoutRequest): Response {
  switch (request.kind) {
    case 'diagonals': return respondToDiagonals(bench, request);
    case 'what diagonals': return tellDiagonals(bench, request);
    case 'tolerance': return respondToTolerance(bench, request);
    case 'gauges': return respondToGauges(bench, request);
    default: return assertNever(request);
  }
}
