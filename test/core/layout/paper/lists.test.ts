import { describe, expect, it } from 'vitest';
import { rodOf, spanOf, type RodStrip } from '../../../../core/layout/paper/rodMarks.ts';
import { sheetsFor } from '../../../../core/layout/paper/order.ts';
import type { SheetChoice } from '../../../../core/layout/paper/choice.ts';
import { runsOf, sizesText } from '../../../../core/layout/paper/sizeText.ts';
import { printScale } from '../../../../core/layout/paper/printScale.ts';
import { lanes } from '../../../../core/layout/paper/labels.ts';
import { mm, textWidth } from '../../../../core/layout/paper/sheet.ts';
import { negate } from '../../../../core/length/arithmetic.ts';
import { nanometres } from '../../../../core/length/length.ts';
import { inches } from '../../joint/shop.ts';
import { DEMO, orderFor } from './shop.ts';

function strip(direction: RodStrip['direction']): RodStrip {
  const rod = rodOf(DEMO, orderFor(DEMO).sizes);
  const found = rod.ok ? rod.value.find((each) => each.direction === direction) : undefined;
  if (!found) throw new Error(`no rod for the ${direction}`);
  return found;
}

function textsOf(choice: SheetChoice): string {
  const made = sheetsFor(orderFor(DEMO), choice);
  if (!made.ok) throw new Error(made.fault);
  return made.value.pages.flatMap(({ drawn, furniture }) => [...drawn, ...furniture].flatMap((item) => (item.kind === 'words' ? [item.text.replaceAll('\u00a0', ' ')] : []))).join('\n');
}

describe('the rod of the baker\'s work table, worked by hand', () => {
  const at = (marks: RodStrip['marks'], say: string): readonly number[] => marks.filter((mark) => mark.say === say).map((mark) => mark.at);

  it('for the height: the leg 32 1/4 in, the top 1 3/4 in above it, rails 5 in wide flush with it', () => {
    const { marks } = strip('height');
    expect(at(marks, 'bottom end of the leg')).toEqual([inches(129, 4)]);
    expect(at(marks, 'upper face of the top')).toEqual([negate(inches(7, 4))]);
    expect(at(marks, 'bottom edge of the long rail')).toEqual([inches(5)]);
    expect(at(marks, 'start of the mortise, long rail')).toEqual([inches(1)]);
    // Stretchers 3 in wide, 6 in up: 32 1/4 - 6 - 3.
    expect(at(marks, 'top edge of the side stretcher')).toEqual([inches(93, 4)]);
  });

  it('for the length: 46 in inside, legs 3 1/4 in, tenons 1 3/4 in, the top 60 in over all', () => {
    const rod = strip('length');
    expect(at(rod.marks, 'shoulder of the long rail')).toEqual([inches(13, 4), inches(197, 4)]);
    expect(at(rod.marks, 'end of the tenon, long rail')).toEqual([inches(3, 2), inches(51)]);
    expect(at(rod.marks, 'outer face of the short rail')).toEqual([inches(1, 4), inches(209, 4)]);
    expect(spanOf(rod)).toBe(inches(60));
  });

  it('for the width: 19 1/2 in inside, the top 30 in over all', () => {
    const rod = strip('width');
    expect(at(rod.marks, 'shoulder of the short rail')).toEqual([inches(13, 4), inches(91, 4)]);
    expect(spanOf(rod)).toBe(inches(30));
  });

  it('of a piece without uprights is refused', () => {
    const bare = { ...DEMO, file: { ...DEMO.file, joints: [] } };
    const rod = rodOf(bare, orderFor(DEMO).sizes);
    expect(rod.ok ? '' : rod.fault).toMatch(/no mortise and tenon/);
  });
});

describe('lists and labels', () => {
  it('the cut list names every part with its count and finished sizes', () => {
    const text = textsOf({ what: 'cut list' });
    for (const { name, plural } of DEMO.file.parts) expect(text).toMatch(new RegExp(`^(${name}|${plural ?? `${name}s`})$`, 'm'));
    expect(text).toContain('49 1/2 in');
    expect(text.replaceAll('\n', ' ')).toContain('3 layers of 1 1/8 in');
  });

  it('there is a label for each copy, with its sizes in full and in the rough', () => {
    const text = textsOf({ what: 'labels' });
    for (const copy of [1, 2, 3, 4]) expect(text).toContain(`leg ${copy} of 4`);
    expect(text.match(/button \d+ of 12/g)).toHaveLength(12);
    expect(text).toContain('32 1/4 × 3 1/4 × 3 1/4 in');
  });

  it('the gauge card sets the mortise gauge once for all mortises that want it alike', () => {
    const text = textsOf({ what: 'gauge card' });
    expect(text).toContain('Set the mortise gauge to 5/8 in to the near pin, pins 1/2 in apart.');
    expect(text).toContain('Every gauge stands right already.');
  });

  it('the layout names part, copies, face, reference and date', () => {
    const text = textsOf({ what: 'layout', part: 'leg' });
    for (const said of ['leg, all 4 copies, face towards the long rail and the back stretcher', '1 in start of the mortise, from the top end', '5/8 in near side of the mortise, from the outer face', '1 13/16 in depth of the mortise', '25 November 2026']) expect(text).toContain(said);
  });
});

describe('figures on paper', () => {
  it('have the halves of a fraction apart, so that 1 1/4 is no 11/4', () => {
    expect(runsOf('1\u00a01/4\u00a0in')).toEqual([{ text: '1\u00a0', as: 'plain' }, { text: '1', as: 'numerator' }, { text: '/', as: 'plain' }, { text: '4', as: 'denominator' }, { text: '\u00a0in', as: 'plain' }]);
  });

  it('keep full and scant, and say the unit once', () => {
    expect(sizesText([inches(1), nanometres(inches(1, 2) + 200_000)], { unit: 'inch', denominator: 8 })).toBe('1 × 1/2\u00a0in\u00a0full');
  });

  it('are labelled so that no leader runs through a text', () => {
    const size = mm(3.4);
    const set = lanes([0, 4, 9, 40, 41, 90].map((x) => ({ x: mm(x), text: 'start of the mortise' })), size);
    for (const one of set) {
      for (const other of set) {
        const under = other.label.x > one.label.x && other.label.x < one.label.x + textWidth(one.label.text, size);
        if (under) expect(other.lane).toBeLessThan(one.lane);
      }
    }
  });
});

describe('whether a print is true', () => {
  it('99.2 mm for 100 mm is 0.8 % short: 8 mm over a metre, to be enlarged by 1.00806', () => {
    const scale = printScale(mm(100), mm(99.2), mm(1000));
    expect(scale).toMatchObject({ off: -800_000, offOverLongest: -8_000_000, isTrue: false });
    expect(scale.factor).toBeCloseTo(1.008_06, 5);
  });

  it('a fifth of a millimetre either way is as near as a rule is read', () => {
    expect([99.79, 99.8, 100.2, 100.21].map((measured) => printScale(mm(100), mm(measured), mm(100)).isTrue)).toEqual([false, true, true, false]);
  });
});
