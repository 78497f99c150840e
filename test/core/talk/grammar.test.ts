import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { SPOKEN_LENGTH_WORDS } from '../../../core/length/parseSpoken.ts';
import { sayLength } from '../../../core/length/say.ts';
import { sizeNames } from '../../../core/piece/describe.ts';
import { stepsFor } from '../../../core/work/plan.ts';
import { examplesFor } from '../../../core/talk/expand.ts';
import { grammarWords, phrasesFor, phrasesOf } from '../../../core/talk/grammar.ts';
import { matches, utterance } from '../../../core/talk/match.ts';
import { parseRequest } from '../../../core/talk/parse.ts';
import { compile } from '../../../core/talk/pattern.ts';
import { ANSWERS, WHOLE_REQUESTS } from '../../../core/talk/table.ts';
import { canonical, splitWords } from '../../../core/talk/words.ts';
import { anySize, INCH_ROUNDINGS } from '../length/lengths.ts';
import { bench, inches, modelWords, STATE, TALKATIVE } from './benches.ts';

/** Thousands of utterances: no limit of time that a busy machine could break. */
const SLOW = { timeout: 120_000 };
const PHRASES = phrasesFor(TALKATIVE);
/** Numbers aside, everything said that is no phrase of ours. */
const OUTSIDE = ['banana', 'weather', 'radio', 'dinner', 'nail', 'yesterday', 'beautiful', 'coffee', 'phone', 'tomorrow'];

describe('the phrases for the recogniser', SLOW, () => {
  it('are each understood as a whole request', () => {
    for (const phrase of PHRASES) expect([phrase, parseRequest(phrase, TALKATIVE).kind]).not.toContain('not understood');
  });

  it('make the request of the row they come from, so that no row stands in the shadow of another', () => {
    const examples = examplesFor(TALKATIVE);
    for (const row of WHOLE_REQUESTS) {
      for (const phrase of phrasesOf(row, examples)) {
        const heard = utterance(splitWords(phrase), TALKATIVE);
        const meant = row.patterns.flatMap((pattern) => matches(pattern, heard).flatMap(({ bound, faults }) => (faults.length > 0 ? [] : [row.build(bound, TALKATIVE)])));
        const request = parseRequest(phrase, TALKATIVE);
        if (request.kind !== 'which') expect([row.about, phrase, meant]).toEqual([row.about, phrase, expect.arrayContaining([request])]);
      }
    }
  });

  it('are small letters and single spaces, each once', () => {
    for (const phrase of PHRASES) expect(phrase).toMatch(/^[a-z']+(?: [a-z']+)*$/);
    expect(new Set(PHRASES).size).toBe(PHRASES.length);
  });

  it('hold every word of a length', () => {
    const words = new Set(grammarWords(PHRASES).map(canonical));
    const spoken = SPOKEN_LENGTH_WORDS.filter((word) => !['nought', 'naught', 'full', 'scant', 'minus', 'thousand'].includes(word));
    for (const word of spoken) expect(words).toContain(canonical(word));
  });

  it('reach every size of the piece and every operation of its work', () => {
    const requests = PHRASES.map((phrase) => parseRequest(phrase, TALKATIVE));
    const sizes = new Set(requests.flatMap((request) => ('size' in request ? [request.size] : 'of' in request && 'size' in request.of ? [request.of.size] : [])));
    const { piece } = STATE;
    if (!piece) throw new Error('the demo piece is not on the bench');
    for (const size of sizeNames(piece)) expect(sizes).toContain(size);
    const steps = new Map(stepsFor(piece).map((step) => [step.id, step.operation]));
    const operations = new Set(requests.flatMap((request) => (request.kind === 'go to step' ? [steps.get(request.step)] : [])));
    for (const operation of steps.values()) expect(operations).toContain(operation);
  });

  it('follow the piece, the question and the clocks', () => {
    expect(grammarWords(phrasesFor(bench({ state: { piece: null } })))).not.toContain('rail');
    expect(grammarWords(phrasesFor(bench()))).toContain('rail');
    expect(phrasesFor(bench())).toContain('stop the leg two clamps');
    expect(phrasesFor(bench({ state: { timers: [] } }))).not.toContain('stop the leg two clamps');
    expect(phrasesFor(bench())).not.toContain('half an inch');
    expect(phrasesFor(bench({ question: { kind: 'length', size: 'leg.width' } }))).toContain('half an inch');
    expect(phrasesFor(bench({ question: { kind: 'which', choices: [{ say: 'long rail', request: { kind: 'next step' } }] } }))).toContain('long rail');
  });

  it('can be said in the words of the model that ships: of every row at least one', () => {
    const known = modelWords();
    const asked = [TALKATIVE, bench({ screen: { name: 'chopping', joint: 'long rail', stage: 1 } }), bench({ question: { kind: 'length', size: 'leg.width' } }), bench({ question: { kind: 'which', choices: [{ say: 'long rail', request: { kind: 'next step' } }] } }), bench({ question: { kind: 'surface reading', of: { part: 'leg', copy: 2, face: 'face' }, what: 'sticks', fromEnd: inches(12), about: 'face', leftOut: [] } })];
    // A note is free text, and a wrong number of gaps is only there to be refused.
    const rows = [...WHOLE_REQUESTS, ...ANSWERS].filter(({ about }) => about !== 'a note' && about !== 'parts with a counted number of gaps');
    for (const about of new Set(rows.map((row) => row.about))) {
      const phrases = rows.filter((row) => row.about === about).flatMap((row) => asked.flatMap((at) => phrasesOf(row, examplesFor(at))));
      expect([about, phrases.filter((phrase) => phrase.split(' ').every((word) => known.has(word))).length > 0]).toEqual([about, true]);
    }
  });
});

