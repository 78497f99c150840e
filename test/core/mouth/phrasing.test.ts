import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { COMMA_PAUSE_MS, splitPhrases, STOP_PAUSE_MS } from '../../../kiosk/mouth/phrasing.ts';

const texts = (text: string) => splitPhrases(text).map((phrase) => phrase.text);

describe('a text is said in phrases', () => {
  it('pauses after the whole inches, after the name and after the reference', () => {
    expect(splitPhrases('Long rail, shoulder to shoulder, thirty-one, and five eighths inches, full. Next?')).toEqual([
      { text: 'Long rail', pauseMs: COMMA_PAUSE_MS },
      { text: 'shoulder to shoulder', pauseMs: COMMA_PAUSE_MS },
      { text: 'thirty-one', pauseMs: COMMA_PAUSE_MS },
      { text: 'and five eighths inches', pauseMs: COMMA_PAUSE_MS },
      { text: 'full', pauseMs: STOP_PAUSE_MS },
      { text: 'Next', pauseMs: STOP_PAUSE_MS },
    ]);
  });

  it('keeps decimals, thousands and hyphens whole', () => {
    expect(texts('803.5 mm, or 1,000 thousandths; a thirty-second')).toEqual(['803.5 mm', 'or 1,000 thousandths', 'a thirty-second']);
  });

  it('pauses at a dash between words and at a line\'s end, and drops quotes and brackets', () => {
    expect(texts('Say “what can I say” – (or press help)\nThen go on.')).toEqual(['Say what can I say', 'or press help', 'Then go on']);
  });

  it('has nothing to say of an empty text or of marks alone', () => {
    for (const text of ['', ' ', '...', ', ,', '—']) expect(splitPhrases(text)).toEqual([]);
  });

  it('loses no word, whatever stands between the words', () => {
    const word = fc.stringMatching(/^[a-z]{1,8}(-[a-z]{1,5})?$/);
    const between = fc.constantFrom(' ', ', ', '. ', '; ', ': ', ' – ', '\n', '! ', ', "', ' (', ') ', '... ');
    fc.assert(fc.property(fc.array(fc.tuple(word, between), { minLength: 1, maxLength: 20 }), (parts) => {
      const text = parts.map(([one, mark]) => one + mark).join('');
      expect(texts(text).join(' ')).toBe(parts.map(([one]) => one).join(' '));
    }));
  });

  it('takes a very long text in a moment', () => {
    expect(texts('word, '.repeat(5_000))).toHaveLength(5_000);
    expect(texts(' '.repeat(50_000) + 'x')).toEqual(['x']);
  });

  it('lengthens its pauses when it speaks slowly', () => {
    expect(splitPhrases('one, two', 1.75)[0]?.pauseMs).toBe(350);
  });
});
