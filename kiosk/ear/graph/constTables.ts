import type { Fst } from './fst.ts';

/** Numbers of four bytes in each state and in each arc of OpenFst's 'const' file, and bytes. */
const [STATE_NUMBERS, ARC_NUMBERS] = [5, 4];
export const STATE_BYTES = STATE_NUMBERS * 4;
export const ARC_BYTES = ARC_NUMBERS * 4;

/** The states as a 'const' file has them, with the lowest byte first as on all machines that we know: what ending costs, where the arcs are, how many, and of how many input and output are nothing. */
export function stateTable({ states, firstArc, ending, input, output }: Fst): Uint8Array<ArrayBuffer> {
  const table = new ArrayBuffer(states * STATE_BYTES);
  const [numbers, costs] = [new Int32Array(table), new Float32Array(table)];
  for (let state = 0, at = 0; state < states; state += 1, at += STATE_NUMBERS) {
    const from = firstArc[state] ?? 0;
    const to = firstArc[state + 1] ?? 0;
    costs[at] = ending[state] ?? Infinity;
    numbers[at + 1] = from;
    numbers[at + 2] = to - from;
    numbers[at + 3] = zerosIn(input, from, to);
    numbers[at + 4] = zerosIn(output, from, to);
  }
  return new Uint8Array(table);
}

/** The arcs as a 'const' file has them: input, output, cost, target. */
export function arcTable({ input, output, cost, target }: Fst): Uint8Array<ArrayBuffer> {
  const table = new ArrayBuffer(input.length * ARC_BYTES);
  const [numbers, costs] = [new Int32Array(table), new Float32Array(table)];
  for (let arc = 0, at = 0; arc < input.length; arc += 1, at += ARC_NUMBERS) {
    numbers[at] = input[arc] ?? 0;
    numbers[at + 1] = output[arc] ?? 0;
    costs[at + 2] = cost[arc] ?? 0;
    numbers[at + 3] = target[arc] ?? 0;
  }
  return new Uint8Array(table);
}

function zerosIn(labels: Int32Array, from: number, to: number): number {
  let count = 0;
  for (let at = from; at < to; at += 1) if (labels[at] === 0) count += 1;
  return count;
}
