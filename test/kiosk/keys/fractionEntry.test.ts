import { expect } from '@open-wc/testing';
import { parseLength } from '../../../core/length/parseWritten.ts';
import { DENOMINATORS, EMPTY_ENTRY, emptyEntry, entryLength, press, takeBack } from '../../../kiosk/keys/fractionEntry.ts';
import type { FractionEntry, Press } from '../../../kiosk/keys/fractionEntry.ts';

const INCH = 25_400_000;

function type(presses: readonly Press[], entry: FractionEntry = EMPTY_ENTRY): FractionEntry {
  return presses.reduce((before, next) => {
    const outcome = press(before, next);
    if (!outcome.ok) throw new Error(outcome.fault);
    return outcome.value;
  }, entry);
}

const digits = (value: number): Press[] => Array.from(String(value), (digit) => ({ digit: Number(digit) }));

/** As it is said: whole inches, and, numerator, denominator; nothing that is not there. */
function asSaid(whole: number, numerator: number, denominator: number): Press[] {
  const over = DENOMINATORS.find((each) => each === denominator);
  if (numerator === 0 || over === undefined) return digits(whole);
  return [...(whole === 0 ? [] : [...digits(whole), 'and' as const]), ...digits(numerator), { over }];
}

function lengthOf(entry: FractionEntry): number {
  const outcome = entryLength(entry);
  if (!outcome.ok) throw new Error(outcome.fault);
  return outcome.value;
}

const refusal = (presses: readonly Press[], next: Press): string => {
  const outcome = press(type(presses), next);
  return outcome.ok ? 'was taken' : outcome.fault;
};

describe('typing a size', () => {
  it('takes seven presses at most, OK among them, for every sixty-fourth up to ninety-nine and sixty-three sixty-fourths', () => {
    let most = 0;
    for (let sixtyFourths = 1; sixtyFourths < 100 * 64; sixtyFourths++) {
      const whole = Math.floor(sixtyFourths / 64);
      let [numerator, denominator] = [sixtyFourths % 64, 64];
      while (numerator !== 0 && numerator % 2 === 0) [numerator, denominator] = [numerator / 2, denominator / 2];
      const presses = asSaid(whole, numerator, denominator);
      expect(lengthOf(type(presses)), `${sixtyFourths}/64`).to.equal((sixtyFourths * INCH) / 64);
      most = Math.max(most, presses.length + 1);
    }
    expect(most).to.equal(7);
  });

  it('gives the same length as the size written down', () => {
    for (const [whole, numerator, denominator] of [[31, 5, 8], [0, 7, 16], [240, 0, 1], [3, 63, 64]] as const) {
      const written = parseLength(numerator === 0 ? `${whole} in` : `${whole} ${numerator}/${denominator} in`);
      expect(written.ok && written.value).to.equal(lengthOf(type(asSaid(whole, numerator, denominator))));
    }
  });

  it('reads a number pad, where the denominator is typed in digits', () => {
    expect(lengthOf(type([...digits(31), 'and', ...digits(5), 'over', ...digits(8)]))).to.equal(31.625 * INCH);
    expect(lengthOf(type([...digits(3), 'and', ...digits(15), 'over', ...digits(16)]))).to.equal(3.9375 * INCH);
    expect(lengthOf(type([...digits(63), 'over', ...digits(6)])), 'the first digit of a denominator tells which').to.equal((63 / 64) * INCH);
  });

  it('takes millimetres to a tenth', () => {
    expect(lengthOf(type([...digits(803), 'and', ...digits(5)], emptyEntry('millimetre')))).to.equal(803_500_000);
    expect(press(type([...digits(803), 'and', ...digits(5)], emptyEntry('millimetre')), { digit: 1 }).ok).to.equal(false);
    expect(press(emptyEntry('millimetre'), { over: 8 }).ok).to.equal(false);
  });

  it('refuses an inch or more over the line, which is an "and" forgotten', () => {
    expect(refusal(digits(31), { over: 8 })).to.contain('Press "and"');
    expect(refusal([...digits(3), 'and', ...digits(9)], { over: 8 })).to.contain('9 over 8');
    expect(refusal([...digits(3), 'and', ...digits(9), 'over'], { digit: 8 })).to.contain('9 over 8');
  });

  it('refuses denominators that no rule is divided in', () => {
    for (const digit of [0, 5, 7, 9]) expect(refusal([...digits(1), 'over'], { digit })).to.contain('2, 4, 8, 16, 32 or 64');
    expect(refusal([...digits(1), 'over', ...digits(3)], { digit: 1 })).to.contain('2, 4, 8, 16, 32 or 64');
  });

  it('refuses more than twenty feet', () => {
    expect(refusal(digits(24), { digit: 1 })).to.contain('240');
    const over = entryLength(type([...digits(240), 'and', ...digits(1), { over: 2 }]));
    expect(over.ok).to.equal(false);
  });

  it('says what is missing before it is whole', () => {
    const missing = (presses: readonly Press[]): string => {
      const outcome = entryLength(type(presses));
      return outcome.ok ? 'nothing' : outcome.fault;
    };
    expect(missing([])).to.contain('Type the size');
    expect(missing([...digits(3), 'and'])).to.contain('top of the fraction');
    expect(missing([...digits(3), 'and', ...digits(5)])).to.contain('5 over what');
  });

  it('takes back one press at a time', () => {
    const whole = asSaid(31, 5, 8);
    let entry = type(whole);
    for (let left = whole.length; left > 0; left--) {
      expect(entry.presses).to.have.length(left);
      entry = takeBack(entry);
    }
    expect(entry).to.deep.equal(EMPTY_ENTRY);
    expect(takeBack(entry)).to.deep.equal(EMPTY_ENTRY);
  });
});
