import { expect, oneEvent } from '@open-wc/testing';
import '../../../kiosk/keys/benchKey.ts';
import type { BenchKey } from '../../../kiosk/keys/benchKey.ts';
import type { KeySpec } from '../../../kiosk/keys/keySpec.ts';
import { BOUNCE_MS, DOUBLE_PRESS_MS, PressGuard, pressGuard } from '../../../kiosk/keys/pressGuard.ts';
import { clearStage, settled, stage } from '../stage.ts';

async function keyOf(spec: KeySpec): Promise<BenchKey> {
  const key = document.createElement('bench-key');
  key.spec = spec;
  const sheet = document.createElement('div');
  sheet.append(key);
  await stage(sheet);
  await settled();
  return key;
}

function counted(typing = false): { readonly spec: KeySpec; readonly presses: () => number } {
  let presses = 0;
  return { spec: { label: 'done', typing, does: { here: () => { presses++; } } }, presses: () => presses };
}

describe('a key', () => {
  beforeEach(() => pressGuard.forget());
  afterEach(clearStage);

  it('asks the bench what it stands for', async () => {
    const key = await keyOf({ label: 'next', does: { request: { kind: 'next step' } } });
    const heard = oneEvent(document.body, 'bench-request');
    key.press();
    expect((await heard).detail).to.deep.equal({ kind: 'next step' });
  });

  it('tells the host what is not for the bench', async () => {
    const key = await keyOf({ label: 'listen', does: { act: { kind: 'listen' } } });
    const heard = oneEvent(document.body, 'bench-act');
    key.press();
    expect((await heard).detail).to.deep.equal({ kind: 'listen' });
  });

  // 19 mm for an arctic mitten (MIL-STD-1472E, keyboards) at the screen's 5.2 px/mm.
  it('is nineteen millimetres square at least', async () => {
    const { width, height } = (await keyOf(counted().spec)).getBoundingClientRect();
    expect(width).to.be.at.least(19 * 5.2 - 0.2);
    expect(height).to.be.at.least(19 * 5.2 - 0.2);
  });

  it('acts once however long it is held', async () => {
    const { spec, presses } = counted();
    const key = await keyOf(spec);
    const button = key.renderRoot.querySelector('button');
    if (button === null) throw new Error('the key drew no button');
    button.focus();
    const held = new KeyboardEvent('keydown', { key: 'Enter', repeat: true, bubbles: true, cancelable: true });
    button.dispatchEvent(held);
    expect(held.defaultPrevented, 'a repeated Enter must not click').to.equal(true);
    button.click();
    expect(presses()).to.equal(1);
  });

  it('takes two quick presses of a cold hand as one', async () => {
    const { spec, presses } = counted();
    const key = await keyOf(spec);
    key.press(1_000);
    key.press(1_000 + DOUBLE_PRESS_MS - 1);
    expect(presses()).to.equal(1);
    key.press(1_000 + DOUBLE_PRESS_MS * 2);
    expect(presses()).to.equal(2);
  });

  it('types a digit twice when it is pressed twice quickly, but not when the contact bounces', async () => {
    const { spec, presses } = counted(true);
    const key = await keyOf(spec);
    key.press(1_000);
    key.press(1_000 + BOUNCE_MS - 1);
    key.press(1_120);
    expect(presses()).to.equal(2);
  });

  it('does nothing while it is disabled', async () => {
    const { spec, presses } = counted();
    const key = await keyOf({ ...spec, disabled: true });
    key.press();
    expect(presses()).to.equal(0);
  });

  // WCAG 2.2, 2.4.13 Focus Appearance: two pixels at least around the whole.
  it('shows a thick ring when it is reached from the keyboard', async () => {
    const key = await keyOf(counted().spec);
    const button = key.renderRoot.querySelector('button');
    button?.focus({ focusVisible: true });
    const ring = getComputedStyle(button ?? key);
    expect(ring.outlineStyle).to.equal('solid');
    expect(Number.parseFloat(ring.outlineWidth)).to.be.at.least(4);
  });

  it('a second tap that lands on the next screen\'s key is not a press', () => {
    const guard = new PressGuard();
    expect(guard.allows('done', 5_000, false)).to.equal(true);
    expect(guard.allows('scratch that', 5_200, false)).to.equal(false);
    expect(guard.allows('scratch that', 5_300, false)).to.equal(true);
  });

  it('a screen that comes up by itself does not catch the press meant for the one before', () => {
    const guard = new PressGuard();
    guard.holdOff(5_000);
    expect(guard.allows('got it', 5_100, false)).to.equal(false);
    expect(guard.allows('got it', 5_400, false)).to.equal(true);
  });
});
