import { describe, expect, it } from 'vitest';
import { parseRequest } from '../../../core/talk/parse.ts';
import { sentencesFor } from '../../../core/talk/strict/sentences.ts';
import { bench, inches, TALKATIVE } from './benches.ts';
import { spokenGraph } from './spokenGraph.ts';
import type { SpokenGraph } from './spokenGraph.ts';

const GRAPH = spokenGraph(sentencesFor(TALKATIVE));
const MILLIMETRES = spokenGraph(sentencesFor(bench({ state: { settings: { ...TALKATIVE.state.settings, rounding: { unit: 'millimetre', step: inches(0.02) } } } })));
const ASKED = spokenGraph(sentencesFor(bench({ question: { kind: 'length', size: 'leg.width' } })));
const READING = spokenGraph(sentencesFor(bench({ question: { kind: 'surface reading', of: { part: 'leg', copy: 2, face: 'face' }, what: 'sticks', fromEnd: inches(12), about: 'face', leftOut: [] } })));

function hears(graph: SpokenGraph, sentence: string): boolean {
  let state: number | undefined = graph.start;
  for (const word of sentence.split(' ')) state = graph.states[state ?? -1]?.arcs.find((arc) => arc.word === word)?.target;
  return state !== undefined && graph.states[state]?.ends !== undefined;
}

function expectHeard(graph: SpokenGraph, sentences: readonly string[], heard: boolean): void {
  expect(sentences.filter((sentence) => hears(graph, sentence) !== heard)).toEqual([]);
}

describe('what is listened for at a table with four legs, two long rails and twelve buttons', () => {
  it('nobody is heard asking for a sixth leg, though whoever types it is told', () => {
    expectHeard(GRAPH, ['sixth leg', 'how wide is leg six', 'leg seven width', 'third long rail length', 'how long is the third end rail', 'record leg nine width three inches', 'draw the ninth side stretcher', 'twelfth goes at back left'], false);
    expectHeard(GRAPH, ['fourth leg', 'how wide is leg four', 'leg four width', 'second long rail length', 'how long is the second end rail', 'record leg number two width three inches', 'how long is button twelve'], true);
    expectHeard(GRAPH, ['leg five width', 'stop the rest timer', 'set the volume to eleven'], true);
    expect(parseRequest('leg nine width', TALKATIVE)).toMatchObject({ kind: 'not understood', because: expect.stringContaining('no leg nine') as string });
  });

  it('a piece of a name is heard where it means something by itself', () => {
    expectHeard(GRAPH, ['how long is the rail', 'what is the overhang', 'rail width', 'how deep is the mortise', 'how long are the stretchers'], true);
    expectHeard(GRAPH, ['minus end', 'a quarter of end', 'what is the side', 'the rest', 'how long is the board', 'why the back', 'twice the baker'], false);
  });

  it('a knot is written down only where it is said to be in the board, or from where to where: "not too tight" is said too', () => {
    expectHeard(GRAPH, ['knot from two to eight', 'a knot from two to eight', 'there is a knot two to eight', 'the board has a knot from two to eight'], true);
    expectHeard(GRAPH, ['knot two to eight', 'knot two to two'], false);
  });

  it('a name goes only with the sizes that it has', () => {
    expectHeard(GRAPH, ['leg foot bevel', 'long rail shoulders', 'top board width', 'long rail haunch length', 'inside length'], true);
    expectHeard(GRAPH, ['top foot bevel', 'leg shoulders', 'leg board width', 'height length', 'overhang width', 'long rail button depth', 'thickness from face side of leg one'], false);
  });

  it('only joints are chopped, and only what stands in places of its own has places and faces', () => {
    expectHeard(GRAPH, ['lead me through the long rail mortise', 'where does the leg mortise start', 'leg two goes back left'], true);
    expectHeard(GRAPH, ['lead me through the top', 'will the overhang hold', 'button two goes back left', 'front left button length'], false);
  });
});

