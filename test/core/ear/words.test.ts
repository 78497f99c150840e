import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { PHONES } from '../../../kiosk/ear/graph/phones.ts';
import type { Pronunciation } from '../../../kiosk/ear/graph/phones.ts';
import { lookUp, readDictionary, writeDictionary } from '../../../kiosk/ear/words/dictionary.ts';
import { readRule, soundsOf, writeRule } from '../../../kiosk/ear/words/letterToSound.ts';
import type { SoundRule } from '../../../kiosk/ear/words/letterToSound.ts';
import { pluralOf, singularsOf } from '../../../kiosk/ear/words/plural.ts';
import { pronounce } from '../../../kiosk/ear/words/pronounce.ts';
import { grammarWords, phrasesFor } from '../../../core/talk/grammar.ts';
import { ADDRESS_WORDS } from '../../../core/journal/settings.ts';
import { TALKATIVE } from '../talk/benches.ts';
import { shippedDictionary } from '../../voice/models.ts';

const DICTIONARY = shippedDictionary();
const written = (sounds: Pronunciation) => sounds.map((phone) => PHONES[phone]).join(' ');
const sounds = (phones: string) => phones.split(' ').map((name) => PHONES.indexOf(name));
const ways = (word: string) => pronounce(word, DICTIONARY)?.pronunciations.map(written);

describe('the dictionary that ships', () => {
  it('holds at least twenty thousand words', () => {
    expect(DICTIONARY.words.size).toBeGreaterThan(20_000);
  });

  it('knows every word that can be said at the bench with the table on it, and every word of address', () => {
    const words = [...grammarWords(phrasesFor(TALKATIVE)), ...ADDRESS_WORDS];
    expect(words.filter((word) => pronounce(word, DICTIONARY)?.guessed !== false)).toEqual([]);
    // For words outside of these the graph is built again, which takes a moment and some memory: talk.txt should follow the table of talk.
    expect(words.filter((word) => !DICTIONARY.benchWords.includes(word)).length).toBeLessThan(words.length / 20);
  });

  it('knows numbers, fractions, joints, woods and tools', () => {
    const words = 'fifteen fifty sixteenths thousandths mortises tenons haunch rabbet dado dovetails kerf chamfer bevel spokeshave holdfast sapele padauk shellac urethane';
    expect(words.split(' ').filter((word) => pronounce(word, DICTIONARY)?.guessed !== false)).toEqual([]);
  });

  // Webster's pronunciations of these words, from memory: ˈmȯr-təs, ˈte-nən, ˈra-bət, ˈa-rəs, ˈɡau̇j.
  it.each([
    ['mortise', 'M AO R T AH S'], ['tenon', 'T EH N AH N'], ['rabbet', 'R AE B AH T'], ['arris', 'AE R IH S'], ['gouge', 'G AW JH'],
    ['scratch', 'S K R AE CH'], ['slower', 'S L OW ER'], ['clock', 'K L AA K'],
  ])('says %s as %s', (word, phones) => {
    expect(ways(word)).toContain(phones);
  });
});

describe('a word that the dictionary does not have', () => {
  it('is a plural or a possessive of one that it has, said after the last sound', () => {
    expect(pronounce('whetstones', DICTIONARY)?.guessed).toBe(false);
    expect(ways('holdfasts')).toContain('HH OW L D F AE S T S');
    expect(ways("apron's")).toEqual(['EY P R AH N Z']);
    expect(ways('spokeshaves')).toEqual(['S P OW K SH EY V Z']);
  });

  it('is two words that it has in one, and told as a guess', () => {
    expect(pronounce('gunstock', DICTIONARY)?.guessed).toBe(true);
    expect(ways('gunstock')).toContain('G AH N S T AA K');
  });

  it('is spelled out when it has no vowel, and figures are said', () => {
    expect(ways('mdf')).toEqual(['EH M D IY EH F']);
    expect(ways('m6')).toEqual(['EH M S IH K S']);
  });

  it('is read by letter-to-sound rules, accents left off', () => {
    expect(ways('kumiko')?.[0]).toMatch(/^K .*M IH K OW$/);
    expect(ways('Brennan')).toEqual(['B R EH N AH N']);
    expect(ways('étagère')).toEqual(ways('etagere'));
  });

  it('is not heard when it has no letter that we can read', () => {
    expect(pronounce('стол', DICTIONARY)).toBeUndefined();
    expect(pronounce('', DICTIONARY)).toBeUndefined();
  });

  it('has always some sound, and only sounds that the model has', () => {
    fc.assert(fc.property(fc.stringMatching(/^[a-z]{1,14}$/), (word) => {
      const said = pronounce(word, DICTIONARY)?.pronunciations ?? [];
      expect(said.flat().every((phone) => phone >= 0 && phone < PHONES.length)).toBe(true);
      expect(said.every((way) => way.length > 0)).toBe(true);
      if (/[aeiouy]/.test(word)) expect(said.length).toBeGreaterThan(0);
    }), { numRuns: 300 });
  });
});