describe('what is heard among other words', SLOW, () => {
  it('is a measurement whatever its size', () => {
    fc.assert(fc.property(anySize, fc.constantFrom(...INCH_ROUNDINGS), fc.integer({ min: 1, max: 4 }), (length, rounding, copy) => {
      const said = sayLength(length, rounding).replaceAll(',', '');
      const request = parseRequest(`record leg ${copy} width ${said}`, bench());
      const other = parseRequest(`record leg ${copy} width is ${said}`, bench());
      expect(request.kind).toBe('record');
      expect(other).toEqual(request);
    }), { numRuns: 150 });
  });

  it('never makes the parser throw, nor takes in a word that is in no pattern and no name', () => {
    const words = grammarWords(PHRASES);
    // After 'note' and 'write down' any words are taken, as the text of the note.
    const anyWords = fc.array(fc.constantFrom(...words, '3', '7/16', "1'"), { maxLength: 14 });
    fc.assert(fc.property(anyWords, fc.constantFrom(TALKATIVE, bench(), bench({ state: { piece: null } })), (heard, at) => {
      expect(() => parseRequest(heard.join(' '), at)).not.toThrow();
    }), { numRuns: 300 });
    fc.assert(fc.property(fc.array(fc.constantFrom(...words.filter((word) => !['note', 'write'].includes(canonical(word)))), { maxLength: 8 }), fc.constantFrom(...OUTSIDE), fc.nat(), (heard, outside, where) => {
      const at = where % (heard.length + 1);
      expect(parseRequest([...heard.slice(0, at), outside, ...heard.slice(at)].join(' '), TALKATIVE).kind).toBe('not understood');
    }), { numRuns: 300 });
  });

  it('is refused when words of the grammar stand in no order that means anything', () => {
    const salad = ['long is how the rail', 'thirty start timer minute a', 'width three record leg', 'of half inches', 'scratch next', 'done back', 'leg leg', 'how long is', 'and', 'the', 'is the', 'add to', 'one two three four', 'rail rail long'];
    for (const words of salad) expect([words, parseRequest(words, bench()).kind]).toEqual([words, 'not understood']);
  });

  it('takes any text at all', () => {
    fc.assert(fc.property(fc.string({ maxLength: 200, unit: 'grapheme' }), (text) => {
      expect(() => parseRequest(text, TALKATIVE)).not.toThrow();
    }), { numRuns: 300 });
  });
});

describe('a pattern', () => {
  it.each(['', '[', 'how (long', 'next]', 'a | b', '(go', '| go'])('that is malformed is a bug and throws: %j', (text) => {
    expect(() => compile(text)).toThrow('malformed pattern');
  });
});
