import { failure, success, type Result } from '../result.ts';

/** Find the point with the least value of `minimise · x` at which every `coefficients · x` is at least its bound. The variables may be of either sign. */
export interface LinearProgram {
  readonly minimise: readonly number[];
  readonly atLeast: readonly Requirement[];
}

export interface Requirement {
  readonly coefficients: readonly number[];
  readonly bound: number;
}

/** `contradictory`: no point meets all requirements. `unbounded`: the value has no least. */
export type NoOptimum = 'contradictory' | 'unbounded';

/** Below this a figure is nothing. Coefficients are expected to be of the order of one. */
const NOTHING = 1e-10;
/** After so many exchanges the choice goes over to Bland's rule (R. G. Bland, Mathematics of Operations Research 2, 1977), which cannot go round in circles. */
const PATIENCE = 200;

/**
 * The simplex method on the dual: maximise bound · y with coefficientsᵀ y = minimise, y ≥ 0. There are as many equations as variables, so that a plane through
 * hundreds of readings is a matter of four by four systems. The point is read off the multipliers of the last basis.
 */
export function solveLinearProgram({ minimise, atLeast }: LinearProgram): Result<readonly number[], NoOptimum> {
  const helpers = minimise.map((value, row) => minimise.map((_, index) => (index === row ? Math.sign(value) || 1 : 0)));
  const columns = [...atLeast.map(({ coefficients }) => coefficients), ...helpers];
  const isHelper = (column: number): boolean => column >= atLeast.length;
  const start = helpers.map((_, row) => atLeast.length + row);
  const feasible = exchange({ columns, right: minimise, costs: columns.map((_, column) => (isHelper(column) ? 1 : 0)), mayEnter: () => true }, start);
  if (!feasible.ok || feasible.value.amounts.some((amount, row) => isHelper(feasible.value.basis[row] ?? 0) && amount > 1e-7)) return failure('unbounded');
  const costs = columns.map((_, column) => (isHelper(column) ? 0 : -(atLeast[column]?.bound ?? 0)));
  const best = exchange({ columns, right: minimise, costs, mayEnter: (column) => !isHelper(column), pinned: isHelper }, feasible.value.basis);
  return best.ok ? success(best.value.multipliers.map((multiplier) => -multiplier)) : failure('contradictory');
}

interface Standing {
  readonly columns: readonly (readonly number[])[];
  readonly right: readonly number[];
  readonly costs: readonly number[];
  readonly mayEnter: (column: number) => boolean;
  /** Columns that must stay at nothing: they leave as soon as they could grow. */
  readonly pinned?: (column: number) => boolean;
}

interface Basis {
  readonly basis: readonly number[];
  readonly amounts: readonly number[];
  readonly multipliers: readonly number[];
}

/** Exchanges columns of the basis until no other column lowers the cost. Fails where the cost has no end. */
function exchange(standing: Standing, start: readonly number[]): Result<Basis, 'endless'> {
  const { columns, right, costs } = standing;
  const basis = [...start];
  for (let round = 0; ; round += 1) {
    const matrix = right.map((_, row) => basis.map((column) => columns[column]?.[row] ?? 0));
    const amounts = solveSquare(matrix, right);
    const multipliers = solveSquare(transposed(matrix), basis.map((column) => costs[column] ?? 0));
    const entering = enteringColumn(standing, basis, multipliers, round < PATIENCE);
    if (entering === undefined) return success({ basis, amounts, multipliers });
    const direction = solveSquare(matrix, columns[entering] ?? []);
    const leaving = leavingRow(standing, basis, amounts, direction);
    if (leaving === undefined) return failure('endless');
    basis[leaving] = entering;
  }
}

/** The column whose entering lowers the cost: the steepest, or the first one under Bland's rule. */
function enteringColumn({ columns, costs, mayEnter }: Standing, basis: readonly number[], multipliers: readonly number[], steepest: boolean): number | undefined {
  let best: number | undefined;
  let least = -NOTHING;
  for (const [column, coefficients] of columns.entries()) {
    if (!mayEnter(column) || basis.includes(column)) continue;
    const reduced = (costs[column] ?? 0) - dot(multipliers, coefficients);
    if (reduced >= least) continue;
    best = column;
    if (!steepest) return best;
    least = reduced;
  }
  return best;
}

/** The row that is used up first; among equals the lowest column leaves. A pinned column leaves before it can change at all. */
function leavingRow({ pinned }: Standing, basis: readonly number[], amounts: readonly number[], direction: readonly number[]): number | undefined {
  let leaving: number | undefined;
  let shortest = Infinity;
  for (const [row, column] of basis.entries()) {
    const rate = direction[row] ?? 0;
    const held = pinned?.(column) === true;
    if (held ? Math.abs(rate) <= NOTHING : rate <= NOTHING) continue;
    const reach = held ? 0 : Math.max(0, amounts[row] ?? 0) / rate;
    if (reach > shortest || (reach === shortest && column > (basis[leaving ?? row] ?? 0))) continue;
    [leaving, shortest] = [row, reach];
  }
  return leaving;
}

/** Gaussian elimination with the largest pivot; a row that says nothing leaves its unknown at nothing. */
function solveSquare(matrix: readonly (readonly number[])[], right: readonly number[]): number[] {
  const rows = matrix.map((row, index) => [...row, right[index] ?? 0]);
  const size = rows.length;
  for (let pivot = 0; pivot < size; pivot += 1) {
    const largest = rows.slice(pivot).reduce((best, row, offset) => (Math.abs(row[pivot] ?? 0) > Math.abs(rows[best]?.[pivot] ?? 0) ? pivot + offset : best), pivot);
    [rows[pivot], rows[largest]] = [rows[largest] ?? [], rows[pivot] ?? []];
    const by = rows[pivot]?.[pivot] ?? 0;
    if (Math.abs(by) < NOTHING) continue;
    for (const [index, row] of rows.entries()) {
      if (index === pivot) continue;
      const factor = (row[pivot] ?? 0) / by;
      if (factor !== 0) for (let column = pivot; column <= size; column += 1) row[column] = (row[column] ?? 0) - factor * (rows[pivot]?.[column] ?? 0);
    }
  }
  return rows.map((row, index) => (Math.abs(row[index] ?? 0) < NOTHING ? 0 : (row[size] ?? 0) / (row[index] ?? 1)));
}

function transposed(matrix: readonly (readonly number[])[]): number[][] {
  return matrix.map((_, column) => matrix.map((row) => row[column] ?? 0));
}

function dot(left: readonly number[], right: readonly number[]): number {
  return left.reduce((sum, value, index) => sum + value * (right[index] ?? 0), 0);
}
