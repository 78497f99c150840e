import loadHighs from 'highs';
import type { PackingProblem } from '../../../core/stock/packing/problem.ts';
import type { Answer } from './instance.ts';

/** How many terms stand on one line of a model's text. */
const TERMS_A_LINE = 12;

/**
 * The same one-dimensional instance by a general solver, HiGHS in WebAssembly, as an arc-flow model (Valério de Carvalho, "Exact solution of bin-packing problems using column
 * generation and branch-and-bound", Annals of Operations Research 86, 1999): bars are paths from 0 to the capacity, larger pieces first.
 */
export async function solveByHighs(problem: PackingProblem, seconds: number): Promise<Answer> {
  const highs = await loadHighs();
  try {
    const solution = highs.solve(arcFlow(problem), { time_limit: seconds, output_flag: false });
    const value = Math.round(solution.ObjectiveValue);
    const proven = solution.Status === 'Optimal';
    return { value, bound: proven ? value : NaN, proven };
  } catch {
    // The model is too large for the memory that a module of WebAssembly has, or no plan was found in time.
    return { value: NaN, bound: NaN, proven: false };
  }
}

interface Arc {
  readonly from: number;
  readonly to: number;
  /** Index of the size; -1 for what is left over. */
  readonly size: number;
}

function arcFlow({ capacity, sizes }: PackingProblem): string {
  const demands = new Map<number, number>();
  for (const size of [...sizes].sort((a, b) => b - a)) demands.set(size, (demands.get(size) ?? 0) + 1);
  const arcs = arcsOf(capacity, demands);
  const nodes = [...new Set([0, capacity, ...arcs.flatMap(({ from, to }) => [from, to])])].sort((a, b) => a - b);
  const all: readonly Arc[] = [...arcs, ...nodes.slice(1).map((to, index) => ({ from: nodes[index] ?? 0, to, size: -1 }))];
  const [into, outOf] = [new Map<number, string[]>(), new Map<number, string[]>()];
  const ofSize = [...demands].map((): string[] => []);
  all.forEach(({ from, to, size }, index) => {
    const name = `x${index}`;
    into.set(to, [...into.get(to) ?? [], name]);
    outOf.set(from, [...outOf.get(from) ?? [], name]);
    ofSize[size]?.push(name);
  });
  const flow = nodes.map((node) => {
    const bars = node === 0 ? [' + bars'] : node === capacity ? [' - bars'] : [];
    return ` n${node}: ${broken([...bars, ...(into.get(node) ?? []).map((name) => ` + ${name}`), ...(outOf.get(node) ?? []).map((name) => ` - ${name}`)])} = 0`;
  });
  const demand = [...demands.values()].map((count, index) => ` d${index}: ${broken((ofSize[index] ?? []).map((name) => ` + ${name}`))} >= ${count}`);
  return ['Minimize', ' obj: bars', 'Subject To', ...flow, ...demand, 'General', broken(['bars', ...all.map((_, index) => `x${index}`)].map((name) => ` ${name}`)), 'End'].join('\n');
}

/** From every place that larger pieces, and pieces of the same size, can lead to. */
function arcsOf(capacity: number, demands: ReadonlyMap<number, number>): readonly Arc[] {
  const arcs = new Map<string, Arc>();
  const reached = new Set([0]);
  [...demands].forEach(([size, count], index) => {
    for (const start of [...reached]) {
      for (let copy = 0, from = start; copy < count && from + size <= capacity; copy++, from += size) {
        arcs.set(`${from} ${index}`, { from, to: from + size, size: index });
        reached.add(from + size);
      }
    }
  });
  return [...arcs.values()];
}

function broken(terms: readonly string[]): string {
  return terms.map((term, index) => (index > 0 && index % TERMS_A_LINE === 0 ? `\n ${term}` : term)).join('');
}
