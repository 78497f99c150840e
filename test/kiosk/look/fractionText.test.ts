import { expect } from '@open-wc/testing';
import { nanometres } from '../../../core/length/length.ts';
import type { Rounding } from '../../../core/length/rounding.ts';
import '../../../kiosk/look/fractionText.ts';
import type { FractionText } from '../../../kiosk/look/fractionText.ts';
import { clearStage, settled, stage } from '../stage.ts';

const INCH = 25_400_000;
const THIRTY_SECONDS: Rounding = { unit: 'inch', denominator: 32 };

async function draw(inches: number, rounding: Rounding = THIRTY_SECONDS): Promise<FractionText> {
  const sheet = document.createElement('div');
  const text = document.createElement('fraction-text');
  text.length = nanometres(inches * INCH);
  text.rounding = rounding;
  sheet.append(text);
  await stage(sheet);
  await settled();
  return text;
}

const part = (text: FractionText, name: string): HTMLElement => {
  const found = text.renderRoot.querySelector<HTMLElement>(name);
  if (found === null) throw new Error(`no ${name}`);
  return found;
};

describe('a size on the screen', () => {
  afterEach(clearStage);

  it('stacks the fraction beside the whole inches over a drawn line', async () => {
    const text = await draw(31.625);
    expect(part(text, '.whole').textContent).to.equal('31');
    const box = (name: string): DOMRect => part(text, name).getBoundingClientRect();
    const [top, line, bottom] = [box('.top'), box('.line'), box('.bottom')];
    expect(part(text, '.top').textContent).to.equal('5');
    expect(part(text, '.bottom').textContent).to.equal('8');
    expect(top.bottom).to.be.at.most(line.top + 1);
    expect(line.bottom).to.be.at.most(bottom.top + 1);
    expect(line.height).to.be.at.least(2);
  });

  it('draws the figures of a fraction at six tenths of the whole inches or more', async () => {
    const text = await draw(31.625);
    const size = (name: string): number => Number.parseFloat(getComputedStyle(part(text, name)).fontSize);
    for (const figure of ['.top', '.bottom']) expect(size(figure) / size('.whole')).to.be.at.least(0.6);
  });

  it('is named as it is spoken', async () => {
    expect((await draw(31.625)).getAttribute('aria-label')).to.equal('thirty-one, and five eighths inches');
    expect((await draw(0.5)).getAttribute('aria-label')).to.equal('half an inch');
  });

  it('says full or scant in words for what rounding hid', async () => {
    const sixteenths: Rounding = { unit: 'inch', denominator: 16 };
    expect(part(await draw(3 + 29 / 64, sixteenths), '.lost').textContent).to.equal('full');
    expect(part(await draw(3 + 27 / 64, sixteenths), '.lost').textContent).to.equal('scant');
    expect((await draw(3.4375, sixteenths)).renderRoot.querySelector('.lost')).to.equal(null);
  });

  it('leaves the whole inches out of a size under an inch', async () => {
    const text = await draw(7 / 16);
    expect(text.renderRoot.querySelector('.whole')).to.equal(null);
    expect(part(text, '.top').textContent).to.equal('7');
  });

  it('draws millimetres with a point and their unit', async () => {
    const text = await draw(31.625, { unit: 'millimetre', step: nanometres(500_000) });
    expect(part(text, '.whole').textContent).to.equal('803.5');
    expect(part(text, '.unit').textContent).to.equal('mm');
  });
});
