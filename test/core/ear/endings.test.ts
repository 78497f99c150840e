import { describe, expect, it } from 'vitest';
import { dictionary } from 'cmu-pronouncing-dictionary';
import { ENDINGS, withEndings } from '../../../kiosk/ear/graph/endings.ts';
import { PHONES } from '../../../kiosk/ear/graph/phones.ts';

const NAMES = [...PHONES, 'garbage', 'TEEN', 'TY'];
const said = (word: string) => (dictionary[word] ?? '').split(' ').map((phone) => PHONES.indexOf(phone.replace(/\d/, '')));
const shown = (word: string) => withEndings(word, said(word)).map((sound) => NAMES[sound]).join(' ');

// Pronunciations are those of the CMU Pronouncing Dictionary.
describe('the endings of the number words', () => {
  it.each([['fifteen', 'F IH F TEEN'], ['fifty', 'F IH F TY'], ['sixteenth', 'S IH K S TEEN TH'], ['sixteenths', 'S IH K S TEEN TH S'], ['thirty', 'TH ER TY'],
    ['thirtieth', 'TH ER TY AH TH'], ['twenty', 'T W EH N TY'], ['eighteen', 'EY TEEN'], ['eighty', 'EY TY'], ['seventeen', 'S EH V AH N TEEN']])('%s is %s', (word, sounds) => {
    expect(shown(word)).toBe(sounds);
  });

  it('make every teen differ from its ten by the ending alone or more', () => {
    for (const stem of ['thir', 'fif', 'six', 'seven', 'eigh', 'nine']) {
      expect(withEndings(`${stem}teen`, said(`${stem}teen`)).at(-1)).toBe(ENDINGS.teen);
      expect(withEndings(`${stem}ty`, said(`${stem}ty`)).at(-1)).toBe(ENDINGS.ty);
    }
  });

  it('leave other words as they are', () => {
    for (const word of ['canteen', 'thirst', 'ninth', 'eighth', 'beauty', 'tea', 'teen', 'party']) expect(withEndings(word, said(word))).toEqual(said(word));
  });
});
