import { builds } from './limited.ts';
import { checkPlate, type PlatePlan, type PlateProblem } from './plate.ts';
import { countsOf, layoutOf, valueOf, valueTable } from './unlimited.ts';

/**
 * The greatest value of pieces from one plate by cuts from edge to edge, in any number of stages, with proof. Where pieces are limited in
 * number and the plan without limits oversteps one, a best-first search builds rectangles up from pieces, under the bound without limits.
 * `goOn` is asked now and then; when it says no, the best plan so far with what is proven of it.
 */
export function cutPlate(problem: PlateProblem, goOn: () => boolean): PlatePlan {
  checkPlate(problem);
  const table = valueTable(problem);
  const layout = layoutOf(table, problem.length, problem.width);
  const value = valueOf(table, problem.length, problem.width);
  const counts = countsOf(layout, problem.pieces.length);
  if (problem.pieces.every(({ most = Infinity }, piece) => (counts[piece] ?? 0) <= most)) return { value, layout, bound: value, proven: true };
  return builds(table, goOn);
}