describe('what is listened for as a number', () => {
  it('fractions are in their lowest terms, or as they are counted on the tape', () => {
    expectHeard(GRAPH, ['record leg two width three and seven sixteenths', 'record leg two width three and four eighths', 'record leg two width three and ten sixteenths', 'record leg two width three and one thirty second', 'record leg two width three and sixty three sixty fourths'], true);
    expectHeard(GRAPH, ['record leg two width three and nine eighths', 'record leg two width three and eighteen sixteenths', 'record leg two width three and six sixty fourths', 'record leg two width three and one sixteenths', 'record leg two width three and three sixteenth', 'record leg two width three and two quarters'], false);
  });

  it('one is followed by an inch and several by inches', () => {
    expectHeard(GRAPH, ['record leg two width three inches', 'record leg two width an inch and a half', 'record leg two width one inch', 'record leg two width half an inch', 'record leg two length two foot four and a half', 'record leg two length six feet two inches'], true);
    expectHeard(GRAPH, ['record leg two width an inches', 'record leg two width three inch', 'record leg two width one inches', 'record leg two length one feet', 'record leg two length sixty feet', 'record leg two length a feet'], false);
  });

  it('decimals go to a thousandth, or as far as a sixteenth goes', () => {
    expectHeard(GRAPH, ['record leg two width three point one two five', 'record leg two width three point four three seven five'], true);
    expectHeard(GRAPH, ['record leg two width two point eight one four zero', 'record leg two width two point one two three four five'], false);
  });

  it('a gap is less than an inch, and a size is more than nothing', () => {
    expectHeard(GRAPH, ['the kerf is three thirty seconds', 'one shaving is four thousandths', 'the sticks at the far end show left high by one thirty second', 'the gap at the middle is zero'], true);
    expectHeard(GRAPH, ['the kerf is forty inches', 'one shaving is three feet', 'the sticks at the far end show left high by sixty one and a half', 'a bevel of zero', 'a bevel of sixty inches', 'record leg two width zero'], false);
    expectHeard(READING, ['left high one thirty second', 'a sixteenth right', 'level', 'zero'], true);
    expectHeard(READING, ['left high forty one and a half'], false);
  });

  it('each instrument shows what it can show', () => {
    expectHeard(GRAPH, ['the sticks in the middle show right high by a sixteenth', 'across in the middle hollow five thousandths', 'square at the far end light at the face one sixty fourth'], true);
    expectHeard(GRAPH, ['the sticks in the middle show hollow by a sixteenth', 'across in the middle left five thousandths', 'square at the far end crowned one sixty fourth'], false);
  });

  it('times, percents, degrees and counts are what the request can mean', () => {
    expectHeard(GRAPH, ['start a thirty minute timer', 'start a timer for thirty minutes', 'add one minute', 'check the edge every five minutes', 'the boards are at nine percent', 'the humidity is sixty percent', 'it is twenty degrees and fifty percent humidity', 'it is sixty eight degrees', 'set the volume to six', 'how far out for thirty degrees', 'board six is used up'], true);
    expectHeard(GRAPH, ['check the edge every a minute', 'start a timer for one minutes', 'start a thirty minutes timer', 'add two minute', 'the boards are at ninety percent', 'the humidity is nine point five percent', 'it is minus ninety degrees', 'set the volume to ninety', 'how far out for ninety degrees', 'board sixteen is used up', 'divided by one', 'times ninety nine'], false);
  });

  it('two faces are said in the order of the alphabet, by letter or by name', () => {
    expectHeard(GRAPH, ['leg two show a and b hide c', 'leg two hide bravo and delta'], true);
    expectHeard(GRAPH, ['leg two show d and a', 'leg two show b and b', 'leg two show a and bravo'], false);
  });

  it('a size alone is heard when it was asked for', () => {
    expectHeard(ASKED, ['three and seven sixteenths', 'it measures three and seven sixteenths'], true);
    expectHeard(GRAPH, ['three and seven sixteenths', 'it measures three and seven sixteenths'], false);
  });

  it('a table longer than a metre is heard in millimetres', () => {
    expectHeard(MILLIMETRES, ['record the long rail length one thousand one hundred and sixty eight', 'record the long rail length one thousand one hundred sixty eight point five millimeters', 'record leg two width eighty two point five'], true);
    expect(parseRequest('record the long rail length one thousand one hundred and sixty eight millimeters', TALKATIVE)).toMatchObject({ kind: 'record', length: 1_168_000_000 });
  });
});
