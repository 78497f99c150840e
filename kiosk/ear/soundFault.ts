/** What is wrong with the sound that comes, though it comes. */
export type SoundFault = 'no sound in it' | 'too loud';

/** A card that is on gives at least its own hiss: samples all alike for this long come from a switch or a dead plug. */
const LIFELESS_BLOCKS = 50;
/** At this and above a sample was cut off. */
const CUT_AT = 0.985;
/** A block with this share of cut samples is distorted. */
const CUT_SHARE = 0.02;
/** Speech is cut block after block; a blow, which no microphone bears, in one or two. */
const CUT_IN_A_ROW = 3;
/** So many blocks of the last WATCHED must be distorted after others. */
const CUT_BLOCKS = 4;
const WATCHED_BLOCKS = 100;

/** Watches raw blocks of 100 ms for a microphone that is switched off, or so loud that it cuts what it hears. */
export class SoundFaultWatch {
  #lifeless = 0;
  #value: number | undefined;
  #cut: boolean[] = [];
  #cutInARow = 0;

  /** Takes a block as it came; gives the fault that holds now. */
  take(block: Float32Array): SoundFault | undefined {
    this.#lifeless = this.#isLifeless(block) ? this.#lifeless + 1 : 0;
    let cut = 0;
    for (const sample of block) if (Math.abs(sample) >= CUT_AT) cut += 1;
    this.#cutInARow = cut > CUT_SHARE * block.length ? this.#cutInARow + 1 : 0;
    this.#cut.push(this.#cutInARow >= CUT_IN_A_ROW);
    if (this.#cut.length > WATCHED_BLOCKS) this.#cut.shift();
    if (this.#lifeless >= LIFELESS_BLOCKS) return 'no sound in it';
    return this.#cut.filter(Boolean).length >= CUT_BLOCKS ? 'too loud' : undefined;
  }

  reset(): void {
    this.#lifeless = 0;
    this.#value = undefined;
    this.#cut = [];
    this.#cutInARow = 0;
  }

  /** Every sample is what the last one of the block before was. */
  #isLifeless(block: Float32Array): boolean {
    const value = this.#value ?? block[0];
    this.#value = block.at(-1);
    return block.every((sample) => sample === value);
  }
}
