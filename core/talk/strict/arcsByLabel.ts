import { withRoom } from './lists.ts';
import { NUMBERS_AN_ARC } from './wordGraph.ts';

const NONE = -1;

/** Arcs of several states, to be had in the order of their labels. */
export class ArcsByLabel {
  /** Three numbers an arc, as they came. */
  #arcs = new Int32Array(1 << 10);
  /** Before each arc the last one with the same label. */
  #previous = new Int32Array(1 << 10);
  /** For each label the last arc that has it. */
  #last = new Int32Array(1 << 10).fill(NONE);
  #labels = new Int32Array(1 << 10);
  #labelCount = 0;
  /** Of all arcs together, in numbers. */
  length = 0;

  clear(): void {
    for (let index = 0; index < this.#labelCount; index += 1) this.#last[this.#labels[index] ?? 0] = NONE;
    this.length = 0;
    this.#labelCount = 0;
  }

  /** Takes the arcs between two places, each dearer by that cost. */
  take(table: Int32Array, from: number, to: number, more: number): void {
    this.#arcs = withRoom(this.#arcs, this.length + to - from);
    this.#previous = withRoom(this.#previous, this.#arcs.length);
    for (let at = from; at < to; at += NUMBERS_AN_ARC, this.length += NUMBERS_AN_ARC) {
      const label = table[at] ?? 0;
      this.#arcs[this.length] = label;
      this.#arcs[this.length + 1] = table[at + 1] ?? 0;
      this.#arcs[this.length + 2] = (table[at + 2] ?? 0) + more;
      this.#previous[this.length] = this.#lastWith(label);
      this.#last[label] = this.length;
    }
  }

  write(table: Int32Array, from: number): void {
    if (this.#labelCount > 1) this.#labels.subarray(0, this.#labelCount).sort();
    let to = from;
    for (let index = 0; index < this.#labelCount; index += 1) {
      for (let arc = this.#last[this.#labels[index] ?? 0] ?? NONE; arc !== NONE; arc = this.#previous[arc] ?? NONE, to += NUMBERS_AN_ARC) {
        table[to] = this.#arcs[arc] ?? 0;
        table[to + 1] = this.#arcs[arc + 1] ?? 0;
        table[to + 2] = this.#arcs[arc + 2] ?? 0;
      }
    }
  }

  #lastWith(label: number): number {
    if (label >= this.#last.length) {
      const before = this.#last.length;
      this.#last = withRoom(this.#last, label + 1).fill(NONE, before);
    }
    const last = this.#last[label] ?? NONE;
    if (last !== NONE) return last;
    this.#labels = withRoom(this.#labels, this.#labelCount + 1);
    this.#labels[this.#labelCount] = label;
    this.#labelCount += 1;
    return NONE;
  }
}
