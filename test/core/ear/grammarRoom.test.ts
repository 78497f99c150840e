import { describe, expect, it } from 'vitest';
import { all, either } from '../../../core/talk/strict/expression.ts';
import { WordGraphs } from '../../../core/talk/strict/wordGraphs.ts';
import { ARC_BYTES, STATE_BYTES } from '../../../kiosk/ear/graph/constTables.ts';
import type { Fst } from '../../../kiosk/ear/graph/fst.ts';
import { GrammarRoom } from '../../../kiosk/ear/graph/grammarRoom.ts';
import { sentenceGraph } from '../../../kiosk/ear/graph/sentenceGraph.ts';

const NUMBERS = new Map(['[unk]', 'bench', 'next', 'step', 'undo', 'it'].map((word, index) => [word, index + 1]));
const grammar = (...sentences: string[]): Fst => sentenceGraph(new WordGraphs((word) => NUMBERS.get(word)).graphOf(either(...sentences.map((sentence) => all(sentence)))), { unknown: 1, address: 2, fillers: new Set() });

/** Bytes of the file before its tables, which lie at even words in memory. */
const HEADER = 65;
const FIRST = 4096 + 3;
/** Arcs that there is room for when the grammar is small. */
const ARCS = 180_020;

/** Memory like the engine's: the file's two tables somewhere in it, apart from each other, and old pieces of the file that were not cleared. */
function memoryWith(file: Uint8Array): Uint8Array {
  const memory = new Uint8Array(file.length * 2 + 4096);
  memory.set(file.subarray(-2048), 64);
  memory.set(file, FIRST);
  return memory;
}

describe('room for a grammar in the engine\'s memory', () => {
  it('is found, and holds another grammar just as if the engine had loaded it, whatever the one before had more', () => {
    const room = new GrammarRoom(grammar('next step', 'step it', 'next undo'), 1);
    const memory = memoryWith(room.file);
    expect(room.find(memory)).toBe(true);
    const other = grammar('undo', 'undo it');
    expect(room.put(other, memory)).toBe(true);
    const wanted = new GrammarRoom(other, 2).file;
    const arcsFrom = wanted.length - ARCS * ARC_BYTES;
    for (const [from, length] of [[HEADER, other.states * STATE_BYTES], [arcsFrom, other.input.length * ARC_BYTES]] as const) {
      expect(Buffer.compare(memory.subarray(FIRST + from, FIRST + from + length), wanted.subarray(from, from + length))).toBe(0);
    }
    expect(Math.max(...other.target)).toBeLessThan(other.states);
  });

  it('is not believed when it is there twice, or not at all', () => {
    const room = new GrammarRoom(grammar('next step'), 1);
    expect(room.find(new Uint8Array(room.file.length * 2))).toBe(false);
    const second = FIRST + Math.ceil(room.file.length / 4) * 4;
    const twice = new Uint8Array(second + room.file.length);
    const { file } = room;
    twice.set(file, FIRST);
    expect(room.find(twice)).toBe(true);
    twice.set(file, second);
    const again = new GrammarRoom(grammar('next step'), 1);
    expect(again.find(twice)).toBe(false);
    expect(again.put(grammar('undo'), twice)).toBe(false);
  });

  it('refuses what is larger than it, and changes nothing', () => {
    const room = new GrammarRoom(grammar('next step'), 1);
    const memory = memoryWith(room.file);
    room.find(memory);
    const before = memory.slice();
    const huge = { ...grammar('next step'), states: 1_000_000 };
    expect(room.put(huge, memory)).toBe(false);
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
