/**
 * A linear programme that grows by columns: least cost of non-negative amounts of columns, so that every row is covered.
 * Revised primal simplex with an explicit inverse; right sides are shifted by millionths so that ties do not make it circle.
 * Its figures guide a search; what is proven is proven in whole numbers elsewhere.
 */
export interface Column {
  readonly rows: Int32Array;
  readonly counts: Int32Array;
  readonly cost: number;
}

export interface CoverProgramme {
  readonly rows: number;
  readonly needs: Float64Array;
  readonly columns: Column[];
  /** For every row: the column in the basis there; -1 - row for that row's surplus, -1 - rows - row for its stopgap. */
  readonly basis: Int32Array;
  readonly inBasis: Set<number>;
  readonly inverse: Float64Array;
  readonly amounts: Float64Array;
  readonly duals: Float64Array;
  readonly stopgapCost: number;
  readonly direction: Float64Array;
  readonly filled: Int32Array;
  pivots: number;
}

const SHIFT = 1e-6;
const GOLDEN = 0.618_033_988_749_895;
const SMALLEST_PIVOT = 1e-9;
const SMALLEST_GAIN = 1e-8;
const REFRESH_EVERY = 400;

/** `needs`: what each row must be covered by. `stopgapCost` must exceed what covering one unit of any row can be worth. */
export function coverProgramme(needs: ArrayLike<number>, stopgapCost: number): CoverProgramme {
  const rows = needs.length;
  const programme: CoverProgramme = {
    rows, stopgapCost, columns: [], inBasis: new Set(), pivots: 0,
    needs: Float64Array.from({ length: rows }, (_, row) => (needs[row] ?? 0) + SHIFT * (0.5 + ((row + 1) * GOLDEN) % 1)),
    basis: Int32Array.from({ length: rows }, (_, row) => ((needs[row] ?? 0) > 0 ? -1 - rows - row : -1 - row)),
    inverse: new Float64Array(rows * rows), amounts: new Float64Array(rows), duals: new Float64Array(rows), direction: new Float64Array(rows), filled: new Int32Array(rows),
  };
  for (let row = 0; row < rows; row++) {
    const stopgap = (needs[row] ?? 0) > 0;
    programme.inverse[row * rows + row] = stopgap ? 1 : -1;
    programme.amounts[row] = Math.abs(programme.needs[row] ?? 0);
    programme.duals[row] = stopgap ? stopgapCost : 0;
  }
  return programme;
}

export function reducedCost(programme: CoverProgramme, column: Column): number {
  let cost = column.cost;
  for (let at = 0; at < column.rows.length; at++) cost -= (programme.duals[column.rows[at] ?? 0] ?? 0) * (column.counts[at] ?? 0);
  return cost;
}

/** Pivots until no column and no surplus would lower the cost. Returns false when it was told to stop. */
export function improve(programme: CoverProgramme, goOn: () => boolean): boolean {
  for (let steps = 1; ; steps++) {
    const entering = bestEntering(programme);
    if (entering === undefined) return true;
    if (!enter(programme, entering)) return true;
    if (programme.pivots % REFRESH_EVERY === 0) refresh(programme);
    if (steps % 50 === 0 && !goOn()) return false;
  }
}

/** Pivots through the given columns once, in their order, where they lower the cost: a good start when they were good in a problem much like this. */
export function start(programme: CoverProgramme, from: number, to: number): void {
  for (let index = from; index < to; index++) {
    const column = programme.columns[index];
    if (column !== undefined && reducedCost(programme, column) < -SMALLEST_GAIN) enter(programme, index);
  }
}

/** Column index, or -1 - row for a surplus. */
function bestEntering(programme: CoverProgramme): number | undefined {
  let [best, gain] = [undefined as number | undefined, SMALLEST_GAIN];
  for (let index = 0; index < programme.columns.length; index++) {
    const column = programme.columns[index];
    if (column === undefined || programme.inBasis.has(index)) continue;
    const worth = -reducedCost(programme, column);
    if (worth > gain) [best, gain] = [index, worth];
  }
  for (let row = 0; row < programme.rows; row++) {
    const worth = -(programme.duals[row] ?? 0);
    if (worth > gain && !programme.inBasis.has(-1 - row)) [best, gain] = [-1 - row, worth];
  }
  return best;
}

/** False when nothing limits the step, which a covering programme of non-negative costs does not do but rounding might. */
function enter(programme: CoverProgramme, entering: number): boolean {
  const cost = entrantCost(programme, entering);
  direct(programme, entering);
  const leaving = leavingRow(programme);
  if (leaving === undefined) return false;
  const { rows, inverse, amounts, duals, direction, basis, inBasis } = programme;
  const over = 1 / (direction[leaving] ?? 1);
  const at = leaving * rows;
  const filled = scaleRow(programme, at, over);
  const step = (amounts[leaving] ?? 0) * over;
  for (let row = 0; row < rows; row++) {
    const factor = direction[row] ?? 0;
    if (row === leaving || Math.abs(factor) < 1e-12) continue;
    takeRow(programme, row * rows, at, factor, filled);
    amounts[row] = Math.max(0, (amounts[row] ?? 0) - factor * step);
  }
  amounts[leaving] = step;
  for (let k = 0; k < rows; k++) duals[k] = (duals[k] ?? 0) + cost * (inverse[at + k] ?? 0);
  inBasis.delete(basis[leaving] ?? 0);
  inBasis.add(entering);
  basis[leaving] = entering;
  programme.pivots++;
  return true;
}

