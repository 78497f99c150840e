import { expect, oneEvent } from '@open-wc/testing';
import type { Length } from '../../../core/length/length.ts';
import '../../../kiosk/keys/fractionPad.ts';
import type { BenchKey } from '../../../kiosk/keys/benchKey.ts';
import type { FractionPad } from '../../../kiosk/keys/fractionPad.ts';
import type { PadSymbol } from '../../../kiosk/keys/keySpec.ts';
import { pressGuard } from '../../../kiosk/keys/pressGuard.ts';
import { clearStage, settled, stage } from '../stage.ts';

const INCH = 25_400_000;
let clock = 1_000_000;

async function padOnStage(): Promise<FractionPad> {
  const pad = document.createElement('fraction-pad');
  const sheet = document.createElement('div');
  sheet.style.cssText = 'padding: 0.4rem; box-sizing: border-box;';
  sheet.append(pad);
  await stage(sheet, [800, 450]);
  document.documentElement.style.fontSize = '10px';
  await settled();
  return pad;
}

const keysOf = (pad: FractionPad): BenchKey[] => [...pad.renderRoot.querySelectorAll<BenchKey>('bench-key')];

/** A finger: half a second from key to key. */
async function touch(pad: FractionPad, ...labels: string[]): Promise<void> {
  for (const label of labels) {
    const key = keysOf(pad).find((each) => each.spec?.label === label);
    if (key === undefined) throw new Error(`no key ${label}`);
    key.press((clock += 500));
    await pad.updateComplete;
  }
}

async function numberPad(pad: FractionPad, symbols: string): Promise<void> {
  for (const symbol of symbols) {
    pad.pressSymbol(symbol as PadSymbol, (clock += 500));
    await pad.updateComplete;
  }
}

const typed = (pad: FractionPad): string => pad.renderRoot.querySelector('.number')?.getAttribute('aria-label') ?? '';
const trouble = (pad: FractionPad): string => pad.renderRoot.querySelector('.trouble')?.textContent ?? '';

describe('the fraction pad', () => {
  beforeEach(() => pressGuard.forget());
  afterEach(clearStage);

  it('enters ninety-nine and sixty-three sixty-fourths by touch in seven presses', async () => {
    const pad = await padOnStage();
    const heard = oneEvent<CustomEvent<Length>>(pad, 'length-typed');
    await touch(pad, '9', '9', 'and', '6', '3', 'sixty-fourths', 'OK');
    expect((await heard).detail).to.equal((99 + 63 / 64) * INCH);
  });

  it('enters a size from a number pad as it is written', async () => {
    const pad = await padOnStage();
    const heard = oneEvent<CustomEvent<Length>>(pad, 'length-typed');
    await numberPad(pad, '31+5/8');
    expect(typed(pad)).to.contain('31 5 over 8');
    pad.pressSymbol('enter', (clock += 500));
    expect((await heard).detail).to.equal(31.625 * INCH);
  });

  it('takes the point for "and", for it lies under the thumb', async () => {
    const pad = await padOnStage();
    await numberPad(pad, '31.5/16');
    expect(typed(pad)).to.contain('31 5 over 16');
  });

  it('takes back one press, and leaves when there is nothing more to take back', async () => {
    const pad = await padOnStage();
    await numberPad(pad, '31+5/8-');
    expect(typed(pad)).to.contain('31 5 over ');
    await numberPad(pad, '-----');
    expect(typed(pad)).to.equal('typed so far:  inches');
    const left = oneEvent(pad, 'pad-left');
    await numberPad(pad, '-');
    await left;
  });

  it('says what is missing instead of taking half a size', async () => {
    const pad = await padOnStage();
    let accepted = false;
    pad.addEventListener('length-typed', () => { accepted = true; });
    await touch(pad, '3', 'and', 'OK');
    expect(trouble(pad)).to.contain('top of the fraction');
    expect(accepted).to.equal(false);
  });

  it('goes over to millimetres and back', async () => {
    const pad = await padOnStage();
    await numberPad(pad, '*803.5');
    expect(typed(pad)).to.contain('803 5 millimetres');
    const heard = oneEvent<CustomEvent<Length>>(pad, 'length-typed');
    pad.pressSymbol('enter', (clock += 500));
    expect((await heard).detail).to.equal(803_500_000);
  });

  // 19 mm keys, 3 mm apart, at 5.2 px/mm; half a pixel for the browser's rounding.
  it('has keys of nineteen millimetres, three apart, all on the smallest screen', async () => {
    const pad = await padOnStage();
    const boxes = keysOf(pad).map((key) => key.getBoundingClientRect());
    expect(boxes).to.have.length(22);
    for (const box of boxes) {
      expect(box.width).to.be.at.least(98.5);
      expect(box.height).to.be.at.least(98.5);
      expect(box.right).to.be.at.most(800);
      expect(box.bottom).to.be.at.most(450);
    }
    boxes.forEach((one, index) => boxes.slice(index + 1).forEach((other) => {
      const apart = Math.max(other.left - one.right, one.left - other.right, other.top - one.bottom, one.top - other.bottom);
      expect(apart).to.be.at.least(15.5);
    }));
  });
});
