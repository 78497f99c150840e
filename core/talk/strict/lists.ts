/** Lists of whole numbers, each kept once and known by its number, from 0 on in the order in which they came; in tables rather than objects, for there are a hundred thousand. */
export class Lists {
  #numbers = new Int32Array(1 << 14);
  /** Where each list begins; it ends where the next one begins. */
  #starts = new Int32Array(1 << 12);
  /** By what they hash to, one more than a list's number; 0 where there is none. */
  #places = new Int32Array(1 << 13);
  #size = 0;

  get size(): number {
    return this.#size;
  }

  /** All lists one after another. Another table once a list was added. */
  get numbers(): Int32Array {
    return this.#numbers;
  }

  /** How many numbers all lists have together. */
  get length(): number {
    return this.#starts[this.#size] ?? 0;
  }

  start(list: number): number {
    return this.#starts[list] ?? 0;
  }

  end(list: number): number {
    return this.#starts[list + 1] ?? 0;
  }

  /** The number of the list that stands in `table` from one place up to another: the one it has, or the next. */
  numberOf(table: Int32Array, from: number, to: number): number {
    const last = this.#places.length - 1;
    let place = hash(table, from, to) & last;
    for (let known = this.#places[place] ?? 0; known !== 0; known = this.#places[place] ?? 0) {
      if (this.#is(known - 1, table, from, to)) return known - 1;
      place = (place + 1) & last;
    }
    this.#places[place] = this.#size + 1;
    return this.#add(table, from, to);
  }

  #is(list: number, table: Int32Array, from: number, to: number): boolean {
    const start = this.start(list);
    if (this.end(list) - start !== to - from) return false;
    for (let at = from; at < to; at += 1) if (this.#numbers[start + at - from] !== table[at]) return false;
    return true;
  }

  #add(table: Int32Array, from: number, to: number): number {
    const list = this.#size;
    const start = this.length;
    this.#numbers = withRoom(this.#numbers, start + to - from);
    for (let at = from; at < to; at += 1) this.#numbers[start + at - from] = table[at] ?? 0;
    this.#starts = withRoom(this.#starts, list + 2);
    this.#starts[list + 1] = start + to - from;
    this.#size += 1;
    if (this.#size * 2 > this.#places.length) this.#makePlaces();
    return list;
  }

  #makePlaces(): void {
    const places = new Int32Array(this.#places.length * 2);
    for (let list = 0; list < this.#size; list += 1) {
      let place = hash(this.#numbers, this.start(list), this.end(list)) & (places.length - 1);
      while (places[place] !== 0) place = (place + 1) & (places.length - 1);
      places[place] = list + 1;
    }
    this.#places = places;
  }
}

/** The same table, or a copy that is long enough, and at least twice as long. */
export function withRoom(table: Int32Array<ArrayBuffer>, length: number): Int32Array<ArrayBuffer> {
  if (length <= table.length) return table;
  const larger = new Int32Array(Math.max(length, table.length * 2));
  larger.set(table);
  return larger;
}

function hash(table: Int32Array, from: number, to: number): number {
  let sum = to - from;
  for (let at = from; at < to; at += 1) {
    sum = Math.imul(sum ^ (table[at] ?? 0), 0x9E37_79B1);
    sum ^= sum >>> 15;
  }
  return sum;
}
