/**
 * A finite-state transducer as the engine reads it: states in a row from 0 (the start), and the arcs of each state one after another.
 * Label 0 is 'nothing' (epsilon). A cost is a negative natural logarithm.
 */
export interface Fst {
  readonly states: number;
  /** Arcs of state s are those from firstArc[s] up to firstArc[s + 1]. */
  readonly firstArc: Int32Array;
  readonly input: Int32Array;
  readonly output: Int32Array;
  readonly cost: Float32Array;
  readonly target: Int32Array;
  /** The cost of ending in a state; Infinity where nothing may end. */
  readonly ending: Float32Array;
}

/** Collects states and arcs in any order. */
export class FstBuilder {
  #states = 0;
  #endings = new Map<number, number>();
  readonly #arcs: number[][] = [];

  state(): number {
    this.#arcs.push([]);
    this.#states += 1;
    return this.#states - 1;
  }

  arc(from: number, to: number, input: number, output = 0, cost = 0): void {
    this.#arcs[from]?.push(input, output, cost, to);
  }

  end(state: number, cost = 0): void {
    this.#endings.set(state, cost);
  }

  /** Gives one state all arcs that another has. */
  copyArcs(from: number, to: number, except: (target: number) => boolean): void {
    const arcs = this.#arcs[from] ?? [];
    for (let at = 0; at < arcs.length; at += 4) {
      const [input = 0, output = 0, cost = 0, target = 0] = arcs.slice(at, at + 4);
      if (!except(target)) this.arc(to, target, input, output, cost);
    }
  }

  /** The arcs of each state are sorted by output; those with the same output stay in the order in which they came. */
  done(): Fst {
    const count = this.#arcs.reduce((sum, arcs) => sum + arcs.length / 4, 0);
    const fst = emptyFst(this.#states, count);
    let next = 0;
    this.#arcs.forEach((arcs, state) => {
      fst.firstArc[state] = next;
      for (let at = 0; at < arcs.length; at += 4, next += 1) {
        fst.input[next] = arcs[at] ?? 0;
        fst.output[next] = arcs[at + 1] ?? 0;
        fst.cost[next] = arcs[at + 2] ?? 0;
        fst.target[next] = arcs[at + 3] ?? 0;
      }
    });
    fst.firstArc[this.#states] = next;
    for (const [state, cost] of this.#endings) fst.ending[state] = cost;
    return withOutputs(fst, (output) => output);
  }
}

/** So many states and arcs, with nothing in them yet. */
export function emptyFst(states: number, arcs: number): Fst {
  return {
    states, firstArc: new Int32Array(states + 1), input: new Int32Array(arcs), output: new Int32Array(arcs), cost: new Float32Array(arcs),
    target: new Int32Array(arcs), ending: new Float32Array(states).fill(Infinity),
  };
}

/** The same transducer with other outputs, the arcs of each state sorted by them. */
export function withOutputs(fst: Fst, renamed: (output: number) => number): Fst {
  const result = emptyFst(fst.states, fst.input.length);
  const outputs = fst.output.map(renamed);
  result.firstArc.set(fst.firstArc);
  result.ending.set(fst.ending);
  for (let state = 0; state < fst.states; state += 1) {
    const from = fst.firstArc[state] ?? 0;
    const order = Array.from({ length: (fst.firstArc[state + 1] ?? 0) - from }, (_, index) => from + index);
    order.sort((one, other) => (outputs[one] ?? 0) - (outputs[other] ?? 0));
    order.forEach((old, index) => copyArc(fst, outputs, old, result, from + index));
  }
  return result;
}

function copyArc(fst: Fst, outputs: Int32Array, old: number, result: Fst, at: number): void {
  result.input[at] = fst.input[old] ?? 0;
  result.output[at] = outputs[old] ?? 0;
  result.cost[at] = fst.cost[old] ?? 0;
  result.target[at] = fst.target[old] ?? 0;
}
