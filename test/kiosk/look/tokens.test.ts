import { expect } from '@open-wc/testing';
import { DARK, LIGHT, PAIRS, contrast } from '../../../kiosk/look/tokens.ts';

describe('the colours of the sheet', () => {
  // WCAG 2.2, success criterion 1.4.6 Contrast (Enhanced): 7:1.
  for (const [theme, tokens] of [['light', LIGHT], ['dark', DARK]] as const) {
    for (const [front, back] of PAIRS) {
      it(`${front} on ${back} can be read in the ${theme} theme at 7:1`, () => {
        expect(contrast(tokens[front], tokens[back])).to.be.at.least(7);
      });
    }
  }

  // WCAG 2.2, definition of contrast ratio: 21 for black on white, 1 for a colour on itself. #767676 on white is the well-known 4.54.
  it('contrast is reckoned as WCAG defines it', () => {
    expect(contrast('#000000', '#ffffff')).to.be.closeTo(21, 1e-9);
    expect(contrast('#767676', '#ffffff')).to.be.closeTo(4.54, 0.005);
    expect(contrast('#123456', '#123456')).to.equal(1);
  });
});