/** Gives how many entries are not zero; their places are left in `filled`. */
function scaleRow({ rows, inverse, filled }: CoverProgramme, at: number, over: number): number {
  let count = 0;
  for (let k = 0; k < rows; k++) {
    const entry = inverse[at + k] ?? 0;
    if (entry === 0) continue;
    inverse[at + k] = Math.abs(entry) < 1e-14 ? 0 : entry * over;
    filled[count++] = k;
  }
  return count;
}

function takeRow({ rows, inverse, filled }: CoverProgramme, base: number, at: number, factor: number, count: number): void {
  if (2 * count > rows) {
    for (let k = 0; k < rows; k++) inverse[base + k] = (inverse[base + k] ?? 0) - factor * (inverse[at + k] ?? 0);
    return;
  }
  for (let place = 0; place < count; place++) {
    const k = filled[place] ?? 0;
    inverse[base + k] = (inverse[base + k] ?? 0) - factor * (inverse[at + k] ?? 0);
  }
}

function entrantCost(programme: CoverProgramme, entering: number): number {
  const column = programme.columns[entering];
  return column === undefined ? programme.duals[-1 - entering] ?? 0 : reducedCost(programme, column);
}

/** What one unit of the entering column takes from every basic column. */
function direct({ rows, inverse, direction, columns }: CoverProgramme, entering: number): void {
  const column = columns[entering];
  direction.fill(0);
  const parts = column === undefined ? 1 : column.rows.length;
  for (let part = 0; part < parts; part++) {
    const k = column === undefined ? -1 - entering : column.rows[part] ?? 0;
    const count = column === undefined ? -1 : column.counts[part] ?? 0;
    for (let row = 0; row < rows; row++) direction[row] = (direction[row] ?? 0) + count * (inverse[row * rows + k] ?? 0);
  }
}

function leavingRow({ rows, amounts, direction }: CoverProgramme): number | undefined {
  let [leaving, least] = [undefined as number | undefined, Infinity];
  for (let row = 0; row < rows; row++) {
    const taken = direction[row] ?? 0;
    if (taken <= SMALLEST_PIVOT) continue;
    const limit = (amounts[row] ?? 0) / taken;
    if (limit < least - 1e-12 || (limit < least + 1e-12 && leaving !== undefined && taken > (direction[leaving] ?? 0))) [leaving, least] = [row, limit];
  }
  return leaving;
}

/** Inverse, amounts and duals anew from the basis, so that rounding does not pile up (Gauss and Jordan, with the largest pivot of each column). */
function refresh(programme: CoverProgramme): void {
  const { rows, basis } = programme;
  const left = new Float64Array(rows * rows);
  for (let at = 0; at < rows; at++) for (const [row, count] of basicColumn(programme, basis[at] ?? 0)) left[row * rows + at] = count;
  const right = invert(left, rows);
  if (right === undefined) return;
  programme.inverse.set(right);
  programme.duals.fill(0);
  for (let at = 0; at < rows; at++) {
    let amount = 0;
    const cost = basicCost(programme, basis[at] ?? 0);
    for (let k = 0; k < rows; k++) {
      const entry = right[at * rows + k] ?? 0;
      amount += entry * (programme.needs[k] ?? 0);
      programme.duals[k] = (programme.duals[k] ?? 0) + cost * entry;
    }
    programme.amounts[at] = Math.max(0, amount);
  }
}

function basicColumn({ rows, columns }: CoverProgramme, basic: number): [number, number][] {
  const column = columns[basic];
  if (column !== undefined) return Array.from(column.rows, (row, at) => [row, column.counts[at] ?? 0]);
  return basic < -rows ? [[-1 - rows - basic, 1]] : [[-1 - basic, -1]];
}

function basicCost({ rows, columns, stopgapCost }: CoverProgramme, basic: number): number {
  return columns[basic]?.cost ?? (basic < -rows ? stopgapCost : 0);
}

/** Undefined for a matrix that is singular to working precision. Spoils `left`. */
function invert(left: Float64Array, rows: number): Float64Array | undefined {
  const right = new Float64Array(rows * rows);
  for (let row = 0; row < rows; row++) right[row * rows + row] = 1;
  for (let column = 0; column < rows; column++) {
    let pivot = column;
    for (let row = column + 1; row < rows; row++) if (Math.abs(left[row * rows + column] ?? 0) > Math.abs(left[pivot * rows + column] ?? 0)) pivot = row;
    if (Math.abs(left[pivot * rows + column] ?? 0) < 1e-11) return undefined;
    for (const matrix of [left, right]) swapRows(matrix, rows, pivot, column);
    const over = 1 / (left[column * rows + column] ?? 1);
    for (const matrix of [left, right]) for (let k = 0; k < rows; k++) matrix[column * rows + k] = (matrix[column * rows + k] ?? 0) * over;
    for (let row = 0; row < rows; row++) {
      const factor = left[row * rows + column] ?? 0;
      if (row === column || factor === 0) continue;
      for (const matrix of [left, right]) for (let k = 0; k < rows; k++) matrix[row * rows + k] = (matrix[row * rows + k] ?? 0) - factor * (matrix[column * rows + k] ?? 0);
    }
  }
  return right;
}

function swapRows(matrix: Float64Array, rows: number, a: number, b: number): void {
  if (a === b) return;
  const kept = matrix.slice(a * rows, (a + 1) * rows);
  matrix.copyWithin(a * rows, b * rows, (b + 1) * rows);
  matrix.set(kept, b * rows);
}
