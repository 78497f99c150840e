import { describe, expect, it } from 'vitest';
import { all, either } from '../../../core/talk/strict/expression.ts';
import { wordGraph } from '../../../core/talk/strict/wordGraph.ts';
import type { Fst } from '../../../kiosk/ear/graph/fst.ts';
import { GrammarRoom } from '../../../kiosk/ear/graph/grammarRoom.ts';
import { sentenceGraph } from '../../../kiosk/ear/graph/sentenceGraph.ts';

const NUMBERS = new Map(['[unk]', 'bench', 'next', 'step', 'undo', 'it'].map((word, index) => [word, index + 1]));
const grammar = (...sentences: string[]): Fst => sentenceGraph(wordGraph(either(...sentences.map((sentence) => all(sentence)))), { numberOf: (word) => NUMBERS.get(word), unknown: 1, address: 2 });

/** Bytes of the file before its tables, which lie at even words in memory. */
const HEADER = 65;
const FIRST = 4096 + 3;

/** Memory like the engine's: the file's two tables somewhere in it, apart from each other, and old pieces of the file that were not cleared. */
function memoryWith(file: Uint8Array): Uint8Array {
  const memory = new Uint8Array(file.length * 2 + 4096);
  memory.set(file.subarray(-2048), 64);
  memory.set(file, FIRST);
  return memory;
}

describe('room for a grammar in the engine\'s memory', () => {
  it('is found, and holds another grammar just as if the engine had loaded it', () => {
    const room = new GrammarRoom(grammar('next step'), 1);
    const memory = memoryWith(room.file);
    expect(room.find(memory)).toBe(true);
    expect(room.put(grammar('undo', 'undo it'), memory, 2)).toBe(true);
    const wanted = new GrammarRoom(grammar('undo', 'undo it'), 2).file;
    expect(Buffer.compare(memory.subarray(FIRST + HEADER, FIRST + wanted.length), wanted.subarray(HEADER))).toBe(0);
  });

  it('is not believed when it is there twice, or not at all', () => {
    const room = new GrammarRoom(grammar('next step'), 1);
    expect(room.find(new Uint8Array(room.file.length * 2))).toBe(false);
    const second = FIRST + Math.ceil(room.file.length / 4) * 4;
    const twice = new Uint8Array(second + room.file.length);
    twice.set(room.file, FIRST);
    expect(room.find(twice)).toBe(true);
    twice.set(room.file, second);
    const again = new GrammarRoom(grammar('next step'), 1);
    expect(again.find(twice)).toBe(false);
    expect(again.put(grammar('undo'), twice, 2)).toBe(false);
  });

  it('refuses what is larger than it, and changes nothing', () => {
    const room = new GrammarRoom(grammar('next step'), 1);
    const memory = memoryWith(room.file);
    room.find(memory);
    const before = memory.slice();
    const huge = { ...grammar('next step'), states: 1_000_000 };
    expect(room.put(huge, memory, 2)).toBe(false);
    expect(Buffer.compare(memory, before)).toBe(0);
  });
});

describe('the grammar that the engine listens by', () => {
  it('leaves out words that the model cannot hear, and with them only their sentences', () => {
    const fst = grammar('next step', 'next banana');
    expect([...fst.input]).not.toContain(undefined);
    expect([...fst.input].filter((label) => label === 4)).not.toHaveLength(0);
    expect(fst.input.length).toBe(grammar('next step').input.length);
  });

  it('lets nothing follow a sentence but its end', () => {
    const fst = grammar('undo');
    for (let state = 0; state < fst.states; state += 1) {
      const labels = [...fst.input.subarray(fst.firstArc[state], fst.firstArc[state + 1])];
      // States 1 and 3 are the ones after the address word and after something else.
      if (fst.ending[state] !== Infinity && state > 3) expect(labels).toEqual([]);
    }
  });
});
