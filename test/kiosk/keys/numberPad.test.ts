import { aTimeout, expect } from '@open-wc/testing';
import { CHARACTER_MS } from '../../../kiosk/keys/instrument.ts';
import { NumberPad, padSymbolOf } from '../../../kiosk/keys/numberPad.ts';
import type { PadSymbol } from '../../../kiosk/keys/keySpec.ts';
import { STUCK_MS } from '../../../kiosk/keys/pressGuard.ts';

// UI Events KeyboardEvent code Values (W3C), numpad section; DOM_KEY_LOCATION_NUMPAD is 3.
const reading = (code: string, key: string, location = 3): { code: string; key: string; location: number } => ({ code, key, location });

describe('the number pad', () => {
  it('reads every key with NumLock on', () => {
    for (let digit = 0; digit <= 9; digit++) expect(padSymbolOf(reading(`Numpad${digit}`, String(digit)))).to.equal(String(digit));
    const others: [string, string, PadSymbol][] = [
      ['NumpadAdd', '+', '+'], ['NumpadSubtract', '-', '-'], ['NumpadMultiply', '*', '*'], ['NumpadDivide', '/', '/'],
      ['NumpadDecimal', '.', '.'], ['NumpadEnter', 'Enter', 'enter'], ['Backspace', 'Backspace', 'take back'],
    ];
    for (const [code, key, symbol] of others) expect(padSymbolOf(reading(code, key)), code).to.equal(symbol);
  });

  it('reads the same keys with NumLock off', () => {
    const off = ['Insert', 'End', 'ArrowDown', 'PageDown', 'ArrowLeft', 'Clear', 'ArrowRight', 'Home', 'ArrowUp', 'PageUp'];
    off.forEach((key, digit) => {
      expect(padSymbolOf(reading(`Numpad${digit}`, key)), `${key} with its place`).to.equal(String(digit));
      expect(padSymbolOf(reading('', key)), `${key} without its place`).to.equal(String(digit));
    });
    expect(padSymbolOf(reading('NumpadDecimal', 'Delete'))).to.equal('.');
    expect(padSymbolOf(reading('', 'Delete'))).to.equal('.');
  });

  it('leaves the arrows and letters of a full keyboard alone', () => {
    for (const key of ['ArrowLeft', 'Tab', 'a', 'NumLock', 'Shift']) expect(padSymbolOf(reading(key, key, 0)), key).to.equal(null);
    expect(padSymbolOf(reading('Digit7', '7', 0))).to.equal('7');
    expect(padSymbolOf(reading('Escape', 'Escape', 0))).to.equal('-');
  });

  describe('at the bench', () => {
    let pressed: PadSymbol[];
    let stuck: PadSymbol[];
    let read: string[];
    let pad: NumberPad;
    let target: HTMLElement;

    beforeEach(() => {
      pressed = [];
      stuck = [];
      read = [];
      pad = new NumberPad({ pressed: (symbol) => pressed.push(symbol), read: (text) => read.push(text), stuck: (symbol) => stuck.push(symbol) });
      target = document.createElement('div');
      document.body.append(target);
      pad.attach(window);
    });
    afterEach(() => {
      pad.detach(window);
      target.remove();
    });

    const down = (code: string, key: string, options: KeyboardEventInit & { atMs?: number } = {}, on: Element = target): KeyboardEvent => {
      const event = new KeyboardEvent('keydown', { code, key, location: 3, bubbles: true, composed: true, cancelable: true, ...options });
      if (options.atMs !== undefined) Object.defineProperty(event, 'timeStamp', { value: options.atMs });
      on.dispatchEvent(event);
      return event;
    };
    const up = (code: string, key: string): boolean => target.dispatchEvent(new KeyboardEvent('keyup', { code, key, bubbles: true, composed: true }));

    it('presses once while a key is held', async () => {
      down('Numpad5', '5');
      for (let times = 0; times < 20; times++) down('Numpad5', '5', { repeat: true });
      up('Numpad5', '5');
      await aTimeout(CHARACTER_MS + 10);
      expect(pressed).to.deep.equal(['5']);
    });

    it('notices a key that stays down, once, and goes on taking the others', () => {
      down('Numpad5', '5', { atMs: 1_000 });
      for (let atMs = 1_500; atMs < 1_000 + 3 * STUCK_MS; atMs += 30) down('Numpad5', '5', { repeat: true, atMs });
      expect(stuck).to.deep.equal(['5']);
      down('NumpadEnter', 'Enter');
      expect(pressed).to.deep.equal(['5', 'enter']);
    });

    it('leaves text fields their typing', () => {
      const field = document.createElement('input');
      target.append(field);
      const event = down('Numpad5', '5', {}, field);
      expect(pressed).to.deep.equal([]);
      expect(event.defaultPrevented).to.equal(false);
    });

    it('leaves Enter to a key that was reached by Tab, and takes the pad\'s own Enter', () => {
      const button = document.createElement('button');
      target.append(button);
      down('Enter', 'Enter', { location: 0 }, button);
      expect(pressed).to.deep.equal([]);
      down('NumpadEnter', 'Enter', {}, button);
      expect(pressed).to.deep.equal(['enter']);
    });

    /** Types a line, a character every so many milliseconds, from a keyboard's upper row or its pad. */
    const type = (line: string, everyMs: number, from = 10_000): void => {
      Array.from(line).forEach((key, index) => down(key === '⏎' ? 'Enter' : key, key === '⏎' ? 'Enter' : key, { location: 0, atMs: from + index * everyMs }));
    };

    it('tells a caliper that types from a hand, by its speed: a whole line, and no key of it is pressed', async () => {
      for (const line of ['82.55', '+3.2500', '-0.05', '0082,55', '3.2500 in', '82.55mm', '3 1/4"', '1234']) {
        read = [];
        type(`${line}⏎`, 8);
        expect([line, read]).to.deep.equal([line, [line]]);
      }
      await aTimeout(CHARACTER_MS + 10);
      expect(pressed).to.deep.equal([]);
    });

    it('a hand that types the same is a hand, however quick', async () => {
      type('82.55⏎', 70);
      await aTimeout(CHARACTER_MS + 10);
      expect(read).to.deep.equal([]);
      expect(pressed).to.deep.equal(['8', '2', '.', '5', '5', 'enter']);
    });

    it('what is typed at that speed and is no reading is lost neither: two keys under one glove, a sign alone, letters', async () => {
      type('57', 5);
      await aTimeout(CHARACTER_MS + 10);
      expect(pressed).to.deep.equal(['5', '7']);
      type('+⏎', 5, 20_000);
      type('5*', 5, 30_000);
      await aTimeout(CHARACTER_MS + 10);
      expect(pressed).to.deep.equal(['5', '7', '+', 'enter', '5', '*']);
      expect(read).to.deep.equal([]);
    });

    it('a reading in the middle of a hand\'s typing leaves the hand\'s presses where they are', () => {
      down('Numpad3', '3', { atMs: 9_000 });
      type('82.55⏎', 8);
      expect(pressed).to.deep.equal(['3']);
      expect(read).to.deep.equal(['82.55']);
    });

    it('leaves the browser\'s own shortcuts alone', () => {
      down('NumpadAdd', '+', { ctrlKey: true });
      expect(pressed).to.deep.equal([]);
    });
  });
});