describe('plurals', () => {
  it('are hissed as the last sound asks, and written as they are', () => {
    expect(pluralOf('bench', sounds('B EH N CH')).map(({ spelled, sounds: way }) => [spelled, written(way)])).toEqual([['benches', 'B EH N CH IH Z'], ['benches', 'B EH N CH AH Z']]);
    expect(pluralOf('joint', sounds('JH OY N T'))).toEqual([{ spelled: 'joints', sounds: sounds('JH OY N T S') }]);
    expect(pluralOf('assembly', sounds('AH S EH M B L IY'))).toEqual([{ spelled: 'assemblies', sounds: sounds('AH S EH M B L IY Z') }]);
  });

  it('lead back to what they may be the plural of', () => {
    expect(singularsOf('assemblies')).toEqual(['assembly', 'assemblie', 'assembli']);
    expect(singularsOf('benches')).toEqual(['benche', 'bench']);
    expect(singularsOf("leg's")).toEqual(['leg']);
    expect(singularsOf('glass')).toEqual([]);
  });
});

const rule: fc.Arbitrary<SoundRule> = fc.letrec<{ rule: SoundRule }>((tie) => ({
  rule: fc.record({
    sounds: fc.array(fc.nat(PHONES.length - 1), { maxLength: 2 }),
    unless: fc.oneof({ depthSize: 'small' }, fc.constant(new Map<string, SoundRule>()),
      fc.array(fc.tuple(fc.constantFrom('a', 'b', 'c', 'z', "'", '#'), tie('rule')), { maxLength: 3 }).map((list) => new Map(list))),
  }),
})).rule;

describe('the dictionary\'s file', () => {
  it('is read as it was written, whatever the rules and words', () => {
    const word = fc.stringMatching(/^[a-z]{1,6}$/);
    const way = fc.array(fc.nat(PHONES.length - 1), { minLength: 1, maxLength: 4 });
    fc.assert(fc.property(rule, fc.dictionary(word, fc.array(way, { minLength: 1, maxLength: 3 })), (rules, words) => {
      expect(readRule(writeRule(rules))).toEqual(rules);
      const entries = new Map(Object.entries(words));
      const dictionary = readDictionary(writeDictionary(entries, rules, []));
      for (const [each, expected] of entries) expect(lookUp(each, dictionary)).toEqual(expected);
    }));
  });

  it('asks the rules in their order: the letter, the next, the one before', () => {
    const rules: SoundRule = { sounds: [], unless: new Map([
      ['c', { sounds: sounds('K'), unless: new Map([['e', { sounds: sounds('S'), unless: new Map() }]]) }],
      ['a', { sounds: sounds('EY'), unless: new Map([['t', { sounds: sounds('AE'), unless: new Map([['w', { sounds: sounds('AO'), unless: new Map() }]]) }]]) }],
      ['t', { sounds: sounds('T'), unless: new Map() }],
    ]) };
    expect(written(soundsOf('cat', rules))).toBe('K AE T');
    expect(written(soundsOf('ace', rules))).toBe('EY S');
    expect(written(soundsOf('wat', rules))).toBe('AO T');
  });

  it.each([
    ['is something else', 'hello\n', /begins with "pronunciations 1"/],
    ['is cut short in its words', 'pronunciations 1\n.\n\nab', /cut short/],
    ['is cut short in its rules', 'pronunciations 1\nA(b\n\n', /cut short/],
    ['has a sound that is none', 'pronunciations 1\n9.\n\n', /"9" is no sound/],
  ])('that %s is refused in words', (_, text, reason) => {
    expect(() => readDictionary(text)).toThrow(reason);
  });
});
